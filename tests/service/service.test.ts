import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, onTestFinished, test } from 'vitest';
import { loadPiece } from '../../scripts/photo/loadPhoto.ts';
import { type CallName, type CallParams, type CallResult, hostCalls } from '../../src/core/contract/hostApi.ts';
import type { Problem } from '../../src/core/model/outcome.ts';
import { earlierPhoto } from '../../src/main/service/earlierPhoto.ts';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { fixture, lantern, projectRoot } from '../support/pieces.ts';
import { type ServiceForTest, serviceForTest } from '../support/serviceForTest.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

function started(home = temporaryFolder(), ...languages: string[]) {
  const running: ServiceForTest = serviceForTest(home, undefined, () => languages);
  onTestFinished(() => running.service.close());
  async function ask<Name extends CallName>(name: Name, params: CallParams<Name>, bytes: Uint8Array | null = null) {
    return running.service.call(name, params, bytes);
  }
  async function ok<Name extends CallName>(name: Name, params: CallParams<Name>, bytes: Uint8Array | null = null) {
    const outcome = await ask(name, params, bytes);
    if (!outcome.ok) throw new Error(`${name}: ${outcome.problem.tag} ${outcome.problem.sentence}`);
    return outcome.value as { result: CallResult<Name>; bytes: Uint8Array | null };
  }
  async function problem<Name extends CallName>(name: Name, params: CallParams<Name>, bytes: Uint8Array | null = null) {
    const outcome = await ask(name, params, bytes);
    return outcome.ok ? null : (outcome.problem as Problem);
  }
  return { ...running, ask, ok, problem };
}

/** Every file of a folder with its hash, to see that nothing was touched. */
function snapshot(folder: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    found[path.slice(folder.length)] = createHash('sha256').update(readFileSync(path)).digest('hex');
  }
  return found;
}

describe('pieces', () => {
  test('are made, listed, changed, closed and found again by another start', async () => {
    const home = temporaryFolder();
    const first = started(home);
    const { result: made } = await first.ok('createPiece', { piece: lantern('Žofie’s hanging / 2') });
    expect(made).toMatchObject({ revision: 1, readOnly: null, sample: false });
    const changed = { ...made.piece, name: 'Renamed' };
    expect((await first.ok('savePiece', { key: made.key, revision: 1, piece: changed })).result).toEqual({
      revision: 2,
    });
    expect(await first.problem('savePiece', { key: made.key, revision: 1, piece: made.piece })).toMatchObject({
      tag: 'changed-elsewhere',
    });
    const progress = { passesDone: 12, planFingerprint: 'f', finished: ['tails'], at: '2026-11-25T10:00:00.000Z' };
    await first.ok('saveProgress', { key: made.key, progress });
    await first.service.close();
    const second = started(home);
    const { result: list } = await second.ok('recentPieces', {});
    expect(list).toMatchObject([{ key: made.key, name: 'Renamed', checks: 0, available: true }]);
    expect((await second.ok('openPiece', { key: made.key })).result).toMatchObject({
      revision: 2,
      piece: changed,
      progress,
    });
    await second.ok('forgetPiece', { key: made.key });
    expect((await second.ok('recentPieces', {})).result).toEqual([]);
    expect(existsSync(join(home, 'pieces', readdirSync(join(home, 'pieces'))[0]!, 'piece.json'))).toBe(true);
  });

  test('open in one service may only be looked at in another, which hears of changes', async () => {
    const home = temporaryFolder();
    const first = started(home);
    const second = started(home);
    const { result: made } = await first.ok('createPiece', { piece: lantern() });
    const { result: seen } = await second.ok('openPiece', { key: made.key });
    expect(seen.readOnly).toMatch(/open in another Plumbweft/);
    expect(await second.problem('savePiece', { key: made.key, revision: 1, piece: seen.piece })).toMatchObject({
      tag: 'read-only',
    });
    await first.ok('savePiece', { key: made.key, revision: 1, piece: { ...made.piece, name: 'Other' } });
    for (let wait = 0; wait < 100 && second.events.length === 0; wait++)
      await new Promise((later) => setTimeout(later, 100));
    expect(second.events).toContainEqual({ kind: 'piece-changed-elsewhere', key: made.key });
    await first.ok('closePiece', { key: made.key });
    expect((await second.ok('openPiece', { key: made.key })).result).toMatchObject({ readOnly: null, revision: 2 });
  });

  test('are copied, packed and brought in again, byte for byte', async () => {
    const running = started();
    const { result: sample } = await running.ok('openSample', {});
    expect(sample).toMatchObject({ sample: true, readOnly: null });
    const { result: copy } = await running.ok('duplicatePiece', { key: sample.key, name: 'A second lantern' });
    expect(copy.piece).toMatchObject({ name: 'A second lantern', shapes: sample.piece.shapes });
    const zip = await running.ok('exportPiece', { key: sample.key, keepPlaces: true });
    expect(zip.result.name).toBe('Harbour-lantern.zip');
    const { result: back } = await running.ok('importPiece', { name: 'From a friend.zip' }, zip.bytes);
    expect(back).toMatchObject({ piece: sample.piece, readOnly: null });
    const photos = (await running.ok('listPhotos', { key: back.key })).result;
    expect(photos).toEqual((await running.ok('listPhotos', { key: sample.key })).result);
    expect(photos).toHaveLength(5);
    expect(photos.every(({ rendered }) => rendered)).toBe(true);
    expect((await running.ok('listChecks', { key: back.key })).result).toEqual(
      (await running.ok('listChecks', { key: sample.key })).result,
    );
  });
});

