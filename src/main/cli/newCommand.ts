import { mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import { parseBrief, pieceFromBrief } from '../../core/project/brief.ts';
import { createPiece } from '../store/createPiece.ts';
import { textOf } from '../store/readDocument.ts';
import type { CliPorts } from './cliPorts.ts';
import { type ExitCode, exitCodes } from './exitCodes.ts';
import { complain, complainOf, say } from './say.ts';

const BRIEF_LIMIT = 16 * 1024 * 1024;

/** `new --brief BRIEF.json DIR`: a piece folder from a flat description. */
export async function newCommand(ports: CliPorts, folder: string, briefPath: string): Promise<ExitCode> {
  let text: string;
  try {
    text = textOf(await ports.store.files.read(ports.path(briefPath), BRIEF_LIMIT));
  } catch {
    complain(`The description ${briefPath} can't be read. Give the path of a JSON file; the README lists its fields.`);
    return exitCodes.wrongUse;
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    complain(`The description ${briefPath} isn't JSON. Mend it and try again; the README lists its fields.`);
    return exitCodes.wrongUse;
  }
  const brief = parseBrief(value);
  if (!brief.ok) {
    complainOf(brief.problem);
    return exitCodes.wrongUse;
  }
  const target = ports.path(folder);
  try {
    await mkdir(dirname(target), { recursive: true });
  } catch {
    complain(`The folder ${dirname(folder)} can't be made. Choose a place you can write to.`);
    return exitCodes.pieceTrouble;
  }
  const made = await createPiece(ports.store, target, pieceFromBrief(brief.value, ports.store.now().toISOString()));
  if (!made.ok) {
    complainOf(made.problem);
    return made.problem.tag === 'name-taken' ? exitCodes.wrongUse : exitCodes.pieceTrouble;
  }
  const { warp, loom, cloth } = brief.value;
  const width = warp.ends * loom.notch_pitch_mm;
  say(`Made the piece "${brief.value.name}" in ${folder}.`);
  // Where the two disagree, ends × pitch is what is woven; it is said.
  if (Math.abs(width - cloth.width_mm) > 0.05) {
    say(
      `The description says ${cloth.width_mm} mm wide; ${warp.ends} ends × ${loom.notch_pitch_mm} mm make ${width.toFixed(1)} mm, and that is planned.`,
    );
  }
  return exitCodes.done;
}
