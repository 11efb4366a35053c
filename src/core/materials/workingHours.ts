import { countInWords, numberInWords } from '../model/numberWords.ts';
import type { Piece } from '../model/piece.ts';
import type { Arithmetic, Block, Join } from '../model/plan.ts';

/** What materials and hours read of a block. */
export type WovenBlock = Pick<Block, 'order' | 'yarn' | 'rows' | 'continues'>;

/**
 * Shares of the time a pass takes: some is spent opening the shed and beating, whatever the width; the rest grows
 * with the ends crossed. These and the minutes below are common practice, no source; the weaver's own pace sets them.
 */
const fixedShare = 0.4;
const minutes = { perStart: 1, perTail: 1, perString: 0.5, perTwinedEnd: 0.25 } as const;

export interface WorkingHours {
  readonly weaving: number;
  readonly starts: number;
  readonly warping: number;
  readonly twining: number;
  readonly finishing: number;
  readonly total: number;
  readonly arithmetic: Arithmetic;
}

/** Rough hours, from the weaver's own passes a minute over the full width. */
export function workingHours(
  piece: Piece,
  blocks: readonly WovenBlock[],
  joins: readonly Join[],
  twiningRows: number,
): WorkingHours {
  const { warp, making } = piece;
  let rows = 0;
  let fullWidths = 0;
  for (const block of blocks) {
    for (const row of block.rows) {
      rows += 1;
      fullWidths += fixedShare + (1 - fixedShare) * ((Math.abs(row.to - row.from) + 1) / warp.ends);
    }
  }
  const starts = blocks.filter((block) => block.continues === null).length + joins.length;
  const strings = warp.ends * warp.stringsPerEnd;
  const hours = {
    weaving: fullWidths / making.passesPerMinute / 60,
    starts: (starts * minutes.perStart) / 60,
    warping: (strings * minutes.perString) / 60,
    twining: (twiningRows * warp.ends * minutes.perTwinedEnd) / 60,
    finishing: (2 * starts * minutes.perTail) / 60,
  };
  const total = hours.weaving + hours.starts + hours.warping + hours.twining + hours.finishing;
  const say = (value: number) => `${numberInWords(value, 1)} h`;
  return {
    ...hours,
    total,
    arithmetic: {
      title: 'Hours, roughly',
      lines: [
        { label: 'Warping', working: `${countInWords(strings, 'string')} × ½ minute`, result: say(hours.warping) },
        {
          label: 'Twining',
          working: `${countInWords(twiningRows, 'row')} of ${countInWords(warp.ends, 'end')} × ¼ minute`,
          result: say(hours.twining),
        },
        {
          label: 'Weaving',
          working: `${countInWords(rows, 'pass', 'passes')}, as long as ${numberInWords(fullWidths)} of full width, ÷ ${numberInWords(making.passesPerMinute, 1)} a minute`,
          result: say(hours.weaving),
        },
        { label: 'Starts and joins', working: `${numberInWords(starts)} × 1 minute`, result: say(hours.starts) },
        { label: 'Tails to tuck', working: `${numberInWords(2 * starts)} × 1 minute`, result: say(hours.finishing) },
        { label: 'Together', working: 'drawing, sewing and rest not counted', result: say(total) },
      ],
    },
  };
}
