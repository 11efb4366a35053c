import { z } from 'zod';
import type { LoomReading } from '../../core/model/check.ts';
import { fittedLensSchema } from '../../core/project/checkDocument.ts';
import type { DocumentKind } from '../../core/project/document.ts';
import { type OwnPorts, readOrBeginAnew, writeOwn } from './ownDocuments.ts';

const lensesSchema = z.strictObject({
  /** Newest first. */
  lenses: z.array(z.strictObject({ camera: z.string().min(1).max(300), lens: fittedLensSchema })).max(200),
});
export type RememberedLenses = z.output<typeof lensesSchema>;

const MOST = 200;

/**
 * What photographs showed of each camera's lens. A record of its own beside the settings: the program learns it, while
 * settings are what the weaver says and are written whole by whoever shows them.
 */
export const lensesDocument: DocumentKind<RememberedLenses> = {
  format: 'plumbweft-lenses',
  version: 1,
  migrations: [],
  body: lensesSchema,
  called: 'list of lenses',
};
const fileName = 'lenses.json';

export const readLenses = (ports: OwnPorts): Promise<RememberedLenses> =>
  readOrBeginAnew(ports, lensesDocument, fileName, { lenses: [] });

/**
 * Remembers the lens of a measured photograph for its camera. It was fitted with what was remembered before, weighed by
 * its uncertainty, unless the picture contradicted that: so it takes its place. Failing to keep it spoils nothing.
 */
export async function rememberLens(ports: OwnPorts, camera: string | null, reading: LoomReading): Promise<void> {
  const lens = reading.status === 'measured' ? reading.reference?.lens : null;
  if (camera === null || camera === '' || !lens) return;
  const { lenses } = await readLenses(ports);
  const others = lenses.filter((one) => one.camera !== camera);
  const kept = await writeOwn(ports, lensesDocument, fileName, {
    lenses: [{ camera, lens }, ...others].slice(0, MOST),
  });
  if (!kept.ok) ports.log.write('problem', `${kept.problem.tag}: ${kept.problem.sentence}`);
}
