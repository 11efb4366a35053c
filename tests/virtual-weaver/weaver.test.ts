import { describe, expect, it } from 'vitest';
import { allFaults, oneTurnMissing, oneTurnMissingAtOneEdge, swapTwoBlocks, wrongParity, wrongShed } from './faults.ts';
import type { WeaverPlan } from './planDocument.ts';
import {
  handPlan,
  rectangle,
  sharedEndPair,
  triangleFromLeft,
  triangleFromRight,
  twoHillsAndAValley,
} from './smallPlans.ts';
import { weavePlan } from './weavePlan.ts';

const plans = { rectangle, triangleFromLeft, triangleFromRight, twoHillsAndAValley, sharedEndPair };

const tagOf = (plan: WeaverPlan | null) => {
  if (plan === null) return 'no such fault here';
  const report = weavePlan(plan);
  return report.refusal?.tag ?? report.mismatches[0]?.kind ?? 'woven';
};

describe('the virtual weaver', () => {
  for (const [name, plan] of Object.entries(plans)) {
    it(`weaves the ${name} worked out by hand`, () => {
      const report = weavePlan(plan());
      const { ends, passes } = plan().chart;
      expect(report.refusal).toBeNull();
      expect(report.mismatches).toEqual([]);
      expect(report.cellsWoven).toBe(ends * passes);
    });
  }

  it('reads a sequence of plain pairs, and a start whose first stop is only said in words', () => {
    const pair = sharedEndPair();
    const document: unknown = { ...pair, sequence: pair.sequence?.map((step) => [step.block, step.row]) };
    expect(weavePlan(document).refusal).toBeNull();
    const box = rectangle();
    const untold: unknown = {
      ...box,
      blocks: box.blocks.map((block) => ({ ...block, start: { end: 0, side: 'left', over: true } })),
    };
    expect(weavePlan(untold)).toMatchObject({ refusal: null, mismatches: [] });
  });

  it('refuses two wefts woven one after another where they must rise together', () => {
    const { sequence: _unsaid, ...apart } = sharedEndPair();
    expect(weavePlan(apart).refusal?.tag).toBe('over-a-gap');
  });

  it('refuses an edge that moves between the two passes of a turn', () => {
    const plan = handPlan(
      0,
      ['aabb', 'aaab', 'aaaa', 'aaaa'],
      [{ yarn: 'a', start: 'left 0 > 3 over', left: '2', right: '1.5 in 1, 0.5', rows: '0:0>3' }],
    );
    expect(tagOf(plan)).toBe('turn-broken');
  });

  it('refuses an end that is not on the loom, a pass above the chart and edges that cross', () => {
    const box = (start: string, left: string, right: string) =>
      handPlan(0, ['aaaa', 'aaaa'], [{ yarn: 'a', start, left, right, rows: '0:0>3' }]);
    expect(tagOf(box('left 0 > 4 over', '1', '1'))).toBe('off-the-warp');
    expect(tagOf(box('left 0 > 3 over', '2', '2'))).toBe('outside-chart');
    expect(tagOf(box('left 2 > 0 over', '1', '1'))).toBe('edges-cross');
    expect(tagOf(box('left 0 > 3 over', '1 in 1', '1'))).toBe('step-after-the-end');
    expect(tagOf(box('left 0 > 3 over', '0.25', '0.25'))).toBe('turns-differ');
  });

  it('refuses words that name other turns than the lists', () => {
    const good = triangleFromLeft();
    const said = (words: string[]) => ({
      ...good,
      blocks: good.blocks.map((block, index) => (index === 0 ? { ...block, words } : block)),
    });
    expect(tagOf(said(['Right edge: 1 turn, then in 2 ends; 1½ turns.']))).toBe('words-differ');
    expect(tagOf(said(['Start at the left, over end 1, and weave to end 6.']))).toBe('words-differ');
    expect(tagOf(said(['Right edge: 1 turn, then in 2 ends × 2; half a turn.']))).toBe('woven');
  });

  it('weaves from the words alone, and refuses where they leave something out', () => {
    expect(weavePlan(rectangle(), 'words')).toMatchObject({ refusal: null, mismatches: [] });
    expect(weavePlan(triangleFromLeft(), 'words').refusal?.tag).toBe('words-differ');
  });

  it('goes on with the weft of another block only where that weft hangs', () => {
    const halves = (continues: number, start: string) => {
      const plan = handPlan(
        0,
        ['aaaa', 'aaaa', 'aaaa', 'aaaa'],
        [
          { yarn: 'a', start: 'left 0 > 3 over', left: '1', right: '1', rows: '0:0>3 1:3>0' },
          { yarn: 'a', start, left: '1', right: '1', rows: '2:0>3 3:3>0' },
        ],
      );
      return { ...plan, blocks: plan.blocks.map((block, order) => (order === 1 ? { ...block, continues } : block)) };
    };
    expect(weavePlan(halves(0, 'left 0 > 3 over'))).toMatchObject({ refusal: null, mismatches: [] });
    expect(weavePlan(halves(0, 'right 3 > 0 under')).refusal?.tag).toBe('weft-not-there');
  });

  it('refuses a document that lacks what a weaver needs', () => {
    expect(weavePlan({ blocks: [] }).refusal?.tag).toBe('plan-unreadable');
    expect(weavePlan(null).refusal?.tag).toBe('plan-unreadable');
  });
});

describe('seeded faults', () => {
  it('names each fault for what it is', () => {
    expect(tagOf(swapTwoBlocks(twoHillsAndAValley()))).toBe('over-a-gap');
    expect(tagOf(oneTurnMissing(rectangle()))).toBe('cell');
    expect(tagOf(oneTurnMissingAtOneEdge(rectangle()))).toBe('turns-differ');
    expect(tagOf(wrongParity(triangleFromRight()))).toBe('wrong-shed');
    expect(tagOf(wrongShed(sharedEndPair()))).toBe('wrong-shed');
  });

  for (const [planName, plan] of Object.entries(plans)) {
    for (const [faultName, fault] of Object.entries(allFaults)) {
      const faulty = fault(plan());
      if (faulty === null) continue;
      it(`catches ${faultName} in the ${planName}`, () => {
        expect(tagOf(faulty)).not.toBe('woven');
      });
    }
  }
});
