import type { EndReading } from '../model/check.ts';

/** Straight pieces a bowed string is drawn with: a bow of 3 mm then looks round. */
const STEPS = 8;

/**
 * A bare string as it was measured, cloth frame, mm: from where its end is at the fell, along its bow, to the notch it
 * hangs in at the top bar. Empty where one of these was not seen.
 * @param ends all ends of the reading. @param topY height of the notches at the top bar, mm.
 */
export function stringCourse(
  end: EndReading,
  ends: readonly EndReading[],
  topY: number,
): readonly { readonly x: number; readonly y: number }[] {
  const hangs = end.runsTo === null || end.runsTo === end.index ? end : ends.find(({ index }) => index === end.runsTo);
  const notch = hangs?.notchX ?? null;
  if (notch === null || end.fell === null || end.xAtFell === null) return [];
  const from = { x: end.xAtFell.value, y: end.fell.value };
  const bow = end.bow?.value ?? 0;
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const share = step / STEPS;
    const x = from.x + (notch.value - from.x) * share + bow * 4 * share * (1 - share);
    return { x, y: from.y + (topY - from.y) * share };
  });
}
