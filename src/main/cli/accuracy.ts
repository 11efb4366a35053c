import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { checkPhoto } from '../../core/compare/checkPhoto.ts';
import type { Piece } from '../../core/model/piece.ts';
import { parseBrief, pieceFromBrief } from '../../core/project/brief.ts';
import { groupLines, photoLines } from '../../core/report/accuracyLines.ts';
import { type PhotoScore, scorePhoto } from '../../core/report/accuracyScore.ts';
import { parseTruth } from '../../core/report/accuracyTruth.ts';
import { type CheckJson, checkJson } from '../../core/report/checkJson.ts';
import { decodePhoto } from '../decode/decodePhoto.ts';
import { refusedReading } from '../service/refusedReading.ts';
import { complain, endWhenNobodyReads, say } from './say.ts';
import { stageTimes } from './stageTimes.ts';

/**
 * `accuracy DIR [--json OUT_DIR]`: measures every NAME.jpg that has a NAME.brief.json, from those two alone, and then
 * scores the result against NAME.truth.json where there is one.
 */
async function main(argv: readonly string[]): Promise<number> {
  const json = argv.indexOf('--json');
  const outDir = json >= 0 ? argv[json + 1] : null;
  const places = argv.filter((_, i) => json < 0 || (i !== json && i !== json + 1));
  const dir = places[0];
  if (dir === undefined || places.length > 1 || outDir === undefined) {
    complain(
      'Use: accuracy DIR [--json OUT_DIR], where DIR holds NAME.jpg, NAME.brief.json and, if known, NAME.truth.json.',
    );
    return 2;
  }
  if (!existsSync(dir)) {
    complain(`There is no folder at ${dir}.`);
    return 2;
  }
  if (outDir !== null) mkdirSync(outDir, { recursive: true });
  const names = readdirSync(dir)
    .filter((file) => /\.jpe?g$/i.test(file))
    .sort();
  const scored: { score: PhotoScore; pitch: number; strings: number }[] = [];
  for (const file of names) {
    const name = file.replace(/\.jpe?g$/i, '');
    const briefPath = join(dir, `${name}.brief.json`);
    if (!existsSync(briefPath)) {
      complain(`${file} has no ${name}.brief.json and is left out.`);
      continue;
    }
    const brief = parseBrief(readJson(briefPath));
    if (!brief.ok) {
      complain(`${name}: ${brief.problem.sentence}`);
      continue;
    }
    const check = await measure(resolve(dir, file), file, pieceFromBrief(brief.value, '2000-01-01T00:00:00Z'));
    if (outDir !== null) writeFileSync(join(outDir, `${name}.json`), `${JSON.stringify(check, null, 1)}\n`);
    const truthPath = join(dir, `${name}.truth.json`);
    const truth = existsSync(truthPath) ? parseTruth(readJson(truthPath)) : null;
    const score = truth ? scorePhoto(name, check, truth) : null;
    for (const line of photoLines(name, check, score)) say(line);
    if (score)
      scored.push({ score, pitch: brief.value.loom.notch_pitch_mm, strings: brief.value.warp.strings_per_end });
  }
  say('');
  const block = (label: string, of: typeof scored) => {
    for (const line of groupLines(
      label,
      of.map((one) => one.score),
    ))
      say(line);
  };
  block('all', scored);
  for (const pitch of [...new Set(scored.map((one) => one.pitch))].sort((a, b) => a - b)) {
    block(
      `notch pitch ${pitch} mm`,
      scored.filter((one) => one.pitch === pitch),
    );
  }
  for (const strings of [...new Set(scored.map((one) => one.strings))].sort()) {
    block(
      strings === 1 ? 'single warp' : 'doubled warp',
      scored.filter((one) => one.strings === strings),
    );
  }
  return 0;
}

/** Damaged files are the same as none: the caller says so. */
function readJson(path: string): unknown {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return null;
  }
}

async function measure(path: string, file: string, piece: Piece): Promise<CheckJson> {
  const times = stageTimes(() => performance.now());
  times.begin('decode');
  const photo = await decodePhoto(readFileSync(path));
  if (!photo.ok) return checkJson(file, refusedReading(photo.problem));
  const reading = checkPhoto(photo.value, piece, { onStage: (stage) => times.begin(stage) });
  return checkJson(file, { ...reading, timingMs: times.end() });
}

endWhenNobodyReads();
process.exitCode = await main(process.argv.slice(2));
