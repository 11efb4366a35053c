import { readFileSync } from 'node:fs';
import type { Piece } from '../../src/core/model/piece.ts';
import { parseBrief, pieceFromBrief } from '../../src/core/project/brief.ts';

/** The sample piece: a lantern on an ink ground. */
export function harbourLantern(): Piece {
  const text = readFileSync(new URL('../fixtures/sequence/seq1.brief.json', import.meta.url), 'utf8');
  const brief = parseBrief(JSON.parse(text));
  if (!brief.ok) throw new Error(brief.problem.sentence);
  const piece = pieceFromBrief(brief.value, '2026-03-08T09:00:00.000Z');
  const names = ['Ink wool', 'Cream wool', 'Ochre wool'];
  return {
    ...piece,
    name: 'Harbour lantern',
    yarns: piece.yarns.map((yarn, index) => ({ ...yarn, name: names[index] ?? yarn.name })),
    shapes: piece.shapes.map((shape, index) => ({ ...shape, name: ['Flame', 'Lantern'][index] ?? shape.name })),
  };
}
