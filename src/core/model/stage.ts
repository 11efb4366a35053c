/** What the reading of a photograph goes through, as it is told while it runs. */
export const stages = [
  'decode',
  'quality',
  'locate',
  'frame',
  'strings',
  'opening',
  'ends',
  'earlier',
  'fell',
  'selvedges',
  'beat',
  'colours',
  'ribs',
  'compare',
] as const;
export type Stage = (typeof stages)[number];
