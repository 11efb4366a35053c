import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { plainShape } from '../../src/core/cartoon/newShape.ts';
import { importDrawing } from '../../src/core/cartoon/svg/importDrawing.ts';
import { tracePicture } from '../../src/core/cartoon/trace/tracePicture.ts';
import type { Boundary, Piece, Shape } from '../../src/core/model/piece.ts';
import { planJson } from '../../src/core/report/planJson.ts';
import { letteringCommands } from '../../src/main/typefaces/lettering.ts';
import { type BriefPiece, briefFamilyOf, briefPiece } from './briefPieces.ts';
import { fromNearestSide, LINES_A_PASS, levelCells, shownOf } from './drawnTruth.ts';
import { SeededRandom } from './seededRandom.ts';
import { weavePiece } from './weavePiece.ts';

/** How many pieces of strangers to weave; `WEAVE_STRANGERS=1000` weaves more. */
const pieces = Number(process.env.WEAVE_STRANGERS ?? 60);

const planSchema = z.object({
  chart: z.object({ ends: z.number(), rows: z.array(z.array(z.tuple([z.number(), z.number()]))) }),
  areas: z.array(z.object({ woven_mm2: z.number() })),
  edges: z.array(z.object({ excess_mm: z.number() })),
});

/** Boundaries of the chart further than half an end from any side drawn within a turn; headers left out. */
function strayed(brief: BriefPiece, rows: z.infer<typeof planSchema>['chart']['rows']): string[] {
  const found: string[] = [];
  for (const [pass, runs] of rows.entries()) {
    if (pass < brief.header) continue;
    let end = 0;
    for (const [, count] of runs.slice(0, -1)) {
      end += count;
      const far = fromNearestSide(brief, (end - brief.ends / 2) * brief.pitch, (pass + 0.5) * brief.passHeight);
      if (far > 0.501 * brief.pitch) found.push(`pass ${pass}, left of end ${end}: ${far / brief.pitch} ends`);
    }
  }
  return found;
}

describe('flat descriptions written by strangers', () => {
  it(`are woven as planned, ${pieces} of them, whatever holds their areas together`, {
    timeout: pieces * 2_000,
  }, () => {
    const troubles: string[] = [];
    for (let seed = 0; seed < pieces; seed += 1) {
      const { piece } = briefPiece(seed);
      const random = new SeededRandom(seed);
      const boundaries: readonly Boundary[] = ['slit', 'shared-end', 'interlocked', 'dovetailed'];
      const linked = piece.shapes.map((shape) => ({
        ...shape,
        boundary: random.pick(boundaries),
        singlePass: random.chance(0.2),
      }));
      for (const shapes of [piece.shapes, linked]) {
        const { trouble } = weavePiece({ ...piece, shapes });
        if (trouble !== null) troubles.push(`seed ${seed}, ${briefFamilyOf(seed)}: ${trouble}`);
      }
    }
    expect(troubles).toEqual([]);
  });

  it('keep their edges to half an end within a turn and their areas to 1 % or a cell for each row with an edge', {
    timeout: pieces * 2_000,
  }, () => {
    const wrong: string[] = [];
    for (let seed = 0; seed < pieces; seed += 1) {
      const brief = briefPiece(seed);
      if (brief.ends * brief.passes > 40_000) continue;
      const plan = planSchema.parse(JSON.parse(planJson(brief.piece)));
      const name = `seed ${seed}, ${briefFamilyOf(seed)}`;
      wrong.push(...strayed(brief, plan.chart.rows).map((words) => `${name}: ${words}`));
      if (plan.edges.some((edge) => edge.excess_mm > 0)) wrong.push(`${name}: an edge is said to stray`);
      const shown = shownOf(brief);
      brief.shapes.forEach((shape, index) => {
        const { drawn, middles, rows } = shown[index]!;
        const woven = plan.areas[index]!.woven_mm2 / (brief.pitch * brief.passHeight);
        // How much of a pass lies beyond a level side is known here to the nearest level line.
        const grain = levelCells(brief, shape) / LINES_A_PASS;
        const allowed = Math.max(0.01 * drawn, rows) + grain;
        // A level side lies on a whole pass and an upright one between two ends, which may be too far off already.
        const canBe = middles.every((cells) => Math.abs(cells - drawn) <= allowed - 2 * grain);
        if (canBe && Math.abs(woven - drawn) > allowed)
          wrong.push(`${name}, shape ${index}: ${drawn} drawn, ${woven} woven`);
      });
    }
    expect(wrong).toEqual([]);
  });
});

