/**
 * Development only: how far the located loom lies from the renderer's own camera, over the cloth, in mm.
 * Usage: npx tsx scripts/photo/poseError.ts NAME... (paths without .jpg)
 */
import { existsSync, readFileSync } from 'node:fs';
import { locateLoom } from '../../src/core/photo/locateLoom.ts';
import { toLoom } from '../../src/core/photo/loomPose.ts';
import { loadPhoto, loadPiece } from './loadPhoto.ts';
import { trueLoomToPhoto } from './trueCamera.ts';

const quantile = (values: number[], share: number): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
};

async function main(): Promise<void> {
  for (const name of process.argv.slice(2)) {
    const photo = await loadPhoto(`${name}.jpg`);
    const piece = loadPiece(`${name}.brief.json`);
    const begun = performance.now();
    const located = locateLoom(photo, piece, process.env.TRACE ? { trace: (line) => console.log('   ', line) } : {});
    const time = performance.now() - begun;
    const short = name.split('/').at(-1);
    if (!located.ok) {
      console.log(`${short} ${located.problem.code}: ${located.problem.message.mm} (${time | 0} ms)`);
      continue;
    }
    const { pose, endsCounted, tracks } = located.value;
    const truth = trueLoomToPhoto(`${name}.truth.json`, `${name}.brief.json`, photo);
    const half = (piece.warp.ends * piece.loom.notchPitch) / 2;
    const centre =
      (piece.warp.firstNotch + (piece.warp.ends - 1) / 2 - (piece.loom.notches - 1) / 2) * piece.loom.notchPitch;
    const errors: number[] = [];
    const ex: number[] = [];
    const ey: number[] = [];
    let within = 0;
    let n = 0;
    for (let i = -4; i <= 4; i++) {
      for (let j = 0; j <= 8; j++) {
        const x = centre + (i / 4) * half;
        const y = piece.cloth.baseAboveBottomBar + (j / 8) * piece.cloth.height;
        const seen = truth.map(x, y);
        const got = toLoom(pose, seen.x, seen.y);
        errors.push(Math.hypot(got.x - x, got.y - y));
        ex.push(got.x - x);
        ey.push(got.y - y);
        const sigma = pose.sharedSigma(x, y);
        n += 2;
        if (Math.abs(got.x - x) < 2 * sigma.x) within++;
        if (Math.abs(got.y - y) < 2 * sigma.y) within++;
      }
    }
    const middle = pose.sharedSigma(centre, piece.cloth.baseAboveBottomBar + piece.cloth.height / 2);
    const truthJson = existsSync(`${name}.truth.json`) ? JSON.parse(readFileSync(`${name}.truth.json`, 'utf8')) : null;
    const missing = truthJson?.ends.filter((end: { missing?: boolean }) => end.missing).length ?? 0;
    const said = tracks.filter((track) => track.why !== null).map((track) => track.end);
    console.log(
      `${short} median ${quantile(errors, 0.5).toFixed(2)} worst ${quantile(errors, 1).toFixed(2)}`,
      `x ${quantile(ex, 0.5).toFixed(2)} y ${quantile(ey, 0).toFixed(2)}..${quantile(ey, 1).toFixed(2)}`,
      `in 2σ ${((100 * within) / n).toFixed(0)}% σ ${middle.x.toFixed(2)},${middle.y.toFixed(2)}`,
      `k1 ${pose.lens.k1.toFixed(4)} (${(-truth.k1).toFixed(2)}) rms ${pose.reference.residualMm.toFixed(3)}`,
      `ends ${endsCounted}/${piece.warp.ends - missing} unseen [${said}] ${time | 0} ms`,
    );
  }
}

await main();
