import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { _electron } from 'playwright';
import { expect, test } from 'vitest';
import { projectRoot } from '../support/pieces.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

const { findElectron } = (await import(pathToFileURL(join(projectRoot, 'scripts/lib.mjs')).href)) as {
  findElectron: () => string | null;
};
const runtime = findElectron();
const noScreen = process.platform === 'linux' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY;
const why = runtime === null ? 'its runtime is not installed' : noScreen ? 'there is no screen' : null;
if (why !== null) console.log(`The real Electron is not tried here: ${why}. The bundle runs over a stand-in instead.`);

test.skipIf(why !== null)('the real Electron opens the page and answers it', async () => {
  const app = await _electron.launch({
    executablePath: runtime!,
    args: [projectRoot],
    env: { ...(process.env as Record<string, string>), PLUMBWEFT_HOME: temporaryFolder() },
  });
  try {
    const page = await app.firstWindow();
    expect(page.url()).toBe('app://plumbweft/');
    const about = await page.evaluate(() =>
      (globalThis as unknown as { plumbweft: { invoke: (...given: unknown[]) => Promise<unknown> } }).plumbweft.invoke(
        'about',
        {},
        null,
      ),
    );
    expect(about).toMatchObject({ ok: true, value: { result: { shell: 'electron' } } });
    expect(await page.evaluate(() => typeof (globalThis as { require?: unknown }).require)).toBe('undefined');
  } finally {
    await app.close();
  }
});
