/**
 * A key press by one name: `Ctrl+Shift+Z`, `ArrowLeft`, `P`, `?`. Letters are upper case; Ctrl stands for the
 * command key on a Mac as well.
 */
export function keyName(event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>): string {
  const key = event.key === ' ' ? 'Space' : event.key.length === 1 ? event.key.toUpperCase() : event.key;
  const named = event.key.length > 1 || event.key === ' ';
  const letter = /^[A-Z]$/.test(key);
  const parts: string[] = [];
  if (event.ctrlKey || event.metaKey) parts.push('Ctrl');
  if (event.altKey) parts.push('Alt');
  // Shift is part of a sign already (`?`, `+`), but not of a letter with Ctrl, nor of a named key.
  if (event.shiftKey && (named || (letter && parts.length > 0))) parts.push('Shift');
  return [...parts, key].join('+');
}

/** Whether a press belongs to the field the weaver types in. */
export function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target.isContentEditable || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement) {
    return true;
  }
  return target instanceof HTMLInputElement && !['checkbox', 'radio', 'button', 'range'].includes(target.type);
}
