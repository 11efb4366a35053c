import { createHash } from 'node:crypto';
import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checkDocument } from '../../src/core/project/checkDocument.ts';
import { serialiseDocument } from '../../src/core/project/document.ts';
import { pieceDocument } from '../../src/core/project/pieceDocument.ts';
import { importLimits } from '../../src/main/exchange/entrySource.ts';
import { exportPiece } from '../../src/main/exchange/exportPiece.ts';
import { openFolderSource } from '../../src/main/exchange/folderSource.ts';
import { importPiece } from '../../src/main/exchange/importPiece.ts';
import { openZipSource } from '../../src/main/exchange/zipSource.ts';
import { nodeFiles } from '../../src/main/files/nodeFiles.ts';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { failingFiles } from '../support/faultyFiles.ts';
import { lantern, someCheck } from '../support/pieces.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';
import { type RawEntry, rawZip } from '../support/zips.ts';

const ports = realStorePorts();
const sum = (data: string | Uint8Array) => createHash('sha256').update(data).digest('hex');
const bytes = (text: string) => new TextEncoder().encode(text);
const photo = bytes('a photograph, for what the import knows');
const hash = sum(photo);
const piece: RawEntry = { name: 'piece.json', bytes: bytes(serialiseDocument(pieceDocument, lantern(), 4, sum)) };
const kept: RawEntry = { name: `photos/${hash}.jpg`, bytes: photo };
const check: RawEntry = {
  name: 'checks/c-1.json',
  bytes: bytes(serialiseDocument(checkDocument, someCheck('c-1', hash), 1, sum)),
};
const good = [piece, kept, check];

/** Brings a zip in; afterwards the folder beside it holds the piece, or nothing at all. */
async function bring(zip: Uint8Array | string, home = temporaryFolder()) {
  const place = join(home, 'in');
  mkdirSync(place, { recursive: true });
  const source = await openZipSource(zip);
  if (!source.ok) return { tag: source.problem.tag as string, left: readdirSync(place), home };
  const brought = await importPiece(ports, source.value, join(place, 'piece'));
  return { tag: brought.ok ? 'ok' : brought.problem.tag, left: readdirSync(place), home };
}

test('a good zip comes in, alone or inside one folder, with what systems add left out', async () => {
  const ways = [
    good,
    good.map((entry) => ({ ...entry, name: `Harbour lantern/${entry.name}` })),
    [{ name: 'photos/', bytes: bytes(''), mode: 0o040_755 }, ...good],
    [...good.map((entry) => ({ ...entry, compress: true })), { name: '.DS_Store', bytes: bytes('x') }],
    [...good, { name: '__MACOSX/._piece.json', bytes: bytes('x') }, { name: 'Thumbs.db', bytes: bytes('x') }],
    good.map((entry) => ({ ...entry, name: `Nähstück ☂/${entry.name}` })),
    good.map((entry) => ({ ...entry, name: `Nähstück ☂/${entry.name}`.normalize('NFD') })),
  ];
  for (const entries of ways) {
    const { tag, left, home } = await bring(rawZip(entries));
    expect(tag).toBe('ok');
    expect(left).toEqual(['piece']);
    const folder = join(home, 'in/piece');
    expect(readFileSync(join(folder, kept.name as string)).equals(Buffer.from(photo))).toBe(true);
    expect(readdirSync(folder).sort()).toEqual(['checks', 'photos', 'piece.json', 'previous']);
  }
});

test('documents with other line ends or laid out anew are the same documents', async () => {
  const text = new TextDecoder().decode(piece.bytes);
  let line = 0;
  const mixed = text.replaceAll('\n', () => ['\n', '\r\n', '\r'][line++ % 3]!);
  for (const other of [text.replaceAll('\n', '\r\n'), mixed, text.replaceAll('\n', ''), `\ufeff${text}`]) {
    expect((await bring(rawZip([{ ...piece, bytes: bytes(other) }, kept, check]))).tag).toBe('ok');
  }
});

