import { planPiece } from '../../core/plan/planPiece.ts';
import { planJson } from '../../core/report/planJson.ts';
import { readPiece } from '../store/readPiece.ts';
import type { CliPorts } from './cliPorts.ts';
import { type ExitCode, exitCodes } from './exitCodes.ts';
import { complainOf, say } from './say.ts';

/** `plan DIR [--json]`: the whole plan, worked out from the piece. */
export async function planCommand(ports: CliPorts, folder: string, json: boolean): Promise<ExitCode> {
  const read = await readPiece(ports.store, ports.path(folder));
  if (!read.ok) {
    complainOf(read.problem);
    return read.problem.tag === 'not-a-piece' ? exitCodes.wrongUse : exitCodes.pieceTrouble;
  }
  const { piece } = read.value;
  if (json) {
    say(planJson(piece).trimEnd());
    return exitCodes.done;
  }
  const plan = planPiece(piece);
  for (const block of plan.blocks) {
    say(`${block.order + 1}. ${block.name}`);
    for (const line of [...block.words, ...block.remarks]) say(`   ${line}`);
  }
  return exitCodes.done;
}
