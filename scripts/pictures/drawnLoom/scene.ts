import type { Colour } from '../colour.ts';

/** A place in the cloth and a value there: piecewise straight between. */
export type Course = readonly (readonly [at: number, value: number])[];

export interface DrawnShape {
  readonly kind: 'poly' | 'circle' | 'band';
  readonly pts?: readonly (readonly [number, number])[];
  readonly c?: readonly [number, number];
  readonly r?: number;
  readonly y?: readonly [number, number];
  readonly yarn: number;
}

/** A thing lying on or over the loom, in loom mm from the middle of the bottom bar line; `z` above the strings. */
export interface LyingThing {
  readonly kind: 'hand' | 'comb' | 'butterfly' | 'scissors' | 'card' | 'stick' | 'ruler' | 'cup';
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** Direction the thing points to, radians anticlockwise from the loom's right. */
  readonly turn: number;
  readonly size: number;
  readonly colour: Colour;
}

export interface Ground {
  readonly kind:
    | 'plain'
    | 'planks'
    | 'stripes'
    | 'checks'
    | 'tiles'
    | 'carpet'
    | 'speckle'
    | 'parquet'
    | 'cloth'
    | 'dots';
  readonly colours: readonly [Colour, Colour];
  readonly size: number;
  readonly turn: number;
  readonly seed: number;
}

/** Everything the painter is told. Lengths in mm; x from the middle of the opening, y from the bottom bar line. */
export interface LoomScene {
  readonly name: string;
  readonly seed: number;
  readonly width: number;
  readonly height: number;
  readonly loom: {
    readonly pitch: number;
    readonly notches: number;
    readonly openingWidth: number;
    readonly openingHeight: number;
    readonly bar: number;
    readonly sideBar: number;
    readonly depth: number;
    /** How far the bars' faces lie below the strings' plane. */
    readonly faceBelow: number;
    readonly holds: 'teeth' | 'nails' | 'saw-cuts';
    readonly wood: readonly [Colour, Colour];
  };
  readonly warp: {
    readonly ends: number;
    readonly firstNotch: number;
    readonly strings: 1 | 2;
    readonly diameter: number;
    readonly colour: Colour;
    /** Half the distance between the two strings of an end. */
    readonly apart: number;
    /** Ends whose two strings cross on the way up. */
    readonly crossed: readonly number[];
    readonly missing: readonly number[];
    /** Ends that hang in the next end's notch to the right, while that one hangs in theirs. */
    readonly swapped: readonly number[];
    /** Ends that hang slack: their bow between the fell and the notch. */
    readonly slack: readonly { readonly end: number; readonly bow: number }[];
    /** Dots of ink on the bare strings where a shape's edge will come. */
    readonly marked: boolean;
  };
  readonly cloth: {
    readonly base: number;
    readonly height: number;
    readonly pass: number;
    readonly header: number;
    readonly headerYarn: number;
    readonly ground: number;
    readonly shapes: readonly DrawnShape[];
    readonly yarns: readonly Colour[];
    /** Passes woven on each end. */
    readonly passes: readonly number[];
    readonly parity: 0 | 1;
    readonly drawInLeft: Course;
    readonly drawInRight: Course;
    /** Ends pushed apart around a place: middle, breadth, most. */
    readonly spread: readonly [number, number, number] | null;
    /** Factor on the pass height by planned height. */
    readonly beat: Course;
    /** Rise of the fell from the left selvedge to the right. */
    readonly tilt: number;
    readonly weft: number;
    readonly hairy: number;
    readonly twining: 0 | 1 | 2;
    readonly tails: number;
    readonly cardboard: Colour | null;
  };
  readonly things: readonly LyingThing[];
  readonly ground: Ground;
  readonly gap: number;
  readonly light: {
    readonly x: number;
    readonly y: number;
    readonly strength: number;
    /** Breadth of a shadow's edge per mm of distance. */
    readonly softness: number;
    readonly cast: readonly [number, number, number];
    readonly exposure: number;
    readonly glare: readonly {
      readonly u: number;
      readonly v: number;
      readonly size: number;
      readonly strength: number;
    }[];
  };
  readonly camera: {
    readonly pitch: number;
    readonly yaw: number;
    readonly roll: number;
    /** Share of the picture the loom fills, about 1. */
    readonly fill: number;
    readonly focal: number;
    readonly targetX: number;
    readonly targetY: number;
    /** Undistorted radius = distorted radius × (1 + k1 r² + k2 r⁴), r the distorted radius in half-diagonals. */
    readonly k1: number;
    readonly k2: number;
  };
  readonly finish: {
    readonly blur: number;
    readonly noise: number;
    readonly quality: number;
    readonly vignette: number;
    /** EXIF orientation the file is written with, 1–8; the picture as displayed stays the same. */
    readonly orientation: number;
    readonly mirrored: boolean;
  };
}
