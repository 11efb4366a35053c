import { spawn } from 'node:child_process';
import { copyFileSync, cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { exportPiece } from '../../src/main/exchange/exportPiece.ts';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { readPiece } from '../../src/main/store/readPiece.ts';
import { verifyPiece } from '../../src/main/store/verifyPiece.ts';
import { fixture, lanternFolder, projectRoot } from './pieces.ts';
import { type Acknowledged, nothingAcknowledged, openForTest, owner, storeStep, whatIsWrong } from './storeScript.ts';

export const killKinds = ['store', 'import', 'mend', 'migrate'] as const;
export type KillKind = (typeof killKinds)[number];

export interface KillTally {
  kills: number;
  /** Killed while a write was under way (after it was begun and before it was answered for). */
  during: number;
  /** The child ended by itself before the kill came. */
  late: number;
  wrong: string[];
}

const ports = realStorePorts();

interface Said {
  readonly lines: Record<string, unknown>[];
  readonly killed: boolean;
}

/** Runs the child and kills it `delayMs` after it has begun its first write. */
function runAndKill(bundle: string, kind: KillKind, folder: string, given: string, delayMs: number): Promise<Said> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [bundle, kind, folder, given], {
      stdio: ['ignore', 'pipe', 'inherit'],
      env: { ...process.env, PLUMBWEFT_PROJECT: projectRoot },
    });
    let text = '';
    let timer: NodeJS.Timeout | null = null;
    child.stdout.on('data', (data) => {
      text += String(data);
      if (timer === null && text.includes('"step"')) timer = setTimeout(() => child.kill('SIGKILL'), delayMs);
    });
    child.on('close', (code, signal) => {
      if (timer !== null) clearTimeout(timer);
      const lines = text
        .split('\n')
        .filter(Boolean)
        .map((line) => JSON.parse(line) as Record<string, unknown>);
      if (signal === null && code !== 0) lines.push({ wrong: `ended with ${code}` });
      resolve({ lines, killed: signal === 'SIGKILL' });
    });
  });
}

