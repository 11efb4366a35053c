import type { IpcMain, IpcMainInvokeEvent } from 'electron';
import { CALL_CHANNEL } from '../../core/contract/preloadBridge.ts';
import { failure } from '../../core/model/outcome.ts';
import type { HostService } from '../service/service.ts';
import { isOwnPage } from './appProtocol.ts';

/** Whether a question comes from the main frame of a page of ours. */
export function isOwnSender(event: Pick<IpcMainInvokeEvent, 'senderFrame'>): boolean {
  const frame = event.senderFrame;
  return frame !== null && frame.parent === null && isOwnPage(frame.url);
}

const refused = failure('not-allowed', 'Only the program’s own page may ask.', 'Close the window and start again.');
const misshapen = failure('not-as-agreed', 'The page asked in a way that is not understood.', 'Load the page again.');

/** Answers the page's calls: sender first, then shape, then the service checks name and parameters. */
export function answerCalls(ipc: IpcMain, service: Pick<HostService, 'call'>): void {
  ipc.handle(CALL_CHANNEL, async (event, name: unknown, params: unknown, bytes: unknown) => {
    if (!isOwnSender(event)) return refused;
    if (typeof name !== 'string' || name.length > 64) return misshapen;
    if (bytes !== null && !(bytes instanceof Uint8Array)) return misshapen;
    return service.call(name, params, bytes);
  });
}
