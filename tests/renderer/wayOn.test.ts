import { expect, test } from 'vitest';
import { inBothUnits } from '../../src/core/model/bothUnits.ts';
import type { ReasonCode } from '../../src/core/model/check.ts';
import { fourCorners } from '../../src/core/model/marks.ts';
import { wayOn } from '../../src/renderer/screens/check/wayOn.ts';

const reason = (code: ReasonCode) => ({ code, message: inBothUnits(() => ''), remedy: '' });
const marks = fourCorners([]);

test('what another photograph would show again is mended where it is wrong', () => {
  expect(wayOn(reason('wrong-count'), null)).toEqual({ kind: 'plan', field: 'ends' });
  expect(wayOn(reason('wrong-pitch'), null)).toEqual({ kind: 'plan', field: 'notchPitch' });
  expect(wayOn(reason('references-disagree'), null)).toEqual({ kind: 'loom', field: 'openingWidth' });
  expect(wayOn({ ...reason('references-disagree'), figure: 'openingHeight' }, null)).toEqual({
    kind: 'loom',
    field: 'openingHeight',
  });
  expect(wayOn(reason('references-disagree'), marks)).toEqual({ kind: 'marks' });
  expect(wayOn(reason('points-do-not-fit'), marks)).toEqual({ kind: 'marks' });
  expect(wayOn(reason('maybe-mirrored'), null)).toEqual({ kind: 'camera' });
});

test('what another photograph may mend asks for one', () => {
  for (const code of ['blurred', 'too-dark', 'no-loom', 'bar-missing'] as const)
    expect(wayOn(reason(code), null)).toEqual({ kind: 'photograph' });
  expect(wayOn(undefined, null)).toEqual({ kind: 'photograph' });
});