/** One folder in which kills of one kind happen one after another, each on what the last one left. */
export async function killRounds(
  bundle: string,
  home: string,
  kind: KillKind,
  rounds: number,
  random: () => number,
): Promise<KillTally> {
  const tally: KillTally = { kills: 0, during: 0, late: 0, wrong: [] };
  mkdirSync(home, { recursive: true });
  const folder = join(home, 'piece');
  await lanternFolder(folder);
  const count = ({ lines, killed }: Said) => {
    if (killed) tally.kills++;
    else tally.late++;
    const last = lines.at(-1);
    if (killed && last !== undefined && 'step' in last) tally.during++;
    for (const line of lines) if ('wrong' in line) tally.wrong.push(`${kind}: child: ${String(line.wrong)}`);
    return last;
  };

  if (kind === 'store') {
    let acknowledged: Acknowledged = nothingAcknowledged();
    let step = 0;
    for (let round = 0; round < rounds; round++) {
      const { revision, passes, checks } = acknowledged;
      const given = JSON.stringify({ step, revision, passes, checks: [...checks] });
      const said = await runAndKill(bundle, kind, folder, given, random() * 40);
      count(said);
      const done = said.lines.filter((line) => 'done' in line).at(-1);
      if (done !== undefined) {
        acknowledged = {
          revision: done.revision as number,
          passes: done.passes as number,
          checks: new Map(done.checks as [string, { hash: string; note: string }][]),
          discarded: new Set(),
        };
      }
      const begun = said.lines.filter((line) => 'step' in line).at(-1);
      const underWay = begun !== undefined && begun.step !== done?.done ? (begun.step as number) : -1;
      tally.wrong.push(...(await whatIsWrong(ports, folder, acknowledged, underWay)));
      // The step under way either happened or didn't; asked for again it must go through, whichever it was.
      const opened = await openForTest(ports, folder);
      if (opened.readOnly !== null) tally.wrong.push(`after a kill: ${opened.readOnly}`);
      if (underWay >= 0) {
        if ((await storeStep(ports, opened, underWay, acknowledged)) !== 'done') {
          tally.wrong.push(`step ${underWay} asked for again was refused`);
        }
      }
      await opened.handle.lock?.release();
      // Whole evenings, so that changing and throwing away find the check they speak of.
      step = Math.ceil(((underWay >= 0 ? underWay : ((done?.done as number) ?? step - 1)) + 1) / 8) * 8;
      const left = readdirSync(folder).filter((name) => name.startsWith('.'));
      if (left.length > 0) tally.wrong.push(`left lying: ${left.join(' ')}`);
    }
    return tally;
  }

  if (kind === 'import') {
    const opened = await openForTest(ports, folder);
    const evening = nothingAcknowledged();
    for (let step = 0; step < 3; step++) await storeStep(ports, opened, step, evening);
    await opened.handle.lock?.release();
    const zip = join(home, 'piece.zip');
    const parts: Uint8Array[] = [];
    for await (const part of exportPiece(ports, folder, { keepPlaces: true })) parts.push(part);
    writeFileSync(zip, Buffer.concat(parts));
    for (let round = 0; round < rounds; round++) {
      const place = join(home, `round-${round}`);
      mkdirSync(place);
      const said = await runAndKill(bundle, kind, place, zip, random() * 60);
      count(said);
      const names = readdirSync(place).filter((name) => !name.startsWith('.'));
      for (const line of said.lines) {
        if ('done' in line && !names.includes(String(line.done)))
          tally.wrong.push(`import ${String(line.done)} is lost`);
      }
      for (const name of names) {
        const verified = await verifyPiece(ports, join(place, name), owner, false);
        const whole =
          verified.ok &&
          verified.value.checks === 1 &&
          verified.value.photos === 1 &&
          verified.value.findings.every(({ state }) => state === 'whole');
        if (!whole) tally.wrong.push(`import ${name} is not whole`);
      }
      rmSync(place, { recursive: true, force: true });
    }
    return tally;
  }

  if (kind === 'mend') {
    const opened = await openForTest(ports, folder);
    const evening = nothingAcknowledged();
    for (let step = 0; step < 7; step++) await storeStep(ports, opened, step, evening);
    await opened.handle.lock?.release();
    for (let round = 0; round < rounds; round++) {
      const copy = join(home, `round-${round}`);
      cpSync(folder, copy, { recursive: true });
      const path = join(copy, 'piece.json');
      const text = readFileSync(path, 'utf8');
      writeFileSync(path, text.slice(0, Math.floor(random() * text.length)));
      writeFileSync(join(copy, 'progress.json'), '{"format":');
      writeFileSync(join(copy, 'photos/.half.part'), 'x');
      count(await runAndKill(bundle, kind, copy, '', random() * 50));
      const again = await verifyPiece(ports, copy, owner, true);
      const piece = await readPiece(ports, copy);
      if (!again.ok || !piece.ok || piece.value.revision !== evening.revision) {
        tally.wrong.push(`mend: ${piece.ok ? `revision ${piece.value.revision}` : piece.problem.tag}`);
      }
      const left = await whatIsWrong(ports, copy, { ...evening, passes: 0 }, -1);
      tally.wrong.push(...left.map((words) => `mend: ${words}`));
      rmSync(copy, { recursive: true, force: true });
    }
    return tally;
  }

  for (let round = 0; round < rounds; round++) {
    copyFileSync(fixture('documents/progress-v1.json'), join(folder, 'progress.json'));
    const said = await runAndKill(bundle, kind, folder, '', random() * 15);
    const last = count(said);
    const read = await readPiece(ports, folder);
    const passes = read.ok ? (read.value.progress?.passesDone ?? -1) : -2;
    const saved = last !== undefined && 'done' in last;
    if (passes !== 21 && (saved || passes !== 0)) tally.wrong.push(`migrate: passes ${passes}, answered ${saved}`);
  }
  return tally;
}

/** A small seeded generator, so that a run can be repeated. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
