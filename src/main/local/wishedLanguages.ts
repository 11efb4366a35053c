/**
 * The languages a browser asks for, the dearest first; those it refuses (`q=0`) are left out.
 * @param header `Accept-Language` as in RFC 9110, section 12.5.4: `de-AT,de;q=0.9,en;q=0.5`
 */
export function wishedLanguages(header: string): readonly string[] {
  return header
    .split(',')
    .map((part) => {
      const [tag = '', ...parameters] = part.split(';').map((word) => word.trim());
      const weight = parameters.find((parameter) => /^q=/i.test(parameter))?.slice(2);
      return { tag, weight: weight === undefined ? 1 : Number(weight) };
    })
    .filter(({ tag, weight }) => tag !== '' && weight > 0)
    .sort((a, b) => b.weight - a.weight)
    .map(({ tag }) => tag);
}
