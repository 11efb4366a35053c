import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { checkPhoto } from '../../src/core/compare/checkPhoto.ts';
import { parseBrief, pieceFromBrief } from '../../src/core/project/brief.ts';
import { stageTimes } from '../../src/main/cli/stageTimes.ts';
import { decodePhoto } from '../../src/main/decode/decodePhoto.ts';

/**
 * Use: npm run bench:measure -- [--photo dev02] [--runs 3]
 * What each stage of measuring costs, as so many times the decoding of the same photograph, for a small copy and for
 * the photograph itself. Ratios of processor time hardly heed the computer or what else it does; the least of a few
 * runs counts for every stage, after one that warms up.
 */
const option = (name: string, otherwise: string): string => {
  const at = process.argv.indexOf(name);
  return at > 0 ? (process.argv[at + 1] ?? otherwise) : otherwise;
};
const name = option('--photo', 'dev02');
const runs = Number(option('--runs', '3'));
const folder = join(import.meta.dirname, '../../tests/fixtures/photos');
const bytes = readFileSync(join(folder, `${name}.jpg`));
const brief = parseBrief(JSON.parse(readFileSync(join(folder, `${name}.brief.json`), 'utf8')));
if (!brief.ok) throw new Error(brief.problem.sentence);
const piece = pieceFromBrief(brief.value, '2000-01-01T00:00:00Z');

/** Milliseconds of processor time of the whole program, threads included. */
const processorTime = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

async function once(photograph: Uint8Array): Promise<{ times: Record<string, number>; status: string }> {
  const times = stageTimes(processorTime);
  times.begin('decode');
  const photo = await decodePhoto(photograph);
  if (!photo.ok) throw new Error(photo.problem.sentence);
  const { status } = checkPhoto(photo.value, piece, { onStage: (stage) => times.begin(stage) });
  return { times: times.end(), status };
}

const small = await sharp(bytes).resize({ height: 1500, width: 1500, fit: 'inside' }).jpeg({ quality: 92 }).toBuffer();
for (const [label, photograph] of [
  ['small', small],
  ['full', bytes],
] as const) {
  const { width, height } = await sharp(photograph).metadata();
  const { status } = await once(photograph);
  const least = new Map<string, number>();
  for (let run = 0; run < runs; run++) {
    for (const [stage, ms] of Object.entries((await once(photograph)).times)) {
      least.set(stage, Math.min(ms, least.get(stage) ?? Number.POSITIVE_INFINITY));
    }
  }
  const decode = Math.max(1, least.get('decode') ?? 1);
  console.log(`${name} ${label}, ${width} × ${height}: ${status}, least of ${runs} runs`);
  for (const [stage, ms] of least) {
    console.log(`  ${stage.padEnd(10)} ${(ms / decode).toFixed(1).padStart(6)} × decode ${String(ms).padStart(7)} ms`);
  }
}
