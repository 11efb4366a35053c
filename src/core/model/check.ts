import type { BothUnits } from './bothUnits.ts';
import type { Marks } from './marks.ts';
import type { Measurement } from './measurement.ts';

export type CheckStatus = 'measured' | 'needs-reference' | 'refused';

/** Every reason a photograph can be turned away or only partly read; the one documented list. */
export type ReasonCode =
  | 'unreadable-file'
  | 'too-large'
  | 'too-small'
  | 'too-dark'
  | 'too-bright'
  | 'blurred'
  | 'too-tilted'
  | 'no-loom'
  | 'no-strings'
  | 'bar-missing'
  | 'loom-cut-off'
  | 'wrong-count'
  | 'wrong-pitch'
  | 'points-do-not-fit'
  | 'references-disagree'
  | 'maybe-mirrored'
  | 'nothing-woven'
  | 'took-too-long'
  | 'internal';

export interface Reason {
  readonly code: ReasonCode;
  /** What was seen, in a sentence. */
  readonly message: BothUnits;
  readonly remedy: string;
  /** The figure of the plan to look at first, where what was seen singles one out. */
  readonly figure?: 'openingWidth' | 'openingHeight';
}

export type ReferenceMethod = 'opening-and-notches' | 'notches' | 'card' | 'points' | 'earlier-check' | 'fused';

/** What one photograph showed of its camera's lens. */
export interface FittedLens {
  /** First radial term, radii in half-diagonals of the picture, and its standard uncertainty. */
  readonly k1: number;
  readonly k1Sigma: number;
  /** Focal length in diagonals of the picture, and its standard uncertainty as a share of it. */
  readonly focal: number;
  readonly focalShare: number;
}

/** How the photograph was tied to millimetres. */
export interface ReferenceReading {
  readonly method: ReferenceMethod;
  /** Everything that took part, for example `notch pitch at the top bar`. */
  readonly parts: readonly string[];
  readonly mmPerPx: number;
  readonly residualMm: number;
  readonly lensK1: number;
  readonly lensK2: number;
  /** Null where marks alone tie the picture, which show nothing of the lens, and in checks kept before it was noted. */
  readonly lens: FittedLens | null;
  /** 3 × 3 row-major: loom mm (x, y, 1) to undistorted photo pixels. */
  readonly homography: readonly number[];
  readonly photoWidth: number;
  readonly photoHeight: number;
  /** One-sigma share of a length that is uncertain through scale alone. */
  readonly scaleSigma: number;
  /** One-sigma error of where the cloth's base line lies, mm. */
  readonly baseSigmaMm: number;
}

export interface EndReading {
  /** 0-based from the left with the loom upright. */
  readonly index: number;
  readonly seen: boolean;
  /** Why it was not seen; null when it was. */
  readonly why: string | null;
  /** Measured x at the notches, cloth frame; null when not seen. */
  readonly notchX: Measurement | null;
  readonly fell: Measurement | null;
  readonly xAtFell: Measurement | null;
  /**
   * How far the bare string bows sideways between fell and top bar at most, mm, positive to the right; null when it was
   * not followed. A picture from above shows no string that sags towards the table.
   */
  readonly bow: Measurement | null;
  /** Index of the end in whose notch the string hangs: its own as a rule; null when that was not seen. */
  readonly runsTo: number | null;
}

export interface SelvedgeRow {
  readonly y: number;
  readonly left: Measurement | null;
  readonly right: Measurement | null;
}

/** Where the ends lie inside the cloth at one height. */
export interface RibRow {
  readonly y: number;
  readonly x: readonly (Measurement | null)[];
}

/** Pass height around one height. */
export interface BeatRow {
  readonly y: number;
  readonly pass: Measurement;
}

export type FlagKind = 'draw-in' | 'spreading' | 'tilt' | 'uneven' | 'beat' | 'motif' | 'count' | 'slack';

export interface Flag {
  readonly kind: FlagKind;
  readonly side: 'left' | 'right' | null;
  /** Height the flag speaks of; null when it speaks of the whole. */
  readonly yMm: number | null;
  /** Place across the cloth, cloth frame, of a flag that speaks of one place inside the warp; else null. */
  readonly xMm: number | null;
  /** Ends whose bare strings it speaks of, so that they can be marked; empty when it speaks of something else. */
  readonly ends: readonly number[];
  /** Positive is out (edges) and up (heights). */
  readonly deviationMm: number;
  readonly sigmaMm: number;
  /** What was seen, in a sentence or two. */
  readonly message: BothUnits;
  /** What to do, one sentence. */
  readonly advice: string;
}

/** Colour seen in the woven cells: row by row from the bottom, yarn index or -1, ends from the left. */
export interface ColourReading {
  readonly rows: readonly (readonly number[])[];
  readonly share: number;
}

/** Everything one photograph said. */
export interface LoomReading {
  readonly status: CheckStatus;
  readonly reasons: readonly Reason[];
  readonly reference: ReferenceReading | null;
  readonly endsCounted: number | null;
  readonly ends: readonly EndReading[];
  readonly selvedge: readonly SelvedgeRow[];
  readonly ribs: readonly RibRow[];
  readonly pass: Measurement | null;
  readonly beat: readonly BeatRow[];
  readonly colours: ColourReading | null;
  readonly flags: readonly Flag[];
  readonly timingMs: Readonly<Record<string, number>>;
}

/** A kept check: the inputs and the measurements. Plans and charts are recomputed. */
export interface CheckRecord {
  readonly id: string;
  /** ISO 8601 instant at which it was kept. */
  readonly kept: string;
  /** ISO 8601 instant the photograph was taken, when its metadata says so. */
  readonly taken: string | null;
  readonly photo: {
    /** SHA-256 of the original bytes, lower-case hex. */
    readonly hash: string;
    readonly name: string;
    readonly rendered: boolean;
    /** The device, when metadata names it: lenses are remembered per camera. */
    readonly camera: string | null;
  };
  /** What the weaver marked in it; null when the loom was found without. */
  readonly marks: Marks | null;
  readonly reading: LoomReading;
  /** Flags put aside by the weaver, by index, each with her reason. */
  readonly dismissed: readonly { readonly flag: number; readonly reason: string }[];
  readonly note: string;
}
