import { describe, expect, it } from 'vitest';
import { weavingWork } from '../../src/core/plan/weavingWork.ts';
import { generatedPiece } from '../virtual-weaver/generatedPiece.ts';

describe('a fresh weft in an area that goes on', () => {
  it('is said to be one, and from which side it begins with a single pass', () => {
    let forced = 0;
    for (let seed = 0; seed < 100; seed++) {
      const { stepped, wefts, blocks } = weavingWork(generatedPiece(seed));
      const { ends } = stepped.chart;
      for (const { label, rows } of wefts.wefts) {
        const first = rows[0]!;
        if (first.pass === 0) continue;
        const under = Array.from({ length: first.high - first.low + 1 }, (_, at) => first.low + at)
          .map((end) => (first.pass - 1) * ends + end)
          .filter((cell) => stepped.labels[cell] === label)
          .map((cell) => wefts.wefts[wefts.ofCell[cell]!]!);
        const allEnd = under.length > 0 && under.every((weft) => weft.rows.at(-1)!.pass < first.pass);
        const block = blocks.find(
          ({ rows: own }) => own[0]!.pass === first.pass && Math.min(own[0]!.from, own[0]!.to) === first.low,
        )!;
        const said = block.remarks.find((remark) => remark.startsWith('A fresh weft in the same area'));
        if (!allEnd) {
          expect(said).toBeUndefined();
          continue;
        }
        forced++;
        expect(said).toContain(`It begins with a single pass, from the ${block.start.side}.`);
        // Half a turn at the edge where it begins: that is the single pass.
        expect(block[block.start.side][0]!.turns).toBe(0.5);
        expect(block.continues).toBeNull();
      }
    }
    expect(forced).toBeGreaterThan(20);
  });
});
