import { inchesSaid } from '../../words/figures.ts';
import './heightAxis.css';
import type { LengthUnits } from '../../../core/model/lengthWords.ts';
import { type StageView, toClothY, toScreenY } from './stageView.ts';

/** Half the height of a figure, px. */
const HALF_A_FIGURE = 9;

/** Heights up the cloth, shared by strips and photograph. */
export function HeightAxis({
  view,
  units,
  label,
}: {
  readonly view: StageView;
  readonly units: LengthUnits;
  readonly label: string;
}) {
  const unit = units === 'mm' ? 1 : 25.4;
  const choices = units === 'mm' ? [1, 5, 10, 50, 100, 200] : [0.25, 1, 2, 4, 10];
  const step = (choices.find((each) => each * unit * view.scale >= 64) ?? choices.at(-1) ?? 1) * unit;
  const small = step / 5;
  const from = Math.ceil(toClothY(view, view.height) / small);
  const to = Math.floor(toClothY(view, 0) / small);
  const ticks = Array.from({ length: Math.max(0, to - from + 1) }, (_, index) => (from + index) * small);
  const isLarge = (value: number) => Math.abs(value / step - Math.round(value / step)) < 1e-6;
  /** A figure cut by the picture's top, under the unit, could not be read. */
  const hasFigure = (value: number) => isLarge(value) && toScreenY(view, value) >= HALF_A_FIGURE;
  const figure = (value: number) =>
    units === 'mm' ? String(Math.round(value)) : inchesSaid(Math.abs(value) / 25.4, 16);
  return (
    <div className="height-axis" aria-hidden="true">
      <span className="height-axis-unit">{label}</span>
      <div className="height-axis-box">
        {ticks
          .filter((value) => value >= -1e-6)
          .map((value) => (
            <span
              key={value.toFixed(3)}
              className={isLarge(value) ? 'height-tick is-large' : 'height-tick'}
              style={{ top: toScreenY(view, value) }}
            >
              {hasFigure(value) ? figure(value) : ''}
            </span>
          ))}
      </div>
    </div>
  );
}
