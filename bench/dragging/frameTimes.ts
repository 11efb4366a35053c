/** One entry of a Chromium trace, as far as it is read here. Times in microseconds. */
export interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  /** Processor time of the thread. */
  readonly tdur?: number;
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
 * Script on the page's main thread in every frame of a trace: from one frame handed to the compositor to the next, the time that
 * belongs to no other script entry (entries lie inside one another). `script` is the thread's processor time; `passed`
 * is by the clock and so also counts what other programs took meanwhile.
 * @returns milliseconds a frame, in order.
 */
export interface FrameTime {
  script: number;
  passed: number;
}

export function scriptPerFrame(events: readonly TraceEvent[]): readonly FrameTime[] {
  const main = events.find((event) => event.name === 'thread_name' && event.args?.name === 'CrRendererMain');
  if (main === undefined) throw new Error('The trace names no main thread.');
  const own = events.filter((event) => event.pid === main.pid && event.tid === main.tid);
  const begins = own
    .filter((event) => event.name === 'Commit')
    .map((event) => event.ts)
    .sort((one, other) => one - other);
  const entries = own
    .filter((event) => event.ph === 'X' && scripts.has(event.name))
    .sort((one, other) => one.ts - other.ts);
  const frames = Array.from({ length: Math.max(0, begins.length - 1) }, (): FrameTime => ({ script: 0, passed: 0 }));
  let until = 0;
  let frame = 0;
  for (const entry of entries) {
    // Entries inside another are counted with it.
    if (entry.ts < until) continue;
    const lasted = entry.dur ?? 0;
    until = entry.ts + lasted;
    while (frame < frames.length && begins[frame + 1]! <= entry.ts) frame++;
    if (frame >= frames.length || entry.ts < begins[frame]!) continue;
    frames[frame]!.script += (entry.tdur ?? lasted) / 1000;
    frames[frame]!.passed += lasted / 1000;
  }
  return frames;
}

/** The figure below which a share of the sorted figures lie. */
export const quantile = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
