import './keyCap.css';
import { useWords } from '../words/useWords.ts';

/** A key as drawn on a keyboard: `Ctrl+Z`, `ArrowUp`, `P`. */
export function KeyCap({ keys }: { readonly keys: string }) {
  const { keyNames } = useWords().shell;
  const shown = keys
    .split('+')
    .filter((part, index, all) => part !== '' || index === all.length - 1)
    .map((part) => (part === '' ? '+' : (keyNames[part] ?? part)));
  return <kbd className="key-cap">{shown.join(' ')}</kbd>;
}
