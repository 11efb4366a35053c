import { useState } from 'react';
import type { Problem } from '../../../core/model/outcome.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { chooseFile } from '../../parts/useFileDrop.ts';
import { duplicatePiece, exportPiece, importPiece } from '../../state/pieceActions.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useWords } from '../../words/useWords.ts';
import { useChecks } from '../check/checkStore.ts';

interface RecordActionsProps {
  readonly check: string | null;
  readonly onOpen: () => void;
  readonly onNote: () => void;
  readonly onTable: () => void;
  readonly onShare: () => void;
  readonly onSaid: (words: string | null) => void;
}

/** What is done seldom: a note, the check again, one file, a copy, another file in, and throwing a check away. */
export function RecordActions({ check, onOpen, onNote, onTable, onShare, onSaid }: RecordActionsProps) {
  const all = useWords();
  const words = all.record;
  const { key, piece } = usePiece();
  const [sure, setSure] = useState(false);
  const run = (act: () => Promise<Problem | null>) =>
    void act().then((trouble) => onSaid(trouble === null ? null : `${trouble.sentence} ${trouble.remedy}`));
  if (key === null || piece === null) return null;
  return (
    <div className="record-actions">
      {check !== null && <QuietButton onPress={onOpen}>{words.openCheck}</QuietButton>}
      {check !== null && <QuietButton onPress={onShare}>{all.check.share}</QuietButton>}
      <QuietButton onPress={onNote}>{words.addNote}</QuietButton>
      {check !== null && <QuietButton onPress={onTable}>{words.table}</QuietButton>}
      <QuietButton onPress={() => run(() => exportPiece(key))}>{words.keepFile}</QuietButton>
      <QuietButton onPress={() => run(() => duplicatePiece(key, all.shell.copyName(piece.name)))}>
        {words.copy}
      </QuietButton>
      <QuietButton onPress={() => chooseFile('.zip,.plumbweft', (file) => run(() => importPiece(file)))}>
        {words.importPiece}
      </QuietButton>
      {check !== null && <QuietButton onPress={() => setSure(true)}>{words.throwAway}</QuietButton>}
      {sure && check !== null && (
        <SheetDialog title={words.throwAwaySure} onClose={() => setSure(false)} place="top">
          <p>{words.throwAwayWhat}</p>
          <div className="record-actions">
            <QuietButton onPress={() => setSure(false)}>{all.shell.cancel}</QuietButton>
            <QuietButton
              onPress={() => {
                setSure(false);
                void useChecks.getState().discard(check);
              }}
            >
              {words.throwAway}
            </QuietButton>
          </div>
        </SheetDialog>
      )}
    </div>
  );
}