test("the sample's original is never written", async () => {
  const shipped = join(projectRoot, 'resources/sample');
  const before = snapshot(shipped);
  const running = started();
  const { result: sample } = await running.ok('openSample', {});
  await running.ok('savePiece', { key: sample.key, revision: 1, piece: { ...sample.piece, name: 'Spoilt' } });
  for (const { id } of (await running.ok('listChecks', { key: sample.key })).result) {
    await running.ok('discardCheck', { key: sample.key, id });
  }
  // Opened again it is the weaver's own copy; the shipped one is as it was.
  expect((await running.ok('openSample', {})).result.piece.name).toBe('Spoilt');
  expect(snapshot(shipped)).toEqual(before);
});

describe('a photograph', () => {
  test('is measured, kept with its bytes, listed, annotated and thrown away', async () => {
    const running = started();
    const { result: piece } = await running.ok('createPiece', { piece: lantern() });
    const { key } = piece;
    const bytes = new Uint8Array(readFileSync(fixture('sequence/seq2.jpg')));
    const { result: measured } = await running.ok(
      'measurePhoto',
      { key, job: 'job-1', name: 'IMG_1.jpg', hash: null, marks: null, camera: null },
      bytes,
    );
    expect(measured.photo).toMatchObject({ width: 2250, height: 3000, rendered: true });
    expect(running.events.filter((event) => event.kind === 'job').length).toBeGreaterThan(1);
    // Shown before it is kept.
    const shown = await running.ok('photoImage', {
      key,
      job: 'picture-1',
      hash: measured.photo.hash,
      size: 'thumbnail',
    });
    expect(shown.result).toMatchObject({ type: 'image/jpeg', height: 240 });
    const { result: kept } = await running.ok('keepCheck', { key, draft: 'job-1', note: 'after the header' });
    expect(kept).toMatchObject({ note: 'after the header', photo: { rendered: true }, reading: measured.reading });
    expect((await running.ok('listChecks', { key })).result).toMatchObject([
      { id: kept.id, status: measured.reading.status, photoHash: measured.photo.hash },
    ]);
    const folder = (await running.ok('revealPiece', { key })).result.path;
    expect(readFileSync(join(folder, `photos/${measured.photo.hash}.jpg`)).equals(Buffer.from(bytes))).toBe(true);
    expect(await running.problem('keepCheck', { key, draft: 'job-1', note: '' })).toMatchObject({ tag: 'draft-gone' });
    expect(await running.problem('dismissFlag', { key, id: kept.id, flag: 99, reason: 'x' })).toMatchObject({
      tag: 'flag-missing',
    });
    if (measured.reading.reference !== null) {
      const view = { pxPerMm: 2, left: -120, right: 120, bottom: 0, top: 200 };
      const front = await running.ok('frontOnImage', {
        job: 'picture-2',
        key,
        hash: measured.photo.hash,
        draft: null,
        check: kept.id,
        ...view,
      });
      expect(front.result).toMatchObject({ width: 480, height: 400 });
    }
    await running.ok('discardCheck', { key, id: kept.id });
    expect((await running.ok('listChecks', { key })).result).toEqual([]);
    expect(readdirSync(join(folder, 'photos'))).toEqual([]);
  }, 170_000);

  test('that is being measured can be stopped', async () => {
    const running = started();
    const { result: piece } = await running.ok('createPiece', { piece: lantern() });
    const bytes = new Uint8Array(readFileSync(fixture('sequence/seq2.jpg')));
    const asked = running.ask(
      'measurePhoto',
      { key: piece.key, job: 'job-2', name: 'x.jpg', hash: null, marks: null, camera: null },
      bytes,
    );
    while (!running.events.some((event) => event.kind === 'job')) await new Promise((later) => setTimeout(later, 20));
    const begun = performance.now();
    await running.ok('cancelJob', { job: 'job-2' });
    expect(await asked).toMatchObject({ ok: false, problem: { tag: 'cancelled' } });
    expect(performance.now() - begun).toBeLessThan(2_000);
  });

  test('is turned back when the weaver said that its camera turns pictures over', async () => {
    const running = started();
    const { result: piece } = await running.ok('createPiece', { piece: lantern() });
    const { result: settings } = await running.ok('readSettings', {});
    await running.ok('writeSettings', { ...settings, cameras: [{ name: 'Looking-glass 3', mirrors: true }] });
    // On this cloth the right edge has drawn in by nearly 3 mm, the left hasn't; the picture shows it the other way round.
    const turned = await sharp(fixture('sequence/seq4.jpg')).resize({ height: 1400 }).flop().jpeg().toBuffer();
    const asked = { key: piece.key, job: 'j', name: 'x.jpg', hash: null, marks: null, camera: 'Looking-glass 3' };
    const { photo, reading } = (await running.ok('measurePhoto', asked, new Uint8Array(turned))).result;
    expect(photo.camera).toBe('Looking-glass 3');
    expect(reading.status).toBe('measured');
    const both = reading.selvedge.flatMap(({ y, left, right }) =>
      y > 110 && left !== null && right !== null ? [left.value + right.value] : [],
    );
    expect(both.length).toBeGreaterThan(3);
    for (const lean of both) expect(lean).toBeLessThan(-1);
  }, 120_000);

  test('takes in what the one before it by the same camera showed of the lens', async () => {
    const running = started();
    const { result: piece } = await running.ok('createPiece', { piece: lantern() });
    const small = new Uint8Array(await sharp(fixture('sequence/seq4.jpg')).resize({ height: 1400 }).jpeg().toBuffer());
    const measuredBy = async (job: string, camera: string | null) => {
      const asked = { key: piece.key, job, name: 'x.jpg', hash: null, marks: null, camera };
      const { reading } = (await running.ok('measurePhoto', asked, small)).result;
      expect(reading.status).toBe('measured');
      return reading.reference!;
    };
    const known = 'lens known from earlier pictures';
    const first = await measuredBy('a', 'Box camera 9');
    expect(first.parts).not.toContain(known);
    const second = await measuredBy('b', 'Box camera 9');
    expect(second.parts).toContain(known);
    expect(second.lens!.k1Sigma).toBeLessThan(first.lens!.k1Sigma);
    // Another camera's pictures have nothing to go by.
    expect((await measuredBy('c', 'Another')).parts).not.toContain(known);
  }, 120_000);

  test('that cuts the loom off is measured by the newest check that was measured by itself', async () => {
    const running = started();
    const piece = loadPiece(fixture('earlier/p6203-a.brief.json'));
    const { result: made } = await running.ok('createPiece', { piece });
    const measured = async (job: string, picture: Uint8Array) => {
      const asked = { key: made.key, job, name: `${job}.jpg`, hash: null, marks: null, camera: null };
      return (await running.ok('measurePhoto', asked, picture)).result.reading;
    };
    const keep = (draft: string) => running.ok('keepCheck', { key: made.key, draft, note: '' });
    const whole = new Uint8Array(readFileSync(fixture('earlier/p6203-a.jpg')));
    const cut = new Uint8Array(readFileSync(fixture('earlier/p6203-b.jpg')));
    expect((await measured('whole', whole)).reference?.method).toBe('opening-and-notches');
    const { result: kept } = await keep('whole');
    const placed = await measured('placed', cut);
    expect(placed.reference?.method).toBe('earlier-check');
    expect(placed.reference?.parts[0]).toBe(`earlier check of ${kept.kept}`);
    // Errors don't run on from check to check: the first is referred to again, not the one it placed.
    await keep('placed');
    const folder = (await running.ok('revealPiece', { key: made.key })).result.path;
    const referredTo = (hash: string) => earlierPhoto(realStorePorts(), folder, piece, hash);
    expect((await referredTo('of another picture'))?.when).toBe(kept.kept);
    // Nor is a picture referred to itself.
    expect(await referredTo(kept.photo.hash)).toBeNull();
  }, 400_000);

  test('whose pictures nobody waits for any more hold up nothing behind them', async () => {
    const running = started();
    const { result: sample } = await running.ok('openSample', {});
    const { result: photos } = await running.ok('listPhotos', { key: sample.key });
    const picture = (job: string) =>
      running.ask('photoImage', { key: sample.key, job, hash: photos[0]!.hash, size: 'full' });
    const left = ['left-1', 'left-2', 'left-3'].map(picture);
    const wanted = picture('wanted');
    // At once, while they are still being read from the disk, and the first is on its way.
    for (const job of ['left-1', 'left-2', 'left-3']) await running.ok('cancelJob', { job });
    for (const answer of await Promise.all(left)) {
      expect(answer).toMatchObject({ ok: false, problem: { tag: 'cancelled' } });
    }
    expect(await wanted).toMatchObject({ ok: true });
  }, 60_000);

  const header = (): Uint8Array => {
    const bytes = new Uint8Array(readFileSync(fixture('sequence/seq2.jpg')));
    for (let at = 2; at < bytes.length; at++) {
      if (bytes[at] !== 0xff || bytes[at + 1] !== 0xc0) continue;
      bytes.set([0x75, 0x30, 0x75, 0x30], at + 5); // 30 000 × 30 000
      return bytes;
    }
    throw new Error('no frame');
  };
  test.each([
    ['of no bytes', new Uint8Array(0), 'photo-unreadable', /empty/],
    [
      'cut off in the middle',
      new Uint8Array(readFileSync(fixture('sequence/seq2.jpg')).subarray(0, 500_000)),
      'photo-unreadable',
      /breaks off/,
    ],
    [
      'cut off in its header',
      new Uint8Array(readFileSync(fixture('sequence/seq2.jpg')).subarray(0, 100)),
      'photo-unreadable',
      /isn't a photograph/,
    ],
    [
      'that is a text',
      new TextEncoder().encode('Dear weaver, this is a letter and not a picture.'),
      'photo-unreadable',
      /isn't a photograph/,
    ],
    ['that says it is 30 000 × 30 000', header(), 'photo-too-large', /30000 × 30000/],
  ])('%s gets a sentence and leaves the piece as it was', async (_what, bytes, tag, sentence) => {
    const running = started();
    const { result: piece } = await running.ok('createPiece', { piece: lantern() });
    const folder = (await running.ok('revealPiece', { key: piece.key })).result.path;
    const before = snapshot(folder);
    const found = await running.problem(
      'measurePhoto',
      { key: piece.key, job: 'j', name: 'x.jpg', hash: null, marks: null, camera: null },
      bytes,
    );
    expect(found?.tag).toBe(tag);
    expect(found?.sentence).toMatch(sentence);
    expect(found?.remedy).toMatch(/^(Choose|Copy|Save|Use)/);
    expect(snapshot(folder)).toEqual(before);
  });
});

