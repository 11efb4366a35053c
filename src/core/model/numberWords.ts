/** Narrow and unbreakable, so that 1 280 stays on one line. */
const thinSpace = '\u202f';

/** A number for the screen: fixed decimals, thousands set apart by a thin space, never a minus sign for zero. */
export function numberInWords(value: number, decimals = 0): string {
  const fixed = Math.abs(value).toFixed(decimals);
  const [whole = '', part] = fixed.split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, thinSpace);
  const sign = value < 0 && Number(fixed) !== 0 ? '\u2212' : '';
  return `${sign}${grouped}${part === undefined ? '' : `.${part}`}`;
}

/** `1 end`, `2 ends`, `1½ turns`: a numeral and the word that goes with it. Halves are written as such. */
export function countInWords(count: number, one: string, many = `${one}s`): string {
  const half = Math.abs(count % 1) === 0.5;
  const whole = Math.trunc(count);
  const numeral = half ? `${whole === 0 ? '' : numberInWords(whole)}½` : numberInWords(count);
  return `${numeral} ${count === 1 || count === 0.5 ? one : many}`;
}
