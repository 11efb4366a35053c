import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { noLoomPictures } from '../scripts/pictures/noLoomPictures.ts';
import { spoiltLooms } from '../scripts/pictures/spoiltLooms.ts';
import type { LoomReading } from '../src/core/model/check.ts';
import type { Brief } from '../src/core/project/brief.ts';
import { decodePhoto } from './decodePhoto.ts';
import { lengthsTold } from './lengthsTold.ts';
import { measure, pieceOf } from './measuring.ts';
import { figureErrors, wrongFigures } from './wrongPhotograph.ts';

/**
 * Use: npm run refusals -- [--every N] [--kind WORD] [--only none|spoilt] [--keep DIR]
 * Runs pictures without a loom, halves of looms and looms with a brief that isn't their own through the measuring, and
 * counts what was measured, asked about or refused, what was wrong, whether the mismatch was named, and whether the words
 * told the true length. Of pictures without a loom it counts those of which a mismatch with the plan was told: none should be.
 * `--keep` writes each picture that went wrong, to look at.
 */
const option = (name: string): string | null => {
  const at = process.argv.indexOf(name);
  return at > 0 ? (process.argv[at + 1] ?? null) : null;
};
const every = Number(option('--every') ?? 1);
const kind = option('--kind');
const only = option('--only');
const keep = option('--keep');
if (keep) mkdirSync(keep, { recursive: true });
const fixtures = join(import.meta.dirname, '../tests/fixtures');
const chosen = <Item extends { readonly name: string }>(items: readonly Item[]): Item[] =>
  items.filter((item, index) => index % every === 0 && (!kind || item.name.includes(kind)));

interface Tally {
  pictures: number;
  measured: number;
  asked: number;
  refused: number;
  wrong: number;
  named: number;
  nameable: number;
  /** With the true lengths in the words, of how many that have such lengths. */
  told: number;
  tellable: number;
}
const tallies = new Map<string, Tally>();
function count(
  group: string,
  reading: LoomReading,
  wrong: boolean,
  named: boolean | null,
  told: boolean | null = null,
): void {
  const tally = tallies.get(group) ?? {
    pictures: 0,
    measured: 0,
    asked: 0,
    refused: 0,
    wrong: 0,
    named: 0,
    nameable: 0,
    told: 0,
    tellable: 0,
  };
  tally.pictures++;
  if (reading.status === 'measured') tally.measured++;
  else if (reading.status === 'needs-reference') tally.asked++;
  else tally.refused++;
  if (wrong) tally.wrong++;
  if (named !== null) tally.nameable++;
  if (named) tally.named++;
  if (told !== null) tally.tellable++;
  if (told) tally.told++;
  tallies.set(group, tally);
}
const said = (reading: LoomReading): string[] => [
  ...reading.reasons.map((reason) => reason.code),
  ...reading.flags.map((flag) => flag.kind),
];

/** What is said of a plan that a loom in the picture contradicts: without a loom it would be a lie. */
const MISMATCHES: ReadonlySet<string> = new Set(['references-disagree', 'wrong-pitch', 'wrong-count']);

async function withoutLoom(): Promise<void> {
  const stems = readdirSync(join(fixtures, 'photos')).filter((file) => file.endsWith('.brief.json'));
  const briefs = stems.map((file) => JSON.parse(readFileSync(join(fixtures, 'photos', file), 'utf8')) as Brief);
  for (const [index, picture] of chosen(noLoomPictures(join(fixtures, 'real'))).entries()) {
    const jpeg = await picture.make();
    const brief = briefs[index % briefs.length]!;
    const reading = measure(await decodePhoto(jpeg), pieceOf(brief));
    const wrong = reading.status === 'measured';
    const lie = said(reading).some((code) => MISMATCHES.has(code));
    count('no loom', reading, wrong || lie, null);
    if (lie) console.log(`NAMED ${picture.name} with the brief of ${brief.name}: ${reading.reasons[0]?.message.mm}`);
    if (wrong) {
      console.log(`MEASURED ${picture.name} with the brief of ${brief.name}`);
      if (keep) writeFileSync(join(keep, `${picture.name}.jpg`), jpeg);
    }
  }
}

async function spoilt(): Promise<void> {
  const photos = ['dev01', 'dev02', 'dev03', 'dev08'].map((name) => join(fixtures, 'photos', name));
  const scenes = ['v1001', 'v1003', 'v1008'].map((name) => join(fixtures, 'scenes/train', name));
  const there = scenes.filter((stem) => existsSync(`${stem}.truth.json`));
  for (const loom of chosen(spoiltLooms(photos, there))) {
    const jpeg = await loom.jpeg();
    const reading = measure(await decodePhoto(jpeg), pieceOf(loom.brief));
    const figures = wrongFigures(reading, loom.truth, loom.planShift, loom.endShift);
    const codes = said(reading);
    const unsure = figureErrors(reading, loom.truth).filter(
      ({ sigma }) => !(Number.isFinite(sigma) && sigma > 0),
    ).length;
    const named = loom.names.length > 0 ? loom.names.some((name) => codes.includes(name)) : null;
    const told = loom.figures.length > 0 ? lengthsTold(reading, loom.figures) : null;
    count(loom.fault, reading, figures.length > 0, named, told);
    const worst = [...figures].sort((a, b) => Math.abs(b.error) - Math.abs(a.error))[0];
    console.log(
      `${loom.name}: ${reading.status}${figures.length ? ` WRONG ${figures.length}, worst ${worst?.what} ${worst?.error.toFixed(1)} ± ${worst?.sigma.toFixed(1)}` : ''}; said ${codes.join(', ') || 'nothing'}${named === false ? ' (not named)' : ''}${told === false ? ' (true length not told)' : ''}${unsure ? `; ${unsure} figures without a usable sigma` : ''}`,
    );
    if (keep && figures.length) writeFileSync(join(keep, `${loom.name}.jpg`), jpeg);
  }
}

if (only !== 'spoilt') await withoutLoom();
if (only !== 'none') await spoilt();
console.log('\ngroup           pictures measured asked refused wrong named  true length told');
for (const [group, tally] of tallies)
  console.log(
    `${group.padEnd(15)} ${[tally.pictures, tally.measured, tally.asked, tally.refused, tally.wrong].map((n) => String(n).padStart(7)).join(' ')}   ${tally.nameable ? `${tally.named}/${tally.nameable}` : '–'}  ${tally.tellable ? `${tally.told}/${tally.tellable}` : '–'}`,
  );
if (tallies.has('mirrored') || tallies.has('mirrored, alike'))
  console.log(
    'mirrored: the plan shows it, so it has to be noticed; mirrored, alike: nothing in the picture tells, so the check should ask once per camera (maybe-mirrored), and its figures are judged as the picture shows them.',
  );
const wrongAll = [...tallies.values()].reduce((sum, tally) => sum + tally.wrong, 0);
console.log(wrongAll === 0 ? 'None wrong.' : `${wrongAll} wrong.`);
process.exitCode = wrongAll === 0 ? 0 : 1;
