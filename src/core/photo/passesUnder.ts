/**
 * Tells what yarn passes under an end, where only the weft over it is seen. A pass is one weft from end to end of its
 * area: the ends either side, which it goes over, show it.
 * @param rows yarn by pass and end, -1 where it isn't seen; cells of passes under an end are filled in.
 * @param woven how many passes are woven on each end.
 */
export function fillPassesUnder(
  rows: number[][],
  woven: readonly number[],
  isUnder: (end: number, pass: number) => boolean,
): void {
  const seen = rows.map((row) => [...row]);
  const at = (end: number, pass: number): number => seen[pass]?.[end] ?? -1;
  rows.forEach((row, pass) => {
    for (let end = 0; end < row.length; end++) {
      if (pass < woven[end]! && isUnder(end, pass)) row[end] = yarnUnder(at, end, pass);
    }
  });
}

function yarnUnder(at: (end: number, pass: number) => number, end: number, pass: number): number {
  const beside = [at(end - 1, pass), at(end + 1, pass)].filter((yarn) => yarn >= 0);
  // A weft that goes round this end went, or comes back, over it in the other pass of its turn.
  const turn = pass - (pass % 2);
  const own = at(end, turn === pass ? pass + 1 : turn);
  const other = at(end, turn === pass ? pass - 1 : turn + 2);
  const ofEnd = [own, other].filter((yarn) => yarn >= 0);
  const first = beside[0];
  if (first === undefined) return ofEnd[0] ?? -1;
  if (ofEnd.length === 0) return first;
  if (beside.length === 2 && beside[1] !== first) return beside.includes(ofEnd[0]!) ? ofEnd[0]! : first;
  if (ofEnd.includes(first)) return first;
  // Another yarn over this end than beside it: one pass or turn of the yarn beside it, or a column of its own.
  const across = [at(end - 2, pass - 1), at(end + 2, pass - 1), at(end - 2, pass + 1), at(end + 2, pass + 1)];
  const alike = across.filter((yarn) => ofEnd.includes(yarn)).length;
  return 2 * alike > across.filter((yarn) => yarn >= 0).length ? first : ofEnd[0]!;
}
