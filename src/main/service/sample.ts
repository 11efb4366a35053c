import { join } from 'node:path';
import { z } from 'zod';
import type { Outcome } from '../../core/model/outcome.ts';
import { openFolderSource } from '../exchange/folderSource.ts';
import { importPiece } from '../exchange/importPiece.ts';
import { nodeFiles } from '../files/nodeFiles.ts';
import { ensureTree } from './ensureTree.ts';
import { freeFolder } from './pieceLibrary.ts';
import type { ServicePorts } from './servicePorts.ts';

const labels = z.strictObject({
  note: z.string(),
  photos: z.array(z.strictObject({ hash: z.string(), name: z.string(), rendered: z.boolean() })),
});

/** What is said of the photographs that ship: they are rendered, and shown as rendered wherever they turn up. */
export interface SampleLabels {
  nameOf(hash: string): string | null;
  isRendered(hash: string): boolean;
}

/** The labels that ship with the sample. Without them nothing is called rendered that isn't known to be. */
export async function readSampleLabels(ports: Pick<ServicePorts, 'places' | 'log'>): Promise<SampleLabels> {
  let photos: z.output<typeof labels>['photos'] = [];
  try {
    const bytes = await nodeFiles.read(join(ports.places.sample, 'labels.json'), 1_000_000);
    photos = labels.parse(JSON.parse(new TextDecoder().decode(bytes))).photos;
  } catch (thrown) {
    ports.log.write('problem', `labels of the sample can't be read: ${thrown instanceof Error ? thrown.name : ''}`);
  }
  const byHash = new Map(photos.map((photo) => [photo.hash, photo]));
  return {
    nameOf: (hash) => byHash.get(hash)?.name ?? null,
    isRendered: (hash) => byHash.get(hash)?.rendered ?? false,
  };
}

/** Copies the sample piece to the weaver's own pieces; the one that ships is only read. */
export async function copySample(ports: ServicePorts): Promise<Outcome<string>> {
  await ensureTree(ports.places.pieces);
  const folder = await freeFolder(ports, 'Harbour lantern');
  const source = openFolderSource(nodeFiles, join(ports.places.sample, 'piece'));
  const copied = await importPiece(ports.store, source, folder);
  return copied.ok ? { ok: true, value: folder } : copied;
}
