import type { Answer, CallName, OpenedPiece } from '../../core/contract/hostApi.ts';
import type { Outcome, Problem } from '../../core/model/outcome.ts';
import { host } from '../host/currentHost.ts';
import { fileBytes } from '../host/fileBytes.ts';
import { usePiece } from './pieceStore.ts';
import { type ScreenName, useShell } from './shellStore.ts';

type Opening = Extract<
  CallName,
  'takeOverPiece' | 'openPiece' | 'openSample' | 'createPiece' | 'duplicatePiece' | 'importPiece'
>;

/** Takes the answer of any call that opens a piece; what was open is saved and closed first. */
async function take(ask: () => Promise<Outcome<Answer<Opening>>>, screen: ScreenName): Promise<Problem | null> {
  const before = usePiece.getState();
  await before.saveNow();
  const answer = await ask();
  if (!answer.ok) return answer.problem;
  const opened: OpenedPiece = answer.value.result;
  if (before.key !== null && before.key !== opened.key) await host().call('closePiece', { key: before.key });
  usePiece.getState().open(opened);
  useShell.getState().goTo(screen);
  return null;
}

export const openSample = () => take(() => host().call('openSample', {}), 'piece');
export const openPiece = (key: string) =>
  key === usePiece.getState().key ? readAnew() : take(() => host().call('openPiece', { key }), 'piece');
export const createPiece = (piece: OpenedPiece['piece']) => take(() => host().call('createPiece', { piece }), 'piece');
export const duplicatePiece = (key: string, name: string) =>
  take(() => host().call('duplicatePiece', { key, name }), 'piece');
export const importPiece = async (file: File) => {
  const bytes = await fileBytes(file);
  return bytes.ok ? take(() => host().call('importPiece', { name: file.name }, bytes.value), 'piece') : bytes.problem;
};

/** Reads the open piece anew and stays on the screen: another program may have changed it, or let it go. */
async function reopen(call: 'openPiece' | 'takeOverPiece'): Promise<Problem | null> {
  const { screen } = useShell.getState();
  const { key, saveNow } = usePiece.getState();
  if (key === null) return null;
  // The host counts how often a piece was opened, and keeps its lock until as many have closed it.
  await saveNow();
  await host().call('closePiece', { key });
  return take(() => host().call(call, { key }), screen);
}
export const readAnew = () => reopen('openPiece');
/** Takes a lock that was left behind; while its owner still runs, the piece stays as it is and says so. */
export const takeOver = () => reopen('takeOverPiece');

/** Electron's folder dialog; nothing happens when the weaver leaves it. */
export async function choosePieceFolder(): Promise<Problem | null> {
  const answer = await host().call('choosePieceFolder', {});
  if (!answer.ok) return answer.problem;
  const opened = answer.value.result;
  if (opened === null) return null;
  return take(async () => ({ ok: true, value: { result: opened, bytes: null } }), 'piece');
}

/**
 * The open piece as one file, handed over as a download or by the system's dialog. It may be sent to others, so what
 * photographs say of where they were taken stays here; whoever wants that in it says so on the command line.
 */
export async function exportPiece(key: string): Promise<Problem | null> {
  await usePiece.getState().saveNow();
  const answer = await host().call('exportPiece', { key, keepPlaces: false });
  if (!answer.ok) return answer.problem;
  return handOver(answer.value.result.name, answer.value.bytes, 'application/zip');
}

/** Gives bytes to the weaver: the system's own dialog where there is one, else the browser's download. */
export async function handOver(name: string, bytes: Uint8Array | null, type: string): Promise<Problem | null> {
  if (bytes === null) return null;
  const saved = await host().call('saveFile', { name }, bytes);
  if (!saved.ok) return saved.problem;
  if (saved.value.result !== null) return null;
  const address = URL.createObjectURL(new Blob([bytes.slice()], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
  return null;
}
