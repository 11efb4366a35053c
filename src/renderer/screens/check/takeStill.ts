/** Some cameras say they can give a still and then never do. */
const STILL_WITHIN_MS = 5_000;

interface StillCamera {
  takePhoto(): Promise<Blob>;
}

/** Gives up on a promise that isn't kept in time. */
function within<Value>(milliseconds: number, promise: Promise<Value>): Promise<Value> {
  return new Promise((kept, broken) => {
    const timer = setTimeout(() => broken(new Error(`not within ${milliseconds} ms`)), milliseconds);
    promise.then(kept, broken).finally(() => clearTimeout(timer));
  });
}

/**
 * The still the camera itself can give, which is finer than the live picture; else the live picture as it is. Null when
 * there is neither.
 */
export async function takeStill(video: HTMLVideoElement, stream: MediaStream | null): Promise<Blob | null> {
  const track = stream?.getVideoTracks()[0];
  const Still = (window as { ImageCapture?: new (track: MediaStreamTrack) => StillCamera }).ImageCapture;
  if (track !== undefined && track.readyState === 'live' && Still !== undefined) {
    try {
      const still = await within(STILL_WITHIN_MS, new Still(track).takePhoto());
      if (still.size > 0) return still;
    } catch {
      // No still from this camera, or not in time; the live picture is at hand.
    }
  }
  if (video.videoWidth === 0) return null;
  const canvas = document.createElement('canvas');
  canvas.width = video.videoWidth;
  canvas.height = video.videoHeight;
  canvas.getContext('2d')?.drawImage(video, 0, 0);
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', 0.95));
}
