import { type RefObject, useEffect, useState } from 'react';
import { useSettings } from '../../state/settingsStore.ts';
import { words } from '../../words/useWords.ts';

/** The chosen camera's live picture in `video`; the choice is remembered. */
export function useCamera(video: RefObject<HTMLVideoElement | null>) {
  const device = useSettings((state) => state.settings.camera);
  const [devices, setDevices] = useState<readonly MediaDeviceInfo[]>([]);
  const [stream, setStream] = useState<MediaStream | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    let wanted = true;
    let open: MediaStream | null = null;
    const start = async () => {
      if (navigator.mediaDevices === undefined) return setTrouble(words().check.noCamera);
      const size = { width: { ideal: 4096 }, height: { ideal: 3072 } };
      try {
        // A remembered camera may have been unplugged: `ideal` takes another one then.
        open = await navigator.mediaDevices.getUserMedia({
          video: device === null ? { ...size, facingMode: 'environment' } : { ...size, deviceId: { ideal: device } },
        });
      } catch (thrown) {
        const refused = thrown instanceof DOMException && thrown.name === 'NotAllowedError';
        if (wanted) setTrouble(refused ? words().check.cameraRefused : words().check.noCamera);
        return;
      }
      if (!wanted) {
        for (const track of open.getTracks()) track.stop();
        return;
      }
      setTrouble(null);
      setStream(open);
      if (video.current !== null) video.current.srcObject = open;
      const all = await navigator.mediaDevices.enumerateDevices();
      setDevices(all.filter((each) => each.kind === 'videoinput'));
    };
    void start();
    return () => {
      wanted = false;
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

/** The still the camera itself can give, which is finer than the live picture; else the live picture as it is. */
export async function takeStill(video: HTMLVideoElement, stream: MediaStream | null): Promise<Blob | null> {
  const track = stream?.getVideoTracks()[0];
  const Capture = (window as { ImageCapture?: new (track: MediaStreamTrack) => { takePhoto(): Promise<Blob> } })
    .ImageCapture;
  if (track !== undefined && Capture !== undefined) {
    try {
      return await new Capture(track).takePhoto();
    } catch {
      // Some cameras give no still; the live picture does.
    }
  }
  const canvas = document.createElement('canvas');
  canvas.width = video.videoWidth;
  canvas.height = video.videoHeight;
  canvas.getContext('2d')?.drawImage(video, 0, 0);
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', 0.95));
}
