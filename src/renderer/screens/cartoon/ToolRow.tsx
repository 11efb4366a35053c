import type { Piece } from '../../../core/model/piece.ts';
import { chooseFile } from '../../parts/useFileDrop.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useWords } from '../../words/useWords.ts';
import { addHere } from './addHere.ts';
import { bringInDrawing } from './bringIn.ts';
import { type Tool, useCartoon } from './cartoonStore.ts';

const tools: readonly Tool[] = ['select', 'polygon', 'rectangle', 'ellipse', 'band', 'arch', 'freehand'];
const placed: ReadonlySet<Tool> = new Set(['rectangle', 'ellipse', 'band', 'arch']);

interface ToolRowProps {
  readonly piece: Piece;
  readonly onTold: (sentences: readonly string[]) => void;
}

/** Tools as words. Enter on a form that is dragged puts one on the middle of the cloth instead. */
export function ToolRow({ piece, onTold }: ToolRowProps) {
  const words = useWords().cartoon;
  const { tool, setTool, choose } = useCartoon();
  const change = usePiece((state) => state.change);
  const bring = async (file: File) => {
    const read = await bringInDrawing(file, piece, words.guess);
    if (!read.ok) return onTold([`${read.problem.sentence} ${read.problem.remedy}`]);
    change((now) => ({ ...now, shapes: [...read.value.shapes, ...now.shapes] }));
    choose(read.value.shapes[0]?.id ?? null);
    if (read.value.told.length > 0) onTold(read.value.told);
  };
  return (
    <div className="tool-row" role="toolbar" aria-label={words.toolRow}>
      {tools.map((name) => (
        <button
          key={name}
          type="button"
          aria-pressed={tool === name}
          className={tool === name ? 'tool is-chosen' : 'tool'}
          onClick={() => setTool(name)}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' || !placed.has(name)) return;
            event.preventDefault();
            addHere.put(piece, name as 'rectangle' | 'ellipse' | 'band' | 'arch');
          }}
        >
          {words.tools[name]}
        </button>
      ))}
      <button
        type="button"
        className="tool"
        onClick={() => chooseFile('.svg,image/svg+xml', (file) => void bring(file))}
      >
        {words.drawingFile}
      </button>
    </div>
  );
}
