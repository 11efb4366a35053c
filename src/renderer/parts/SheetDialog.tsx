import { type ReactNode, useEffect, useId, useRef } from 'react';
import './sheetDialog.css';
import { useWords } from '../words/useWords.ts';
import { Sign } from './Sign.tsx';

interface SheetDialogProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** Where it stands: at the left under the piece's name, at the right, or across the top. */
  readonly place?: 'left' | 'right' | 'top' | 'wide';
}

/** A sheet laid over the screen; Esc or a press outside takes it away, and the focus goes back where it was. */
export function SheetDialog({ title, onClose, children, place = 'right' }: SheetDialogProps) {
  const words = useWords().shell;
  const dialog = useRef<HTMLDialogElement>(null);
  const heading = useId();
  useEffect(() => {
    const element = dialog.current;
    if (element === null) return;
    const before = document.activeElement;
    element.showModal();
    // Where the weaver will type, when the sheet says so; else its first control.
    element.querySelector<HTMLElement>('[data-first]')?.focus();
    return () => {
      element.close();
      if (before instanceof HTMLElement) before.focus();
    };
  }, []);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Esc closes it, by the dialog's own cancel event.
    <dialog
      ref={dialog}
      className={`sheet-dialog is-${place}`}
      aria-labelledby={heading}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
      onClick={(event) => {
        if (event.target === dialog.current) onClose();
      }}
    >
      <div className="sheet-inside">
        <div className="sheet-head">
          <h2 id={heading}>{title}</h2>
        </div>
        {children}
        <button type="button" className="sheet-close" onClick={onClose}>
          <Sign name="close" size={18} />
          <span>{words.close}</span>
        </button>
      </div>
    </dialog>
  );
}
