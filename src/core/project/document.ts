import { z } from 'zod';
import { failure, type Outcome, type Problem, success } from '../model/outcome.ts';

/** Turns the body of one version into that of the next. It may throw when the old body is not as it was described. */
export interface Migration {
  readonly from: number;
  /** What the next version changed, in a few words. */
  readonly name: string;
  readonly migrate: (body: unknown) => unknown;
}

/** One kind of saved record: its name in the file, its current version, how older ones become current, its shape. */
export interface DocumentKind<Body> {
  /** The file's `format`, for example `plumbweft-piece`. */
  readonly format: string;
  readonly version: number;
  /** One for every older version, in order: the last one's `from` is `version - 1`. */
  readonly migrations: readonly Migration[];
  readonly body: z.ZodType<Body, Body>;
  /** What the file is, as the weaver would say it, for example `piece`. */
  readonly called: string;
}

export type DocumentTag =
  | 'not-readable'
  | 'other-format'
  | 'too-new'
  | 'checksum-differs'
  | 'migration-failed'
  | 'not-as-described';

/** A record as it was loaded. */
export interface LoadedDocument<Body> {
  readonly body: Body;
  /** Rises by one at every save. */
  readonly revision: number;
  /** The version the file was kept in; lower than the kind's when it was migrated in memory. */
  readonly keptVersion: number;
}

/** SHA-256 of a text as lower-case hex; given by the caller, since the core has no cryptography. */
export type Checksum = (text: string) => string;

const envelope = z.strictObject({
  format: z.string(),
  version: z.number().int().min(1).max(1_000_000),
  revision: z.number().int().nonnegative(),
  checksum: z.string(),
  body: z.unknown(),
});

const looseEnvelope = z.looseObject({ format: z.string(), version: z.number().int().min(1) });

/** What the checksum covers: everything but itself, so that a changed revision or version shows as well. */
const covered = (format: string, version: number, revision: number, body: unknown): string =>
  `${format} ${version} ${revision} ${JSON.stringify(body)}`;

/** Nested arrays and objects deeper than this are refused before anything walks them. */
const MAX_DEPTH = 64;

function tooDeep(value: unknown): boolean {
  let level: unknown[] = [value];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > MAX_DEPTH) return true;
    const next: unknown[] = [];
    for (const item of level) {
      if (typeof item === 'object' && item !== null) for (const inner of Object.values(item)) next.push(inner);
    }
    level = next;
  }
  return false;
}

function parse(text: string): unknown {
  try {
    const value: unknown = JSON.parse(text);
    return tooDeep(value) ? undefined : value;
  } catch {
    return undefined;
  }
}

const firstIssue = (error: z.ZodError): string => {
  const issue = error.issues[0];
  const where = issue?.path.join('.');
  return `${where === undefined || where === '' ? 'the whole' : where}: ${issue?.message ?? 'not understood'}`;
};

/**
 * Reads a saved record. The order is fixed: shape, too new, checksum, migrate, validate. Nothing is repaired; a file
 * that is not as it should be comes back as a tagged problem and is left as it is.
 */
