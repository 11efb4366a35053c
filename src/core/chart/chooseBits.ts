/** Cheapest bits along a row: `keep[run * 2 + bit]` is what a bit costs a run, `meet[run]` what equal bits cost it and the next. */
export function chooseBits(keep: Float64Array, meet: Float64Array): Uint8Array {
  const count = meet.length + 1;
  const cost = new Float64Array(count * 2);
  const came = new Uint8Array(count * 2);
  cost[0] = keep[0]!;
  cost[1] = keep[1]!;
  for (let at = 1; at < count; at++) {
    for (let bit = 0; bit < 2; bit++) {
      const same = cost[at * 2 - 2 + bit]! + meet[at - 1]!;
      const other = cost[at * 2 - 2 + 1 - bit]!;
      came[at * 2 + bit] = other <= same ? 1 - bit : bit;
      cost[at * 2 + bit] = Math.min(other, same) + keep[at * 2 + bit]!;
    }
  }
  const bits = new Uint8Array(count);
  let bit = cost[count * 2 - 1]! < cost[count * 2 - 2]! ? 1 : 0;
  for (let at = count - 1; at >= 0; at--) {
    bits[at] = bit;
    bit = came[at * 2 + bit]!;
  }
  return bits;
}
