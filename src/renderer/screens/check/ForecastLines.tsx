import './forecastLines.css';
import type { EdgeForecast } from '../../../core/compare/forecast.ts';
import { Sign } from '../../parts/Sign.tsx';
import { useTell } from '../../words/telling.ts';

/** Where the edges are going, said as a range; nothing where they keep to the plan. */
export function ForecastLines({ forecasts }: { readonly forecasts: readonly EdgeForecast[] }) {
  const tell = useTell();
  const said = forecasts.filter((each) => each.sentence !== null);
  if (said.length === 0) return null;
  return (
    <ul className="forecasts">
      {said.map((each) => (
        <li key={each.side}>
          <Sign name="watch" size={22} />
          <span>{tell(each.sentence ?? '')}</span>
        </li>
      ))}
    </ul>
  );
}
