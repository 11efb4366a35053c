import { type RGB, rgb } from 'pdf-lib';
import { srgbFromHex } from '../../core/colour/srgb.ts';

/** A pdf colour from `#rrggbb`; black when the text is not one. */
export function ink(hex: string): RGB {
  const colour = srgbFromHex(hex) ?? { red: 0, green: 0, blue: 0 };
  return rgb(colour.red, colour.green, colour.blue);
}

/** The design's light colours, as far as paper needs them. */
export const palette = {
  ink: ink('#171d20'),
  second: ink('#465256'),
  edge: ink('#6b7779'),
  rule: ink('#bcc6c3'),
  plan: ink('#174a94'),
  cloth: ink('#9a4a00'),
  allowance: ink('#dde5ea'),
  sheet: ink('#f5f7f5'),
  bar: ink('#d6dcd9'),
  wood: ink('#dccfb4'),
  woodLine: ink('#8f8062'),
  white: ink('#ffffff'),
};
