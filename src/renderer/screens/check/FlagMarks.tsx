import './flagMarks.css';
import type { Flag } from '../../../core/model/check.ts';
import type { LengthUnits } from '../../../core/model/lengthWords.ts';
import { useWords } from '../../words/useWords.ts';
import { flagTitle } from './FlagList.tsx';
import { type StageView, toScreenY } from './stageView.ts';

interface FlagMarksProps {
  readonly flags: readonly Flag[];
  readonly side: 'left' | 'right';
  readonly view: StageView;
  /** Height of the planned piece, mm. */
  readonly planHeight: number;
  readonly units: LengthUnits;
  readonly chosen: number;
  readonly onChoose: (flag: number) => void;
}

/** Room one mark takes, px: marks nearer than this are pushed apart. */
const ROOM = 34;

/** Numbered flags at the height they speak of, in the gap beside the photograph. */
export function FlagMarks({ flags, side, view, planHeight, units, chosen, onChoose }: FlagMarksProps) {
  const words = useWords().check;
  const placed = flags
    .map((flag, index) => ({ flag, index }))
    .filter(({ flag }) => flag.yMm !== null && (flag.side ?? 'right') === side)
    .map(({ flag, index }) => ({ flag, index, y: toScreenY(view, flag.yMm ?? 0), at: toScreenY(view, flag.yMm ?? 0) }))
    // A string's middle may lie above the planned piece: its mark waits at the upper border while the piece's top is seen.
    .filter(({ y }) => (y > -ROOM || toScreenY(view, planHeight) > 0) && y < view.height + ROOM)
    .sort((one, other) => one.y - other.y);
  for (let at = 1; at < placed.length; at++) placed[at]!.at = Math.max(placed[at]!.at, placed[at - 1]!.at + ROOM);
  return (
    <div className={`flag-marks is-${side}`}>
      {placed.map(({ flag, index, at }) => (
        <button
          key={index}
          type="button"
          className={index === chosen ? 'flag-mark is-chosen' : 'flag-mark'}
          style={{ top: Math.min(Math.max(at, 14), view.height - 14) }}
          aria-label={words.flagMark(index + 1, flagTitle(flag, units))}
          aria-pressed={index === chosen}
          onClick={() => onChoose(index)}
        >
          {index + 1}
        </button>
      ))}
    </div>
  );
}
