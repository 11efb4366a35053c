import type { SelvedgeRow } from '../src/core/model/check.ts';
import { type Counted, readFinish2, weavep5Strings } from './realPictures.ts';

/**
 * Use: npx tsx bench/real.ts
 * Drives the stages on the real photographs from four points and a made-up piece that fits the picture: string count and
 * fell and narrowing against tests/fixtures/real/counts.md.
 */
const against = (name: string, { counted, byHand }: Counted): void =>
  console.log(
    `${name}: ${counted} strings counted, ${byHand} by hand (${(((counted - byHand) / byHand) * 100).toFixed(1)} %, bar 2 %)`,
  );

against('weavep5', await weavep5Strings());
const { strings, woven, endsRead, marks, errors, cloth } = await readFinish2();
against('finish2', strings);
const sizes = errors.map(Math.abs).sort((a, b) => a - b);
console.log(
  `finish2 fell: ${endsRead} of ${woven} ends read; at ${errors.length} of ${marks} marks: median |off| ${sizes[sizes.length >> 1]?.toFixed(1)} px, worst ${sizes.at(-1)?.toFixed(1)} px, ${sizes.filter((size) => size <= 2).length} within 2 px`,
);
const rows = cloth.selvedge.filter((row) => row.left && row.right);
const width = (row: SelvedgeRow | undefined): number => (row ? row.right!.value - row.left!.value : Number.NaN);
const lowest = rows.find((row) => row.y >= 1);
const last = rows.at(-1);
console.log(
  `finish2 narrowing: ${width(lowest).toFixed(1)} at ${lowest?.y} to ${width(last).toFixed(1)} at ${last?.y} (made-up mm), ${((1 - width(last) / width(lowest)) * 100).toFixed(1)} %; by hand 4.2 ± 0.5 %`,
);
for (const side of ['left', 'right'] as const) {
  const read = cloth.selvedge.flatMap((row) => (row[side] ? [`${row[side].value.toFixed(1)} at ${row.y}`] : []));
  console.log(`finish2 ${side}: ${read.length} of ${cloth.selvedge.length} rows read, ${read[0]} to ${read.at(-1)}`);
}