test('the name before an entry counts for nothing: it goes where the list at the end says', async () => {
  const { tag, left, home } = await bring(rawZip([piece, { ...kept, localName: '../../evil' }]));
  expect({ tag, left }).toEqual({ tag: 'ok', left: ['piece'] });
  expect(readdirSync(home)).toEqual(['in']);
  expect(readdirSync(join(home, 'in/piece/photos'))).toEqual([`${hash}.jpg`]);
});

describe('all or nothing: refused, and not a byte is left', () => {
  const cases: readonly [string, string, Uint8Array | (() => Uint8Array)][] = [
    ['a name that leads up', 'unsafe-entry', rawZip([...good, { name: '../evil.json', bytes: bytes('x') }])],
    [
      'a name that leads up from inside',
      'unsafe-entry',
      rawZip([...good, { name: 'photos/../../evil', bytes: bytes('x') }]),
    ],
    [
      'a name that leads up with backslashes',
      'unsafe-entry',
      rawZip([...good, { name: '..\\evil', bytes: bytes('x') }]),
    ],
    ['an absolute name', 'unsafe-entry', rawZip([...good, { name: '/tmp/evil', bytes: bytes('x') }])],
    ['a drive letter', 'unsafe-entry', rawZip([...good, { name: 'C:/evil', bytes: bytes('x') }])],
    ['a network place', 'unsafe-entry', rawZip([...good, { name: '\\\\server\\share\\x', bytes: bytes('x') }])],
    ['a device', 'unsafe-entry', rawZip([...good, { name: 'CON', bytes: bytes('x') }])],
    ['a device with an ending', 'unsafe-entry', rawZip([...good, { name: 'photos/nul.jpg', bytes: bytes('x') }])],
    ...['con', 'nul', 'aux', 'prn', 'com1', 'lpt9'].map((device): [string, string, Uint8Array] => [
      `the device ${device} in place of a check`,
      'unsafe-entry',
      rawZip([...good, { name: `checks/${device}.json`, bytes: check.bytes }]),
    ]),
    [
      'a folder in two Unicode forms',
      'unsafe-entry',
      rawZip([
        { ...piece, name: 'N\u00e4hst\u00fcck/piece.json' },
        { ...check, name: 'Na\u0308hstu\u0308ck/checks/c-1.json' },
      ]),
    ],
    ['a stream of another file', 'unsafe-entry', rawZip([...good, { name: 'piece.json:hidden', bytes: bytes('x') }])],
    ['a name with a null in it', 'unsafe-entry', rawZip([...good, { name: 'piece.json\0.jpg', bytes: bytes('x') }])],
    ['a trailing dot', 'unsafe-entry', rawZip([...good, { name: 'piece.json.', bytes: bytes('x') }])],
    ['a script', 'unsafe-entry', rawZip([...good, { name: 'run.sh', bytes: bytes('x'), mode: 0o100_755 }])],
    ['a link', 'unsafe-entry', rawZip([{ ...piece, mode: 0o120_777 }, kept])],
    [
      'a link out of the piece',
      'unsafe-entry',
      rawZip([...good, { name: 'photos', bytes: bytes('/etc'), mode: 0o120_777 }]),
    ],
    ['a socket', 'unsafe-entry', rawZip([...good, { name: 'photos/x', bytes: bytes(''), mode: 0o140_644 }])],
    ['names that differ in capitals', 'unsafe-entry', rawZip([...good, { name: 'PIECE.JSON', bytes: piece.bytes }])],
    [
      'the same name in another Unicode form',
      'unsafe-entry',
      rawZip([...good, { name: 'piece\u2024json', bytes: piece.bytes }]),
    ],
    ['the same file twice', 'double-entry', rawZip([piece, kept, piece])],
    ['two pieces', 'unsafe-entry', rawZip([...good, { ...piece, name: 'other/piece.json' }])],
    ['no piece', 'not-a-piece', rawZip([kept, check])],
    ['nothing', 'not-a-piece', rawZip([])],
    ['a name far too long', 'unsafe-entry', rawZip([...good, { name: 'x'.repeat(5_000), bytes: bytes('x') }])],
    ['a wrong CRC', 'damaged-entry', rawZip([piece, { ...kept, crc: 1 }])],
    ['a length too short', 'damaged-entry', rawZip([piece, { ...kept, compress: true, size: 3 }])],
    ['a length too long', 'damaged-entry', rawZip([piece, { ...kept, compress: true, size: 99 }])],
    ['a photograph that is another', 'damaged-entry', rawZip([piece, { ...kept, bytes: bytes('another') }])],
    [
      'broken packing',
      'damaged-entry',
      () => {
        const zip = rawZip([{ ...piece, compress: true }]);
        zip.fill(0xff, 45, 60);
        return zip;
      },
    ],
    ['a piece cut in half', 'incoming-damaged', rawZip([{ ...piece, bytes: piece.bytes.subarray(0, 900) }, kept])],
    ['a check under a wrong name', 'incoming-damaged', rawZip([piece, kept, { ...check, name: 'checks/c-2.json' }])],
    [
      'a check that was altered',
      'incoming-damaged',
      rawZip([piece, kept, { ...check, bytes: bytes(new TextDecoder().decode(check.bytes).replace('3.1', '0.1')) }]),
    ],
    [
      'a photograph that unpacks to gigabytes',
      'too-big',
      rawZip([piece, { ...kept, compress: true, size: 0x7fff_ffff }]),
    ],
    ['a password', 'zip-unreadable', rawZip([piece, { ...kept, flags: 0x801 }])],
    ['a text', 'zip-unreadable', bytes('this is a letter')],
    ['no bytes', 'zip-unreadable', new Uint8Array(0)],
    ['an end cut off', 'zip-unreadable', rawZip(good).subarray(0, 300)],
    ['a list that says more than there is', 'zip-unreadable', rawZip(good, { count: 9 })],
  ];
  test.each(cases)('%s: %s', async (_what, expected, zip) => {
    const { tag, left, home } = await bring(typeof zip === 'function' ? zip() : zip);
    expect({ tag, left }).toEqual({ tag: expected, left: [] });
    expect(readdirSync(home)).toEqual(['in']);
  });

  test('a password is said to be one', async () => {
    const source = await openZipSource(rawZip([piece, { ...kept, compress: true, flags: 0x801 }]));
    if (!source.ok) throw new Error(source.problem.sentence);
    const brought = await importPiece(ports, source.value, join(temporaryFolder(), 'piece'));
    expect(brought).toMatchObject({ ok: false, problem: { sentence: 'The zip is locked with a password.' } });
  });

  test('a bomb: packed small, unpacked beyond the limit of a document', async () => {
    const huge = Buffer.alloc(80 * 1024 * 1024, 32);
    const { tag, left } = await bring(rawZip([{ name: 'piece.json', bytes: huge, compress: true }]));
    expect({ tag, left }).toEqual({ tag: 'too-big', left: [] });
    // The same that lies about its length.
    const lying = await bring(rawZip([{ name: 'piece.json', bytes: huge, compress: true, size: 1_000 }]));
    expect({ tag: lying.tag, left: lying.left }).toEqual({ tag: 'damaged-entry', left: [] });
  });

  test('100 000 entries', async () => {
    const x = bytes('x');
    const many = Array.from({ length: 100_000 }, (_, index) => ({ name: `photos/${index}`, bytes: x }));
    const { tag, left } = await bring(rawZip([...good, ...many]));
    expect({ tag, left }).toEqual({ tag: 'too-many-entries', left: [] });
  });
});

