/** Keys that answer on one screen, and what each does. */
export interface KeyGroup {
  readonly title: string;
  /** Chords are written `Ctrl + Z`; several keys in one row stand with commas, and so does what they do. */
  readonly keys: readonly { readonly keys: string; readonly does: string }[];
}

/** The keys of every screen, for the sheet to pin beside the loom and for the one on screen. */
export const keyGroups: readonly KeyGroup[] = [
  {
    title: 'Everywhere',
    keys: [
      { keys: 'Ctrl + Z', does: 'undo' },
      { keys: 'Ctrl + Shift + Z', does: 'redo; Ctrl + Y too' },
      { keys: 'Ctrl + 1–5', does: 'Piece, Cartoon, Order of work, Loom check, Record' },
      { keys: 'Ctrl + K', does: 'find something to do' },
      { keys: 'Ctrl + O', does: 'pieces' },
      { keys: 'F1, ?', does: 'words and keys' },
      { keys: 'Enter', does: 'the main action' },
      { keys: 'T', does: 'the table behind a drawing' },
      { keys: 'Ctrl + P', does: 'print the sheet that belongs here' },
    ],
  },
  {
    title: 'First start',
    keys: [
      { keys: 'N', does: 'start a piece' },
      { keys: 'O', does: 'open a piece' },
      { keys: 'L', does: 'look round the sample' },
    ],
  },
  {
    title: 'Piece',
    keys: [
      { keys: 'Arrows', does: 'one notch wider or narrower' },
      { keys: 'Y', does: 'yarns' },
      { keys: 'L', does: 'the loom' },
      { keys: 'W', does: 'the warp' },
      { keys: 'G', does: 'ways of working' },
      { keys: 'A', does: 'the arithmetic' },
      { keys: 'F', does: 'buying, hanging, finishing' },
    ],
  },
  {
    title: 'Cartoon',
    keys: [
      { keys: '1, 2, 3', does: 'polygon, rectangle, hill' },
      { keys: '4, 5, 6', does: 'diamond, hexagon, ellipse' },
      { keys: '7, 8, 9', does: 'band, arch, freehand' },
      { keys: 'L', does: 'lettering' },
      { keys: 'O', does: 'bring in a drawing' },
      { keys: 'Arrows', does: 'nudge one end or one turn' },
      { keys: 'Shift + Arrows', does: 'nudge five' },
      { keys: 'N, C', does: 'next shape, next corner' },
      { keys: 'I', does: 'type the sizes' },
      { keys: 'M', does: 'mirror' },
      { keys: 'S', does: 'snap on or off' },
      { keys: 'PageUp, PageDown', does: 'woven earlier, woven later' },
      { keys: 'Shift + PageUp', does: 'woven first of all' },
      { keys: 'Shift + PageDown', does: 'woven last of all' },
      { keys: 'Ctrl + D', does: 'copy' },
      { keys: 'Delete, Backspace', does: 'remove' },
      { keys: 'Enter', does: 'close the polygon' },
      { keys: 'Esc', does: 'let go, then select' },
      { keys: '0', does: 'the whole piece' },
      { keys: '+, =', does: 'nearer' },
      { keys: '-', does: 'further' },
    ],
  },
  {
    title: 'Order of work',
    keys: [
      { keys: 'Arrows', does: 'the block above, the block below' },
      { keys: 'S', does: 'slits' },
      { keys: 'M', does: 'marks on the strings' },
      { keys: 'R', does: 're-plan the rest' },
      { keys: 'G', does: 'see it grow' },
    ],
  },
  {
    title: 'Bench',
    keys: [
      { keys: 'Space, Enter, PageDown', does: 'turn done; the play key too' },
      { keys: 'Backspace, PageUp', does: 'take the last turn back' },
      { keys: 'PageDown, PageUp', does: 'turn done, taken back: for a pedal or a clicker' },
      { keys: 'Arrows', does: 'look ahead' },
      { keys: 'Esc', does: 'leave the bench' },
    ],
  },
  {
    title: 'Loom check',
    keys: [
      { keys: 'Space', does: 'the camera, then the photograph' },
      { keys: 'O', does: 'choose a photograph' },
      { keys: 'W', does: 'watch a folder' },
      { keys: 'H', does: 'photographs of this piece' },
      { keys: 'K', does: 'keep this check' },
      { keys: 'P, L, D', does: 'plan, cloth, difference on or off' },
      { keys: 'S, B, C', does: 'strings, ribs, colours on or off; S at the camera: by itself' },
      { keys: 'F', does: 'the fell alone' },
      { keys: 'A', does: 'as it was taken' },
      { keys: '1–9', does: 'go to a flag' },
      { keys: 'M, 4', does: 'mark four points' },
      { keys: 'Arrows', does: 'the mark one pixel on; with Shift ten' },
      { keys: 'Backspace', does: 'take the last point back' },
      { keys: 'L, C', does: 'a length, a card, while points are marked' },
      { keys: 'G', does: 'a picture to share' },
      { keys: 'Delete', does: 'let the photograph go' },
      { keys: 'Esc', does: 'stop, or leave' },
    ],
  },
  {
    title: 'Record',
    keys: [
      { keys: 'Arrows', does: 'slide between two photographs' },
      { keys: '[', does: 'the check before' },
      { keys: ']', does: 'the check after' },
      { keys: 'O', does: 'open the check' },
      { keys: 'N', does: 'add a note' },
      { keys: 'R', does: 'make the report' },
      { keys: 'G', does: 'a picture to share' },
    ],
  },
];
