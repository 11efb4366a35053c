import { labOfYarns, nearestYarn } from '../../colour/nearestYarn.ts';
import { srgbFromHex } from '../../colour/srgb.ts';
import type { Affine } from '../../geometry/affine.ts';
import { type Box, unionOfBoxes } from '../../geometry/box.ts';
import { commandsBox } from '../../geometry/commandsBox.ts';
import { flattenSubpaths } from '../../geometry/flattenCommands.ts';
import { lineOutline } from '../../geometry/lineOutline.ts';
import { mapCommands } from '../../geometry/mapCommands.ts';
import { failure, type Outcome, success } from '../../model/outcome.ts';
import type { PathCommand, Shape } from '../../model/piece.ts';
import { FLATNESS_MM } from '../formRings.ts';
import { freeName, plainShape } from '../newShape.ts';
import { AreaCollector, type DrawnArea } from './collectAreas.ts';
import type { LeftOut } from './drawingNode.ts';
import { drawingLimits, LimitMet } from './limits.ts';
import { type ReadTag, readNodes } from './readNodes.ts';

/** A colour of the drawing and the yarn it was taken for: a guess the weaver can change. */
export interface ColourGuess {
  readonly colour: string;
  /** Yarn id. */
  readonly yarn: string;
  /** CIEDE2000; about 1 is just noticeable, above 20 is another colour altogether. */
  readonly difference: number;
  readonly shapes: number;
}

export interface ImportedDrawing {
  /** Topmost first, as a piece keeps them. */
  readonly shapes: readonly Shape[];
  readonly guesses: readonly ColourGuess[];
  /** What was left out or changed, a sentence each. */
  readonly told: readonly string[];
}

export interface ImportInto {
  /** Where the drawing goes, cloth mm; it is kept in proportion and centred. */
  readonly box: Box;
  readonly yarns: readonly { readonly id: string; readonly colour: string }[];
  /** Name of an area the drawing has no name for; its number follows. */
  readonly areaName: string;
  /** Beginning of every new shape's id. */
  readonly idPrefix: string;
  /** Areas narrower or lower than this, mm, are left out. */
  readonly smallest: number;
}

export type ImportTag = ReadTag | 'drawing-empty';

const sentences: Record<LeftOut, string> = {
  script: 'Scripts in the drawing were left out; nothing in it was run.',
  entity: 'Words the drawing defines for itself (entities) were left out.',
  image: 'Pictures inside the drawing were left out; trace them as a picture instead.',
  foreign: 'Pages and media inside the drawing were left out.',
  text: 'Lettering in the drawing was left out; turn it into paths, or write it here.',
  reference: 'Parts kept in other files were left out; nothing was fetched.',
  animation: 'Movement in the drawing was left out.',
  gradient: 'Shaded colours were taken as one colour, their mean.',
  pattern: 'Areas filled with a pattern were left out.',
  clip: 'Clipping, masks and filters were passed over; areas may be larger than they looked.',
  numbers: 'Areas with sizes that make no sense were left out.',
  page: "A page without size was passed over; what's drawn was fitted instead.",
  reuse: 'Parts reused inside themselves were followed only eight deep.',
  'thin-line': 'Lines too thin to weave were left out.',
  small: 'Areas too small to weave were left out.',
  'unfinished-path': 'A path that breaks off was kept up to where it breaks.',
  style: 'Some style rules were passed over; check the colours.',
};

interface Placed {
  readonly commands: readonly PathCommand[];
  readonly fillRule: 'nonzero' | 'evenodd';
  readonly colour: string;
  readonly label: string | null;
  readonly size: number;
}

/** The box of what an area paints, half a drawn line's width further out on every side. */
function paintedBox(area: Pick<DrawnArea, 'commands' | 'lineWidth'>): Box | null {
  const box = commandsBox(area.commands);
  const half = (area.lineWidth ?? 0) / 2;
  return box && { left: box.left - half, right: box.right + half, bottom: box.bottom - half, top: box.top + half };
}

/** From the drawing, y down, into the cloth's box, y up: one size both ways, centred. */
function fitMap(drawn: Box, into: Box): Affine | null {
  const width = drawn.right - drawn.left;
  const height = drawn.top - drawn.bottom;
  const scale = Math.min((into.right - into.left) / width, (into.top - into.bottom) / height);
  if (!Number.isFinite(scale) || scale <= 0) return null;
  return [
    scale,
    0,
    0,
    -scale,
    (into.left + into.right) / 2 - (scale * (drawn.left + drawn.right)) / 2,
    (into.bottom + into.top) / 2 + (scale * (drawn.bottom + drawn.top)) / 2,
  ];
}

