import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import type { Brief } from '../../src/core/project/brief.ts';
import { plannedYarn } from './drawnLoom/weave.ts';

/** What truth a rendered or drawn photograph comes with, as far as scoring needs it. */
export interface PhotoTruth {
  readonly ends: readonly {
    readonly index: number;
    readonly fell_mm: number | null;
    readonly x_at_fell_mm: number;
    readonly notch_x_mm: number;
  }[];
  readonly selvedge: readonly {
    readonly y_mm: number;
    readonly left_mm: number | null;
    readonly right_mm: number | null;
  }[];
}

/** Half a loom, or a loom with a brief that isn't its own. */
export interface SpoiltLoom {
  readonly name: string;
  /** What is wrong, for the count by group. */
  readonly fault:
    | 'bar cut'
    | 'side cut'
    | 'strings cut'
    | 'pitch'
    | 'ends'
    | 'first notch'
    | 'opening'
    | 'mirrored'
    | 'mirrored, alike';
  readonly jpeg: () => Promise<Buffer>;
  readonly brief: Brief;
  readonly truth: PhotoTruth;
  /**
   * How far the brief's planned middle lies right of the true one, mm, and by how many ends its first notch is off: a
   * reading may hold to either frame, but must hold to one.
   */
  readonly planShift: number;
  readonly endShift: number;
  /** Reason codes or the flag `count` that would name the fault; empty where nothing needs to be said. */
  readonly names: readonly string[];
  /** Lengths, mm, that a reason has to tell for the fault to be named in figures; empty where there are none. */
  readonly figures: readonly number[];
}

interface Whole {
  readonly name: string;
  readonly file: string;
  readonly brief: Brief;
  readonly truth: PhotoTruth & { readonly corners_px?: readonly (readonly [number, number])[] };
}

function whole(stem: string): Whole {
  return {
    name: stem.split('/').at(-1)!,
    file: `${stem}.jpg`,
    brief: JSON.parse(readFileSync(`${stem}.brief.json`, 'utf8')) as Brief,
    truth: JSON.parse(readFileSync(`${stem}.truth.json`, 'utf8')) as Whole['truth'],
  };
}

const changed = (brief: Brief, loom: Partial<Brief['loom']>, warp: Partial<Brief['warp']>): Brief => ({
  ...brief,
  loom: { ...brief.loom, ...loom },
  warp: { ...brief.warp, ...warp },
});

/** Shares of the displayed picture to keep: left, top, right, bottom. */
type Keep = readonly [left: number, top: number, right: number, bottom: number];

function crop(file: string, keep: Keep): () => Promise<Buffer> {
  return async () => {
    const upright = await sharp(file).rotate().toBuffer({ resolveWithObject: true });
    const { width, height } = upright.info;
    const left = Math.round(keep[0] * width);
    const top = Math.round(keep[1] * height);
    return sharp(upright.data)
      .extract({ left, top, width: Math.round(keep[2] * width) - left, height: Math.round(keep[3] * height) - top })
      .jpeg({ quality: 92 })
      .toBuffer();
  };
}

/** Half-a-loom crops of an upright photograph. The shares suit looms that fill most of the picture. */
function halves(photo: Whole): SpoiltLoom[] {
  const cuts: readonly (readonly [string, SpoiltLoom['fault'], Keep, readonly string[]])[] = [
    ['top-bar-cut', 'bar cut', [0, 0.3, 1, 1], ['bar-missing', 'loom-cut-off']],
    ['bottom-bar-cut', 'bar cut', [0, 0, 1, 0.68], ['bar-missing', 'loom-cut-off']],
    ['both-bars-cut', 'bar cut', [0, 0.3, 1, 0.68], ['bar-missing', 'loom-cut-off']],
    ['left-side-cut', 'side cut', [0.2, 0, 1, 1], []],
    ['right-side-cut', 'side cut', [0, 0, 0.8, 1], []],
    ['left-half-gone', 'strings cut', [0.5, 0, 1, 1], ['loom-cut-off', 'wrong-count']],
    ['right-half-gone', 'strings cut', [0, 0, 0.5, 1], ['loom-cut-off', 'wrong-count']],
    ['quarter-left', 'strings cut', [0, 0, 0.55, 0.55], ['bar-missing', 'loom-cut-off', 'wrong-count']],
  ];
  return cuts.map(([label, fault, keep, names]) => ({
    name: `${photo.name}-${label}`,
    fault,
    jpeg: crop(photo.file, keep),
    brief: photo.brief,
    truth: photo.truth,
    planShift: 0,
    endShift: 0,
    names,
    figures: [],
  }));
}

