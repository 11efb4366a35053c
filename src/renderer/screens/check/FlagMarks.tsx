import './flagMarks.css';
import type { Flag } from '../../../core/model/check.ts';
import type { LengthUnits } from '../../../core/model/lengthWords.ts';
import { useWords } from '../../words/useWords.ts';
import { apart } from './apart.ts';
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

/** How far beyond the picture a flag's height may lie for its mark to wait at the border, px. */
const NEAR = 34;

/** Numbered flags at the height they speak of, in the gap beside the photograph. */
export function FlagMarks({ flags, side, view, planHeight, units, chosen, onChoose }: FlagMarksProps) {
  const words = useWords().check;
  const placed = flags
    .map((flag, index) => ({ flag, index }))
    .filter(({ flag }) => flag.yMm !== null && (flag.side ?? 'right') === side)
    .map(({ flag, index }) => ({ flag, index, y: toScreenY(view, flag.yMm ?? 0) }))
    // A string's middle may lie above the planned piece: its mark waits at the upper border while the piece's top is seen.
    .filter(({ y }) => (y > -NEAR || toScreenY(view, planHeight) > 0) && y < view.height + NEAR)
    .sort((one, other) => one.y - other.y);
  const tops = apart(
    placed.map(({ y }) => y),
    view.height,
  );
  return (
    <div className={`flag-marks is-${side}`}>
      {placed.map(({ flag, index }, at) => (
        <button
          key={index}
          type="button"
          className={index === chosen ? 'flag-mark is-chosen' : 'flag-mark'}
          style={{ top: tops[at] }}
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
