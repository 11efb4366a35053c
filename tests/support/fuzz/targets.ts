import { readFileSync } from 'node:fs';
import { normalize } from 'node:path';
import sharp from 'sharp';
import { importDrawing } from '../../../src/core/cartoon/svg/importDrawing.ts';
import { packEnvelope, unpackEnvelope } from '../../../src/core/contract/envelope.ts';
import { type CallName, hostCalls } from '../../../src/core/contract/hostApi.ts';
import { parseBrief } from '../../../src/core/project/brief.ts';
import { checkDocument } from '../../../src/core/project/checkDocument.ts';
import {
  type DocumentKind,
  glimpseNewerDocument,
  loadDocument,
  serialiseDocument,
} from '../../../src/core/project/document.ts';
import { pieceDocument } from '../../../src/core/project/pieceDocument.ts';
import { progressDocument } from '../../../src/core/project/progressDocument.ts';
import { decodePhoto } from '../../../src/main/decode/decodePhoto.ts';
import { readImageHeader } from '../../../src/main/decode/imageHeader.ts';
import { inspectPhoto } from '../../../src/main/decode/inspectPhoto.ts';
import { readPhotoMetadata } from '../../../src/main/decode/photoMetadata.ts';
import { importPiece } from '../../../src/main/exchange/importPiece.ts';
import { stripMetadata } from '../../../src/main/exchange/stripMetadata.ts';
import { openZipSource } from '../../../src/main/exchange/zipSource.ts';
import { sha256 } from '../../../src/main/files/sha256.ts';
import { fixture, lantern, someCheck } from '../pieces.ts';
import { quarters } from '../quarters.ts';
import { rawZip } from '../zips.ts';
import { mutateBytes, mutateJson, type Pick } from './mutate.ts';
import { watchedDisk } from './watchedDisk.ts';

/** Something that reads what comes from outside. */
export interface FuzzTarget {
  readonly name: string;
  /** How many of 200,000 inputs are for it. */
  readonly share: number;
  make(pick: Pick): Uint8Array;
  /** @returns what is wrong, or null; a throw is wrong too. */
  run(input: Uint8Array): Promise<string | null>;
}

const encode = (text: string) => new TextEncoder().encode(text);
const decode = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
const oneOf = <Item>(items: readonly Item[], pick: Pick): Item => items[pick(items.length)]!;

/** An outcome must be one: a value, or a problem with a sentence and a remedy. */
function misshapen(outcome: unknown): string | null {
  const { ok, problem } = outcome as {
    ok?: unknown;
    problem?: { tag?: unknown; sentence?: unknown; remedy?: unknown };
  };
  if (ok === true) return null;
  if (ok !== false || problem === undefined) return 'not an outcome';
  const said = [problem.tag, problem.sentence, problem.remedy].every((part) => typeof part === 'string' && part !== '');
  return said ? null : 'a problem without words';
}

function documentTarget<Body>(kind: DocumentKind<Body>, seeds: readonly string[], share: number): FuzzTarget {
  return {
    name: kind.format,
    share,
    make(pick) {
      const seed = oneOf(seeds, pick);
      if (pick(3) === 0) return mutateBytes(encode(seed), encode(oneOf(seeds, pick)), pick);
      const file = mutateJson(JSON.parse(seed), pick) as Record<string, unknown>;
      // Half of them with a checksum that holds, so that what lies behind it is reached.
      const covered = typeof file === 'object' && file !== null && 'body' in file && pick(2) === 0;
      if (!covered) return encode(JSON.stringify(file) ?? '');
      const version = typeof file.version === 'number' ? file.version : kind.version;
      return encode(serialiseDocument({ ...kind, version }, file.body as Body, 3, sha256));
    },
    async run(input) {
      const text = decode(input);
      glimpseNewerDocument(kind, text);
      const loaded = loadDocument(kind, text, sha256);
      if (!loaded.ok) return misshapen(loaded);
      // Whatever is let in must be kept and read again as the same thing.
      const again = loadDocument(kind, serialiseDocument(kind, loaded.value.body, 1, sha256), sha256);
      if (!again.ok) return `let in, but not kept: ${again.problem.tag}`;
      return JSON.stringify(again.value.body) === JSON.stringify(loaded.value.body) ? null : 'kept as something else';
    },
  };
}

const pieceText = serialiseDocument(pieceDocument, lantern(), 3, sha256);
const checkText = serialiseDocument(checkDocument, someCheck('c-1', 'a'.repeat(64)), 1, sha256);
const sampleCheck = readFileSync(fixture('documents/check-v1.json'), 'utf8');
const progressTexts = ['v1', 'v2'].map((version) =>
  readFileSync(fixture(`documents/progress-${version}.json`), 'utf8'),
);
const briefText = readFileSync(fixture('photos/dev01.brief.json'), 'utf8');

