import { useEffect, useRef, useState } from 'react';

/** What the weaver lets fall on the window, or pastes. @returns whether something hangs over the window now. */
export function useFileDrop(take: (file: File) => void): boolean {
  const [over, setOver] = useState(false);
  const latest = useRef(take);
  latest.current = take;
  useEffect(() => {
    const carriesFile = (event: DragEvent) => event.dataTransfer?.types.includes('Files') === true;
    const onOver = (event: DragEvent) => {
      if (!carriesFile(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const onLeave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent) => {
      setOver(false);
      const file = event.dataTransfer?.files[0];
      if (file === undefined) return;
      event.preventDefault();
      latest.current(file);
    };
    const onPaste = (event: ClipboardEvent) => {
      const file = event.clipboardData?.files[0];
      if (file !== undefined) latest.current(file);
    };
    window.addEventListener('dragover', onOver);
    window.addEventListener('dragleave', onLeave);
    window.addEventListener('drop', onDrop);
    window.addEventListener('paste', onPaste);
    return () => {
      window.removeEventListener('dragover', onOver);
      window.removeEventListener('dragleave', onLeave);
      window.removeEventListener('drop', onDrop);
      window.removeEventListener('paste', onPaste);
    };
  }, []);
  return over;
}

/** Opens the system's own file choice. */
export function chooseFile(accept: string, take: (file: File) => void): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = accept;
  // In the page until it has answered: one that hangs nowhere can be swept away while its dialog is open.
  input.hidden = true;
  document.body.append(input);
  input.addEventListener('change', () => {
    const file = input.files?.[0];
    input.remove();
    if (file !== undefined) take(file);
  });
  input.addEventListener('cancel', () => input.remove());
  input.click();
}

export const photographTypes = '.jpg,.jpeg,.png,.webp,.heic,.heif,.avif';
export const isPhotograph = (name: string): boolean => /\.(jpe?g|png|webp|hei[cf]|avif)$/i.test(name);
export const isKeptPiece = (name: string): boolean => /\.zip$|\.plumbweft$/i.test(name);
