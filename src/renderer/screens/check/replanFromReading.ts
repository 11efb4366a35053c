import type { LoomReading } from '../../../core/model/check.ts';
import { mm } from '../../../core/model/units.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useShell } from '../../state/shellStore.ts';

/** Takes the measured beat into the piece, as one step that can be undone, and opens the order of work it changes. */
export function replanFromReading(reading: LoomReading): void {
  const { pass } = reading;
  if (pass === null) return;
  usePiece.getState().change((piece) => ({
    ...piece,
    cloth: { ...piece.cloth, passHeight: mm(pass.value), passHeightSource: 'measured' },
  }));
  useShell.getState().goTo('order');
}
