/** Does one thing with a large piece and tells how long it took and how much memory. */
import { writeSync } from 'node:fs';
import { exportPiece } from '../../src/main/exchange/exportPiece.ts';
import { summariseCheck } from '../../src/main/service/checkSummary.ts';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { writeZip } from '../../src/main/service/writeZip.ts';
import { checkIds, readCheck } from '../../src/main/store/checkStore.ts';
import { photoNames } from '../../src/main/store/photoStore.ts';
import { openPieceFolder } from '../../src/main/store/pieceHandle.ts';
import { thisProcess } from '../../src/main/store/thisProcess.ts';
import { verifyPiece } from '../../src/main/store/verifyPiece.ts';

const [what, folder, zip] = process.argv.slice(2) as [string, string, string];
const store = realStorePorts();
const owner = thisProcess('large');
const begun = performance.now();
let of = 0;

switch (what) {
  case 'open': {
    const opened = await openPieceFolder(store, folder, owner);
    if (!opened.ok) throw new Error(opened.problem.sentence);
    await opened.value.handle.lock?.release();
    break;
  }
  case 'list': {
    for (const id of await checkIds(store, folder)) {
      const read = await readCheck(store, folder, id);
      if (!read.ok) throw new Error(read.problem.sentence);
      summariseCheck(read.value.record);
      of++;
    }
    break;
  }
  case 'verify': {
    const verified = await verifyPiece(store, folder, owner, false);
    if (!verified.ok) throw new Error(verified.problem.sentence);
    const wrong = verified.value.findings.find(({ state }) => state !== 'whole');
    if (wrong !== undefined) throw new Error(wrong.what);
    of = verified.value.checks;
    break;
  }
  default: {
    const written = await writeZip({ store }, zip, exportPiece(store, folder, { keepPlaces: what === 'export' }));
    if (!written.ok) throw new Error(written.problem.sentence);
    of = (await checkIds(store, folder)).length + (await photoNames(store, folder)).length;
  }
}
const peakMb = Math.round(process.resourceUsage().maxRSS / 1000);
writeSync(1, JSON.stringify({ ms: performance.now() - begun, peakMb, of }));
process.exit(0);
