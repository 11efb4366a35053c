// Drags a corner of one of 60 shapes on 100 ends × 1 000 passes in a real Chromium, and prints how much script each
// frame ran on the page's main thread. npm run bench:drag
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { type CDPSession, chromium, type Page } from 'playwright';
import { serialiseDocument } from '../../src/core/project/document.ts';
import { pieceDocument } from '../../src/core/project/pieceDocument.ts';
import { rawZip } from '../../tests/support/zips.ts';
import { crowdedPiece } from './crowdedPiece.ts';
import { quantile, scriptPerFrame, type TraceEvent } from './frameTimes.ts';

const sha256 = (text: string) => createHash('sha256').update(text).digest('hex');
const LIMIT_MS = 16;
const MOVES = 240;
const root = resolve(import.meta.dirname, '../..');
const home = mkdtempSync(join(tmpdir(), 'plumbweft-drag-'));

async function startHost(): Promise<{ readonly address: string; readonly stop: () => void }> {
  const child = spawn(process.execPath, [join(root, 'out/main/local.js'), '--no-open', '--port', '0'], {
    env: { ...process.env, PLUMBWEFT_HOME: home },
  });
  const address = await new Promise<string>((found, missed) => {
    let said = '';
    child.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const match = /http:\/\/127\.0\.0\.1:\d+\/\S+/.exec(said)?.[0];
      if (match !== undefined) found(match);
    });
    child.on('exit', (code) => missed(new Error(`The local host stopped with ${code}: ${said}`)));
  });
  return { address, stop: () => child.kill('SIGTERM') };
}

/** Brings the piece in as a weaver would: one file, chosen on the first screen. */
async function openPiece(page: Page): Promise<void> {
  const zip = join(home, 'sixty-lanterns.zip');
  const text = serialiseDocument(pieceDocument, crowdedPiece('2026-11-25T09:00:00.000Z'), 1, sha256);
  writeFileSync(zip, rawZip([{ name: 'piece.json', bytes: new TextEncoder().encode(text) }]));
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: /^Open a piece/ }).click(),
  ]);
  await chooser.setFiles(zip);
  await page.getByRole('button', { name: 'Undo', exact: true }).waitFor();
}

async function traced(session: CDPSession, during: () => Promise<void>): Promise<readonly TraceEvent[]> {
  await session.send('Tracing.start', {
    transferMode: 'ReturnAsStream',
    traceConfig: {
      includedCategories: [
        'devtools.timeline',
        'disabled-by-default-devtools.timeline',
        'v8',
        'toplevel',
        '__metadata',
      ],
    },
  });
  await during();
  const complete = new Promise<string>((found) =>
    session.once('Tracing.tracingComplete', (told) => found(told.stream ?? '')),
  );
  await session.send('Tracing.end');
  const handle = await complete;
  let text = '';
  for (;;) {
    const part = await session.send('IO.read', { handle });
    text += part.base64Encoded ? Buffer.from(part.data, 'base64').toString() : part.data;
    if (part.eof) break;
  }
  return (JSON.parse(text) as { readonly traceEvents: readonly TraceEvent[] }).traceEvents;
}

const named = process.env.PLUMBWEFT_CHROMIUM;
const executablePath = [named, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(
  (path) => path !== undefined && existsSync(path),
);
const host = await startHost();
const browser = await chromium.launch({
  ...(executablePath === undefined ? {} : { executablePath }),
  args: ['--no-sandbox', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
});
try {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(host.address);
  await openPiece(page);
  await page.keyboard.press('Control+2');
  await page.getByRole('button', { name: 'Lantern 32', exact: false }).click();
  const handle = page.locator('.handle').first();
  await handle.waitFor();
  await page.waitForTimeout(3000);
  const box = (await handle.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const session = await page.context().newCDPSession(page);
  await page.mouse.move(x, y);
  await page.mouse.down();
  const before = await page.locator('.drawn').getAttribute('d');
  const events = await traced(session, async () => {
    for (let move = 0; move < MOVES; move++) {
      const angle = (move / MOVES) * 6 * Math.PI;
      await page.mouse.move(x + 24 * Math.sin(angle), y + 18 * (1 - Math.cos(angle)));
    }
  });
  const after = await page.locator('.drawn').getAttribute('d');
  await page.mouse.up();
  if (before === after) throw new Error('The corner was not dragged.');
  const frames = scriptPerFrame(events);
  // Frames in which nothing moved say nothing about dragging.
  const busy = frames.filter((frame) => frame.script > 0.05);
  const show = (milliseconds: number) => `${milliseconds.toFixed(1)} ms`;
  console.log(`60 shapes, 100 ends × 1 000 passes, ${MOVES} moves, ${busy.length} frames with script:`);
  const print = (what: string, figures: readonly number[]) => {
    const sorted = [...figures].sort((one, other) => one - other);
    const shares = [0.5, 0.9, 0.95, 0.99].map((share) => `${share * 100} % within ${show(quantile(sorted, share))}`);
    const over = sorted.filter((milliseconds) => milliseconds >= LIMIT_MS).length;
    console.log(
      `  ${what}: ${shares.join(', ')}, longest ${show(sorted.at(-1) ?? 0)}; ${over} at or over ${LIMIT_MS} ms`,
    );
    return over;
  };
  const over = print(
    'script',
    busy.map((frame) => frame.script),
  );
  print(
    'by the clock, with what other programs took',
    busy.map((frame) => frame.passed),
  );
  if (busy.length < MOVES / 4) throw new Error('Too few frames to judge by.');
  process.exitCode = over === 0 ? 0 : 1;
} finally {
  await browser.close();
  host.stop();
  rmSync(home, { recursive: true, force: true });
}
