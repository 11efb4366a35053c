import { inBothUnits } from '../model/bothUnits.ts';
import { type LengthUnits, lengthInWords } from '../model/lengthWords.ts';
import type { Expected } from './expected.ts';
import { lookAt, refusal, type Sought } from './refusal.ts';

/** What differs from the plan by a smaller share is as planned: so finely a size is told by lines and strings. */
const AS_PLANNED = 0.025;
/** Width and height that are off by shares as alike as this are off alike. */
const OFF_ALIKE = 0.03;

/** Says which opening is seen about strings of the planned pitch; null where it is the planned one. */
export function openingDiffers(plan: Expected, seen: Expected): Sought<never> | null {
  const wide = seen.openingWidth / plan.openingWidth;
  const high = seen.openingHeight / plan.openingHeight;
  const asPlanned = (share: number): boolean => Math.abs(share - 1) < AS_PLANNED;
  if (asPlanned(wide) && asPlanned(high)) return null;
  // Strings are all that tells a frame's size: what makes all of it larger may as well make their pitch smaller.
  if (Math.abs(Math.log(wide / high)) < OFF_ALIKE) return openingOrPitch(plan, Math.sqrt(wide * high));
  const differs = refusal(
    'references-disagree',
    inBothUnits((units) => {
      const [width, height, seenWidth, seenHeight] = inWords(
        [
          plan.openingWidth,
          plan.openingHeight,
          asPlanned(wide) ? plan.openingWidth : seen.openingWidth,
          asPlanned(high) ? plan.openingHeight : seen.openingHeight,
        ],
        units,
      );
      return `The plan has an opening of ${width} × ${height}; the picture shows about ${seenWidth} × ${seenHeight}.`;
    }),
    'Measure the opening’s width and height again and correct them in the plan; if they are right, take the picture without zoom.',
  );
  return lookAt(asPlanned(wide) ? 'openingHeight' : 'openingWidth', differs);
}

/**
 * Says that the opening or the pitch is another than planned, where the picture shows their proportion only.
 * @param larger how many times larger than planned the opening is if the pitch is as planned.
 */
export function openingOrPitch(plan: Expected, larger: number): Sought<never> {
  return refusal(
    'references-disagree',
    inBothUnits((units) => {
      const { openingWidth, openingHeight } = plan;
      const [width, height, seenWidth, seenHeight] = inWords(
        [openingWidth, openingHeight, larger * openingWidth, larger * openingHeight],
        units,
      );
      const [pitch, seenPitch] = [plan.pitch, plan.pitch / larger].map((one) =>
        lengthInWords(one, units, 'pass-height'),
      );
      return `Opening and strings don’t fit together: with notches ${pitch} apart the opening is about ${seenWidth} × ${seenHeight}, with an opening of ${width} × ${height} the notches are about ${seenPitch} apart.`;
    }),
    'Measure the opening, and the notch pitch over ten notches, correct in the plan what differs, then check again.',
  );
}

/** Says which pitch is seen in an opening that is as planned beyond doubt. @param seen mm. */
export const pitchDiffers = (plan: Expected, seen: number): Sought<never> =>
  refusal(
    'wrong-pitch',
    inBothUnits((units) => {
      const [seenPitch, planned] = [seen, plan.pitch].map((one) => lengthInWords(one, units, 'pass-height'));
      return `The strings stand ${seenPitch} apart; the plan's notches are ${planned} apart.`;
    }),
    'Measure the notch pitch over ten notches and correct it in the plan, then check again.',
  );

const inWords = (lengths: readonly number[], units: LengthUnits): string[] =>
  lengths.map((one) => lengthInWords(one, units));
