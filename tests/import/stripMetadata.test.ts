import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { decodePhoto } from '../../src/main/decode/decodePhoto.ts';
import { exportPiece } from '../../src/main/exchange/exportPiece.ts';
import { importPiece } from '../../src/main/exchange/importPiece.ts';
import { stripMetadata } from '../../src/main/exchange/stripMetadata.ts';
import { openZipSource } from '../../src/main/exchange/zipSource.ts';
import { sha256 } from '../../src/main/files/sha256.ts';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { keepCheck, readCheck } from '../../src/main/store/checkStore.ts';
import { addPhoto, type PhotoEnding, photoNames, readPhoto } from '../../src/main/store/photoStore.ts';
import { fixture, lanternFolder, someCheck } from '../support/pieces.ts';
import { quarters } from '../support/quarters.ts';
import { openForTest } from '../support/storeScript.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

const place = {
  IFD0: { Make: 'Maker', Model: 'Maker One', Artist: 'Somebody' },
  IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1', GPSLongitudeRef: 'E', GPSLongitude: '7/1 27/1 0/1' },
};
const picture = (format: 'jpeg' | 'png' | 'webp' | 'avif', orientation = 1) =>
  sharp(quarters.rgb, quarters.raw).withMetadata({ orientation }).withExifMerge(place).toFormat(format).toBuffer();

/** Everything a reader finds in the metadata, as text. */
async function found(bytes: Uint8Array): Promise<string> {
  const { exif, xmp, iptc } = await sharp(bytes).metadata();
  return Buffer.concat([exif, xmp, iptc].filter((part) => part !== undefined)).toString('latin1');
}

async function pixels(bytes: Uint8Array) {
  const decoded = await decodePhoto(bytes);
  if (!decoded.ok) throw new Error(decoded.problem.sentence);
  return { size: [decoded.value.width, decoded.value.height], hash: sha256(decoded.value.rgb) };
}

describe('taking places out of a photograph', () => {
  const kinds: readonly [string, () => Promise<Uint8Array>][] = [
    ['JPEG', () => picture('jpeg')],
    ['a turned JPEG', () => picture('jpeg', 6)],
    ['a mirrored JPEG', () => picture('jpeg', 7)],
    [
      'a JPEG with a film behind it',
      async () => Buffer.concat([await picture('jpeg'), Buffer.from('ftyp film with GPS 51.5 7.45')]),
    ],
    [
      'a many-pass JPEG',
      () => sharp(quarters.rgb, quarters.raw).withExif(place).jpeg({ progressive: true }).toBuffer(),
    ],
    ['PNG', () => picture('png')],
    ['a turned PNG', () => picture('png', 6)],
    ['WebP', () => picture('webp')],
    ['a turned WebP', () => picture('webp', 8)],
    ['AVIF', () => picture('avif')],
    ['HEIC', async () => readFileSync(fixture('pictures/quarters.heic'))],
    ['a turned HEIC', async () => readFileSync(fixture('pictures/quarters-turned.heic'))],
  ];
  test.each(kinds)('%s: the picture is the same to the last bit, and nothing is said any more', async (_what, make) => {
    const bytes = await make();
    const stripped = await stripMetadata(bytes);
    if (!stripped.ok) throw new Error(stripped.problem.sentence);
    expect(await pixels(stripped.value)).toEqual(await pixels(bytes));
    expect(await found(bytes)).toMatch(/Maker/);
    expect(await found(stripped.value)).not.toMatch(/Maker|Somebody/);
    const text = Buffer.from(stripped.value).toString('latin1');
    expect(text).not.toMatch(/Maker|Somebody|film with/);
  });

  test('a real photograph keeps its picture', async () => {
    const bytes = readFileSync(fixture('sequence/seq1.jpg'));
    const stripped = await stripMetadata(bytes);
    expect(stripped.ok && (await pixels(stripped.value))).toEqual(await pixels(bytes));
  });

  test('what can’t be cleaned is said, not passed on', async () => {
    expect(await stripMetadata(new TextEncoder().encode('not a picture at all'))).toMatchObject({
      problem: { tag: 'cannot-strip' },
    });
  });
});

test('an exported piece has no places in it unless they are kept on purpose, and its checks still find their photographs', async () => {
  const ports = realStorePorts();
  const home = temporaryFolder();
  await lanternFolder(join(home, 'piece'));
  const opened = await openForTest(ports, join(home, 'piece'));
  const pictures: [Uint8Array, PhotoEnding][] = [
    [await picture('jpeg'), 'jpg'],
    [await picture('png'), 'png'],
    // The same picture once more, told apart by its metadata alone.
    [Buffer.concat([await picture('jpeg'), Buffer.from('another film')]), 'jpg'],
    [readFileSync(fixture('pictures/quarters.heic')), 'heic'],
  ];
  for (const [index, [bytes, ending]] of pictures.entries()) {
    const added = await addPhoto(ports, opened.handle, bytes, ending);
    if (!added.ok) throw new Error(added.problem.sentence);
    await keepCheck(ports, opened.handle, someCheck(`c-${index}`, added.value));
  }
  for (const keepPlaces of [false, true]) {
    const parts: Uint8Array[] = [];
    for await (const part of exportPiece(ports, join(home, 'piece'), { keepPlaces })) parts.push(part);
    const zip = Buffer.concat(parts);
    expect(zip.toString('latin1').includes('Maker One')).toBe(keepPlaces);
    const source = await openZipSource(zip);
    const to = join(home, `back-${keepPlaces}`);
    if (!source.ok || !(await importPiece(ports, source.value, to)).ok) throw new Error('not brought in');
    expect(await photoNames(ports, to)).toHaveLength(keepPlaces ? 4 : 3);
    for (const index of pictures.keys()) {
      const check = await readCheck(ports, to, `c-${index}`);
      if (!check.ok) throw new Error(check.problem.sentence);
      const photo = await readPhoto(ports, to, check.value.record.photo.hash);
      if (!photo.ok) throw new Error(photo.problem.sentence);
      expect(/Maker One/.test(await found(photo.value))).toBe(keepPlaces);
    }
  }
});
