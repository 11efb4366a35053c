import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { checkDocument } from '../../src/core/project/checkDocument.ts';
import {
  type DocumentKind,
  glimpseNewerDocument,
  loadDocument,
  serialiseDocument,
} from '../../src/core/project/document.ts';
import { pieceDocument } from '../../src/core/project/pieceDocument.ts';
import { progressDocument } from '../../src/core/project/progressDocument.ts';
import { settingsDocument } from '../../src/main/service/ownDocuments.ts';
import { lensesDocument } from '../../src/main/service/rememberedLenses.ts';
import { fixture, lantern } from '../support/pieces.ts';

const sum = (text: string) => createHash('sha256').update(text).digest('hex');
const load = (text: string) => loadDocument(pieceDocument, text, sum);
const tagOf = (text: string) => {
  const loaded = load(text);
  return loaded.ok ? 'ok' : loaded.problem.tag;
};
const good = serialiseDocument(pieceDocument, lantern(), 7, sum);
const edited = (edit: (file: Record<string, unknown>) => void): string => {
  const file = JSON.parse(good) as Record<string, unknown>;
  edit(file);
  return JSON.stringify(file);
};

describe('a piece document', () => {
  test('comes back as it was written', () => {
    const loaded = load(good);
    expect(loaded).toMatchObject({ ok: true, value: { revision: 7, keptVersion: 1, body: lantern() } });
  });

  test('may be laid out anew by another program: spaces and line ends are not content', () => {
    expect(tagOf(JSON.stringify(JSON.parse(good)))).toBe('ok');
    expect(tagOf(good.replaceAll('\n', '\r\n'))).toBe('ok');
  });

  test('is refused with its own tag at every step, in order', () => {
    expect(tagOf('')).toBe('not-readable');
    expect(tagOf(good.slice(0, good.length / 2))).toBe('not-readable');
    expect(tagOf(`${'['.repeat(5000)}${']'.repeat(5000)}`)).toBe('not-readable');
    expect(tagOf('[]')).toBe('other-format');
    expect(tagOf('{"format":"something-else","version":1}')).toBe('other-format');
    // Too new is said before anything else is asked of the file.
    expect(tagOf('{"format":"plumbweft-piece","version":2,"anything":[]}')).toBe('too-new');
    expect(tagOf(edited((file) => Object.assign(file, { extra: 1 })))).toBe('not-as-described');
    expect(tagOf(edited((file) => Object.assign(file, { revision: 8 })))).toBe('checksum-differs');
    expect(tagOf(edited((file) => Object.assign(file.body as object, { name: 'Another' })))).toBe('checksum-differs');
  });

  test('with an unknown field inside is refused, never repaired', () => {
    const kind = { ...pieceDocument, body: z.unknown() as never };
    const text = serialiseDocument(kind, { ...lantern(), sparkle: true } as never, 1, sum);
    expect(tagOf(text)).toBe('not-as-described');
    const nan = serialiseDocument(
      kind,
      { ...lantern(), cloth: { ...lantern().cloth, height: Number.NaN } } as never,
      1,
      sum,
    );
    expect(tagOf(nan)).toBe('not-as-described');
  });

  test('one changed byte anywhere in the body never goes unseen', () => {
    fc.assert(
      fc.property(fc.nat(good.length - 2), fc.integer({ min: 32, max: 126 }), (at, code) => {
        const character = String.fromCharCode(code);
        fc.pre(good[at] !== character);
        const loaded = load(good.slice(0, at) + character + good.slice(at + 1));
        // Either refused, or a change that isn't content (a space for a space's like).
        return !loaded.ok || JSON.stringify(loaded.value) === JSON.stringify((load(good) as { value: unknown }).value);
      }),
      { numRuns: 2_000 },
    );
  });
});

describe('a newer piece', () => {
  const newer = JSON.stringify({
    ...(JSON.parse(good) as object),
    version: 2,
    body: { ...lantern(), gussets: [1], warp: { ...lantern().warp, wax: 'none' } },
  });

  test('can be looked at where the rest still fits, and says what is left out', () => {
    expect(glimpseNewerDocument(pieceDocument, newer)).toEqual({
      body: lantern(),
      revision: 7,
      leftOut: expect.arrayContaining(['gussets', 'warp.wax']),
    });
  });

  test('cannot be looked at when its meaning changed', () => {
    const changed = JSON.stringify({ ...(JSON.parse(newer) as object), body: { ...lantern(), name: 5 } });
    expect(glimpseNewerDocument(pieceDocument, changed)).toBeNull();
    expect(glimpseNewerDocument(pieceDocument, good)).toBeNull();
  });
});

