import { type ColourEdges, NO_EDGE } from './colourEdges.ts';

/** A straight line of a picture: x cos n + y sin n = distance, n the direction of its normal. */
export interface StraightLine {
  /** Direction in which the line runs, degrees 0–179. */
  readonly direction: number;
  readonly distance: number;
  readonly votes: number;
}

const BIN = 2;
/** Share of the longest line's votes that makes a line worth a try. */
const LESSER = 0.35;

/** Long straight lines, by votes of edge pixels for the lines near their own direction (Hough transform). */
export class LineVotes {
  private readonly votes: Float32Array;
  private readonly bins: number;
  private readonly reach: number;

  constructor(private readonly edges: ColourEdges) {
    const { width, height, direction } = edges;
    this.reach = Math.ceil(Math.hypot(width, height));
    this.bins = Math.ceil((2 * this.reach) / BIN) + 1;
    this.votes = new Float32Array(180 * this.bins);
    const cosines = Float64Array.from({ length: 180 }, (_, d) => Math.cos(((d + 90) * Math.PI) / 180));
    const sines = Float64Array.from({ length: 180 }, (_, d) => Math.sin(((d + 90) * Math.PI) / 180));
    for (let y = 0, at = 0; y < height; y++) {
      for (let x = 0; x < width; x++, at++) {
        const along = direction[at]!;
        if (along === NO_EDGE) continue;
        for (let lean = -3; lean <= 3; lean++) {
          const d = (along + lean + 180) % 180;
          const place = (x * cosines[d]! + y * sines[d]! + this.reach) / BIN;
          const low = Math.floor(place);
          const share = place - low;
          const weight = 1 - Math.abs(lean) / 5;
          this.votes[d * this.bins + low]! += weight * (1 - share);
          this.votes[d * this.bins + low + 1]! += weight * share;
        }
      }
    }
  }

  /** Directions mod 90° that hold the longest lines at right angles to each other, best first, 10° apart or more. */
  rightAngles(count: number): number[] {
    const longest = Float64Array.from({ length: 180 }, (_, d) => {
      const row = Array.from(this.votes.subarray(d * this.bins, (d + 1) * this.bins)).sort((a, b) => b - a);
      return row.slice(0, 8).reduce((sum, value) => sum + value, 0);
    });
    const near = (d: number) => {
      let best = 0;
      for (let lean = -5; lean <= 5; lean++) best = Math.max(best, longest[(d + lean + 180) % 180]!);
      return best;
    };
    const scores = Array.from({ length: 90 }, (_, d) => ({
      d,
      score: Math.min(near(d), near(d + 90)) + 0.3 * (longest[d]! + longest[d + 90]!),
    }));
    scores.sort((a, b) => b.score - a.score);
    const chosen: number[] = [];
    for (const { d } of scores) {
      if (chosen.length === count) break;
      if (chosen.every((other) => Math.min(Math.abs(other - d), 90 - Math.abs(other - d)) >= 10)) chosen.push(d);
    }
    return chosen;
  }

  /**
   * The lines with most votes that run within `lean` degrees of `direction`, and of the lesser ones those that lie
   * furthest out on either side: strings are many, straight and long, but the frame lies outside of them.
   */
  family(direction: number, lean: number, most: number, outermost: number): StraightLine[] {
    const peaks: StraightLine[] = [];
    const { votes, bins } = this;
    for (let off = -lean; off <= lean; off++) {
      const d = (direction + off + 360) % 180;
      for (let k = 2; k < bins - 2; k++) {
        const here = votes[d * bins + k]!;
        if (here < 12) continue;
        let crest = true;
        for (let dd = -2; dd <= 2 && crest; dd++) {
          // A direction past 180° is the same as its remainder with the distance turned about.
          const raw = d + dd;
          const other = (raw + 180) % 180;
          const turned = raw !== other;
          const mirrored = Math.round((2 * this.reach) / BIN) - k;
          const base = turned ? mirrored : k;
          for (let kk = -1; kk <= 1; kk++) {
            if (dd === 0 && kk === 0) continue;
            const value = votes[other * bins + base + kk] ?? 0;
            if (value > here || (value === here && (dd < 0 || (dd === 0 && kk < 0)))) {
              crest = false;
              break;
            }
          }
        }
        if (!crest) continue;
        const before = votes[d * bins + k - 1]!;
        const after = votes[d * bins + k + 1]!;
        const bend = before - 2 * here + after;
        const fine = bend < 0 ? (0.5 * (before - after)) / bend : 0;
        peaks.push({ direction: d, distance: (k + fine) * BIN - this.reach, votes: here });
      }
    }
    peaks.sort((a, b) => b.votes - a.votes);
    const lesser = peaks.slice(most).filter((line) => line.votes > LESSER * peaks[0]!.votes);
    const normal = ((direction + 90) * Math.PI) / 180;
    const offset = (line: StraightLine) => {
      const own = ((line.direction + 90) * Math.PI) / 180;
      const { width, height } = this.edges;
      const fromMiddle = line.distance - (width / 2) * Math.cos(own) - (height / 2) * Math.sin(own);
      return Math.cos(own - normal) < 0 ? -fromMiddle : fromMiddle;
    };
    lesser.sort((a, b) => offset(a) - offset(b));
    const inner = Math.max(0, lesser.length - 2 * outermost);
    return [...peaks.slice(0, most), ...lesser.filter((_, k) => k < outermost || k >= outermost + inner)];
  }
}

/** Where two lines cross, or null for parallel ones. */
export function crossing(a: StraightLine, b: StraightLine): { x: number; y: number } | null {
  const na = ((a.direction + 90) * Math.PI) / 180;
  const nb = ((b.direction + 90) * Math.PI) / 180;
  const det = Math.sin(nb - na);
  if (Math.abs(det) < 0.2) return null;
  return {
    x: (a.distance * Math.sin(nb) - b.distance * Math.sin(na)) / det,
    y: (b.distance * Math.cos(na) - a.distance * Math.cos(nb)) / det,
  };
}
