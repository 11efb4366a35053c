import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { measurement } from '../../src/core/model/measurement.ts';
import { parseBrief, pieceFromBrief } from '../../src/core/project/brief.ts';
import { shortOfFirstBars } from '../../src/core/report/accuracyBars.ts';
import { scorePhoto } from '../../src/core/report/accuracyScore.ts';
import { parseTruth, type Truth } from '../../src/core/report/accuracyTruth.ts';
import { type CheckJson, checkJson } from '../../src/core/report/checkJson.ts';
import { plannedSelvedges } from '../../src/core/warp/plannedSelvedges.ts';

const photos = join(import.meta.dirname, '../fixtures/photos');
const names = readdirSync(photos).flatMap((file) =>
  file.endsWith('.brief.json') ? [file.replace('.brief.json', '')] : [],
);
const json = (name: string, kind: string): unknown =>
  JSON.parse(readFileSync(join(photos, `${name}.${kind}.json`), 'utf8'));

/** What a program would say that never looks at the photograph: everything where the brief has it. */
function echo(name: string): CheckJson {
  const brief = parseBrief(json(name, 'brief'));
  if (!brief.ok) throw new Error(name);
  const piece = pieceFromBrief(brief.value, '2026-01-01T00:00:00Z');
  const edges = plannedSelvedges(piece);
  const { ends } = piece.warp;
  const top = piece.cloth.height;
  return checkJson(`${name}.jpg`, {
    status: 'measured',
    reasons: [],
    reference: null,
    endsCounted: ends,
    ends: Array.from({ length: ends }, (_, index) => {
      const x = measurement((index - (ends - 1) / 2) * piece.loom.notchPitch, 0.2, 1, 'brief');
      const fell = measurement(top, 0.4, 1, 'brief');
      return { index, seen: true, why: null, notchX: x, fell, xAtFell: x, bow: null, runsTo: index };
    }),
    selvedge: Array.from({ length: Math.floor(top / 2) }, (_, k) => ({
      y: 1 + 2 * k,
      left: measurement(edges.left, 0.25, 1, 'brief'),
      right: measurement(edges.right, 0.25, 1, 'brief'),
    })),
    ribs: [],
    pass: measurement(piece.cloth.passHeight, 0.005, 1, 'brief'),
    beat: [],
    colours: null,
    flags: [],
    timingMs: {},
  });
}

/** What a perfect program would say. */
function perfect(truth: Truth): CheckJson {
  return checkJson('x', {
    status: 'measured',
    reasons: [],
    reference: null,
    endsCounted: truth.ends.filter((end) => !end.missing).length,
    ends: truth.ends.map((end) => ({
      index: end.index,
      seen: end.fell_mm !== null,
      why: null,
      notchX: measurement(end.notch_x_mm, 0.1, 1, 'truth'),
      fell: end.fell_mm === null ? null : measurement(end.fell_mm, 0.1, 1, 'truth'),
      xAtFell: end.x_at_fell_mm === null ? null : measurement(end.x_at_fell_mm, 0.1, 1, 'truth'),
      bow: null,
      runsTo: end.index,
    })),
    selvedge: truth.selvedge.map((row) => ({
      y: row.y_mm,
      left: row.left_mm === null ? null : measurement(row.left_mm, 0.1, 1, 'truth'),
      right: row.right_mm === null ? null : measurement(row.right_mm, 0.1, 1, 'truth'),
    })),
    ribs: [],
    pass: null,
    beat: [],
    colours: null,
    flags: [],
    timingMs: {},
  });
}

describe('scoring against truth', () => {
  it('a program that echoes the brief fails on every photograph', () => {
    expect(names.length).toBe(10);
    for (const name of names) {
      const score = scorePhoto(name, echo(name), parseTruth(json(name, 'truth'))!);
      expect(shortOfFirstBars(score), name).not.toEqual([]);
      expect(score.wrong, name).toBe(true);
    }
  });

  it('a program that echoes the brief misses every draw-in of 3 mm', () => {
    const missed = names.flatMap((name) => scorePhoto(name, echo(name), parseTruth(json(name, 'truth'))!).flagsMissed);
    expect(missed.length).toBeGreaterThan(4);
  });

  it('the truth itself passes', () => {
    for (const name of names) {
      const truth = parseTruth(json(name, 'truth'))!;
      expect(shortOfFirstBars(scorePhoto(name, perfect(truth), truth)), name).toEqual([]);
    }
  });

  it('one selvedge reading 1.6 mm off with a small sigma makes a photograph wrong', () => {
    const truth = parseTruth(json('dev02', 'truth'))!;
    const check = perfect(truth);
    const selvedge = check.selvedge.map((row, k) => (k === 5 ? { ...row, left_mm: row.left_mm! + 1.6 } : row));
    expect(scorePhoto('dev02', { ...check, selvedge }, truth).wrong).toBe(true);
    const wide = selvedge.map((row) => ({ ...row, left_sigma_mm: 0.6 }));
    expect(scorePhoto('dev02', { ...check, selvedge: wide }, truth).wrong).toBe(false);
  });
});
