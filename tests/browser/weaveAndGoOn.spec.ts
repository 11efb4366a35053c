import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base, type Page } from '@playwright/test';
import { tabTo } from './actions.ts';
import { choose, expect, fixture, startApp } from './app.ts';

/** A home that outlives the program: it can be killed and started again over the same pieces. */
const test = base.extend<{ home: string }>({
  // biome-ignore lint/correctness/noEmptyPattern: the test runner reads the fixtures it needs from this pattern.
  home: async ({}, use) => {
    const home = mkdtempSync(join(tmpdir(), 'plumbweft-browser-'));
    await use(home);
    rmSync(home, { recursive: true, force: true, maxRetries: 5 });
  },
});

type Running = Awaited<ReturnType<typeof startApp>>;

async function open(page: Page, running: Running): Promise<void> {
  await page.goto(running.address);
  await page.getByRole('heading', { level: 1 }).waitFor();
}

const ended = (running: Running, signal: NodeJS.Signals) =>
  new Promise<void>((done) => {
    running.process.on('exit', () => done());
    running.process.kill(signal);
  });

const drawing = fixture('drawings/boat.svg');
const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: typeof name === 'string' });

/** Everything the bench says about the turn that comes now. */
async function moment(page: Page): Promise<Readonly<Record<string, string>>> {
  const say = async (part: string) => ((await page.locator(`.bench-${part}`).textContent()) ?? '').trim();
  const [block, turn, count, over, next, going] = await Promise.all(
    ['block', 'turn', 'count', 'over', 'next', 'going'].map(say),
  );
  return { block: block!, turn: turn!, count: count!, over: over!, next: next!, going: going! };
}

/** Ticks turns one by one, each only when the one before it shows, and hands back what the bench says after each. */
async function weave(
  page: Page,
  turns: number,
  done: () => Promise<unknown>,
): Promise<Readonly<Record<string, string>>[]> {
  const moments = [];
  for (let turn = 0; turn < turns; turn++) {
    const before = JSON.stringify(await moment(page));
    // Each turn is on disk before the next is woven: the host answers when it has been written.
    await Promise.all([page.waitForResponse(/saveProgress/), done()]);
    await expect.poll(async () => JSON.stringify(await moment(page)), { intervals: [20] }).not.toBe(before);
    moments.push(await moment(page));
  }
  return moments;
}

interface Way {
  readonly start: (page: Page) => Promise<void>;
  readonly bringIn: (page: Page) => Promise<void>;
  readonly toBench: (page: Page) => Promise<void>;
  readonly turnDone: (page: Page) => Promise<void>;
  readonly openAgain: (page: Page) => Promise<void>;
  /** Another way to say that a turn is done. */
  readonly turnDoneToo: (page: Page) => Promise<void>;
}

const byMouse: Way = {
  start: (page) => button(page, 'Start a piece').click(),
  bringIn: async (page) => {
    await button(page, 'Draw the cartoon').click();
    await choose(page, drawing, () => button(page, 'Picture').click());
  },
  toBench: async (page) => {
    await button(page, 'Order of work').click();
    await button(page, /^Weave block \d+$/).click();
  },
  turnDone: (page) => button(page, /^Turn done/).click(),
  openAgain: (page) => button(page, /^New piece/).click(),
  // A tap anywhere will do.
  turnDoneToo: (page) => page.locator('.bench-picture').click(),
};

const byKeys: Way = {
  start: (page) => page.keyboard.press('n'),
  bringIn: async (page) => {
    await page.keyboard.press('Control+2');
    await page.getByRole('toolbar').waitFor();
    await choose(page, drawing, () => page.keyboard.press('o'));
  },
  toBench: async (page) => {
    await page.keyboard.press('Control+3');
    await button(page, /^Weave block \d+$/).waitFor();
    await page.keyboard.press('Enter');
  },
  turnDone: (page) => page.keyboard.press('Space'),
  openAgain: async (page) => {
    await tabTo(button(page, /^New piece/));
    await page.keyboard.press('Enter');
  },
  // The keyboard's media key, within reach of a hand that holds wool.
  turnDoneToo: (page) => page.keyboard.press('MediaPlayPause'),
};

async function weaveAndGoOn(page: Page, home: string, way: Way): Promise<void> {
  page.on('filechooser', () => undefined);
  const first = await startApp(home);
  await open(page, first);
  await way.start(page);
  await button(page, 'New piece: list of pieces').waitFor();
  await way.bringIn(page);
  // Moon, sail and hull, each a shape of its own in the yarn nearest to its colour.
  await expect(page.locator('.shape-row')).toHaveCount(4);
  await way.toBench(page);
  await page.locator('.bench-count').waitFor();
  const begun = await moment(page);
  expect(begun).toMatchObject({ block: 'Header', count: '1' });
  const moments = await weave(page, 20, () => way.turnDone(page));
  // The header has two turns of its own: then another block comes.
  expect(moments.map(({ block }) => block === 'Header').lastIndexOf(true)).toBe(0);
  const last = moments.at(-1)!;
  await ended(first, 'SIGKILL');

  const second = await startApp(home);
  await open(page, second);
  await way.openAgain(page);
  await button(page, 'New piece: list of pieces').waitFor();
  await way.toBench(page);
  await page.locator('.bench-count').waitFor();
  expect(await moment(page)).toEqual(last);
  const [next] = await weave(page, 1, () => way.turnDoneToo(page));
  expect(next).not.toEqual(last);
  await ended(second, 'SIGTERM');
}

test('a drawing is woven for 20 turns, the program killed, and the weaving goes on, by mouse', async ({
  page,
  home,
}) => {
  await weaveAndGoOn(page, home, byMouse);
});

test('a drawing is woven for 20 turns, the program killed, and the weaving goes on, by keyboard alone', async ({
  page,
  home,
}) => {
  await weaveAndGoOn(page, home, byKeys);
});
