import './stageFoot.css';
import { useWords } from '../../words/useWords.ts';
import type { LayerName, Layers } from './layers.ts';

interface StageFootProps {
  readonly layers: Layers;
  readonly onToggle: (layer: LayerName) => void;
  readonly asTaken: boolean;
  readonly onAsTaken: (asTaken: boolean) => void;
  readonly fell: boolean;
  readonly onFell: (fell: boolean) => void;
  readonly rendered: boolean;
  readonly zoomed: boolean;
  readonly onWhole: () => void;
}

/** Under the photograph: further marks, the fell by itself, and front-on or as taken. */
export function StageFoot(props: StageFootProps) {
  const words = useWords().check;
  const toggle = (name: string, on: boolean, press: () => void) => (
    <button key={name} type="button" aria-pressed={on} onClick={press}>
      {name}
    </button>
  );
  return (
    <div className="stage-foot">
      {(['strings', 'ribs', 'colours'] as const).map((layer) =>
        toggle(words.layers[layer], props.layers[layer], () => props.onToggle(layer)),
      )}
      {toggle(words.fellStrip, props.fell, () => props.onFell(!props.fell))}
      {toggle(words.asTaken, props.asTaken, () => props.onAsTaken(!props.asTaken))}
      {props.zoomed && (
        <button type="button" onClick={props.onWhole}>
          {words.whole}
        </button>
      )}
      {props.rendered && <span className="stage-rendered">{words.rendered}</span>}
    </div>
  );
}
