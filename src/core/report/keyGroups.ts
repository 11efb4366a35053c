/** Keys that answer on one screen, and what each does. */
export interface KeyGroup {
  readonly title: string;
  readonly keys: readonly { readonly keys: string; readonly does: string }[];
}

/** The keys of every screen, for the sheet to pin beside the loom. */
export const keyGroups: readonly KeyGroup[] = [
  {
    title: 'Everywhere',
    keys: [
      { keys: 'Ctrl + Z', does: 'undo' },
      { keys: 'Ctrl + Shift + Z', does: 'redo' },
      { keys: 'Ctrl + 1–5', does: 'Piece, Cartoon, Order of work, Loom check, Record' },
      { keys: 'F1', does: 'words and keys' },
      { keys: 'Enter', does: 'the main action' },
      { keys: 'T', does: 'the table behind a drawing' },
    ],
  },
  {
    title: 'Bench',
    keys: [
      { keys: 'Space', does: 'turn done' },
      { keys: 'Backspace', does: 'take the last turn back' },
      { keys: 'Arrows', does: 'look ahead' },
      { keys: 'Esc', does: 'leave the bench' },
    ],
  },
  {
    title: 'Cartoon',
    keys: [
      { keys: 'V', does: 'select' },
      { keys: 'Arrows', does: 'nudge one end or one turn' },
      { keys: 'Shift + Arrows', does: 'nudge five' },
      { keys: 'M', does: 'mirror' },
      { keys: '0', does: 'the whole piece' },
      { keys: '+', does: 'nearer' },
      { keys: '−', does: 'further' },
    ],
  },
  {
    title: 'Loom check',
    keys: [
      { keys: 'P', does: 'the plan on or off' },
      { keys: 'D', does: 'the difference on or off' },
      { keys: '1–9', does: 'go to a flag' },
      { keys: 'M', does: 'mark four points' },
    ],
  },
  {
    title: 'Record',
    keys: [
      { keys: 'Arrows', does: 'slide between two photographs' },
      { keys: '[', does: 'the check before' },
      { keys: ']', does: 'the check after' },
      { keys: 'N', does: 'add a note' },
    ],
  },
];