export function loadDocument<Body>(
  kind: DocumentKind<Body>,
  text: string,
  checksum: Checksum,
): Outcome<LoadedDocument<Body>, DocumentTag> {
  const raw = parse(text);
  if (raw === undefined) {
    return failure(
      'not-readable',
      `The ${kind.called} file breaks off or isn't a Plumbweft file any more.`,
      'Mend it with "plumbweft verify --mend", which brings back the newest version that was kept beside it.',
      `${kind.format}: not JSON, ${text.length} characters`,
    );
  }
  const loose = looseEnvelope.safeParse(raw);
  if (!loose.success || loose.data.format !== kind.format) {
    return failure(
      'other-format',
      `This file isn't a ${kind.called} of Plumbweft's.`,
      'Choose the folder that "plumbweft new" or the app made.',
      `${kind.format}: ${loose.success ? 'another format' : firstIssue(loose.error)}`,
    );
  }
  if (loose.data.version > kind.version) {
    return failure(
      'too-new',
      `This ${kind.called} was kept by a newer Plumbweft. It has not been changed.`,
      'Open it with the newer Plumbweft it was kept with.',
      `${kind.format}: version ${loose.data.version}, this one reads up to ${kind.version}`,
    );
  }
  const whole = envelope.safeParse(raw);
  if (!whole.success) {
    return failure(
      'not-as-described',
      `The ${kind.called} file holds something Plumbweft doesn't know: ${firstIssue(whole.error)}.`,
      'Take that out again, or mend the piece with "plumbweft verify --mend".',
      `${kind.format}: ${firstIssue(whole.error)}`,
    );
  }
  const { version, revision, body } = whole.data;
  if (checksum(covered(kind.format, version, revision, body)) !== whole.data.checksum) {
    return failure(
      'checksum-differs',
      `The ${kind.called} file was changed outside Plumbweft, or the disk spoilt it.`,
      'Mend it with "plumbweft verify --mend", which brings back the newest version that was kept beside it.',
      `${kind.format}: checksum differs`,
    );
  }
  let current = body;
  for (const step of kind.migrations) {
    if (step.from < version) continue;
    try {
      current = step.migrate(current);
    } catch (thrown) {
      return failure(
        'migration-failed',
        `This ${kind.called} was kept by an older Plumbweft and can't be brought up to date.`,
        'It has not been changed: open it with the Plumbweft it was kept with, or report this.',
        `${kind.format}: ${step.name} from ${step.from}: ${thrown instanceof Error ? thrown.message : 'thrown'}`,
      );
    }
  }
  const parsed = kind.body.safeParse(current);
  if (!parsed.success) {
    return failure(
      'not-as-described',
      `The ${kind.called} file holds something Plumbweft doesn't know: ${firstIssue(parsed.error)}.`,
      'Take that out again, or mend the piece with "plumbweft verify --mend".',
      `${kind.format}: ${firstIssue(parsed.error)}`,
    );
  }
  return success({ body: parsed.data, revision, keptVersion: version });
}

/** The text of a saved record, current version, with its checksum and a newline at the end. */
export function serialiseDocument<Body>(
  kind: DocumentKind<Body>,
  body: Body,
  revision: number,
  checksum: Checksum,
): string {
  // Through JSON once, so that what is summed is what a reader will parse (-0 becomes 0, undefined goes).
  const plain: unknown = JSON.parse(JSON.stringify(body));
  const file = {
    format: kind.format,
    version: kind.version,
    revision,
    checksum: checksum(covered(kind.format, kind.version, revision, plain)),
    body: plain,
  };
  return `${JSON.stringify(file, null, 1)}\n`;
}

/** What this version understands of a newer record, to look at and never to save. */
export interface NewerGlimpse<Body> {
  readonly body: Body;
  readonly revision: number;
  /** Fields that this version doesn't know and leaves out of the view, as dotted paths. */
  readonly leftOut: readonly string[];
}

/**
 * Looks into a record kept by a newer version: fields this version doesn't know are left out of the view. Answers
 * null when the rest still isn't a body of this version. The view is for reading only.
 */
export function glimpseNewerDocument<Body>(kind: DocumentKind<Body>, text: string): NewerGlimpse<Body> | null {
  const loose = looseEnvelope.safeParse(parse(text));
  if (!loose.success || loose.data.format !== kind.format || loose.data.version <= kind.version) return null;
  const raw = loose.data as Record<string, unknown>;
  const body: unknown = JSON.parse(JSON.stringify(raw.body ?? null));
  const leftOut: string[] = [];
  for (let round = 0; round < 50; round++) {
    const parsed = kind.body.safeParse(body);
    if (parsed.success) {
      const revision = typeof raw.revision === 'number' && Number.isInteger(raw.revision) ? raw.revision : 0;
      return { body: parsed.data, revision, leftOut };
    }
    let taken = false;
    for (const issue of parsed.error.issues) {
      if (issue.code !== 'unrecognized_keys') return null;
      let holder: unknown = body;
      for (const part of issue.path) holder = (holder as Record<PropertyKey, unknown>)[part];
      for (const unknownKey of issue.keys) {
        delete (holder as Record<string, unknown>)[unknownKey];
        leftOut.push([...issue.path, unknownKey].join('.'));
        taken = true;
      }
    }
    if (!taken) return null;
  }
  return null;
}

/** A document problem, for shells that only speak of problems. */
export type DocumentProblem = Problem<DocumentTag>;
