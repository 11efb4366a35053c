import { useCommandStore } from '../keys/commandStore.ts';
import { openPiece, readAnew } from '../state/pieceActions.ts';
import { usePiece } from '../state/pieceStore.ts';
import { host } from './currentHost.ts';

/** Things the host says without being asked: a menu command, a piece opened by its file, a change made elsewhere. */
export function followHost(): void {
  host().listen((event) => {
    switch (event.kind) {
      case 'command': {
        const lists = [...useCommandStore.getState().lists].reverse();
        for (const list of lists) {
          const command = list.commands.find((each) => each.id === event.command);
          if (command) return command.run();
        }
        return;
      }
      case 'open-piece':
        return void openPiece(event.key);
      case 'piece-changed-elsewhere':
        if (usePiece.getState().key === event.key) void readAnew();
        return;
      case 'job':
      case 'watched-photo':
        // The screen that waits for these listens for itself.
        return;
    }
  });
}
