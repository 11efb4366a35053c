/**
 * A number as a weaver types it: with a point or a comma, thousands set apart by spaces or not, a minus before it or not.
 * @returns null for anything else.
 */
export function readTypedNumber(typed: string): number | null {
  const plain = typed
    .trim()
    .replace(/(?<=\d)\s(?=\d{3}(?!\d))/g, '')
    .replace(',', '.')
    .replace('−', '-');
  return /^-?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : null;
}
