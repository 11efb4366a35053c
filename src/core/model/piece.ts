import type { ClothMm, ClothPoint, Grams, Metres, Mm, Radians } from './units.ts';

/** A yarn count system: how thick a yarn is said to be. Direct systems weigh a length, indirect ones measure a weight. */
export type CountSystem =
  | 'tex'
  | 'metric-nm'
  | 'cotton-ne'
  | 'worsted-nw'
  | 'linen-lea'
  | 'woollen-run'
  | 'yards-per-pound'
  | 'metres-per-100-g';

export interface YarnCount {
  readonly system: CountSystem;
  /** The count of one strand as the system writes it. */
  readonly size: number;
  /** Strands plied together in the yarn; 1 when the count is already the whole yarn's. */
  readonly plies: number;
}

export interface Yarn {
  /** Short stable name inside the piece, for example `y1`. */
  readonly id: string;
  readonly name: string;
  /** sRGB, `#rrggbb` lower case. */
  readonly colour: string;
  readonly fibre: 'wool' | 'cotton' | 'linen' | 'silk' | 'other';
  readonly count: YarnCount | null;
  /** From the ball's label; overrides the count. */
  readonly label: { readonly metres: Metres; readonly grams: Grams } | null;
  /** Wraps laid side by side in a centimetre. */
  readonly wrapsPerCm: number | null;
  /** Measured or known diameter; overrides every estimate. */
  readonly diameter: Mm | null;
  /** Yarn-weight category 0–7; a guess, and called one. */
  readonly category: number | null;
  /** How many lengths are wound into one butterfly and woven as one. */
  readonly strands: number;
  /** Grams in one ball as sold. */
  readonly ballGrams: Grams | null;
  /**
   * Metres of weft that went into a metre of width in one pass, measured on cloth woven with this yarn and sett. Replaces
   * the model of crimp; left out or null where nothing is measured.
   */
  readonly measuredUse?: number | null;
}

export interface Loom {
  readonly name: string;
  readonly notchPitch: Mm;
  readonly notches: number;
  readonly openingWidth: Mm;
  readonly openingHeight: Mm;
  /** Height of the top and bottom bar. */
  readonly bar: Mm;
  /** Thickness front to back. */
  readonly depth: Mm;
}

export interface Warp {
  readonly ends: number;
  readonly stringsPerEnd: 1 | 2;
  readonly stringDiameter: Mm;
  /** Leftmost notch used, 0-based from the left. */
  readonly firstNotch: number;
  readonly yarnName: string;
  /** Grams per kilometre of the warp string, when known: its weight to buy needs it. */
  readonly tex: number | null;
  /** sRGB `#rrggbb`. */
  readonly colour: string;
}

/** The rest of a piece planned anew on the way: where that was, and what had been measured there. */
export interface Replanned {
  /** ISO 8601 instant. */
  readonly at: string;
  /** Passes woven by then, counted through the order of work as it was. */
  readonly passesDone: number;
  /** So many passes, from the base up, stand so high, mm. */
  readonly measured: { readonly passes: number; readonly height: number };
  /** Height of a pass the work before it was planned with. */
  readonly passHeightBefore: Mm;
}

export interface Cloth {
  /** How far the top of the twining lies above the bottom bar's inner edge. */
  readonly baseAboveBottomBar: Mm;
  readonly height: Mm;
  /** Planned or measured height of one pass. */
  readonly passHeight: Mm;
  readonly passHeightSource: 'planned' | 'measured';
  readonly headerPasses: number;
  readonly footerPasses: number;
  readonly headerYarn: string;
  readonly ground: string;
  /** Earliest first; left out where nothing was planned anew. What was woven by then keeps the plan it was woven by. */
  readonly replans?: readonly Replanned[];
}

export type PathCommand =
  | { readonly to: 'move'; readonly x: number; readonly y: number }
  | { readonly to: 'line'; readonly x: number; readonly y: number }
  | {
      readonly to: 'cubic';
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
      readonly x: number;
      readonly y: number;
    }
  | { readonly to: 'close' };