const photo = encode('a photograph');
const zipSeeds = [false, true].map((compress) =>
  rawZip([
    { name: 'piece.json', bytes: encode(pieceText), compress },
    { name: `photos/${sha256(photo)}.jpg`, bytes: photo },
    { name: 'checks/c-1.json', bytes: encode(checkText), compress },
  ]),
);
const names = [
  '../x',
  '/x',
  'photos/../../x',
  'C:\\x',
  'piece.json',
  'PIECE.json',
  'checks/a.json',
  'checks/con.json',
  'previous/piece-00000001.json',
  `photos/${'0'.repeat(64)}.jpg`,
  'photos/',
  'a/piece.json',
  'a/b/c/d',
  'con',
  'photos/\u0000.jpg',
  '..',
  '.',
  '',
  'x'.repeat(700),
  './piece.json',
  'piece.json/',
];

const drawing = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 200"><style>.a{fill:#c9962f}</style><defs><g id="g"><circle cx="5" cy="5" r="4"/></g></defs><g transform="rotate(10) scale(2 1)"><path class="a" d="M0 0 L10 5 C1 2 3 4 5 6 A5 3 10 0 1 9 9 Z"/><use href="#g" x="3"/><rect x="1" y="2" width="9" height="4" rx="1" fill="url(#p)"/><polygon points="1,2 3,4 5,6"/></g></svg>`;

let pictures: readonly Uint8Array[] | null = null;
/** Small pictures of every kind, each with metadata. */
async function pictureSeeds(): Promise<readonly Uint8Array[]> {
  if (pictures !== null) return pictures;
  const small = sharp(quarters.rgb, quarters.raw)
    .resize(240, 220)
    .withExif({ IFD0: { Make: 'Maker' } })
    .withMetadata({ orientation: 6 });
  const made = await Promise.all([
    small.clone().jpeg().toBuffer(),
    small.clone().jpeg({ progressive: true }).toBuffer(),
    small.clone().png().toBuffer(),
    small.clone().webp().toBuffer(),
    small.clone().webp({ lossless: true }).toBuffer(),
    small.clone().avif().toBuffer(),
  ]);
  pictures = [
    ...made,
    readFileSync(fixture('pictures/quarters.heic')),
    readFileSync(fixture('pictures/quarters-turned.heic')),
  ];
  return pictures;
}

/** Cheap kinds often, dear ones (AVIF, HEIC) seldom. */
const weighted = [0, 0, 0, 0, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 5, 6, 7];

