import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { CheckRecord } from '../../src/core/model/check.ts';
import type { Piece } from '../../src/core/model/piece.ts';
import { parseBrief, pieceFromBrief } from '../../src/core/project/brief.ts';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { createPiece } from '../../src/main/store/createPiece.ts';

// A bundled copy of this file lies elsewhere and is told where the project is.
export const projectRoot = process.env.PLUMBWEFT_PROJECT ?? resolve(import.meta.dirname, '../..');
export const fixture = (path: string): string => join(projectRoot, 'tests/fixtures', path);

const NOW = '2026-11-25T09:00:00.000Z';

/** The lantern of the rendered sequence. */
export function lantern(name = 'Harbour lantern'): Piece {
  const brief = parseBrief(JSON.parse(readFileSync(fixture('sequence/seq1.brief.json'), 'utf8')));
  if (!brief.ok) throw new Error(brief.problem.sentence);
  return { ...pieceFromBrief(brief.value, NOW), name };
}

export async function lanternFolder(folder: string): Promise<Piece> {
  const piece = lantern();
  const made = await createPiece(realStorePorts(), folder, piece);
  if (!made.ok) throw new Error(made.problem.sentence);
  return piece;
}

/** A check whose figures are made up for the store's sake; no test of measuring uses it. */
export const someCheck = (id: string, hash: string): CheckRecord => ({
  id,
  kept: NOW,
  taken: null,
  photo: { hash, name: 'loom.jpg', rendered: false, camera: null },
  marks: null,
  reading: {
    status: 'measured',
    reasons: [],
    reference: null,
    endsCounted: 33,
    ends: [
      {
        index: 0,
        seen: true,
        why: null,
        notchX: { value: -101.6, sigma: 0.05, n: 40, source: 'notch' },
        fell: { value: 61.2, sigma: 0.3, n: 12, source: 'fell change point' },
        xAtFell: null,
        bow: null,
        runsTo: null,
      },
    ],
    selvedge: [
      {
        y: 40,
        left: { value: -104.1, sigma: 0.2, n: 9, source: 'selvedge profile' },
        right: { value: 101.3, sigma: 0.2, n: 9, source: 'selvedge profile' },
      },
    ],
    ribs: [],
    pass: { value: 1.06, sigma: 0.01, n: 30, source: 'rib period' },
    beat: [],
    colours: null,
    flags: [
      {
        kind: 'draw-in',
        side: 'right',
        yMm: 40,
        xMm: null,
        ends: [],
        deviationMm: -3.1,
        sigmaMm: 0.4,
        message: { mm: 'Right edge drawing in since 60 mm up.', in: 'Right edge drawing in since 2 ⅜ in up.' },
        advice: 'Leave the weft slacker at the right for the next 6 turns.',
      },
    ],
    timingMs: {},
  },
  dismissed: [],
  note: '',
});
