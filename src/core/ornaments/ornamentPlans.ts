import type { YarnExtra } from '../materials/yarnNeed.ts';
import { gramsInWords, lengthInWords, yarnLengthInWords } from '../model/lengthWords.ts';
import { countInWords } from '../model/numberWords.ts';
import type { Ornament, Piece } from '../model/piece.ts';
import type { Arithmetic } from '../model/plan.ts';
import { type ClothPoint, type Grams, grams } from '../model/units.ts';
import { linearDensity } from '../yarn/linearDensity.ts';
import { type FeltedLeaf, feltedLeaf, leafOutline } from './feltedLeaf.ts';
import { type OrnamentPlace, ornamentPlace } from './ornamentPlace.ts';
import { flowerOutline, type WrappedFlower, wrappedFlower } from './wrappedFlower.ts';

export interface OrnamentPlan {
  readonly id: string;
  readonly name: string;
  readonly count: number;
  readonly place: OrnamentPlace;
  readonly outline: readonly ClothPoint[];
  /** How it is made and how large it comes out. */
  readonly steps: readonly string[];
  readonly heldBy: string;
  readonly cautions: readonly string[];
  /** Yarn of the piece it takes, for the materials. */
  readonly extras: readonly YarnExtra[];
  /** What all of them weigh. */
  readonly grams: Grams;
  /** The part of it that is bought fibre; yarn of the piece is weighed with the cloth. */
  readonly fibre: Grams;
  readonly toBuy: readonly { readonly item: string; readonly amount: string; readonly note: string }[];
  readonly arithmetic: Arithmetic;
}

/** Between stitches along a leaf's midrib. Common practice, no source. */
const stitchEvery = 10;

/** Every ornament of a piece: where it sits, how it is made, what it takes and what holds it. */
export function ornamentPlans(piece: Piece): readonly OrnamentPlan[] {
  return piece.ornaments.map((ornament) => planOf(piece, ornament));
}

function planOf(piece: Piece, ornament: Ornament): OrnamentPlan {
  return ornament.kind === 'wrapped-flower' ? flowerPlan(piece, ornament) : leafPlan(piece, ornament);
}

function flowerPlan(piece: Piece, flower: WrappedFlower): OrnamentPlan {
  const { units } = piece;
  const figures = wrappedFlower(piece, flower);
  const outline = flowerOutline(flower, figures);
  const words = (length: number) => lengthInWords(length, units);
  const yarn = piece.yarns.find((candidate) => candidate.id === flower.yarn);
  const density = yarn === undefined ? null : linearDensity(yarn);
  const long = yarnLengthInWords(figures.yarnEach, units);
  return {
    id: flower.id,
    name: flower.name,
    count: flower.count,
    place: ornamentPlace(piece, flower.at, outline),
    outline,
    steps: [
      `On a round former of ${words(flower.formerDiameter)} with ${countInWords(flower.pegs, 'peg')}, cut ${long} of ${yarn?.name ?? 'yarn'} and leave ${words(150)} at the start.`,
      `Take it from the middle round a peg and back, ${countInWords(flower.wrapsPerPetal, 'time')} to a petal, all the way round, for ${countInWords(flower.layers, 'layer')}: ${countInWords(figures.wraps, 'wrap')}.`,
      'With a blunt needle sew round the middle, over every petal, twice. Ease it off the pegs.',
      `It is ${words(figures.diameter)} across, its petals ${words(figures.petalLength)} long and ${words(figures.petalWidth)} wide.`,
    ],
    heldBy:
      'Take both tails through to the back, one on either side of an end, tie them, and tuck them in. Never tie them round a single weft.',
    cautions: ['Winding many in a row tires the wrists: stop before they ache.'],
    extras: [
      { yarn: flower.yarn, what: `${flower.name}, ${countInWords(flower.count, 'flower')}`, metres: figures.yarn },
    ],
    grams: grams(density === null ? 0 : (figures.yarn * density.tex) / 1000),
    fibre: grams(0),
    toBuy: [],
    arithmetic: {
      title: flower.name,
      lines: [
        {
          label: 'Wraps',
          working: `${countInWords(flower.pegs, 'peg')} × ${countInWords(flower.wrapsPerPetal, 'wrap')} × ${countInWords(flower.layers, 'layer')}`,
          result: String(figures.wraps),
        },
        {
          label: 'Yarn for one',
          working: `${countInWords(figures.wraps, 'wrap')} out and back over ${words(flower.formerDiameter / 2)}, round the peg, the sewing, two tails of ${words(150)}`,
          result: long,
        },
        {
          label: 'Yarn for all',
          working: `${countInWords(flower.count, 'flower')} × ${long}`,
          result: yarnLengthInWords(figures.yarn, units),
        },
      ],
    },
  };
}

function leafPlan(piece: Piece, leaf: FeltedLeaf): OrnamentPlan {
  const { units } = piece;
  const figures = feltedLeaf(leaf);
  const outline = leafOutline(leaf);
  const words = (length: number) => lengthInWords(length, units);
  const stitches = Math.max(2, Math.round(leaf.length / stitchEvery));
  return {
    id: leaf.id,
    name: leaf.name,
    count: leaf.count,
    place: ornamentPlace(piece, leaf.at, outline),
    outline,
    steps: [
      `Lay out ${gramsInWords(figures.grams / leaf.count)} of wool fibre for each, half a hand wider than the outline, in crossing layers.`,
      `Felt it to ${lengthInWords(leaf.thickness, units, 'edge')} thick, turning it often, then cut or fold to ${words(leaf.length)} by ${words(leaf.width)} and felt the edge again.`,
    ],
    heldBy: `Sew along the middle of the leaf into the cloth, ${countInWords(stitches, 'stitch', 'stitches')} about ${words(stitchEvery)} apart, each round an end. The edges stay free.`,
    cautions: [
      'Felting needles are barbed and sharp, and break when bent or levered: push straight in and straight out, on a pad, with the other hand well clear.',
      'Look for a missing tip after every break, and keep needles away from children and animals.',
      'Loose fibre and dust irritate eyes and lungs: work where the air moves. Hot water and soap scald and slip.',
      'Cut away from the hand that holds the felt.',
      'Follow what the makers of needles, fibre and dyes say, and local rules; where hands or breathing hurt, ask someone qualified.',
    ],
    extras: [],
    grams: grams(figures.gramsEach * leaf.count),
    fibre: grams(figures.gramsEach * leaf.count),
    toBuy: [
      {
        item: `Wool fibre for ${leaf.name}`,
        amount: gramsInWords(figures.grams),
        note: 'A felting needle or two and a pad.',
      },
    ],
    arithmetic: {
      title: leaf.name,
      lines: [
        {
          label: 'Area of one',
          working: `two arcs that meet, ${words(leaf.length)} by ${words(leaf.width)}`,
          result:
            units === 'mm' ? `${(figures.area / 100).toFixed(1)} cm²` : `${(figures.area / 645.16).toFixed(2)} sq in`,
        },
        {
          label: 'Fibre',
          working: `area × ${lengthInWords(leaf.thickness, units, 'edge')} × 0.2 g/cm³ × ${leaf.count}, a tenth lost in trimming`,
          result: gramsInWords(figures.grams),
        },
      ],
    },
  };
}
