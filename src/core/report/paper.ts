/** Sheets of paper as they lie upright, mm. ISO 216; US Letter is 8 ½ × 11 in. */
export const papers = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
} as const;
export type PaperName = keyof typeof papers;

/** Most home printers leave a margin of about 5 mm unprinted; nothing that matters comes nearer than this, mm. */
export const PRINT_MARGIN = 10;