function wrongBriefs(photo: Whole): SpoiltLoom[] {
  const { brief } = photo;
  const { notch_pitch_mm: pitch, notches, opening_height_mm: height, opening_width_mm: width } = brief.loom;
  const { ends, first_notch: first } = brief.warp;
  const jpeg = async (): Promise<Buffer> => readFileSync(photo.file);
  const cases: SpoiltLoom[] = [];
  const add = (
    label: string,
    fault: SpoiltLoom['fault'],
    other: Brief,
    names: readonly string[],
    figures: readonly number[] = [],
  ): void => {
    const shift = other.warp.first_notch - first;
    cases.push({
      name: `${photo.name}-${label}`,
      fault,
      jpeg,
      brief: other,
      truth: photo.truth,
      planShift: (shift + (other.warp.ends - ends) / 2) * pitch,
      endShift: shift,
      names,
      figures,
    });
  };
  for (const factor of [0.5, 0.75, 0.9, 1.1, 1.25, 1.5, 2]) {
    const other = Math.min(notches, Math.floor(width / (pitch * factor)));
    if (other < ends) continue;
    const start = Math.max(0, Math.min(other - ends, first + Math.round((other - notches) / 2)));
    const made = changed(brief, { notch_pitch_mm: pitch * factor, notches: other }, { first_notch: start });
    cases.push({
      name: `${photo.name}-pitch-x${factor}`,
      fault: 'pitch',
      jpeg,
      brief: made,
      truth: photo.truth,
      planShift: 0,
      endShift: 0,
      names: ['wrong-pitch', 'references-disagree'],
      figures: [pitch],
    });
  }
  for (const more of [-8, -4, -2, -1, 1, 2, 4, 8]) {
    if (ends + more < 4 || ends + more > notches) continue;
    const start = Math.max(0, Math.min(notches - ends - more, first - Math.trunc(more / 2)));
    add(`ends${more > 0 ? '+' : ''}${more}`, 'ends', changed(brief, {}, { ends: ends + more, first_notch: start }), [
      'wrong-count',
      'count',
    ]);
  }
  for (const more of [-3, -1, 1, 3]) {
    const start = first + more;
    if (start < 0 || start + ends > notches) continue;
    add(`first${more > 0 ? '+' : ''}${more}`, 'first notch', changed(brief, {}, { first_notch: start }), [
      'wrong-count',
      'references-disagree',
      'count',
    ]);
  }
  // One bar higher or lower, the wood's inner edge lies where the plan has the outer one, or the other way round.
  const { bar_mm: bar } = brief.loom;
  const openings = [
    ['one-bar-lower', width, height - bar],
    ['one-bar-higher', width, height + bar],
    ['two-bars-narrower', width - 2 * bar, height],
    ['two-bars-wider', width + 2 * bar, height],
    ['height-x0.85', width, 0.85 * height],
    ['height-x1.25', width, 1.25 * height],
    ['width-x0.92', 0.92 * width, height],
    ['width-x1.15', 1.15 * width, height],
    ['both-x1.15x1.15', 1.15 * width, 1.15 * height],
    ['both-x1.1x0.85', 1.1 * width, 0.85 * height],
  ] as const;
  for (const [label, wide, high] of openings) {
    // A warp that doesn't fit into the opening is refused before any photograph.
    if (wide < ends * pitch) continue;
    const opening = { opening_width_mm: Math.round(wide), opening_height_mm: Math.round(high) };
    add(`opening-${label}`, 'opening', changed(brief, opening, {}), ['references-disagree'], [width, height]);
  }
  return cases;
}

/** Whether a plan, its place on the loom included, is its own mirror image, so that a mirrored photograph can't betray itself. */
function mirrorsItself(brief: Brief): boolean {
  if (brief.loom.notches - brief.warp.ends !== 2 * brief.warp.first_notch) return false;
  const half = (brief.warp.ends * brief.loom.notch_pitch_mm) / 2;
  for (let y = 1; y < brief.cloth.height_mm; y += 2)
    for (let x = 1; x < half; x += 2) if (plannedYarn(brief, x, y) !== plannedYarn(brief, -x, y)) return false;
  return true;
}

const turnedRound = ({ ends, selvedge }: PhotoTruth): PhotoTruth => ({
  ends: ends
    .map((end) => ({
      ...end,
      index: ends.length - 1 - end.index,
      x_at_fell_mm: -end.x_at_fell_mm,
      notch_x_mm: -end.notch_x_mm,
    }))
    .reverse(),
  selvedge: selvedge.map(({ y_mm, left_mm, right_mm }) => ({
    y_mm,
    left_mm: right_mm === null ? null : -right_mm,
    right_mm: left_mm === null ? null : -left_mm,
  })),
});

/**
 * The photograph as a front camera mirrors it. Where plan and place are their own mirror image it can't be told from the
 * picture: the reading is then right if it is right for what is seen, and a question (once per camera) is what is wanted.
 * Elsewhere the mirror has to be noticed, or the figures be right in spite of it.
 */
function mirrored(photo: Whole): SpoiltLoom {
  const alike = mirrorsItself(photo.brief);
  return {
    name: `${photo.name}-mirrored`,
    fault: alike ? 'mirrored, alike' : 'mirrored',
    jpeg: async () =>
      sharp(await sharp(photo.file).rotate().toBuffer())
        .flop()
        .jpeg({ quality: 92 })
        .toBuffer(),
    brief: photo.brief,
    truth: alike ? turnedRound(photo.truth) : photo.truth,
    planShift: 0,
    endShift: 0,
    names: ['maybe-mirrored'],
    figures: [],
  };
}

/**
 * Every spoilt case of some photographs.
 * @param upright stems of photographs held upright, whose loom fills most of the picture: they are also cut
 * @param others stems that only get another brief or a mirror
 */
export function spoiltLooms(upright: readonly string[], others: readonly string[]): SpoiltLoom[] {
  return [
    ...upright.map(whole).flatMap((photo) => [...halves(photo), ...wrongBriefs(photo), mirrored(photo)]),
    ...others.map(whole).flatMap((photo) => [...wrongBriefs(photo), mirrored(photo)]),
  ];
}
