import { describe, expect, it } from 'vitest';
import { pieceSchema } from '../../src/core/project/pieceDocument.ts';
import { familyOf, generatedPiece } from './generatedPiece.ts';

describe('generated pieces', () => {
  const pieces = Array.from({ length: 500 }, (_, seed) => generatedPiece(seed));

  it('are pieces the program would open, and the same for the same seed', () => {
    for (const [seed, piece] of pieces.entries()) {
      const parsed = pieceSchema.safeParse(piece);
      expect(parsed.error?.issues ?? [], `seed ${seed}`).toEqual([]);
    }
    expect(generatedPiece(77)).toEqual(pieces[77]);
  });

  it('cover the sorts of piece that are asked for', () => {
    const passes = pieces.map((piece) => Math.round(piece.cloth.height / piece.cloth.passHeight));
    expect(Math.max(...passes)).toBeGreaterThan(1_300);
    expect(Math.max(...pieces.map((piece) => piece.warp.ends))).toBeGreaterThan(140);
    expect(new Set(pieces.map((piece) => piece.warp.ends % 2)).size).toBe(2);
    expect(new Set(pieces.map((piece) => piece.warp.stringsPerEnd)).size).toBe(2);
    expect(new Set(pieces.flatMap((piece) => piece.shapes.map((shape) => shape.form.kind))).size).toBe(5);
    expect(new Set(pieces.flatMap((piece) => piece.shapes.map((shape) => shape.boundary))).size).toBe(4);
    expect(new Set(pieces.map((_, seed) => familyOf(seed))).size).toBe(10);
  });
});
