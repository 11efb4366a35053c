import type { EndReading } from '../model/check.ts';
import type { ClothFrame } from './clothFrame.ts';
import type { SideReading } from './sideReading.ts';
import { median } from './statistics.ts';

/** Near the fell the outer ends' places are known; there both selvedges lie about equally far beyond them, mm. */
const KNOWN_BELOW_FELL = 10;
const OVERHANG_APART = 1.8;
/** They differ by this much as a rule, mm; of what goes beyond, so large a share is doubted. */
const OVERHANG_USUAL = 0.3;
const DOUBTED = 0.6;

/**
 * Where the two sides disagree on how far the weft reaches past the outer end, something hangs from the one that is
 * farther from the usual: it is not read there.
 */
export function agreeOnOverhang(
  left: readonly SideReading[],
  right: readonly SideReading[],
  ends: readonly EndReading[],
  frame: ClothFrame,
): { readonly left: readonly SideReading[]; readonly right: readonly SideReading[] } {
  const overhang = (rows: readonly SideReading[], index: number, sign: number): number | null => {
    const end = ends.find((one) => one.index === index);
    if (!end?.fell || !end.xAtFell) return null;
    const top = end.fell.value;
    const at = end.xAtFell.value;
    const near = rows.flatMap((row) => (row.x && row.y >= top - KNOWN_BELOW_FELL ? [sign * (row.x.value - at)] : []));
    return near.length > 0 ? median(near) : null;
  };
  const ofLeft = overhang(left, 0, -1);
  const ofRight = overhang(right, frame.ends - 1, 1);
  if (ofLeft === null || ofRight === null) return { left, right };
  const usual = frame.endHalf + 2 * frame.planPass;
  const apart = Math.abs(ofLeft - ofRight);
  const leftAstray = Math.abs(ofLeft - usual) > Math.abs(ofRight - usual);
  if (apart <= OVERHANG_APART) {
    const doubt = DOUBTED * Math.max(0, apart - OVERHANG_USUAL);
    const widened = (rows: readonly SideReading[]): SideReading[] =>
      rows.map((row) => (row.x ? { y: row.y, x: { ...row.x, sigma: Math.hypot(row.x.sigma, doubt) } } : row));
    return leftAstray ? { left: widened(left), right } : { left, right: widened(right) };
  }
  const hide = (rows: readonly SideReading[], index: number): SideReading[] => {
    const top = ends.find((one) => one.index === index)?.fell?.value ?? 0;
    return rows.map((row) => (row.y >= top - KNOWN_BELOW_FELL ? { y: row.y, x: null } : row));
  };
  return leftAstray ? { left: hide(left, 0), right } : { left, right: hide(right, frame.ends - 1) };
}