describe('a folder', () => {
  const folderOf = (entries: readonly RawEntry[]) => {
    const folder = join(temporaryFolder(), 'from');
    for (const { name, bytes: content } of entries) {
      mkdirSync(join(folder, name as string, '..'), { recursive: true });
      writeFileSync(join(folder, name as string), content);
    }
    return folder;
  };
  const bringFolder = async (from: string) => {
    const to = join(temporaryFolder(), 'to');
    const brought = await importPiece(ports, openFolderSource(nodeFiles, from), to);
    return { tag: brought.ok ? 'ok' : brought.problem.tag, there: existsSync(to) };
  };

  test('comes in, without the lock of whoever has it open', async () => {
    const from = folderOf([...good, { name: '.lock', bytes: bytes('{}') }]);
    expect(await bringFolder(from)).toEqual({ tag: 'ok', there: true });
  });

  test('with a link in it is refused, and the link is not followed', async () => {
    const outside = join(temporaryFolder(), 'private');
    writeFileSync(outside, 'private');
    const from = folderOf([piece]);
    mkdirSync(join(from, 'photos'), { recursive: true });
    symlinkSync(outside, join(from, `photos/${hash}.jpg`));
    expect(await bringFolder(from)).toEqual({ tag: 'unsafe-entry', there: false });
    const linked = folderOf(good);
    renameSync(join(linked, 'checks'), join(linked, 'elsewhere'));
    symlinkSync(join(linked, 'elsewhere'), join(linked, 'checks'));
    expect(await bringFolder(linked)).toEqual({ tag: 'unsafe-entry', there: false });
  });

  test('of 100 000 files is not looked through to the end', async () => {
    let looked = 0;
    const files = {
      ...nodeFiles,
      list: async () => Array.from({ length: 100_000 }, (_, index) => `${index}.jpg`),
      stat: async () => {
        looked++;
        return { kind: 'file', size: 1, modifiedMs: 0 } as const;
      },
    };
    const to = join(temporaryFolder(), 'to');
    const brought = await importPiece(ports, openFolderSource(files, '/from'), to);
    expect(brought).toMatchObject({ ok: false, problem: { tag: 'too-many-entries' } });
    expect(looked).toBeLessThanOrEqual(importLimits.entries);
    expect(existsSync(to)).toBe(false);
  });

  test('that holds itself does not go on for ever', async () => {
    const from = folderOf(good);
    for (let depth = 0, at = from; depth < 20; depth++) {
      at = join(at, 'photos');
      mkdirSync(at, { recursive: true });
    }
    expect(await bringFolder(from)).toEqual({ tag: 'unsafe-entry', there: false });
  });
});

