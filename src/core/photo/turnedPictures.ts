import type { ColourRaster } from './reduce.ts';
import { type TurnedFrame, turnedFrame, turnRaster } from './turned.ts';

/** A picture and its turned views, each made once. */
export interface TurnedPictures {
  readonly picture: ColourRaster;
  /** The picture turned so that a direction of it runs upright. @param angle radians, as in `turnedFrame`. */
  readonly at: (angle: number) => { readonly frame: TurnedFrame; readonly picture: ColourRaster };
}

/** More views than this are seldom asked for twice: the oldest makes room, so that memory stays bounded. */
const KEPT = 4;

export function turnedPictures(picture: ColourRaster): TurnedPictures {
  const kept = new Map<number, { readonly frame: TurnedFrame; readonly picture: ColourRaster }>();
  const at = (angle: number) => {
    const known = kept.get(angle);
    if (known) return known;
    const { width, height, channels } = picture;
    const frame = turnedFrame(width, height, angle);
    const turn = (data: Float32Array) => turnRaster({ width, height, data }, frame).data;
    const turned: ColourRaster = {
      width: frame.width,
      height: frame.height,
      channels: [turn(channels[0]), turn(channels[1]), turn(channels[2])],
    };
    const view = { frame, picture: turned };
    if (kept.size >= KEPT) kept.delete(kept.keys().next().value!);
    kept.set(angle, view);
    return view;
  };
  return { picture, at };
}
