import sharp from 'sharp';
import { SeededRandom } from '../../../tests/virtual-weaver/seededRandom.ts';
import type { LoomScene } from './scene.ts';

/** What must be done to a picture as displayed so that a viewer obeying EXIF turn 1–8 shows it again. */
const UNDO: Readonly<Record<number, { readonly turn: number; readonly flop: boolean }>> = {
  1: { turn: 0, flop: false },
  2: { turn: 0, flop: true },
  3: { turn: 180, flop: false },
  4: { turn: 180, flop: true },
  5: { turn: 90, flop: true },
  6: { turn: 270, flop: false },
  7: { turn: 270, flop: true },
  8: { turn: 90, flop: false },
};

/** Light, glare, fall-off, blur, grain, colour cast, mirror, EXIF turn and JPEG: the camera's share of a picture. */
export async function finish(scene: LoomScene, pixels: Float32Array): Promise<Buffer> {
  const { width, height, light } = scene;
  const random = new SeededRandom(scene.seed + 31);
  const halfDiagonal2 = (width * width + height * height) / 4;
  const lit = new Uint8Array(pixels.length);
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const r2 = ((column - width / 2) ** 2 + (row - height / 2) ** 2) / halfDiagonal2;
      const level = light.exposure * (1 - scene.finish.vignette * r2);
      let glare = 0;
      for (const spot of light.glare) {
        const du = (column - spot.u * width) / (spot.size * width);
        const dv = (row - spot.v * height) / (spot.size * width);
        const away = du * du + dv * dv;
        if (away < 9) glare += spot.strength * Math.exp(-away);
      }
      for (let channel = 0; channel < 3; channel++) {
        const at = (row * width + column) * 3 + channel;
        // Bright tones roll off softly, as in a camera, instead of being cut.
        const raw = (pixels[at]! * level * light.cast[channel]! + glare) / 255;
        lit[at] = Math.max(0, Math.min(255, 255 * (raw < 0.75 ? raw : 1 - 0.25 * Math.exp(-(raw - 0.75) / 0.25))));
      }
    }
  const blurred = await sharp(lit, { raw: { width, height, channels: 3 } })
    .blur(Math.max(0.3, scene.finish.blur))
    .raw()
    .toBuffer();
  const grain = scene.finish.noise;
  for (let at = 0; at < blurred.length; at++) {
    // The sum of three even draws is near enough to a bell.
    const bell = (random.unit() + random.unit() + random.unit() - 1.5) * 2;
    blurred[at] = Math.max(0, Math.min(255, Math.round(blurred[at]! + bell * grain * (0.6 + blurred[at]! / 400))));
  }
  const undo = UNDO[scene.finish.orientation]!;
  let shown = sharp(Buffer.from(blurred), { raw: { width, height, channels: 3 } });
  if (scene.finish.mirrored)
    shown = sharp(await shown.flop().raw().toBuffer(), { raw: { width, height, channels: 3 } });
  const turned = undo.turn ? await shown.rotate(undo.turn).raw().toBuffer() : await shown.raw().toBuffer();
  const quarter = undo.turn === 90 || undo.turn === 270;
  let file = sharp(turned, { raw: { width: quarter ? height : width, height: quarter ? width : height, channels: 3 } });
  if (undo.flop) file = file.flop();
  return file
    .withMetadata({ orientation: scene.finish.orientation })
    .jpeg({ quality: scene.finish.quality, chromaSubsampling: scene.seed % 2 ? '4:2:0' : '4:4:4' })
    .toBuffer();
}