test('with any call failing in turn nothing is left behind', async () => {
  const zip = rawZip(good);
  const attempt = async (at: number | null) => {
    const place = temporaryFolder();
    const files = failingFiles(nodeFiles, at === null ? null : { at, code: 'EIO', andAfter: false });
    const source = await openZipSource(zip);
    if (!source.ok) throw new Error('zip');
    const brought = await importPiece({ ...ports, files }, source.value, join(place, 'piece'));
    return { ok: brought.ok, left: readdirSync(place), calls: files.calls };
  };
  const { calls } = await attempt(null);
  expect(calls.length).toBeGreaterThan(20);
  for (let at = 0; at < calls.length; at++) {
    const { ok, left } = await attempt(at);
    // Only the very last flush may fail after the whole piece is in its place.
    const whole = at === calls.length - 1;
    if (calls[at] === 'remove') continue;
    expect({ at, call: calls[at], ok, left }).toEqual({ at, call: calls[at], ok: false, left: whole ? ['piece'] : [] });
  }
});

test('what is packed comes back the same, and packs to the same bytes', async () => {
  const home = temporaryFolder();
  await bring(rawZip(good), home);
  const pack = async (folder: string) => {
    const parts: Uint8Array[] = [];
    for await (const part of exportPiece(ports, folder, { keepPlaces: true })) parts.push(part);
    return Buffer.concat(parts);
  };
  const first = await pack(join(home, 'in/piece'));
  const { tag, home: again } = await bring(first);
  expect(tag).toBe('ok');
  expect((await pack(join(again, 'in/piece'))).equals(first)).toBe(true);
  cpSync(join(again, 'in/piece'), join(again, 'copy'), { recursive: true });
});
