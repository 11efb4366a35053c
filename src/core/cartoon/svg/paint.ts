import { encodedFromLinear, hexFromSrgb, linearFromEncoded, srgbFromHex } from '../../colour/srgb.ts';
import { namedColours } from './namedColours.ts';

/** What fills an area: a colour, nothing, or another part of the drawing (a gradient or pattern) by its id. */
export type Paint = { readonly colour: string } | { readonly reference: string } | 'none' | 'current';

const share = (text: string, whole: number): number =>
  text.endsWith('%') ? Number(text.slice(0, -1)) / 100 : Number(text) / whole;

function fromFunction(kind: string, inside: string): string | null {
  const parts = inside.split(/[\s,/]+/).filter((part) => part !== '');
  if (parts.length < 3) return null;
  if (kind.startsWith('rgb')) {
    const [red, green, blue] = parts.map((part) => share(part, 255)) as [number, number, number];
    return [red, green, blue].every(Number.isFinite) ? hexFromSrgb({ red, green, blue }) : null;
  }
  const hue = Number(parts[0]!.replace(/deg$/, ''));
  const saturation = Math.min(1, Math.max(0, share(parts[1]!, 100)));
  const lightness = Math.min(1, Math.max(0, share(parts[2]!, 100)));
  if (![hue, saturation, lightness].every(Number.isFinite)) return null;
  // CSS Color 4, § 7.1.
  const channel = (n: number) => {
    const k = (((n + hue / 30) % 12) + 12) % 12;
    return lightness - saturation * Math.min(lightness, 1 - lightness) * Math.max(-1, Math.min(k - 3, 9 - k, 1));
  };
  return hexFromSrgb({ red: channel(0), green: channel(8), blue: channel(4) });
}

/** A CSS colour as `#rrggbb`, opacity left aside; null when it can't be read. */
export function colourOf(text: string): string | null {
  const word = text.trim().toLowerCase();
  const named = namedColours.get(word);
  if (named !== undefined) return named;
  if (/^#[0-9a-f]{3,4}$/.test(word)) return `#${[...word.slice(1, 4)].map((digit) => digit + digit).join('')}`;
  if (/^#[0-9a-f]{6}([0-9a-f]{2})?$/.test(word)) return word.slice(0, 7);
  const written = /^(rgba?|hsla?)\(([^()]*)\)$/.exec(word);
  return written === null ? null : fromFunction(written[1]!, written[2]!);
}

/** @returns null when the text is no paint at all; the element then keeps what it inherits. */
export function paintOf(text: string): Paint | null {
  const word = text.trim();
  const lower = word.toLowerCase();
  if (lower === 'none' || lower === 'transparent') return 'none';
  if (lower === 'currentcolor') return 'current';
  const reference = /^url\(\s*['"]?#([^'")\s]+)['"]?\s*\)/.exec(word);
  if (reference !== null) return { reference: reference[1]! };
  const colour = colourOf(word);
  return colour === null ? null : { colour };
}

/** The mean of colours in linear light, as the eye blends them from afar. @param colours `#rrggbb`, at least one. */
export function meanColour(colours: readonly string[]): string {
  const mean = (channel: 'red' | 'green' | 'blue') =>
    encodedFromLinear(
      colours.reduce((sum, colour) => sum + linearFromEncoded(srgbFromHex(colour)?.[channel] ?? 0), 0) / colours.length,
    );
  return hexFromSrgb({ red: mean('red'), green: mean('green'), blue: mean('blue') });
}
