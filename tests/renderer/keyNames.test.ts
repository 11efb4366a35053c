import { describe, expect, it } from 'vitest';
import { keyName } from '../../src/renderer/keys/keyNames.ts';

const press = (key: string, held: Partial<Record<'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey', boolean>> = {}) =>
  keyName({ key, ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, ...held });

describe('the name of a key', () => {
  it('is the letter, whatever its case', () => {
    expect(press('p')).toBe('P');
    expect(press('P', { shiftKey: true })).toBe('P');
  });
  it('keeps shift where it means something else', () => {
    expect(press('Z', { ctrlKey: true, shiftKey: true })).toBe('Ctrl+Shift+Z');
    expect(press('ArrowUp', { shiftKey: true })).toBe('Shift+ArrowUp');
    expect(press('?', { shiftKey: true })).toBe('?');
  });
  it('calls the space bar by its name and a command key Ctrl', () => {
    expect(press(' ')).toBe('Space');
    expect(press('1', { metaKey: true })).toBe('Ctrl+1');
  });
});
