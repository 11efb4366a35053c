/** One entry of a Chromium trace, as far as it is read here. Times in microseconds. */
export interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly args?: { readonly name?: string };
}

/** Work that runs script of the page. */
const scripts = new Set([
  'FunctionCall',
  'EvaluateScript',
  'FireAnimationFrame',
  'TimerFire',
  'EventDispatch',
  'RunMicrotasks',
  'v8.callFunction',
  'HandlePostMessage',
]);

/**
 * Script on the page's main thread in every frame of a trace: from one begin of a main frame to the next, the time that
 * belongs to no other script entry (entries lie inside one another).
 * @returns milliseconds a frame, in order.
 */
export function scriptPerFrame(events: readonly TraceEvent[]): readonly number[] {
  const main = events.find((event) => event.name === 'thread_name' && event.args?.name === 'CrRendererMain');
  if (main === undefined) throw new Error('The trace names no main thread.');
  const own = events.filter((event) => event.pid === main.pid && event.tid === main.tid);
  const begins = own
    .filter((event) => event.name === 'BeginMainThreadFrame')
    .map((event) => event.ts)
    .sort((one, other) => one - other);
  const entries = own
    .filter((event) => event.ph === 'X' && scripts.has(event.name))
    .sort((one, other) => one.ts - other.ts);
  const frames = new Array<number>(Math.max(0, begins.length - 1)).fill(0);
  let until = 0;
  let frame = 0;
  for (const entry of entries) {
    const end = entry.ts + (entry.dur ?? 0);
    const from = Math.max(entry.ts, until);
    if (end <= from) continue;
    until = end;
    while (frame < frames.length && begins[frame + 1]! <= entry.ts) frame++;
    if (frame < frames.length && entry.ts >= begins[frame]!) frames[frame]! += (end - from) / 1000;
  }
  return frames;
}

/** The figure below which a share of the sorted figures lie. */
export const quantile = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
