import type { CheckRecord } from '../../core/model/check.ts';
import { success } from '../../core/model/outcome.ts';
import type { Piece } from '../../core/model/piece.ts';
import { readCheck } from '../store/checkStore.ts';
import { readPhoto } from '../store/photoStore.ts';
import { readPiece } from '../store/readPiece.ts';
import { askVision } from '../vision/visionJobs.ts';
import { answer, type Handlers } from './handlerTypes.ts';
import type { OpenPieces } from './openPieces.ts';
import { readSettings } from './ownDocuments.ts';
import type { ServicePorts } from './servicePorts.ts';

/** Fine enough for print, small enough for a sheet that is sent about. */
const REPORT_PHOTO = { width: 2_400, height: 2_400 };

interface SheetInput {
  readonly piece: Piece;
  readonly check: CheckRecord | null;
  /** The check's photograph, original bytes. */
  readonly bytes: Uint8Array | null;
}

/** Calls that make PDF sheets. */
export function sheetHandlers(ports: ServicePorts, pieces: OpenPieces): Handlers<'makeSheet'> {
  const { store, worker, log } = ports;
  return {
    async makeSheet({ key, sheet, paper, check: id }) {
      const given = await pieces.use<SheetInput>(key, async (handle) => {
        const read = await readPiece(store, handle.folder);
        if (!read.ok) return read;
        const { piece } = read.value;
        if (sheet !== 'report' || id === null) return success({ piece, check: null, bytes: null });
        const check = await readCheck(store, handle.folder, id);
        if (!check.ok) return check;
        const { record } = check.value;
        const photo = await readPhoto(store, handle.folder, record.photo.hash);
        if (!photo.ok) log.write('problem', `report without its photograph: ${photo.problem.tag}`);
        return success({ piece, check: record, bytes: photo.ok ? photo.value : null });
      });
      if (!given.ok) return given;
      const { piece, check, bytes } = given.value;
      const image =
        bytes === null ? null : await askVision<'image'>(worker, { kind: 'image', bytes, fit: REPORT_PHOTO });
      const photo = image?.ok ? image.value.jpeg : null;
      const { language } = await readSettings(ports);
      // Reading PDF's own libraries takes as long as half the program's start, so they wait until a sheet is asked for.
      const { makeSheet } = await import('../pdf/makeSheet.ts');
      const made = await makeSheet({ piece, sheet, paper, language, check, photo });
      return made.ok ? answer({ name: made.value.name }, made.value.bytes) : made;
    },
  };
}