describe('the photograph of a loom', () => {
  test('is kept small with its profile, shown, and goes with it', async () => {
    const home = temporaryFolder();
    const running = started(home);
    const bytes = new Uint8Array(readFileSync(fixture('sequence/seq2.jpg')));
    const { photo } = (await running.ok('keepLoomPhoto', {}, bytes)).result;
    const { result: settings } = await running.ok('readSettings', {});
    await running.ok('writeSettings', { ...settings, looms: [{ loom: lantern().loom, photo }] });
    const shown = await running.ok('loomPhoto', { photo });
    expect(shown.result.height).toBeLessThanOrEqual(720);
    expect((await sharp(shown.bytes!).metadata()).exif).toBeUndefined();
    // Another setting leaves it; with its profile it goes.
    await running.ok('writeSettings', { ...settings, sound: true, looms: [{ loom: lantern().loom, photo }] });
    expect((await running.ok('loomPhoto', { photo })).bytes?.length).toBeGreaterThan(1_000);
    await running.ok('writeSettings', { ...settings, looms: [] });
    expect(await running.problem('loomPhoto', { photo })).not.toBeNull();
    expect(await running.problem('keepLoomPhoto', {}, new Uint8Array([1, 2, 3]))).not.toBeNull();
  }, 60_000);
});

