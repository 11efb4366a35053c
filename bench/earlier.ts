import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { loadPhoto, loadPiece } from '../scripts/photo/loadPhoto.ts';
import { trueLoomToPhoto } from '../scripts/photo/trueCamera.ts';
import type { FittedLens } from '../src/core/model/check.ts';
import type { EarlierLoom } from '../src/core/photo/earlierLoom.ts';
import { referToEarlier } from '../src/core/photo/earlierReference.ts';
import { expectedOf } from '../src/core/photo/expected.ts';
import { lensOfFit } from '../src/core/photo/knownLens.ts';
import { locateLoom } from '../src/core/photo/locateLoom.ts';
import type { LoomOptions } from '../src/core/photo/locateOptions.ts';
import { toLoom } from '../src/core/photo/loomPose.ts';
import { matchViews } from '../src/core/photo/matchViews.ts';
import { measureCloth } from '../src/core/photo/measureCloth.ts';
import { matchCorners } from '../src/main/vision/cvPort.ts';
import { turnedOver } from '../tests/support/earlierScenes.ts';

/**
 * `earlier.ts DIR A,B A,B,m …`: pictures B placed by the check of picture A, against B's truth; `m` turns B over first.
 * For each: what is said without A, what with it, and the errors of pose, fells and selvedges in mm and in their sigmas.
 */
const [dir = '', ...asked] = process.argv.slice(2);
const shown = asked.includes('--trace') ? (line: string) => console.log(`    ${line}`) : undefined;
interface Known {
  readonly name: string;
  readonly earlier: EarlierLoom;
  readonly lens: FittedLens;
}
let known = null as Known | null;

interface Truth {
  readonly ends: readonly { readonly fell_mm: number | null }[];
  readonly selvedge: readonly {
    readonly y_mm: number;
    readonly left_mm: number | null;
    readonly right_mm: number | null;
  }[];
}
const z: number[] = [];
for (const pair of asked.filter((one) => !one.startsWith('--'))) {
  const [a = '', b = '', how] = pair.split(',');
  const file = (name: string, ending: string) => join(dir, `${name}.${ending}`);
  if (!existsSync(file(b, 'jpg')) || !existsSync(file(a, 'jpg'))) continue;
  const piece = loadPiece(file(a, 'brief.json'));
  const expected = expectedOf(piece);
  if (known?.name !== a) {
    const photo = await loadPhoto(file(a, 'jpg'));
    const located = locateLoom(photo, piece);
    if (!located.ok || located.value.tied === null) {
      console.log(`${a}: not measured, ${located.ok ? '' : located.problem.code}`);
      continue;
    }
    const { cloth } = measureCloth(photo, piece, located.value);
    const fells = cloth.ends.map(({ fell }) => (fell === null ? null : fell.value + expected.base));
    const { tied } = located.value;
    known = {
      name: a,
      earlier: { photo, ...tied, mirrored: false, fells, when: '2026-01-01T00:00:00.000Z' },
      lens: lensOfFit(tied, photo),
    };
  }
  const whole = await loadPhoto(file(b, 'jpg'));
  const photo = how === 'm' ? turnedOver(whole) : whole;
  const without = locateLoom(photo, piece);
  const lens = asked.includes('--lens') ? known.lens : null;
  const start = performance.now();
  const views = matchViews(photo, known.earlier, expected, false);
  const alike = matchCorners(views.before, views.now).map(({ before, now }) => views.lookAlike(before, now));
  const matched = performance.now();
  const referred = referToEarlier(photo, known.earlier, alike, expected, false, lens, shown);
  const done = performance.now();
  const options: LoomOptions = {
    earlier: () => (referred.ok ? referred.value : null),
    lens,
    ...(shown ? { trace: shown } : {}),
  };
  const found = referred.ok ? locateLoom(photo, piece, options) : without;
  const said = (one: typeof found) => (one.ok ? one.value.pose.reference.method : one.problem.code);
  console.log(
    `${pair}: without ${said(without)}, earlier ${referred.ok ? `wood ${referred.value.wood} cloth ${referred.value.cloth}` : `refused (${referred.problem.detail})`}, with ${said(found)}; ${Math.round(matched - start)} + ${Math.round(done - matched)} ms`,
  );
  if (!found.ok || !referred.ok) continue;
  for (const remark of found.value.remarks) console.log(`    ${remark.message}`);
  const { pose } = found.value;
  const truth = trueLoomToPhoto(file(b, 'truth.json'), file(b, 'brief.json'), photo);
  const half = (piece.warp.ends * piece.loom.notchPitch) / 2;
  const places = [-half, half].flatMap((x) => [0, 150].map((y) => [x, expected.base + y] as const));
  const off = places.map(([x, y]) => {
    const seen = truth.map(x, y);
    const at = toLoom(pose, seen.x, seen.y);
    const sigma = pose.sharedSigma(x, y);
    z.push((at.x - x) / sigma.x, (at.y - y) / sigma.y);
    return `${(at.x - x).toFixed(2)}±${sigma.x.toFixed(2)} ${(at.y - y).toFixed(2)}±${sigma.y.toFixed(2)}`;
  });
  console.log(`    pose ${off.join(', ')}`);
  const { cloth } = measureCloth(photo, piece, found.value);
  const { ends, selvedge } = JSON.parse(readFileSync(file(b, 'truth.json'), 'utf8')) as Truth;
  const errors: { what: string; off: number; z: number }[] = [];
  for (const { index, fell } of cloth.ends) {
    const true_ = ends[index]?.fell_mm;
    if (fell && true_ != null)
      errors.push({ what: 'fell', off: fell.value - true_, z: (fell.value - true_) / fell.sigma });
  }
  for (const row of cloth.selvedge) {
    const near = selvedge.find(({ y_mm }) => Math.abs(y_mm - row.y) < 0.6);
    for (const side of ['left', 'right'] as const) {
      const at = near?.[`${side}_mm`];
      const seen = row[side];
      if (seen && at != null) errors.push({ what: side, off: seen.value - at, z: (seen.value - at) / seen.sigma });
    }
  }
  for (const what of ['fell', 'left', 'right']) {
    const list = errors.filter((one) => one.what === what).sort((p, q) => Math.abs(p.off) - Math.abs(q.off));
    if (list.length === 0) continue;
    const worst = list[list.length - 1]!;
    const wrong = list.filter(
      (one) => (Math.abs(one.off) > 1.5 && Math.abs(one.z) > 3) || Math.abs(one.off) > 4,
    ).length;
    const middle = list[list.length >> 1]!;
    console.log(
      `    ${what}: ${list.length} read, median ${middle.off.toFixed(2)}, worst ${worst.off.toFixed(2)} (${worst.z.toFixed(1)} sigma), wrong ${wrong}`,
    );
  }
}
if (z.length > 0)
  console.log(
    `pose: root mean square ${Math.sqrt(z.reduce((s, v) => s + v * v, 0) / z.length).toFixed(2)} sigmas over ${z.length}`,
  );
