import type { Box } from '../../geometry/box.ts';
import { failure, type Outcome, success } from '../../model/outcome.ts';
import type { PathCommand, Shape } from '../../model/piece.ts';
import { freeName, plainShape } from '../newShape.ts';
import { mergeSpecks } from './mergeSpecks.ts';
import { simplifiedRing } from './sharedEdges.ts';
import { spotRings } from './spotRings.ts';
import { connectedSpots } from './spots.ts';
import { inYarns, type Picture } from './yarnRaster.ts';

/** A picture larger than this is made smaller first: no loom has so many ends. */
export const mostTracedPixels = 4_000_000;
/** Areas a weaver can still look through. */
const mostShapes = 300;

export interface TraceInto {
  /** Where the picture goes, cloth mm; kept in proportion and centred. */
  readonly box: Box;
  /** Yarns the picture may use, at most 255. */
  readonly yarns: readonly { readonly id: string; readonly name: string; readonly colour: string }[];
  /** Areas in this yarn are left to the ground; null makes shapes of every yarn. */
  readonly ground: string | null;
  /** Areas smaller than this, mm², are given to what lies round them. */
  readonly smallest: number;
  /** How far an edge may move to become smoother, mm. */
  readonly tolerance: number;
  readonly idPrefix: string;
}

export interface TracedPicture {
  readonly shapes: readonly Shape[];
  /** Share of the picture in each yarn, in the yarns' order. */
  readonly shares: readonly number[];
  /** What was changed to keep it weavable, a sentence each. */
  readonly told: readonly string[];
}

/**
 * A picture as shapes in the piece's yarns: every pixel in the yarn that looks nearest (CIEDE2000), specks given to
 * their neighbours, and the edge of every area followed and simplified. Neighbouring areas share their edges exactly.
 */
export function tracePicture(
  picture: Picture,
  into: TraceInto,
): Outcome<TracedPicture, 'picture-unusable' | 'picture-too-large' | 'picture-plain'> {
  const { width, height, rgb } = picture;
  if (!(width >= 2 && height >= 2) || rgb.length !== width * height * 3 || into.yarns.length === 0) {
    return failure('picture-unusable', 'The picture is empty or broken off.', 'Choose another picture.');
  }
  if (width * height > mostTracedPixels) {
    return failure(
      'picture-too-large',
      'The picture has more detail than a loom can hold.',
      'Make it smaller, about 1 000 pixels across, and try again.',
    );
  }
  const told: string[] = [];
  const yarns = into.yarns.slice(0, 255);
  const raster = inYarns(picture, yarns);
  const scale = Math.min((into.box.right - into.box.left) / width, (into.box.top - into.box.bottom) / height);
  let smallest = Math.max(2, into.smallest / (scale * scale));
  let whole = mergeSpecks(raster, smallest);
  let spots = connectedSpots(whole.yarns, width, height);
  while (spots.sizes.length > mostShapes && smallest < width * height) {
    smallest *= 2;
    whole = mergeSpecks(whole, smallest);
    spots = connectedSpots(whole.yarns, width, height);
  }
  if (smallest * scale * scale > into.smallest * 1.5) {
    const side = Math.round(Math.sqrt(smallest) * scale);
    told.push(`Areas smaller than about ${side} × ${side} mm were given to their neighbours, to keep to 300 areas.`);
  }

  const originX = (into.box.left + into.box.right) / 2 - (width * scale) / 2;
  const originY = (into.box.bottom + into.box.top) / 2 + (height * scale) / 2;
  const commandsOf = new Map<number, PathCommand[]>();
  for (const ring of spotRings(spots)) {
    const points = simplifiedRing(spots, ring, into.tolerance / scale);
    const commands = commandsOf.get(ring.spot) ?? [];
    for (let at = 0; at < points.length; at += 2) {
      const [x, y] = [originX + points[at]! * scale, originY - points[at + 1]! * scale];
      commands.push({ to: at === 0 ? 'move' : 'line', x, y });
    }
    commands.push({ to: 'close' });
    commandsOf.set(ring.spot, commands);
  }

  const yarnOf = new Map<number, number>();
  const count = new Array<number>(yarns.length).fill(0);
  for (let pixel = 0; pixel < whole.yarns.length; pixel++) {
    yarnOf.set(spots.of[pixel]!, whole.yarns[pixel]!);
    count[whole.yarns[pixel]!]!++;
  }
  const shapes: Shape[] = [];
  const names: string[] = [];
  const largestFirst = [...commandsOf.keys()].sort((one, other) => spots.sizes[other]! - spots.sizes[one]!);
  for (const spot of largestFirst) {
    const yarn = yarns[yarnOf.get(spot)!]!;
    if (yarn.id === into.ground) continue;
    const name = freeName(yarn.name, names);
    names.push(name);
    const form = { kind: 'path', commands: commandsOf.get(spot)!, fillRule: 'evenodd', origin: 'traced' } as const;
    shapes.push(plainShape(`${into.idPrefix}${shapes.length + 1}`, name, yarn.id, form));
  }
  if (shapes.length === 0) {
    return failure(
      'picture-plain',
      'In these yarns the whole picture is ground.',
      'Add a yarn nearer to its colours, or choose a picture with more contrast.',
    );
  }
  return success({ shapes, shares: count.map((pixels) => pixels / (width * height)), told });
}