describe('a piece file', () => {
  const cases: readonly [string, (text: string) => string, string, RegExp][] = [
    ['cut in half', (text) => text.slice(0, text.length / 2), 'not-readable', /verify --mend/],
    ['emptied', () => '', 'not-readable', /verify --mend/],
    [
      'with an unknown field',
      (text) => text.replace('"version"', '"sparkle": 1,\n "version"'),
      'not-as-described',
      /Take that out/,
    ],
    ['changed by hand', (text) => text.replace('Harbour', 'Harvour'), 'checksum-differs', /verify --mend/],
    [
      'from a newer version that fits no more',
      (text) => text.replace('"version": 1', '"version": 9').replace('"name"', '"named"'),
      'too-new',
      /newer Plumbweft/,
    ],
  ];
  test.each(cases)(
    '%s gets a sentence that says what to do, and is left as it is',
    async (_what, spoil, tag, remedy) => {
      const home = temporaryFolder();
      const first = started(home);
      const { result: piece } = await first.ok('createPiece', { piece: lantern() });
      const folder = (await first.ok('revealPiece', { key: piece.key })).result.path;
      await first.service.close();
      const path = join(folder, 'piece.json');
      writeFileSync(path, spoil(readFileSync(path, 'utf8')));
      const before = snapshot(folder);
      const second = started(home);
      const found = await second.problem('openPiece', { key: piece.key });
      expect(found?.tag).toBe(tag);
      expect(found?.remedy).toMatch(remedy);
      expect((await second.ok('recentPieces', {})).result).toMatchObject([{ available: false }]);
      expect(await second.problem('savePiece', { key: piece.key, revision: 1, piece: lantern() })).toMatchObject({
        tag: 'read-only',
      });
      expect(snapshot(folder)).toEqual(before);
    },
  );

  test('from a newer version that still fits opens to be looked at only', async () => {
    const home = temporaryFolder();
    const first = started(home);
    const { result: piece } = await first.ok('createPiece', { piece: lantern() });
    const folder = (await first.ok('revealPiece', { key: piece.key })).result.path;
    await first.service.close();
    const path = join(folder, 'piece.json');
    const file = JSON.parse(readFileSync(path, 'utf8')) as { version: number; body: Record<string, unknown> };
    writeFileSync(path, JSON.stringify({ ...file, version: 2, body: { ...file.body, gussets: [] } }));
    const before = snapshot(folder);
    const second = started(home);
    const { result: opened } = await second.ok('openPiece', { key: piece.key });
    expect(opened.readOnly).toMatch(/newer Plumbweft.*gussets/);
    expect(await second.problem('savePiece', { key: piece.key, revision: 1, piece: lantern() })).toMatchObject({
      tag: 'read-only',
    });
    await second.ok('closePiece', { key: piece.key });
    expect(snapshot(folder)).toEqual(before);
  });
});

