import type { Piece } from '../../../core/model/piece.ts';
import { useWords } from '../../words/useWords.ts';
import { addHere } from './addHere.ts';
import { isStartingForm, type Tool, toolKeys, useCartoon } from './cartoonStore.ts';

const isCounted = (tool: Tool): boolean => tool !== 'select';

interface ToolRowProps {
  readonly piece: Piece;
  readonly onLettering: () => void;
  readonly onBringIn: () => void;
  readonly onOrnament: () => void;
}

/** Tools as words. Enter on a form that is dragged puts one on the middle of the cloth instead. */
export function ToolRow({ piece, onLettering, onBringIn, onOrnament }: ToolRowProps) {
  const words = useWords().cartoon;
  const { tool, setTool } = useCartoon();
  const sheet = (say: string, open: () => void) => (
    <button type="button" className="tool is-sheet" aria-haspopup="dialog" onClick={open}>
      {say}
    </button>
  );
  return (
    <div className="tool-row" role="toolbar" aria-label={words.toolRow}>
      {toolKeys.map(([name, key]) => (
        <button
          key={name}
          type="button"
          aria-pressed={tool === name}
          aria-keyshortcuts={key}
          title={isCounted(name) ? key : 'Esc'}
          className={tool === name ? 'tool is-chosen' : 'tool'}
          onClick={() => setTool(name)}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' || !isStartingForm(name)) return;
            event.preventDefault();
            addHere.put(piece, name, words.names[name]);
          }}
        >
          {isCounted(name) && (
            <span className="tool-key" aria-hidden="true">
              {key}
            </span>
          )}
          {words.tools[name]}
        </button>
      ))}
      <span className="tool-sheets">
        {sheet(words.lettering, onLettering)}
        {sheet(words.bringIn, onBringIn)}
        {sheet(words.ornament.tool, onOrnament)}
      </span>
    </div>
  );
}
