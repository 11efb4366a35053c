import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { test as base, type Page } from '@playwright/test';

export const root = resolve(import.meta.dirname, '../..');
export const fixture = (path: string): string => join(root, 'tests/fixtures', path);

export interface RunningApp {
  readonly address: string;
  /** Holds the pieces and settings of this test alone. */
  readonly home: string;
}

/** The built local host in a home of its own, on a free port. */
export function startApp(home: string): Promise<{ readonly address: string; readonly process: ChildProcess }> {
  const child = spawn(process.execPath, [join(root, 'out/main/local.js'), '--no-open', '--port', '0'], {
    env: { ...process.env, PLUMBWEFT_HOME: home },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  return new Promise((found, missed) => {
    let said = '';
    const hear = (chunk: Buffer) => {
      said += chunk.toString();
      const address = /http:\/\/127\.0\.0\.1:\d+\/\S+/.exec(said)?.[0];
      if (address !== undefined) found({ address, process: child });
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.on('exit', (code) => missed(new Error(`The local host stopped with ${code}: ${said}`)));
  });
}

export const test = base.extend<{ app: RunningApp }>({
  // biome-ignore lint/correctness/noEmptyPattern: the test runner reads the fixtures it needs from this pattern.
  app: async ({}, use) => {
    const home = mkdtempSync(join(tmpdir(), 'plumbweft-browser-'));
    const { address, process: child } = await startApp(home);
    await use({ address, home });
    child.kill('SIGTERM');
    await new Promise((done) => child.on('exit', done));
    rmSync(home, { recursive: true, force: true });
  },
  page: async ({ page, app }, use) => {
    const faults: string[] = [];
    // Listened to from the start: a dialog asked for at the same moment would open before it is caught.
    page.on('filechooser', () => undefined);
    page.on('pageerror', (thrown) => faults.push(thrown.message));
    await page.goto(app.address);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await use(page);
    if (faults.length > 0) throw new Error(`The page threw: ${faults.join('; ')}`);
  },
});
export { expect } from '@playwright/test';

/** The sample is open when there is something to undo in. */
export const opened = (page: Page) => page.locator('.bar-undo').waitFor();

/** Hands a file over the way the system's own dialog does, when `ask` opens it. */
export async function choose(page: Page, path: string, ask: () => Promise<unknown>): Promise<void> {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), ask()]);
  await chooser.setFiles(path);
}

/** Lets a photograph fall on the window, as a file manager does. */
export async function dropPhotograph(page: Page, path: string): Promise<void> {
  const file = { name: basename(path), encoded: readFileSync(path).toString('base64') };
  const carried = await page.evaluateHandle(({ name, encoded }) => {
    const raw = Uint8Array.from(atob(encoded), (letter) => letter.charCodeAt(0));
    const transfer = new DataTransfer();
    transfer.items.add(new File([raw], name, { type: 'image/jpeg' }));
    return transfer;
  }, file);
  await page.dispatchEvent('main', 'drop', { dataTransfer: carried });
}

/** The words that tell what the program is doing, or why it stopped. */
const saidOnScreen = async (page: Page): Promise<string> =>
  (await page.locator('main, [role="alert"]').allInnerTexts()).join(' / ').replace(/\s+/g, ' ').slice(0, 600);

/** Waits until the photograph is measured. One that is turned away ends the wait at once, with what the screen says. */
export async function measured(page: Page): Promise<void> {
  const keep = page.getByRole('button', { name: 'Keep this check' });
  const turnedAway = page.getByText(/Nothing has been guessed|Drop a photograph of the loom here/);
  await keep
    .or(turnedAway)
    .or(page.getByRole('alert'))
    .first()
    .waitFor({ timeout: 120_000 })
    .catch(() => undefined);
  if (!(await keep.isVisible()))
    throw new Error(`The photograph is not measured. On screen: ${await saidOnScreen(page)}`);
}
