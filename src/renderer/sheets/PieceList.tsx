import { useEffect, useState } from 'react';
import type { Problem } from '../../core/model/outcome.ts';
import { TextField } from '../parts/Fields.tsx';
import { SheetDialog } from '../parts/SheetDialog.tsx';
import { Sign } from '../parts/Sign.tsx';
import { duplicatePiece, exportPiece, openPiece } from '../state/pieceActions.ts';
import { usePiece } from '../state/pieceStore.ts';
import { useRecent } from '../state/recentStore.ts';
import { useShell } from '../state/shellStore.ts';
import { pieceInWords } from '../words/pieceInWords.ts';
import { useWords } from '../words/useWords.ts';

/** The list under the piece's name: other pieces, a copy, one file, a new start, and how things look. */
export function PieceList() {
  const words = useWords().shell;
  const close = () => useShell.getState().openSheet(null);
  const { key, piece, change, close: closePiece } = usePiece();
  const { pieces, load } = useRecent();
  const [problem, setProblem] = useState<Problem | null>(null);
  useEffect(() => void load(), [load]);
  const others = pieces.filter((other) => other.key !== key);
  const run = (act: () => Promise<Problem | null>) => void act().then(setProblem);
  const leave = () => {
    closePiece();
    close();
  };
  return (
    <SheetDialog title={words.pieces} onClose={close} place="left">
      {problem !== null && (
        <p role="alert">
          {problem.sentence} {problem.remedy}
        </p>
      )}
      {piece !== null && (
        <TextField
          label={words.pieceName}
          value={piece.name}
          onChange={(name) => change((now) => ({ ...now, name }), 'name')}
        />
      )}
      <ul className="sheet-rows">
        <li>
          <button type="button" onClick={leave}>
            <Sign name="add" />
            <span className="row-words">{words.startPiece}</span>
          </button>
        </li>
        {key !== null && piece !== null && (
          <>
            <li>
              <button type="button" onClick={() => run(() => duplicatePiece(key, words.copyName(piece.name)))}>
                <Sign name="card" />
                <span className="row-words">{words.duplicate}</span>
              </button>
            </li>
            <li>
              <button type="button" onClick={() => run(() => exportPiece(key))}>
                <Sign name="open" />
                <span className="row-words">{words.exportPiece}</span>
              </button>
            </li>
          </>
        )}
        <li>
          <button type="button" onClick={() => useShell.getState().openSheet('words-and-keys')}>
            <Sign name="more" />
            <span className="row-words">{words.wordsAndKeys}</span>
            <span className="second">{words.looksToo}</span>
          </button>
        </li>
      </ul>
      <h3>{words.recent}</h3>
      {others.length === 0 && <p className="second">{words.noRecent}</p>}
      <ul className="sheet-rows">
        {others.map((other) => (
          <li key={other.key}>
            <button type="button" disabled={!other.available} onClick={() => run(() => openPiece(other.key))}>
              <span className="row-words">{other.name}</span>
              <span className="second">{other.available ? pieceInWords(other, pieces, words) : words.notFound}</span>
            </button>
          </li>
        ))}
      </ul>
    </SheetDialog>
  );
}
