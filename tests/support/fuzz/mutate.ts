/** A seeded source of whole numbers below a bound. */
export type Pick = (below: number) => number;

const telling = [0, 1, 2, 0x7f, 0x80, 0xff, 0xd8, 0xd9, 0xda, 0xc0, 0x22, 0x2c, 0x7b, 0x7d, 0x5b, 0x2f, 0x5c, 0x2e];

/** A few random changes to some bytes: flips, telling values, cuts, repeats, pieces of another seed. */
export function mutateBytes(seed: Uint8Array, other: Uint8Array, pick: Pick): Uint8Array {
  let bytes: Uint8Array = new Uint8Array(seed);
  const changes = 1 + pick(pick(4) === 0 ? 60 : 6);
  for (let change = 0; change < changes; change++) {
    const at = pick(bytes.length + 1);
    switch (pick(8)) {
      case 0:
      case 1:
        if (at < bytes.length) bytes[at] = bytes[at]! ^ (1 << pick(8));
        break;
      case 2:
        if (at < bytes.length) bytes[at] = telling[pick(telling.length)]!;
        break;
      case 3:
        for (let i = at; i < Math.min(bytes.length, at + 4); i++) bytes[i] = pick(3) === 0 ? 0xff : pick(256);
        break;
      case 4:
        if (pick(3) === 0) bytes = bytes.subarray(0, at);
        break;
      case 5: {
        const end = Math.min(bytes.length, at + pick(200));
        bytes = Buffer.concat([bytes.subarray(0, at), bytes.subarray(end)]);
        break;
      }
      case 6: {
        const part = bytes.subarray(at, Math.min(bytes.length, at + pick(400)));
        bytes = Buffer.concat([bytes.subarray(0, at), part, part, bytes.subarray(at)]);
        break;
      }
      default: {
        const from = pick(other.length + 1);
        bytes = Buffer.concat([bytes.subarray(0, at), other.subarray(from, from + pick(300)), bytes.subarray(at)]);
      }
    }
  }
  return bytes;
}

const odd: readonly unknown[] = [
  null,
  true,
  0,
  -1,
  1e308,
  -1e-320,
  1e15 + 0.5,
  '',
  '__proto__',
  'x'.repeat(5_000),
  '../../etc/passwd',
  '\u0000',
  '\ud800',
  [],
  {},
  [[[[[[[[]]]]]]]],
  { __proto__: null, constructor: 1 },
  Array.from({ length: 300 }, (_, i) => i),
];

/** Random changes to a value as JSON knows it: other kinds, missing and doubled parts, names nobody expects. */
export function mutateJson(value: unknown, pick: Pick, depth = 0): unknown {
  if (pick(12) === 0) return odd[pick(odd.length)];
  if (typeof value !== 'object' || value === null) {
    if (typeof value === 'number' && pick(6) === 0) return [value * 1e6, -value, value + 0.5, value ** 3][pick(4)];
    return value;
  }
  if (depth > 40) return value;
  if (Array.isArray(value)) {
    const list = value.slice(0, 400).map((item) => (pick(5) === 0 ? mutateJson(item, pick, depth + 1) : item));
    if (pick(8) === 0) list.splice(pick(list.length + 1), pick(3), odd[pick(odd.length)]);
    if (pick(30) === 0 && list.length > 0) list.push(...Array.from({ length: 200 }, () => list[0]));
    return list;
  }
  const entries = Object.entries(value).map(([name, inner]) => [
    pick(60) === 0 ? ['__proto__', 'constructor', `${name}2`, ''][pick(4)] : name,
    pick(4) === 0 ? mutateJson(inner, pick, depth + 1) : inner,
  ]);
  if (pick(12) === 0) entries.splice(pick(entries.length + 1), 1);
  if (pick(12) === 0) entries.push([`more${pick(9)}`, odd[pick(odd.length)]]);
  return Object.fromEntries(entries as [string, unknown][]);
}
