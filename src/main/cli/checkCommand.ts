import { basename } from 'node:path';
import type { LoomReading } from '../../core/model/check.ts';
import { passInRow } from '../../core/model/deviationWords.ts';
import type { LengthUnits } from '../../core/model/lengthWords.ts';
import type { Marks } from '../../core/model/marks.ts';
import { type Outcome, type Problem, success } from '../../core/model/outcome.ts';
import { checkJson } from '../../core/report/checkJson.ts';
import { inspectPhoto, tooManyBytes } from '../decode/inspectPhoto.ts';
import type { PhotoMetadata } from '../decode/photoMetadata.ts';
import { sha256 } from '../files/sha256.ts';
import { openLog } from '../log/log.ts';
import { earlierPhoto } from '../service/earlierPhoto.ts';
import { keepMeasured, newStamp } from '../service/keepMeasured.ts';
import { findPlaces } from '../service/places.ts';
import { refusedReading } from '../service/refusedReading.ts';
import { readSampleLabels } from '../service/sample.ts';
import { PHOTO_LIMIT } from '../store/layout.ts';
import { type OpenedFolder, openPieceFolder } from '../store/pieceHandle.ts';
import { readPiece } from '../store/readPiece.ts';
import { askVision } from '../vision/visionJobs.ts';
import type { CliPorts } from './cliPorts.ts';
import { type ExitCode, exitCodes } from './exitCodes.ts';
import { readMarks, type TypedMarks } from './readMarks.ts';
import { complain, complainOf, say } from './say.ts';

export interface CheckOptions {
  readonly marks: TypedMarks;
  readonly json: boolean;
  readonly keep: boolean;
}

const codeOf: Readonly<Record<LoomReading['status'], ExitCode>> = {
  measured: exitCodes.done,
  'needs-reference': exitCodes.needsPoints,
  refused: exitCodes.refused,
};

/** `check DIR PHOTO...`: measures photographs against the piece; ends with the worst of their codes. */
export async function checkCommand(
  ports: CliPorts,
  folder: string,
  photos: readonly string[],
  options: CheckOptions,
): Promise<ExitCode> {
  const read = readMarks(options.marks);
  if (!read.ok) {
    complainOf(read.problem);
    return exitCodes.wrongUse;
  }
  const marks = read.value;
  const target = ports.path(folder);
  const opened = options.keep ? await openForKeeping(ports, target) : await readPiece(ports.store, target);
  if (!opened.ok) {
    complainOf(opened.problem);
    return opened.problem.tag === 'not-a-piece' || opened.problem.tag === 'not-there'
      ? exitCodes.wrongUse
      : exitCodes.pieceTrouble;
  }
  const handle = 'handle' in opened.value ? (opened.value as OpenedFolder).handle : null;
  try {
    if (handle !== null && handle.readOnly !== null) {
      complain(handle.readOnly);
      return exitCodes.pieceTrouble;
    }
    let worst: ExitCode = exitCodes.done;
    for (const photo of photos) {
      const bytes = await readPhotoFile(ports, photo);
      if (bytes === null) {
        complain(`There is no photograph at ${photo} that can be read. Give the path of a picture file.`);
        return exitCodes.wrongUse;
      }
      const measured = await measure(ports, target, opened.value.piece, bytes, marks);
      const { reading } = measured;
      say(options.json ? JSON.stringify(checkJson(photo, reading)) : inWords(photo, reading, opened.value.piece.units));
      worst = Math.max(worst, codeOf[reading.status]) as ExitCode;
      if (handle !== null && reading.status === 'measured' && measured.bytes !== null) {
        const kept = await keep(ports, handle, photo, marks, { ...measured, bytes: measured.bytes });
        if (!kept.ok) {
          complainOf(kept.problem);
          return exitCodes.pieceTrouble;
        }
      }
    }
    return worst;
  } finally {
    await handle?.lock?.release();
  }
}

const openForKeeping = (ports: CliPorts, folder: string) => openPieceFolder(ports.store, folder, ports.owner);

interface Measuring {
  readonly reading: LoomReading;
  readonly metadata: PhotoMetadata;
  readonly bytes: Uint8Array | null;
}

/** A photograph's bytes, or why they aren't read; null when there is no such file. */
async function readPhotoFile(ports: CliPorts, photo: string): Promise<Outcome<Uint8Array> | null> {
  const path = ports.path(photo);
  try {
    const stat = await ports.store.files.stat(path);
    if (stat !== null && stat.size > PHOTO_LIMIT) return tooManyBytes(stat.size);
    return success(await ports.store.files.read(path, PHOTO_LIMIT));
  } catch {
    return null;
  }
}

async function measure(
  ports: CliPorts,
  folder: string,
  piece: OpenedFolder['piece'],
  read: Outcome<Uint8Array>,
  marks: Marks | null,
): Promise<Measuring> {
  const turnedAway = (problem: Problem): Measuring => ({
    reading: refusedReading(problem),
    metadata: { taken: null, camera: null },
    bytes: null,
  });
  if (!read.ok) return turnedAway(read.problem);
  const bytes = read.value;
  const inspected = inspectPhoto(bytes);
  if (!inspected.ok) return turnedAway(inspected.problem);
  const answered = await askVision<'measure'>(ports.worker, {
    kind: 'measure',
    bytes,
    piece,
    marks,
    camera: null,
    cameras: [],
    mirrored: null,
    lenses: [],
    earlier: await earlierPhoto(ports.store, folder, piece, sha256(bytes)),
  });
  return answered.ok ? { ...answered.value, bytes } : turnedAway(answered.problem);
}

async function keep(
  ports: CliPorts,
  handle: OpenedFolder['handle'],
  photo: string,
  marks: Marks | null,
  { reading, metadata, bytes }: Measuring & { readonly bytes: Uint8Array },
): Promise<Outcome<unknown>> {
  const places = findPlaces(ports.root);
  const labels = await readSampleLabels({ places, log: openLog(places.data, ports.store.now) });
  const hash = sha256(bytes);
  const rendered = labels.isRendered(hash);
  const measured = { hash, name: basename(photo), rendered, bytes, marks, metadata, reading };
  const kept = await keepMeasured(ports.store, handle, measured, '', newStamp(ports.store));
  if (kept.ok) complain(`Kept as check ${kept.value.id}.`);
  return kept;
}

/** A check in a few lines for a terminal. */
function inWords(photo: string, reading: LoomReading, units: LengthUnits): string {
  const lines = [`${photo}: ${reading.status}`];
  for (const reason of reading.reasons) lines.push(`  ${reason.message[units]} ${reason.remedy}`);
  if (reading.endsCounted !== null) lines.push(`  ends seen: ${reading.endsCounted}`);
  if (reading.pass !== null) {
    lines.push(`  a pass is ${passInRow(reading.pass, units)}`);
  }
  for (const flag of reading.flags) lines.push(`  ${flag.message[units]} ${flag.advice}`);
  if (reading.status === 'measured' && reading.flags.length === 0) lines.push('  Everything is where you planned it.');
  return lines.join('\n');
}
