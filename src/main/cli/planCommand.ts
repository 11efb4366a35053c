import { readPiece } from '../store/readPiece.ts';
import type { CliPorts } from './cliPorts.ts';
import { type ExitCode, exitCodes } from './exitCodes.ts';
import { complain, complainOf } from './say.ts';

/** `plan DIR [--json]`: the whole plan, worked out from the piece. */
export async function planCommand(ports: CliPorts, folder: string, _json: boolean): Promise<ExitCode> {
  const read = await readPiece(ports.store, ports.path(folder));
  if (!read.ok) {
    complainOf(read.problem);
    return exitCodes.pieceTrouble;
  }
  complain("This build can't print plans yet. Use a build that can.");
  return exitCodes.pieceTrouble;
}
