import { type RefObject, useEffect, useState } from 'react';
import { useSettings } from '../../state/settingsStore.ts';

/** Why there is no live picture; each has its words. */
export type CameraTrouble = 'none' | 'refused' | 'busy';

/** A camera that is slow to wake, or held by another program, is asked again. */
const ASK_AGAIN_MS = 2_500;

const troubleOf = (thrown: unknown): CameraTrouble => {
  const name = thrown instanceof DOMException ? thrown.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return 'refused';
  return name === 'NotReadableError' || name === 'AbortError' ? 'busy' : 'none';
};

/** The chosen camera's live picture in `video`; the choice is remembered. A camera plugged in later is taken up. */
export function useCamera(video: RefObject<HTMLVideoElement | null>) {
  const device = useSettings((state) => state.settings.camera);
  const [devices, setDevices] = useState<readonly MediaDeviceInfo[]>([]);
  const [stream, setStream] = useState<MediaStream | null>(null);
  const [trouble, setTrouble] = useState<CameraTrouble | null>(null);
  useEffect(() => {
    let wanted = true;
    let asking = false;
    let open: MediaStream | null = null;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const { mediaDevices } = navigator;
    const fail = (why: CameraTrouble) => {
      if (!wanted) return;
      setStream(null);
      setTrouble(why);
      clearTimeout(timer);
      if (why === 'busy') timer = setTimeout(() => void start(), ASK_AGAIN_MS);
    };
    const start = async () => {
      if (mediaDevices === undefined) return fail('none');
      if (asking || open?.active === true) return;
      asking = true;
      const size = { width: { ideal: 4096 }, height: { ideal: 3072 } };
      try {
        // A remembered camera may have been unplugged: `ideal` takes another one then.
        const given = await mediaDevices.getUserMedia({
          video: device === null ? { ...size, facingMode: 'environment' } : { ...size, deviceId: { ideal: device } },
        });
        if (!wanted) {
          for (const track of given.getTracks()) track.stop();
          return;
        }
        open = given;
      } catch (thrown) {
        return fail(troubleOf(thrown));
      } finally {
        asking = false;
      }
      for (const track of open.getVideoTracks()) track.addEventListener('ended', () => fail('busy'), { once: true });
      setTrouble(null);
      setStream(open);
      if (video.current !== null) video.current.srcObject = open;
      const all = await mediaDevices.enumerateDevices();
      if (wanted) setDevices(all.filter((each) => each.kind === 'videoinput'));
    };
    const plugged = () => void start();
    mediaDevices?.addEventListener('devicechange', plugged);
    void start();
    return () => {
      wanted = false;
      clearTimeout(timer);
      mediaDevices?.removeEventListener('devicechange', plugged);
      for (const track of open?.getTracks() ?? []) track.stop();
      setStream(null);
    };
  }, [device, video]);
  const chooseDevice = (camera: string) => useSettings.getState().change({ camera });
  return {
    devices,
    device: device ?? stream?.getVideoTracks()[0]?.getSettings().deviceId ?? null,
    chooseDevice,
    trouble,
    stream,
  };
}
