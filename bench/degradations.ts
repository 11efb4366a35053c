import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DEGRADATIONS, type Degradation, degrade } from '../scripts/pictures/degrade.ts';
import { decodePhoto } from './decodePhoto.ts';
import { type DegradationPoint, degradationPlot } from './degradationPlot.ts';
import { measure, pieceOf } from './measuring.ts';
import { figureErrors, wrongFigures } from './wrongPhotograph.ts';

/**
 * Use: npm run degradations -- [--only blur] [--photos dev01,dev08]
 * Makes a few rendered photographs worse step by step, and leans over a few drawn looms, measures each, prints a table and draws docs/degradations.svg.
 */
const option = (name: string): string | null => {
  const at = process.argv.indexOf(name);
  return at > 0 ? (process.argv[at + 1] ?? null) : null;
};
const root = join(import.meta.dirname, '..');
const only = option('--only');
const names = (option('--photos') ?? 'dev01,dev04,dev08').split(',');

function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2;
}
const shown = (value: number | null): string => (value === null ? '   –' : value.toFixed(2).padStart(4));

const points: DegradationPoint[] = [];
console.log('way        level  measured asked refused wrong  selvedge ± sigma   fell ± sigma  ends read');
for (const kind of Object.keys(DEGRADATIONS) as Degradation[]) {
  if (only && kind !== only) continue;
  for (const level of DEGRADATIONS[kind].levels) {
    const tally = { measured: 0, asked: 0, refused: 0, wrong: 0 };
    const errors = { selvedge: [] as number[], fell: [] as number[] };
    const sigmas = { selvedge: [] as number[], fell: [] as number[] };
    let read = 0;
    let ends = 0;
    for (const [index, name] of names.entries()) {
      const stem = join(root, 'tests/fixtures/photos', name);
      const { jpeg, brief, truth } = await degrade(stem, kind, level, index + 1);
      const reading = measure(await decodePhoto(jpeg), pieceOf(brief));
      if (reading.status !== 'measured') {
        tally[reading.status === 'refused' ? 'refused' : 'asked']++;
        continue;
      }
      tally.measured++;
      if (wrongFigures(reading, truth).length > 0) tally.wrong++;
      ends += truth.ends.filter((end) => end.fell_mm !== null).length;
      for (const figure of figureErrors(reading, truth)) {
        errors[figure.kind].push(Math.abs(figure.error));
        sigmas[figure.kind].push(figure.sigma);
        if (figure.kind === 'fell') read++;
      }
    }
    const point: DegradationPoint = {
      kind,
      level,
      photographs: names.length,
      ...tally,
      selvedge: median(errors.selvedge),
      selvedgeSigma: median(sigmas.selvedge),
      fell: median(errors.fell),
      fellSigma: median(sigmas.fell),
    };
    points.push(point);
    console.log(
      `${kind.padEnd(10)} ${String(level).padStart(5)}  ${String(tally.measured).padStart(8)} ${String(tally.asked).padStart(5)} ${String(tally.refused).padStart(7)} ${String(tally.wrong).padStart(5)}   ${shown(point.selvedge)} ± ${shown(point.selvedgeSigma)}      ${shown(point.fell)} ± ${shown(point.fellSigma)}   ${ends ? `${Math.round((100 * read) / ends)} %` : '–'}`,
    );
  }
}
if (!only) {
  mkdirSync(join(root, 'docs'), { recursive: true });
  writeFileSync(join(root, 'docs/degradations.svg'), degradationPlot(points));
  console.log('Drawn to docs/degradations.svg.');
}