function placeAreas(areas: readonly DrawnArea[], map: Affine, smallest: number, leftOut: Set<LeftOut>): Placed[] {
  const scale = map[0];
  let pointsLeft: number = drawingLimits.linePoints;
  const placed: Placed[] = [];
  for (const area of areas) {
    let commands = mapCommands(map, area.commands);
    if (area.lineWidth !== null) {
      if (area.lineWidth * scale < smallest) {
        leftOut.add('thin-line');
        continue;
      }
      // A line's own width hides far more than a filled edge would show, so it may be followed more loosely.
      const outline = lineOutline(flattenSubpaths(commands, 5 * FLATNESS_MM), area.lineWidth * scale, pointsLeft);
      if (outline === null) throw new LimitMet('linePoints');
      pointsLeft -= outline.length;
      commands = outline;
    }
    const box = commandsBox(commands);
    if (box === null || box.right - box.left < smallest || box.top - box.bottom < smallest) {
      leftOut.add('small');
      continue;
    }
    const { fillRule, colour, label } = area;
    placed.push({ commands, fillRule, colour, label, size: (box.right - box.left) * (box.top - box.bottom) });
  }
  if (placed.length <= drawingLimits.shapes) return placed;
  leftOut.add('small');
  const least = placed.map((area) => area.size).sort((one, other) => other - one)[drawingLimits.shapes - 1]!;
  return placed.filter((area) => area.size >= least).slice(0, drawingLimits.shapes);
}

/**
 * Reads an SVG drawing into shapes on the cloth. Filled areas and lines of some width become paths; every colour is
 * taken for the yarn that looks nearest (CIEDE2000), and said. Nothing in the file is run or fetched, and counted
 * limits bound the time and memory any file can take.
 * @param text the file as text.
 */
export function importDrawing(text: string, into: ImportInto): Outcome<ImportedDrawing, ImportTag> {
  const read = readNodes(text);
  if (!read.ok) return read;
  const { root, leftOut } = read.value;
  try {
    const collector = new AreaCollector(root, leftOut);
    collector.collect();
    const drawn = unionOfBoxes(collector.areas.flatMap((area) => paintedBox(area) ?? []));
    const map = drawn === null ? null : fitMap(drawn, into.box);
    const placed = map === null ? [] : placeAreas(collector.areas, map, into.smallest, leftOut);
    const told = [...leftOut].sort().map((what) => sentences[what]);
    if (placed.length === 0) {
      return failure(
        'drawing-empty',
        `The drawing holds no filled area that can be woven.${told.length > 0 ? ` ${told.join(' ')}` : ''}`,
        'Fill the areas with a colour in a drawing program, or trace a picture of it.',
      );
    }
    return success({ ...nameAndMatch(placed, into), told });
  } catch (thrown) {
    if (!(thrown instanceof LimitMet)) throw thrown;
    return failure(
      'drawing-too-large',
      'The drawing has more parts and points than can be woven.',
      'Simplify it in a drawing program, or trace a picture of it.',
      thrown.what,
    );
  }
}

/** Shapes with names and yarns, topmost first. */
function nameAndMatch(placed: readonly Placed[], into: ImportInto): Pick<ImportedDrawing, 'shapes' | 'guesses'> {
  const yarns = labOfYarns(into.yarns);
  const guesses = new Map<string, ColourGuess>();
  const taken = new Set<string>();
  const shapes = placed.map((area, at) => {
    const known = guesses.get(area.colour);
    const match = known ?? { ...nearest(area.colour, yarns, into), colour: area.colour, shapes: 0 };
    guesses.set(area.colour, { ...match, shapes: match.shapes + 1 });
    const words = (area.label ?? '')
      .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
      .trim()
      .slice(0, 40);
    const wanted = /\p{L}/u.test(words) ? words : `${into.areaName} ${at + 1}`;
    const name = freeName(wanted, taken.has(wanted) ? [...taken] : []);
    taken.add(name);
    const { commands, fillRule } = area;
    return plainShape(`${into.idPrefix}${at + 1}`, name, match.yarn, {
      kind: 'path',
      commands,
      fillRule,
      origin: 'drawing',
    });
  });
  return { shapes: shapes.reverse(), guesses: [...guesses.values()] };
}

function nearest(colour: string, yarns: ReturnType<typeof labOfYarns>, into: ImportInto) {
  const match = nearestYarn(srgbFromHex(colour) ?? { red: 0, green: 0, blue: 0 }, yarns);
  return { yarn: into.yarns[match.yarn]!.id, difference: match.difference };
}
