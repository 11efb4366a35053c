import './forecastLines.css';
import type { EdgeForecast } from '../../../core/compare/forecast.ts';
import type { LengthUnits } from '../../../core/model/lengthWords.ts';
import { Sign } from '../../parts/Sign.tsx';
import { useTell } from '../../words/telling.ts';

interface ForecastLinesProps {
  readonly forecasts: readonly EdgeForecast[];
  readonly units: LengthUnits;
}

/** Where the edges are going, said as a range; nothing where they keep to the plan. */
export function ForecastLines({ forecasts, units }: ForecastLinesProps) {
  const tell = useTell();
  const said = forecasts.flatMap(({ side, sentence }) => (sentence === null ? [] : [{ side, sentence }]));
  if (said.length === 0) return null;
  return (
    <ul className="forecasts">
      {said.map((each) => (
        <li key={each.side}>
          <Sign name="watch" size={22} />
          <span>{tell(each.sentence[units])}</span>
        </li>
      ))}
    </ul>
  );
}
