import type { YarnName } from './planDocument.ts';
import { refuse } from './refusal.ts';

/** A warp, and what has been woven on it. Nothing is ever unpicked, so each end is woven from pass 0 up to its fell. */
export class Cloth {
  readonly ends: number;
  readonly passes: number;
  /** How many passes are woven on each end, which is also the first bare one. */
  private readonly fells: Int32Array;
  /** Index into `yarnNames`, per pass × ends + end. */
  private readonly yarns: Int16Array;
  private readonly overs: Uint8Array;
  private readonly yarnNames: YarnName[] = [];

  constructor(ends: number, passes: number) {
    this.ends = ends;
    this.passes = passes;
    this.fells = new Int32Array(ends);
    this.yarns = new Int16Array(ends * passes).fill(-1);
    this.overs = new Uint8Array(ends * passes);
  }

  fell(end: number): number {
    return this.fells[end] ?? 0;
  }

  yarnAt(end: number, pass: number): YarnName | null {
    return this.yarnNames[this.yarns[pass * this.ends + end]!] ?? null;
  }

  /** Lays the weft over or under one end, on the bare end just above what is woven there. */
  lay(end: number, pass: number, yarn: YarnName, over: boolean, block: number): void {
    const at = { block, pass, end };
    if (end < 0 || end >= this.ends) refuse('off-the-warp', `There is no end ${end}.`, at);
    if (pass < 0 || pass >= this.passes) refuse('outside-chart', `Pass ${pass} is not in the chart.`, at);
    const fell = this.fells[end]!;
    if (pass < fell) refuse('woven-twice', `End ${end} is woven at pass ${pass} already.`, at);
    if (pass > fell) refuse('over-a-gap', `End ${end} is bare from pass ${fell}, so pass ${pass} has no rest.`, at);
    const cell = pass * this.ends + end;
    if (pass > 0 && (this.overs[cell - this.ends] === 1) === over) {
      refuse('wrong-shed', `Pass ${pass} goes ${over ? 'over' : 'under'} end ${end}, as the pass below does.`, at);
    }
    let name = this.yarnNames.indexOf(yarn);
    if (name < 0) name = this.yarnNames.push(yarn) - 1;
    this.yarns[cell] = name;
    this.overs[cell] = over ? 1 : 0;
    this.fells[end] = fell + 1;
  }
}
