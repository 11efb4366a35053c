import { z } from 'zod';
import type { Outcome } from '../model/outcome.ts';
import { stages } from '../model/stage.ts';
import { bothUnitsSchema, checkRecordSchema, loomReadingSchema } from '../project/checkDocument.ts';
import { marksSchema } from '../project/marksSchema.ts';
import { loomSchema, pathCommand, pieceSchema } from '../project/pieceDocument.ts';
import { progressSchema } from '../project/progressDocument.ts';

/**
 * The one contract between the renderer and whatever hosts it. Every shell checks parameters and results against
 * these schemas at run time; a piece is named by an opaque key, never by a path.
 */
const key = z.string().regex(/^[a-z0-9-]{1,64}$/);
const hash = z.string().regex(/^[0-9a-f]{64}$/);
const jobId = z.string().regex(/^[a-zA-Z0-9-]{1,64}$/);
const nothing = z.strictObject({});

const openedPiece = z.strictObject({
  key,
  revision: z.number().int(),
  piece: pieceSchema,
  progress: progressSchema.nullable(),
  /** Why the piece can be looked at but not changed (open elsewhere, newer version, folder read-only); null when it can. */
  readOnly: z.string().nullable(),
  /** Photographs of the sample are rendered, and labelled so. */
  sample: z.boolean(),
});
const recentPiece = z.strictObject({
  key,
  name: z.string(),
  /** The last part of its folder's path: tells pieces of one name apart. */
  folder: z.string(),
  changed: z.string(),
  checks: z.number().int(),
  available: z.boolean(),
});
const checkSummary = z.strictObject({
  id: z.string(),
  kept: z.string(),
  taken: z.string().nullable(),
  status: z.enum(['measured', 'needs-reference', 'refused']),
  photoHash: hash,
  rendered: z.boolean(),
  fellMm: z.number().nullable(),
  fellSigmaMm: z.number().nullable(),
  widthMm: z.number().nullable(),
  widthSigmaMm: z.number().nullable(),
  passMm: z.number().nullable(),
  passSigmaMm: z.number().nullable(),
  flags: z.array(bothUnitsSchema),
});
/** A loom kept for other pieces, with what shows which one it is: the name of its photograph among the program's own. */
const keptLoom = z.strictObject({ loom: loomSchema, photo: hash.nullable() });
/**
 * What the weaver said of a camera: whether its pictures are turned over as in a looking-glass. Pictures that name no
 * camera count as one without a name; they may be by several, so of those it is only likely.
 */
const knownCamera = z.strictObject({ name: z.string().min(1).max(300).nullable(), mirrors: z.boolean() });
const settings = z.strictObject({
  theme: z.enum(['system', 'light', 'dark']),
  language: z.enum(['en', 'de']),
  textSize: z.union([z.literal(100), z.literal(115), z.literal(130), z.literal(150)]),
  units: z.enum(['mm', 'in']),
  sound: z.boolean(),
  speech: z.boolean(),
  camera: z.string().nullable(),
  watchedFolder: z.string().nullable(),
  tourDone: z.boolean(),
  looms: z.array(keptLoom).max(200),
  cameras: z.array(knownCamera).max(200),
});
const measured = z.strictObject({
  /** Name of the measurement until it is kept. */
  draft: jobId,
  photo: z.strictObject({
    hash,
    name: z.string(),
    width: z.number().int(),
    height: z.number().int(),
    rendered: z.boolean(),
    /** The device it was taken with, where that is known. */
    camera: z.string().nullable(),
  }),
  reading: loomReadingSchema,
});
const checkRecord = checkRecordSchema;

interface Call<Params extends z.ZodType, Result extends z.ZodType> {
  readonly params: Params;
  readonly result: Result;
  /** Whether raw bytes travel with the question or the answer. */
  readonly bytes: 'none' | 'in' | 'out';
}
const call = <Params extends z.ZodType, Result extends z.ZodType>(
  params: Params,
  result: Result,
  bytes: 'none' | 'in' | 'out' = 'none',
): Call<Params, Result> => ({ params, result, bytes });