/** What a shape is, in cloth millimetres. */
export type ShapeForm =
  | { readonly kind: 'polygon'; readonly points: readonly ClothPoint[] }
  | { readonly kind: 'ellipse'; readonly centre: ClothPoint; readonly radiusX: Mm; readonly radiusY: Mm }
  | { readonly kind: 'band'; readonly from: ClothMm; readonly to: ClothMm }
  /** A doorway: straight sides up to the springing line, then half an ellipse. */
  | {
      readonly kind: 'arch';
      readonly base: ClothPoint;
      readonly width: Mm;
      readonly springing: Mm;
      readonly rise: Mm;
    }
  /** Freehand, lettering, imported drawing or traced picture: closed subpaths in cloth mm. */
  | {
      readonly kind: 'path';
      readonly commands: readonly PathCommand[];
      readonly fillRule: 'nonzero' | 'evenodd';
      readonly origin: 'freehand' | 'lettering' | 'drawing' | 'traced';
    };

/** How two neighbouring areas are held together where they meet. */
export type Boundary = 'slit' | 'shared-end' | 'interlocked' | 'dovetailed';

export interface Shape {
  readonly id: string;
  readonly name: string;
  readonly yarn: string;
  readonly form: ShapeForm;
  /** Turned about the middle of its own box, anticlockwise. */
  readonly rotation: Radians;
  /** A second, mirrored copy about this upright line. */
  readonly mirrorAbout: ClothMm | null;
  /** Copies beyond the first, each moved by this much. */
  readonly repeat: { readonly copies: number; readonly dx: Mm; readonly dy: Mm } | null;
  readonly boundary: Boundary;
  /** Allow edges to move by a single pass where the sheds allow it. */
  readonly singlePass: boolean;
  readonly hidden: boolean;
  readonly locked: boolean;
}

/** Applied pieces: made apart and fastened on afterwards. */
export type Ornament =
  | {
      readonly id: string;
      readonly kind: 'wrapped-flower';
      readonly name: string;
      readonly at: ClothPoint;
      readonly yarn: string;
      /** Round peg former. */
      readonly pegs: number;
      readonly formerDiameter: Mm;
      readonly wrapsPerPetal: number;
      readonly layers: number;
      readonly count: number;
    }
  | {
      readonly id: string;
      readonly kind: 'felted-leaf';
      readonly name: string;
      readonly at: ClothPoint;
      readonly colour: string;
      readonly length: Mm;
      readonly width: Mm;
      readonly thickness: Mm;
      readonly rotation: Radians;
      readonly count: number;
    };

export interface Making {
  /** Hand-wound working length; three arm lengths unless changed. */
  readonly workingLength: Metres;
  readonly tail: Mm;
  readonly fringe: Mm;
  /** Share added to every yarn, 0.05 for 5 %. */
  readonly spare: number;
  /** Passes in a minute at the weaver's own pace. */
  readonly passesPerMinute: number;
  /** Tallest hill woven with nothing beside it. */
  readonly hillLimit: Mm;
  /** A slit longer than this is spoken of. */
  readonly slitLimit: Mm;
  /** Deviation the weaver doesn't mind. */
  readonly allowance: Mm;
  /** Bow the dowel may show in its middle. */
  readonly dowelSag: Mm;
}

export interface Note {
  readonly id: string;
  /** ISO 8601 instant. */
  readonly at: string;
  readonly kind: 'planned' | 'warped' | 'woven' | 'finished' | 'note';
  readonly text: string;
}

/** Everything a weaver decides about one piece. Charts, schedules and figures are computed from it, never stored. */
export interface Piece {
  readonly name: string;
  /** ISO 8601 instants. */
  readonly created: string;
  readonly changed: string;
  readonly units: 'mm' | 'in';
  readonly loom: Loom;
  readonly warp: Warp;
  readonly cloth: Cloth;
  readonly yarns: readonly Yarn[];
  /** Topmost first: the first that contains a cell's middle gives its yarn; else the ground. */
  readonly shapes: readonly Shape[];
  readonly ornaments: readonly Ornament[];
  readonly making: Making;
  readonly notes: readonly Note[];
}