export async function fuzzTargets(): Promise<readonly FuzzTarget[]> {
  const seeds = await pictureSeeds();
  const picture = (pick: Pick) => mutateBytes(seeds[oneOf(weighted, pick)]!, oneOf(seeds, pick), pick);
  return [
    documentTarget(pieceDocument, [pieceText], 40_000),
    documentTarget(checkDocument, [checkText, sampleCheck], 20_000),
    documentTarget(progressDocument, progressTexts, 10_000),
    {
      name: 'description',
      share: 10_000,
      make: (pick) => encode(JSON.stringify(mutateJson(JSON.parse(briefText), pick)) ?? ''),
      async run(input) {
        let value: unknown = null;
        try {
          value = JSON.parse(decode(input));
        } catch {
          return null;
        }
        return misshapen(parseBrief(value));
      },
    },
    {
      name: 'zip',
      share: 30_000,
      make(pick) {
        if (pick(3) > 0) return mutateBytes(oneOf(zipSeeds, pick), oneOf(zipSeeds, pick), pick);
        const entries = Array.from({ length: 1 + pick(6) }, () => ({
          name: oneOf(names, pick),
          bytes: encode(oneOf([pieceText, checkText, 'x', ''], pick)),
          compress: pick(2) === 0,
          mode: oneOf([0o100_644, 0o120_777, 0o040_755, 0, 0o140_644], pick),
          ...(pick(6) === 0 ? { size: pick(2 ** 31) } : {}),
          ...(pick(6) === 0 ? { crc: pick(2 ** 31) } : {}),
          ...(pick(8) === 0 ? { flags: pick(65_536) } : {}),
          ...(pick(8) === 0 ? { localName: oneOf(names, pick) } : {}),
        }));
        return rawZip(entries, pick(6) === 0 ? { count: pick(70_000) } : {});
      },
      async run(input) {
        const source = await openZipSource(input);
        if (!source.ok) return misshapen(source);
        const { files, touched } = watchedDisk();
        await files.makeFolder('/in');
        touched.length = 0;
        let count = 0;
        const ports = { files, now: () => new Date(0), token: () => `t${count++}` };
        const brought = await importPiece(ports, source.value, '/in/piece');
        const outside = touched.find((path) => !/^\/in\/(\.piece\.t\d+\.part|piece)(\/|$)/.test(normalize(path)));
        if (outside !== undefined) return `wrote outside the piece: ${outside}`;
        const left = await files.list('/in');
        const expected = brought.ok ? 'piece' : '';
        return left.join() === expected ? misshapen(brought) : `left behind: ${left.join()}`;
      },
    },
    {
      name: 'svg',
      share: 20_000,
      make: (pick) => mutateBytes(encode(drawing), encode(drawing), pick),
      run: async (input) =>
        misshapen(
          importDrawing(decode(input), {
            box: { left: -50, right: 50, bottom: 0, top: 200 },
            yarns: [{ id: 'y0', colour: '#2c3350' }],
            idPrefix: 'd',
            areaName: 'Area',
            smallest: 1,
          }),
        ),
    },
    {
      name: 'picture header',
      share: 30_000,
      make: (pick) => picture(pick).subarray(0, 40 + pick(600)),
      async run(input) {
        const header = readImageHeader(input);
        if (header !== null && !(header.width >= 0 && header.height >= 0)) return 'a size that is no size';
        return misshapen(inspectPhoto(input));
      },
    },
    {
      name: 'picture body',
      share: 12_000,
      make: picture,
      async run(input) {
        const photo = await decodePhoto(input);
        if (!photo.ok) return misshapen(photo);
        const { width, height, rgb } = photo.value;
        return rgb.length === width * height * 3 ? null : 'bytes that do not fit the size';
      },
    },
    {
      name: 'picture metadata',
      share: 8_000,
      make: picture,
      async run(input) {
        await readPhotoMetadata(input);
        const before = sha256(input);
        const outcome = await stripMetadata(input);
        return sha256(input) === before ? misshapen(outcome) : 'the original was changed';
      },
    },
    {
      name: 'envelope',
      share: 10_000,
      make: (pick) => mutateBytes(packEnvelope({ key: 'p-1' }, encode('bytes')), encode('{"a":1}'), pick),
      async run(input) {
        const envelope = unpackEnvelope(input);
        if (envelope === null) return null;
        const again = unpackEnvelope(packEnvelope(envelope.json, envelope.bytes));
        return JSON.stringify(again?.json) === JSON.stringify(envelope.json) ? null : 'packed as something else';
      },
    },
  ];
}

const paramsSeed: Readonly<Record<string, unknown>> = {
  key: 'p-1',
  piece: lantern(),
  revision: 1,
  name: 'x',
  progress: { passesDone: 0, planFingerprint: '', finished: [], at: '' },
  keepPlaces: false,
  id: 'c-1',
  job: 'j',
  hash: 'a'.repeat(64),
  marks: { corners: [1, 2, 3, 4].map((x) => ({ x, y: x })), lengths: [], card: null },
  draft: 'd',
  note: '',
  flag: 0,
  reason: '',
  size: 'thumbnail',
  check: null,
  pxPerMm: 1,
  left: 0,
  right: 10,
  bottom: 0,
  top: 10,
  sheet: 'keys',
  paper: 'a4',
  path: null,
  camera: null,
  photo: 'a'.repeat(64),
};
const callNames = Object.keys(hostCalls) as CallName[];
/** These start work of seconds or watch the disk; they have their own tests. */
const slow = new Set<string>([
  'openSample',
  'makeSheet',
  'watchFolder',
  'measurePhoto',
  'keepLoomPhoto',
  'createPiece',
  'duplicatePiece',
]);

/** A call with parameters changed at random, as a page that was taken over might make it. */
export function randomCall(pick: Pick): {
  readonly name: string;
  readonly params: unknown;
  readonly bytes: Uint8Array | null;
} {
  const name =
    pick(20) === 0
      ? oneOf(['__proto__', 'constructor', '', 'x'.repeat(300), '../about'], pick)
      : oneOf(
          callNames.filter((one) => !slow.has(one)),
          pick,
        );
  const shape = Object.hasOwn(hostCalls, name)
    ? Object.keys((hostCalls[name as CallName].params as unknown as { shape: object }).shape)
    : [];
  const params = Object.fromEntries(shape.map((field) => [field, paramsSeed[field]]));
  const bytes = pick(3) === 0 ? mutateBytes(zipSeeds[0]!, photo, pick) : null;
  return { name, params: pick(6) === 0 ? params : mutateJson(params, pick), bytes };
}