export const hostCalls = {
  about: call(nothing, z.strictObject({ shell: z.enum(['electron', 'local']), version: z.string(), why: z.string() })),
  readSettings: call(nothing, settings),
  writeSettings: call(settings, settings),

  recentPieces: call(nothing, z.array(recentPiece)),
  createPiece: call(z.strictObject({ piece: pieceSchema }), openedPiece),
  openPiece: call(z.strictObject({ key }), openedPiece),
  openSample: call(nothing, openedPiece),
  /** Shows the system's folder dialog (Electron) or says it can't (local host). */
  choosePieceFolder: call(nothing, openedPiece.nullable()),
  duplicatePiece: call(z.strictObject({ key, name: z.string().min(1).max(200) }), openedPiece),
  closePiece: call(z.strictObject({ key }), nothing),
  forgetPiece: call(z.strictObject({ key }), nothing),
  savePiece: call(
    z.strictObject({ key, revision: z.number().int(), piece: pieceSchema }),
    z.strictObject({ revision: z.number().int() }),
  ),
  saveProgress: call(z.strictObject({ key, progress: progressSchema }), nothing),
  exportPiece: call(z.strictObject({ key, keepPlaces: z.boolean() }), z.strictObject({ name: z.string() }), 'out'),
  importPiece: call(z.strictObject({ name: z.string() }), openedPiece, 'in'),
  /** Takes a lock that another machine or a stopped program left behind; refused while its owner is alive here. */
  takeOverPiece: call(z.strictObject({ key }), openedPiece),
  revealPiece: call(z.strictObject({ key }), z.strictObject({ path: z.string() })),

  listChecks: call(z.strictObject({ key }), z.array(checkSummary)),
  /** Every photograph in the piece, newest last; `checks` counts the kept checks made from it. */
  listPhotos: call(
    z.strictObject({ key }),
    z.array(z.strictObject({ hash, name: z.string(), rendered: z.boolean(), checks: z.number().int() })),
  ),
  readCheck: call(z.strictObject({ key, id: z.string() }), checkRecord),
  /** Measures bytes that travel along, or a photograph already kept (`hash`). Progress comes as `job` events. */
  measurePhoto: call(
    z.strictObject({
      key,
      job: jobId,
      name: z.string().max(300),
      hash: hash.nullable(),
      /** What the weaver marked in it: corners, lengths, a card. */
      marks: marksSchema.nullable(),
      /** The device, where the page took the picture itself; else the picture's own words name it. */
      camera: z.string().min(1).max(300).nullable(),
      /** Whether it is turned over, where the weaver was asked about this very picture. */
      mirrored: z.boolean().optional(),
    }),
    measured,
    'in',
  ),
  /** Keeps a small picture of a photograph of a loom, for its profile; nothing of the file's own words goes along. */
  keepLoomPhoto: call(nothing, z.strictObject({ photo: hash }), 'in'),
  loomPhoto: call(
    z.strictObject({ photo: hash }),
    z.strictObject({ type: z.string(), width: z.number().int(), height: z.number().int() }),
    'out',
  ),
  /** Stops a measurement or a picture that nobody waits for any more. */
  cancelJob: call(z.strictObject({ job: jobId }), nothing),
  keepCheck: call(z.strictObject({ key, draft: jobId, note: z.string().max(10_000) }), checkRecord),
  dismissFlag: call(
    z.strictObject({ key, id: z.string(), flag: z.number().int(), reason: z.string().max(1_000) }),
    checkRecord,
  ),
  discardCheck: call(z.strictObject({ key, id: z.string() }), nothing),
  /** The photograph as displayed, as JPEG: a thumbnail 240 px high, screen size 1600 px, or full size. */
  photoImage: call(
    z.strictObject({ key, job: jobId, hash, size: z.enum(['thumbnail', 'screen', 'full']) }),
    z.strictObject({ type: z.string(), width: z.number().int(), height: z.number().int() }),
    'out',
  ),
  /** The loom seen front-on: cloth frame rectangle sampled at `pxPerMm`, as JPEG. */
  frontOnImage: call(
    z.strictObject({
      key,
      job: jobId,
      hash,
      draft: jobId.nullable(),
      check: z.string().nullable(),
      pxPerMm: z.number().positive().max(40),
      left: z.number(),
      right: z.number(),
      bottom: z.number(),
      top: z.number(),
    }),
    z.strictObject({ type: z.string(), width: z.number().int(), height: z.number().int() }),
    'out',
  ),
  /** PDF sheets: to scale where it matters. */
  makeSheet: call(
    z.strictObject({
      key,
      sheet: z.enum(['warping', 'order', 'cartoon', 'report', 'keys', 'arithmetic', 'finishing']),
      paper: z.enum(['a4', 'letter']),
      check: z.string().nullable(),
    }),
    z.strictObject({ name: z.string() }),
    'out',
  ),
  /** Letters as closed paths from the typefaces shipped: a capital stands `height` mm tall on y = 0, x from 0. */
  letterOutlines: call(
    z.strictObject({
      text: z.string().min(1).max(500),
      face: z.enum(['plain', 'strong', 'heading']),
      height: z.number().positive().max(2_000),
    }),
    z.strictObject({ commands: z.array(pathCommand).max(200_000), told: z.array(z.string()) }),
  ),
  /** Saves bytes where the weaver says (Electron's dialog); the local host answers `null` and the page downloads. */
  saveFile: call(z.strictObject({ name: z.string() }), z.strictObject({ saved: z.boolean() }).nullable(), 'in'),
  watchFolder: call(
    z.strictObject({ key, path: z.string().nullable() }),
    z.strictObject({ path: z.string().nullable() }),
  ),
  watchedPhoto: call(z.strictObject({ key, name: z.string() }), z.strictObject({ name: z.string() }), 'out'),
  /** A report to copy for a maintainer: versions, recent log lines, no private paths or names. */
  troubleReport: call(nothing, z.strictObject({ text: z.string() })),
} as const;

