import { describe, expect, test } from 'vitest';
import { cutPower, failEveryCall, fillDisk } from '../support/faultRounds.ts';
import { scenarios } from '../support/faultScenarios.ts';

// What `npm run faults` does at every byte and with thousands of disks, here at a few.
describe.each(scenarios.map((scenario) => [scenario.name, scenario] as const))('%s', (_name, scenario) => {
  test('with each call failing in turn, once or for good, leaves old or new and goes through afterwards', async () => {
    const { tries, refused, wrong } = await failEveryCall(scenario);
    expect(wrong).toEqual([]);
    expect(tries).toBeGreaterThan(10);
    expect(refused).toBeGreaterThan(tries / 2);
  });

  test('on a disk that fills up anywhere leaves what was there', async () => {
    const { wrong } = await fillDisk(scenario, 900);
    expect(wrong).toEqual([]);
  });

  test('with the power cut at any moment leaves old or new, and nothing that was answered for is lost', async () => {
    const { tries, wrong } = await cutPower(scenario, 32);
    expect(wrong).toEqual([]);
    expect(tries).toBeGreaterThan(10);
  });
});

test('the same would be seen to lose a piece that was brought in if its folders were not flushed', async () => {
  const bringing = scenarios.find(({ name }) => name === 'bringing a zip in')!;
  expect((await cutPower(bringing, 32, { noFolderFlush: true })).wrong.length).toBeGreaterThan(0);
  expect((await cutPower(bringing, 32, { noFileFlush: true })).wrong.length).toBeGreaterThan(0);
});
