import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { randomScene } from '../scripts/pictures/drawnLoom/randomScene.ts';
import { spoiltWarp } from '../scripts/pictures/drawnLoom/spoiltWarp.ts';
import { drawnLoom } from '../scripts/pictures/drawnLoom.ts';
import { quantile } from '../src/core/photo/statistics.ts';
import { parseBrief } from '../src/core/project/brief.ts';
import { decodePhoto } from './decodePhoto.ts';
import { measure, pieceOf } from './measuring.ts';
import { namedStrings } from './namedStrings.ts';

/**
 * Use: npx tsx bench/strings.ts COUNT SEED [KEEP_DIR]
 * Draws every loom twice, its strings straight, then one slack and two crossed, and measures both: which strings are
 * named, which are named for nothing, and how far the bows read lie from those drawn.
 */
const [countText, seedText, keep] = process.argv.slice(2);
const count = Number(countText);
const first = Number(seedText);
if (!Number.isInteger(count) || !Number.isInteger(first)) {
  console.error('Use: npx tsx bench/strings.ts COUNT SEED [KEEP_DIR]');
  process.exit(2);
}
if (keep) mkdirSync(keep, { recursive: true });
/** Longer side the pictures are drawn at, px: small ones are drawn in seconds. */
const LONG = 1500;
const tally = { straight: 0, forNothing: 0, spoilt: 0, slackNamed: 0, crossedNamed: 0, otherNamed: 0, asked: 0 };
const errors: number[] = [];
const inSigmas: number[] = [];
for (let seed = first; seed < first + count; seed++) {
  for (const spoil of [false, true]) {
    const name = `s${seed}${spoil ? '-spoilt' : ''}`;
    const whole = randomScene(name, seed);
    // What lies over the spoilt strings would hide them.
    const scale = Math.min(1, LONG / Math.max(whole.width, whole.height));
    const scene = { ...whole, width: Math.round(whole.width * scale), height: Math.round(whole.height * scale) };
    const { jpeg, brief, truth } = await drawnLoom(
      spoil
        ? { ...scene, warp: spoiltWarp(scene, seed), things: [] }
        : { ...scene, warp: { ...scene.warp, slack: [] } },
    );
    if (keep) {
      writeFileSync(join(keep, `${name}.jpg`), jpeg);
      writeFileSync(join(keep, `${name}.brief.json`), JSON.stringify(brief));
      writeFileSync(join(keep, `${name}.truth.json`), JSON.stringify(truth));
    }
    const parsed = parseBrief(JSON.parse(JSON.stringify(brief)));
    if (!parsed.ok) throw new Error(parsed.problem.sentence);
    const reading = measure(await decodePhoto(jpeg), pieceOf(parsed.value));
    if (reading.status !== 'measured') {
      tally.asked++;
      console.log(`${name}: ${reading.reasons.map(({ code }) => code).join(', ')}`);
      continue;
    }
    for (const end of reading.ends) {
      if (!end.bow) continue;
      const error = end.bow.value - truth.ends[end.index]!.bow_mm;
      errors.push(Math.abs(error));
      inSigmas.push(Math.abs(error) / end.bow.sigma);
    }
    const said = namedStrings(reading.flags);
    const bows = reading.ends.filter((end) => end.bow).length;
    const own = reading.ends.filter((end) => end.runsTo === end.index).length;
    if (!spoil) {
      tally.straight++;
      tally.forNothing += said.slack.length + said.crossed.length;
      console.log(
        `${name}: bows ${bows}, own notch ${own} of ${reading.ends.length}; for nothing ${JSON.stringify(said)}`,
      );
      continue;
    }
    tally.spoilt++;
    const { end } = spoiltWarp(scene, seed).slack[0]!;
    const swapped = spoiltWarp(scene, seed).swapped[0]!;
    if (said.slack.includes(end)) tally.slackNamed++;
    if (said.crossed.includes(swapped) && said.crossed.includes(swapped + 1)) tally.crossedNamed++;
    tally.otherNamed +=
      said.slack.filter((one) => one !== end).length +
      said.crossed.filter((one) => one !== swapped && one !== swapped + 1).length;
    const read = reading.ends[end]!.bow;
    console.log(
      `${name}: bows ${bows}, own ${own}; slack ${end} by ${truth.ends[end]!.bow_mm.toFixed(2)}, read ${read ? `${read.value.toFixed(2)} ± ${read.sigma.toFixed(2)}` : '—'}; crossed ${swapped}; said ${JSON.stringify(said)}`,
    );
  }
}
console.log(JSON.stringify(tally));
const share = inSigmas.filter((one) => one <= 2).length / Math.max(1, inSigmas.length);
console.log(
  `bows: ${errors.length}, error median ${quantile(errors, 0.5).toFixed(3)}, 95th ${quantile(errors, 0.95).toFixed(3)} mm, ${(100 * share).toFixed(1)} % within two sigma`,
);
