import { useId, useState } from 'react';
import './noteSheet.css';
import type { Note } from '../../../core/model/piece.ts';
import { Choice } from '../../parts/Choice.tsx';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useWords } from '../../words/useWords.ts';

const kinds = ['note', 'warped', 'woven', 'finished'] as const satisfies readonly Note['kind'][];

/** A note for the timeline. Undo takes it away again. */
export function NoteSheet({ onClose }: { readonly onClose: () => void }) {
  const words = useWords().record;
  const [kind, setKind] = useState<(typeof kinds)[number]>('note');
  const [text, setText] = useState('');
  const field = useId();
  const add = () => {
    const note: Note = { id: crypto.randomUUID(), at: new Date().toISOString(), kind, text: text.trim() };
    usePiece.getState().change((piece) => ({ ...piece, notes: [...piece.notes, note] }));
    onClose();
  };
  return (
    <SheetDialog title={words.addNote} onClose={onClose} place="top">
      <form
        className="note-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (text.trim() !== '' || kind !== 'note') add();
        }}
      >
        <Choice
          label={words.noteKind}
          value={kind}
          options={kinds.map((value) => ({ value, words: value === 'note' ? words.note : words.kinds[value] }))}
          onChoose={setKind}
        />
        <label htmlFor={field}>{words.noteText}</label>
        <textarea
          id={field}
          rows={4}
          maxLength={10_000}
          value={text}
          data-first
          onChange={(event) => setText(event.target.value)}
        />
        <button type="submit" className="main-action">
          {words.keepNote}
        </button>
      </form>
    </SheetDialog>
  );
}