describe('cartoons from elsewhere', () => {
  const base = (seed: number): Piece => {
    const { piece } = briefPiece(6 + 41 * 10 * seed);
    return {
      ...piece,
      warp: { ...piece.warp, ends: 61 - (seed % 2) },
      loom: { ...piece.loom, notches: 80 },
      cloth: { ...piece.cloth, height: piece.cloth.passHeight * 201 } as Piece['cloth'],
      yarns: briefPiece(0).piece.yarns,
    };
  };
  const sheet = (piece: Piece) => ({
    left: (-piece.warp.ends * piece.loom.notchPitch) / 2,
    right: (piece.warp.ends * piece.loom.notchPitch) / 2,
    bottom: 0,
    top: piece.cloth.height,
  });
  const woven = (piece: Piece, shapes: readonly Shape[]) => {
    expect(shapes.length).toBeGreaterThan(0);
    for (const boundary of ['slit', 'shared-end', 'dovetailed'] as const) {
      expect(weavePiece({ ...piece, shapes: shapes.map((shape) => ({ ...shape, boundary })) }).trouble).toBeNull();
    }
  };

  it('are woven when they are letters', () => {
    for (const [seed, text] of ['WAR&P', 'Ösé', '8g%@'].entries()) {
      const piece = base(seed);
      const made = letteringCommands(text, 'strong', piece.cloth.height / 3);
      if (!made.ok) throw new Error(made.problem.sentence);
      const { left, top } = sheet(piece);
      const commands = made.value.commands.map((command) => {
        const by = { x: left * 0.9, y: top / 3 };
        if (command.to === 'close') return command;
        const moved = { ...command, x: command.x + by.x, y: command.y + by.y };
        return moved.to === 'cubic'
          ? { ...moved, x1: moved.x1 + by.x, y1: moved.y1 + by.y, x2: moved.x2 + by.x, y2: moved.y2 + by.y }
          : moved;
      });
      const form = { kind: 'path', commands, fillRule: 'nonzero', origin: 'lettering' } as const;
      woven(piece, [plainShape('t', text, piece.yarns[1]!.id, form)]);
    }
  });

  it('are woven when they are drawings', () => {
    const drawing = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100">
      <g transform="rotate(12 50 50)"><path d="M10 10h60v60h-60z M30 30v20h20v-20z" fill="#2f7f86" fill-rule="evenodd"/>
      <circle cx="70" cy="60" r="25" fill="#8a5a3c"/><path d="M5 90 C 30 40, 60 140, 95 80 L 95 95 Z" fill="#8a5a3c"/></g>
      </svg>`;
    for (const seed of [0, 1]) {
      const piece = base(seed);
      const read = importDrawing(drawing, {
        box: sheet(piece),
        yarns: piece.yarns,
        idPrefix: 'd',
        smallest: 1,
        areaName: 'Area',
      });
      if (!read.ok) throw new Error(read.problem.sentence);
      woven(piece, read.value.shapes);
    }
  });

  it('are woven when they are traced from a picture', () => {
    for (const seed of [0, 1]) {
      const piece = base(seed);
      const [width, height] = [80, 120];
      const rgb = new Uint8Array(width * height * 3);
      const colours = piece.yarns.map(({ colour }) =>
        [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16)),
      );
      for (let at = 0; at < width * height; at += 1) {
        const [x, y] = [at % width, Math.floor(at / width)];
        const wave = Math.sin(x / 9) + Math.cos(y / 13) + Math.sin((x + y) / 21);
        rgb.set(colours[Math.abs(Math.round(wave)) % colours.length]!, 3 * at);
      }
      const into = { box: sheet(piece), yarns: piece.yarns, ground: piece.cloth.ground, smallest: 10, tolerance: 1 };
      const traced = tracePicture({ width, height, rgb }, { ...into, idPrefix: 't' });
      if (!traced.ok) throw new Error(traced.problem.sentence);
      woven(piece, traced.value.shapes);
    }
  });
});
