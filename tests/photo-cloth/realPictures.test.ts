import { expect, test } from 'vitest';
import { readFinish2, weavep5Strings } from '../../bench/realPictures.ts';

const LONG = { timeout: 60_000 };

test('strings of real pictures are counted within 2 % of a count by hand', LONG, async () => {
  const { counted, byHand } = await weavep5Strings();
  expect(Math.abs(counted - byHand)).toBeLessThanOrEqual(0.02 * byHand);
});

test(
  'the fell of a real band in black, over cloth in the strings’ colours, lies where it was marked',
  LONG,
  async () => {
    const { strings, woven, endsRead, marks, errors } = await readFinish2();
    expect(Math.abs(strings.counted - strings.byHand)).toBeLessThanOrEqual(0.02 * strings.byHand);
    expect(endsRead).toBeGreaterThan(0.9 * woven);
    expect(errors.length).toBe(marks);
    // Marked by hand before anything was run: see tests/fixtures/real/counts.md.
    for (const error of errors) expect(Math.abs(error)).toBeLessThanOrEqual(2);
  },
);
