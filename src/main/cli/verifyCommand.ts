import { verifyPiece } from '../store/verifyPiece.ts';
import type { CliPorts } from './cliPorts.ts';
import { type ExitCode, exitCodes } from './exitCodes.ts';
import { complainOf, say } from './say.ts';

/** `verify DIR [--mend]`: looks through a piece, mends what can be mended, says what can't. */
export async function verifyCommand(ports: CliPorts, folder: string, mend: boolean, json: boolean): Promise<ExitCode> {
  const verified = await verifyPiece(ports.store, ports.path(folder), ports.owner, mend);
  if (!verified.ok) {
    complainOf(verified.problem);
    return exitCodes.pieceTrouble;
  }
  const { findings, photos, checks } = verified.value;
  if (json) say(JSON.stringify({ photos, checks, findings }));
  else {
    for (const { what, remedy } of findings) say(`${what} ${remedy}`.trim());
    say(`${checks} checks and ${photos} photographs looked at.`);
  }
  return findings.some(({ state }) => state === 'mendable' || state === 'beyond-mending')
    ? exitCodes.pieceTrouble
    : exitCodes.done;
}