/** Every kind of record that is kept, the list of pieces aside. */
const kinds = [
  pieceDocument,
  checkDocument,
  progressDocument,
  settingsDocument,
  lensesDocument,
] as unknown as DocumentKind<unknown>[];

describe('migrations', () => {
  test('carry four clicked points of a check over as its marked corners', () => {
    const points = [10, 20, 30, 40].map((x) => ({ x, y: 2 * x }));
    const kept = JSON.parse(readFileSync(fixture('documents/check-v2.json'), 'utf8')) as { body: object };
    const migration = checkDocument.migrations.find(({ from }) => from === 2);
    const reference = { method: 'fused', lensK1: 0.01 };
    const before = { ...kept.body, points, reading: { status: 'measured', reference } };
    expect(migration!.migrate(before)).toMatchObject({
      marks: { corners: points, lengths: [], card: null },
      reading: { reference: { lensK1: 0.01, lens: null } },
    });
    expect(migration!.migrate(before)).not.toHaveProperty('points');
  });

  test('keep what a reason said in one unit as it was said', () => {
    const kept = JSON.parse(readFileSync(fixture('documents/check-v4.json'), 'utf8')) as {
      body: { reading: { reasons: unknown[] } };
    };
    const [code, remedy] = ['wrong-pitch', 'Measure the notch pitch over ten notches.'];
    const message = 'The strings stand 6.61 mm apart; the plan’s notches are 6.35 mm apart.';
    const before = { ...kept.body, reading: { ...kept.body.reading, reasons: [{ code, message, remedy }] } };
    const migration = checkDocument.migrations.find(({ from }) => from === 4);
    const after = migration!.migrate(before);
    expect(after).toEqual({
      ...before,
      reading: { ...before.reading, reasons: [{ code, message: { mm: message, in: message }, remedy }] },
    });
    expect(checkDocument.body.safeParse(after).success).toBe(true);
  });

  const shelf: DocumentKind<{ readonly wide: number; readonly tall: number }> = {
    format: 'plumbweft-shelf',
    version: 3,
    migrations: [
      { from: 1, name: 'one size becomes two', migrate: (body) => ({ wide: (body as { size: number }).size }) },
      {
        from: 2,
        name: 'height is said',
        migrate: (body) => {
          if (typeof (body as { wide?: unknown }).wide !== 'number') throw new Error('no width');
          return { ...(body as object), tall: 10 };
        },
      },
    ],
    body: z.strictObject({ wide: z.number(), tall: z.number() }) as never,
    called: 'shelf',
  };
  const old = (version: number, body: unknown) =>
    serialiseDocument({ ...shelf, version, body: z.unknown() as never }, body as never, 4, sum);

  test('run from the kept version up', () => {
    expect(loadDocument(shelf, old(1, { size: 3 }), sum)).toMatchObject({
      ok: true,
      value: { body: { wide: 3, tall: 10 }, keptVersion: 1, revision: 4 },
    });
    expect(loadDocument(shelf, old(2, { wide: 5 }), sum)).toMatchObject({
      ok: true,
      value: { body: { wide: 5, tall: 10 } },
    });
    expect(loadDocument(shelf, old(3, { wide: 5, tall: 6 }), sum)).toMatchObject({
      ok: true,
      value: { keptVersion: 3 },
    });
  });

  test('that throw, or that give something undescribed, are problems', () => {
    expect(loadDocument(shelf, old(2, { tall: 5 }), sum)).toMatchObject({ problem: { tag: 'migration-failed' } });
    expect(loadDocument(shelf, old(1, { size: 'x' }), sum)).toMatchObject({ problem: { tag: 'migration-failed' } });
    expect(loadDocument(shelf, old(3, { wide: 'x' }), sum)).toMatchObject({ problem: { tag: 'not-as-described' } });
  });

  test.each(kinds)('$format has one for every older version, in order', (kind) => {
    expect(kind.migrations.map(({ from }) => from)).toEqual(
      Array.from({ length: kind.version - 1 }, (_, index) => index + 1),
    );
  });

  // The files are frozen: whatever a later version does, what was kept once must open.
  test.each(
    kinds.flatMap((kind) =>
      Array.from({ length: kind.version }, (_, index) => [kind.format, index + 1, kind] as const),
    ),
  )('%s version %i opens', (format, version, kind) => {
    const name = `documents/${format.replace('plumbweft-', '')}-v${version}.json`;
    const loaded = loadDocument(kind, readFileSync(fixture(name), 'utf8'), sum);
    expect(loaded).toMatchObject({ ok: true, value: { keptVersion: version } });
  });
});
