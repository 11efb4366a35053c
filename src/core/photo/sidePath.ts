import type { SideEvidence } from './sideEvidence.ts';
import type { SideStrip } from './sideStrip.ts';

/**
 * The smoothest line up the side that has cloth inside it and none outside: dynamic programming over coarse rows.
 * @param held cost of an edge at an outward distance (mm) in a fine row: how far it lies from where the end says.
 * @param stiffness cost of one coarse column's sideways move from row to row.
 * @returns the edge's outward distance from the guide in each coarse row, mm.
 */
export function sidePath(
  strip: SideStrip,
  evidence: SideEvidence,
  held: (outward: number, row: number) => number,
  stiffness: number,
): Float32Array {
  const { columns, rows, everyColumn, everyRow, values } = evidence;
  const gain = new Float64Array(columns);
  const best = new Float64Array(rows * columns);
  const from = new Int16Array(rows * columns);
  const reach = 3;
  for (let q = 0; q < rows; q++) {
    // Cloth inside minus cloth outside: the running sum of evidence up to a column, doubled, less the whole.
    let sum = 0;
    for (let c = 0; c < columns; c++) {
      sum += values[q * columns + c]!;
      gain[c] = 2 * sum;
    }
    for (let c = 0; c < columns; c++) {
      let top = Number.NEGATIVE_INFINITY;
      let place = c;
      if (q === 0) top = 0;
      else {
        for (let d = -reach; d <= reach; d++) {
          const k = c + d;
          if (k < 0 || k >= columns) continue;
          const value = best[(q - 1) * columns + k]! - stiffness * Math.abs(d) ** 1.5;
          if (value > top) {
            top = value;
            place = k;
          }
        }
      }
      best[q * columns + c] = top + gain[c]! - sum - held(strip.outward[c * everyColumn]!, q * everyRow);
      from[q * columns + c] = place;
    }
  }
  const edge = new Float32Array(rows);
  if (rows === 0) return edge;
  let c = 0;
  for (let k = 1; k < columns; k++) if (best[(rows - 1) * columns + k]! > best[(rows - 1) * columns + c]!) c = k;
  const step = (strip.outward[1]! - strip.outward[0]!) * everyColumn;
  for (let q = rows - 1; q >= 0; q--) {
    edge[q] = strip.outward[c * everyColumn]! + step / 2;
    c = from[q * columns + c]!;
  }
  return edge;
}