export type HostCalls = typeof hostCalls;
export type CallName = keyof HostCalls;
export type CallParams<Name extends CallName> = z.input<HostCalls[Name]['params']>;
export type CallResult<Name extends CallName> = z.output<HostCalls[Name]['result']>;
export type Settings = z.output<typeof settings>;
export type OpenedPiece = z.output<typeof openedPiece>;
export type RecentPiece = z.output<typeof recentPiece>;
export type CheckSummary = z.output<typeof checkSummary>;
export type MeasuredPhoto = z.output<typeof measured>;

/** The settings of a first start. */
export const usualSettings: Settings = {
  theme: 'system',
  language: 'en',
  textSize: 100,
  units: 'mm',
  sound: false,
  speech: false,
  camera: null,
  watchedFolder: null,
  tourDone: false,
  looms: [],
  cameras: [],
};
export const settingsSchema = settings;

/** Sent by the host without being asked. */
export const hostEvent = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('job'), job: jobId, stage: z.enum(stages), done: z.number(), of: z.number() }),
  z.strictObject({ kind: z.literal('watched-photo'), key, name: z.string() }),
  z.strictObject({ kind: z.literal('piece-changed-elsewhere'), key }),
  z.strictObject({ kind: z.literal('command'), command: z.string() }),
  z.strictObject({ kind: z.literal('open-piece'), key }),
]);
export type HostEvent = z.output<typeof hostEvent>;

export interface Answer<Name extends CallName> {
  readonly result: CallResult<Name>;
  readonly bytes: Uint8Array | null;
}

/** What every shell offers the renderer. Rejections never happen: a failure is a value. */
export interface HostApi {
  call<Name extends CallName>(name: Name, params: CallParams<Name>, bytes?: Uint8Array): Promise<Outcome<Answer<Name>>>;
  /** @returns a function that stops listening. */
  listen(listener: (event: HostEvent) => void): () => void;
}
