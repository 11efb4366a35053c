/** A colour on the scale of 8-bit sRGB, 0..255. */
export type Colour = readonly [red: number, green: number, blue: number];

export function hexColour(text: string): Colour {
  return [
    Number.parseInt(text.slice(1, 3), 16),
    Number.parseInt(text.slice(3, 5), 16),
    Number.parseInt(text.slice(5, 7), 16),
  ];
}

export function colourHex(colour: Colour): string {
  return `#${colour
    .map((part) =>
      Math.max(0, Math.min(255, Math.round(part)))
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
}

/** From hue in turns, saturation and lightness 0..1. */
export function hueColour(hue: number, saturation: number, lightness: number): Colour {
  const reach = saturation * Math.min(lightness, 1 - lightness);
  const part = (n: number): number => {
    const k = (n + hue * 12) % 12;
    return 255 * (lightness - reach * Math.max(-1, Math.min(k - 3, 9 - k, 1)));
  };
  return [part(0), part(8), part(4)];
}
