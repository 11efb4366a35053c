import { describe, expect, it } from 'vitest';
import { planPiece } from '../../src/core/plan/planPiece.ts';
import { blockName } from '../../src/core/words/de/blockName.ts';
import { tellIn } from '../../src/core/words/telling.ts';
import { harbourLantern } from '../pdf/samplePiece.ts';

const english = /\b(the|of|and|half|lower|upper|head|foot|left|right|between|inside|stage|ground|header)\b/i;

describe('the order of work in German', () => {
  const plan = planPiece(harbourLantern());

  it('names every block of the sample, and every kind of place', () => {
    const names = plan.blocks.map(({ name }) => blockName(name));
    expect(names.filter((name) => english.test(name))).toEqual([]);
    expect(new Set(names).size).toBe(new Set(plan.blocks.map(({ name }) => name)).size);
    expect(blockName('Ground, between the left hill and Moon 2, stage 3')).toBe(
      'Grund, zwischen „Left hill“ und „Moon 2“, Abschnitt 3',
    );
    expect(blockName('Sky, inside the ground, head')).toBe('Sky, in dem Grund, oben');
  });

  it('tells buying, hanging, finishing and the remarks beside the blocks', () => {
    const { shopping, hanging, finishing, blocks } = plan;
    const said = [
      ...shopping.flatMap(({ amount, note }) => [amount, note]),
      ...[hanging.dowel.verdict, hanging.fringe.verdict].flatMap(({ sentence, why, remedy }) => [
        sentence,
        why,
        remedy ?? '',
      ]),
      ...finishing.flatMap(({ step, caution }) => [step, caution ?? '']),
      ...blocks.flatMap(({ remarks }) => remarks),
    ].filter((words) => words !== '');
    expect(said.length).toBeGreaterThan(25);
    const untold = /\b(the|is|are|this|with|from|your|long|thick|balls?|knots?)\b/i;
    expect(said.map((words) => tellIn('de', words)).filter((words) => untold.test(words))).toEqual([]);
  });
});
