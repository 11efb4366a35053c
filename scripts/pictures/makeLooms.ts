import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { randomScene } from './drawnLoom/randomScene.ts';
import { drawnLoom } from './drawnLoom.ts';

/** Use: npx tsx scripts/pictures/makeLooms.ts OUT COUNT SEED — writes photographs of drawn looms with brief and truth. */
const [out, countText, seedText] = process.argv.slice(2);
const count = Number(countText);
const seed = Number(seedText);
if (!out || !Number.isInteger(count) || !Number.isInteger(seed)) {
  console.error('Use: npx tsx scripts/pictures/makeLooms.ts OUT COUNT SEED');
  process.exit(2);
}
mkdirSync(out, { recursive: true });
for (let k = 0; k < count; k++) {
  const name = `p${String(seed + k).padStart(4, '0')}`;
  const started = performance.now();
  const { jpeg, brief, truth } = await drawnLoom(randomScene(name, seed + k));
  writeFileSync(join(out, `${name}.jpg`), jpeg);
  writeFileSync(join(out, `${name}.brief.json`), JSON.stringify(brief, null, 1));
  writeFileSync(join(out, `${name}.truth.json`), JSON.stringify(truth));
  console.log(`${name}: ${truth.ends.length} ends, ${((performance.now() - started) / 1000).toFixed(1)} s`);
}