describe('the rest of the contract', () => {
  test('settings are kept; damaged ones are put aside and said', async () => {
    const home = temporaryFolder();
    const first = started(home);
    const { result: usual } = await first.ok('readSettings', {});
    await first.ok('writeSettings', { ...usual, units: 'in', textSize: 130 });
    expect((await started(home).ok('readSettings', {})).result).toMatchObject({ units: 'in', textSize: 130 });
    writeFileSync(join(home, 'data/settings.json'), '{"format":');
    const third = started(home);
    expect((await third.ok('readSettings', {})).result).toEqual(usual);
    expect(readdirSync(join(home, 'data')).some((name) => name.endsWith('.aside'))).toBe(true);
    expect((await third.ok('troubleReport', {})).result.text).toMatch(/not-readable/);
  });

  test('a first start speaks the language asked for; a kept choice wins over it', async () => {
    const home = temporaryFolder();
    const settings = async (...wished: string[]) => (await started(home, ...wished).ok('readSettings', {})).result;
    expect((await settings('de-DE', 'en')).language).toBe('de');
    expect((await settings('fr')).language).toBe('en');
    const usual = await settings('de-DE');
    await started(home).ok('writeSettings', { ...usual, language: 'en' });
    expect((await settings('de-DE')).language).toBe('en');
  });

  test('settings asked for while they are being kept are the ones last sent', async () => {
    const running = started();
    const { result: usual } = await running.ok('readSettings', {});
    const sizes = [115, 130, 100, 150] as const;
    const kept = sizes.map((textSize) => running.ok('writeSettings', { ...usual, textSize }));
    expect((await running.ok('readSettings', {})).result.textSize).toBe(150);
    await Promise.all(kept);
    expect((await running.ok('readSettings', {})).result.textSize).toBe(150);
  });

  test('a watched folder tells of new photographs and hands out those alone', async () => {
    const running = started();
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'before.jpg'), 'there already');
    const { result: piece } = await running.ok('createPiece', { piece: lantern() });
    const { key } = piece;
    expect((await running.ok('watchFolder', { key, path: folder })).result).toEqual({ path: folder });
    writeFileSync(join(folder, 'new.jpg'), 'photograph');
    writeFileSync(join(folder, 'notes.txt'), 'not one');
    for (let wait = 0; wait < 80 && running.events.length === 0; wait++)
      await new Promise((later) => setTimeout(later, 100));
    expect(running.events).toEqual([{ kind: 'watched-photo', key, name: 'new.jpg' }]);
    const { bytes } = await running.ok('watchedPhoto', { key, name: 'new.jpg' });
    expect(new TextDecoder().decode(bytes!)).toBe('photograph');
    for (const name of ['notes.txt', '../new.jpg', '/etc/passwd', 'gone.jpg']) {
      expect(await running.problem('watchedPhoto', { key, name })).toMatchObject({ tag: 'not-there' });
    }
    expect(await running.problem('watchFolder', { key, path: join(folder, 'none') })).toMatchObject({
      tag: 'not-there',
    });
    await running.ok('watchFolder', { key, path: null });
    expect(await running.problem('watchedPhoto', { key, name: 'new.jpg' })).toMatchObject({ tag: 'not-there' });
  });

  test('sheets are printed', async () => {
    const running = started();
    const { result: piece } = await running.ok('createPiece', { piece: lantern() });
    const sheet = await running.ok('makeSheet', { key: piece.key, sheet: 'warping', paper: 'a4', check: null });
    expect(new TextDecoder().decode(sheet.bytes!.subarray(0, 5))).toBe('%PDF-');
    expect(
      await running.problem('makeSheet', { key: piece.key, sheet: 'report', paper: 'a4', check: null }),
    ).not.toBeNull();
  });

  test('an unknown piece is a sentence for every call that names one', async () => {
    const running = started();
    const params: Record<string, unknown> = {
      key: 'p-none',
      hash: 'a'.repeat(64),
      id: 'x',
      job: 'j',
      name: 'x',
      draft: 'd',
      check: null,
      note: '',
      flag: 0,
      reason: '',
      size: 'full',
      marks: null,
      camera: null,
      revision: 1,
      piece: lantern(),
      progress: { passesDone: 0, planFingerprint: '', finished: [], at: '' },
      keepPlaces: false,
      pxPerMm: 1,
      left: 0,
      right: 10,
      bottom: 0,
      top: 10,
      sheet: 'order',
      paper: 'a4',
      path: null,
    };
    for (const name of Object.keys(hostCalls) as CallName[]) {
      const wanted = Object.keys((hostCalls[name].params as unknown as { shape: object }).shape);
      if (!wanted.includes('key') || ['closePiece', 'forgetPiece', 'watchFolder'].includes(name)) continue;
      const asked = Object.fromEntries(wanted.map((field) => [field, params[field]]));
      const outcome = await running.service.call(name, asked, null);
      expect({ name, ok: outcome.ok }).toEqual({ name, ok: false });
      if (!outcome.ok) {
        expect({ name, tag: outcome.problem.tag }).not.toMatchObject({ tag: 'not-as-agreed' });
        expect(outcome.problem.sentence).toMatch(/\.$/);
      }
    }
  });

  test('the report to copy names no folder, no weaver and no machine', async () => {
    const home = temporaryFolder();
    mkdirSync(join(home, 'data'), { recursive: true });
    const running = started(home);
    await running.service.call('openPiece', { key: '/home/somebody/private' }, null);
    const { text } = (await running.ok('troubleReport', {})).result;
    expect(text).toMatch(/Plumbweft 0\.0\.0, local/);
    expect(text).toMatch(/parameters not as agreed at key/);
    expect(text).not.toContain(home);
    expect(text).not.toContain('somebody');
  });
});
