import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compareReading } from '../../src/core/compare/compareReading.ts';
import type { LoomReading } from '../../src/core/model/check.ts';
import { measureCloth } from '../../src/core/photo/measureCloth.ts';
import { loomReadingSchema } from '../../src/core/project/checkDocument.ts';
import { shortOfFirstBars } from '../../src/core/report/accuracyBars.ts';
import { scorePhoto, summarise } from '../../src/core/report/accuracyScore.ts';
import { parseTruth } from '../../src/core/report/accuracyTruth.ts';
import { checkJson } from '../../src/core/report/checkJson.ts';
import { renderedPhoto } from '../support/truePose.ts';

const photos = join(import.meta.dirname, '../fixtures/photos');

describe('reading the cloth of rendered photographs whose loom is located as the renderer knows it', () => {
  // White weft on white warp with a V; cloth drawn in on both sides; three whites on a pale wall.
  for (const name of ['dev02', 'dev04', 'dev08']) {
    it(`${name}: selvedges, fell, pass height and colours come near the truth`, { timeout: 240_000 }, async () => {
      const { photo, piece, truth, located } = await renderedPhoto(photos, name);
      const { cloth } = measureCloth(photo, piece, located);
      const reading: LoomReading = {
        status: 'measured',
        reasons: [],
        reference: located.pose.reference,
        endsCounted: located.endsCounted,
        ...cloth,
        flags: [],
        timingMs: {},
      };
      const check = checkJson(`${name}.jpg`, { ...reading, flags: compareReading(reading, piece).flags });
      // What is measured can be kept as it is.
      expect(loomReadingSchema.safeParse(reading).success).toBe(true);
      const score = scorePhoto(name, check, parseTruth(truth)!);
      expect(shortOfFirstBars(score)).toEqual([]);
      expect(summarise([score.selvedge]).middle).toBeLessThan(0.25);
      expect(summarise([score.fell]).middle).toBeLessThan(0.3);
      expect(Math.abs(score.passError!)).toBeLessThan(0.012);
      expect(score.cells!.right / score.cells!.seen).toBeGreaterThan(0.94);
      expect(score.flagsMissed).toEqual([]);
      expect(score.flagsFalse).toEqual([]);
    });
  }
});
