import { mostTracedPixels } from '../../../core/cartoon/trace/tracePicture.ts';
import type { Picture } from '../../../core/cartoon/trace/yarnRaster.ts';

/** No loom shows more: a longer side is made this short before tracing. */
const LONGEST = 900;

/** A picture file as plain pixels, upright and made smaller; null when the browser can't read it. */
export async function readPicture(file: File): Promise<Picture | null> {
  let image: ImageBitmap;
  try {
    image = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    return null;
  }
  const scale = Math.min(
    1,
    LONGEST / Math.max(image.width, image.height),
    Math.sqrt(mostTracedPixels / (image.width * image.height)),
  );
  const width = Math.max(2, Math.round(image.width * scale));
  const height = Math.max(2, Math.round(image.height * scale));
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) return null;
  // What is see-through in a picture is taken for white paper.
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, width, height);
  context.drawImage(image, 0, 0, width, height);
  image.close();
  const { data } = context.getImageData(0, 0, width, height);
  const rgb = new Uint8Array(width * height * 3);
  for (let pixel = 0; pixel < width * height; pixel++) {
    rgb.set(data.subarray(4 * pixel, 4 * pixel + 3), 3 * pixel);
  }
  return { width, height, rgb };
}
