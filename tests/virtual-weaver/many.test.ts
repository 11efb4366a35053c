import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import type { Piece } from '../../src/core/model/piece.ts';
import { parseBrief, pieceFromBrief } from '../../src/core/project/brief.ts';
import { pieceSchema } from '../../src/core/project/pieceDocument.ts';
import { allFaults } from './faults.ts';
import { familyOf, generatedPiece } from './generatedPiece.ts';
import { type WeaverPlan, weaverPlanSchema } from './planDocument.ts';
import { weavePiece } from './weavePiece.ts';
import { weavePlan } from './weavePlan.ts';

/** How many generated pieces to weave; `WEAVE_PIECES=2000` weaves as many as the bar asks for. */
const pieces = Number(process.env.WEAVE_PIECES ?? 300);
const perFamily = 10;

function fixtureBriefs(): { name: string; piece: Piece }[] {
  return ['photos', 'sequence'].flatMap((folder) => {
    const path = join(import.meta.dirname, '../fixtures', folder);
    return readdirSync(path)
      .filter((file) => file.endsWith('.brief.json'))
      .map((file) => {
        const brief = parseBrief(JSON.parse(readFileSync(join(path, file), 'utf8')));
        if (!brief.ok) throw new Error(`${file}: ${brief.problem.sentence}`);
        return { name: file, piece: pieceFromBrief(brief.value, '2026-11-25T09:00:00.000Z') };
      });
  });
}

/** The sample the program opens with; it is read for its body only. */
function samplePiece(): Piece {
  const file = join(import.meta.dirname, '../../resources/sample/piece/piece.json');
  const saved: unknown = JSON.parse(readFileSync(file, 'utf8'));
  return z.object({ body: pieceSchema }).parse(saved).body;
}

describe('the planner’s plans on the virtual loom', () => {
  it(`weaves ${pieces} generated pieces with no refusal and no cell out of place`, {
    timeout: 60_000 + pieces * 1_000,
  }, () => {
    const troubles: string[] = [];
    for (let seed = 0; seed < pieces; seed += 1) {
      const { trouble } = weavePiece(generatedPiece(seed));
      if (trouble !== null) troubles.push(`seed ${seed}, ${familyOf(seed)}: ${trouble}`);
    }
    expect(troubles).toEqual([]);
  });

  for (const { name, piece } of fixtureBriefs()) {
    it(`weaves the piece of ${name}`, () => {
      expect(weavePiece(piece).trouble).toBeNull();
    });
  }

  it('weaves the sample piece', () => {
    expect(weavePiece(samplePiece()).trouble).toBeNull();
  });

  it('gives the same bytes for the same piece', () => {
    for (let seed = 0; seed < 20; seed += 1) {
      const piece = generatedPiece(seed);
      expect(JSON.stringify(weavePiece(piece).document)).toBe(
        JSON.stringify(weavePiece(structuredClone(piece)).document),
      );
    }
  });
});

describe('faults put into printed plans', () => {
  const plans: WeaverPlan[] = Array.from({ length: 10 * perFamily }, (_, seed) =>
    weaverPlanSchema.parse(weavePiece(generatedPiece(seed)).document),
  );
  for (const [name, fault] of Object.entries(allFaults)) {
    // A sequence is printed only where wefts rise together; the hand-written pair covers it.
    const faulty = plans.flatMap((plan, seed) => {
      const wrong = fault(plan);
      return wrong === null ? [] : [{ seed, wrong }];
    });
    if (name === 'sequenceSwapped' && faulty.length === 0) continue;
    it(`catches ${name} wherever it can be put in`, () => {
      expect(faulty.length).toBeGreaterThan(0);
      const missed = faulty.filter(({ wrong }) => {
        const report = weavePlan(wrong);
        return report.refusal === null && report.mismatches.length === 0;
      });
      expect(missed.map(({ seed }) => seed)).toEqual([]);
    });
  }
});
