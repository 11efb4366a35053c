import './legend.css';
import { useSettings } from '../../state/settingsStore.ts';
import { useWords } from '../../words/useWords.ts';
import type { LayerName, Layers } from './layers.ts';
import { ClothLine, Difference, DifferencePatterns, PlanLine } from './marks.tsx';

interface LegendProps {
  readonly layers: Layers;
  readonly onToggle: (layer: LayerName) => void;
}

function Key({ layer }: { readonly layer: LayerName | 'short' | 'past' }) {
  if (layer === 'plan') return <PlanLine d="M0 9H44" size={1} />;
  if (layer === 'cloth') return <ClothLine d="M2 9H42" size={1} />;
  return (
    <>
      <DifferencePatterns name={`legend-${layer}`} size={1} />
      <Difference d="M0 0H34V18H0Z" name={`legend-${layer}`} side={layer === 'past' ? 'past' : 'short'} />
    </>
  );
}

/** What each mark means; pressing one puts it away or brings it back. */
export function Legend({ layers, onToggle }: LegendProps) {
  const words = useWords().check;
  const large = useSettings((state) => state.settings.textSize) > 115;
  const entry = (layer: LayerName, marks: readonly ('plan' | 'cloth' | 'short' | 'past')[]) => (
    <button
      key={layer}
      type="button"
      className="legend-entry"
      aria-pressed={layers[layer]}
      onClick={() => onToggle(layer)}
    >
      {marks.map((mark) => (
        <span key={mark} className="legend-mark">
          <svg width={mark === 'plan' || mark === 'cloth' ? 44 : 34} height="18" aria-hidden="true">
            <Key layer={mark} />
          </svg>
          <span>{words.legend[mark]}</span>
        </span>
      ))}
    </button>
  );
  return (
    <fieldset className={large ? 'legend is-large' : 'legend'}>
      <legend className="out-of-sight">{words.legendLabel}</legend>
      {entry('plan', ['plan'])}
      {entry('cloth', ['cloth'])}
      {entry('difference', ['short', 'past'])}
    </fieldset>
  );
}
