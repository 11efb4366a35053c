/** What a photograph may be at most: enough for any telephone or camera, little enough for any computer. */
export const photoLimits = {
  bytes: 96 * 1024 * 1024,
  pixels: 110_000_000,
  side: 20_000,
  /** Shorter side, px: below this a string is thinner than a pixel on any loom. */
  smallestSide: 200,
  decodeSeconds: 30,
} as const;
