/** The short tour of the sample: five steps, one for each word of the bar. */
export const tour = {
  offer: 'Be shown round in five steps',
  offerSecond: 'through the same example; Esc leaves at any time',
  start: 'Take the tour',
  label: 'The tour',
  step: (at: number, of: number) => `${at} of ${of}`,
  next: 'Go on',
  done: 'Done',
  leave: 'Leave the tour',
  steps: [
    {
      head: 'Piece: what is on the loom',
      text: 'The loom, the warp and the yarns. Sizes are typed on the drawing’s own lines; the sentence says what suits and what doesn’t.',
    },
    {
      head: 'Cartoon: what you weave from',
      text: 'Shapes are drawn on the warp itself and stepped to whole turns as you draw. Nothing is lost: Ctrl Z takes anything back.',
    },
    {
      head: 'Order of work: what comes next',
      text: 'Blocks in the order they are woven, from the foot up. At the bench one key, or a tap anywhere, counts a turn.',
    },
    {
      head: 'Loom check: what the cloth does',
      text: 'A photograph is measured against the loom itself. Blue is the plan, orange the cloth; each figure says how sure it is.',
    },
    {
      head: 'Record: what has changed',
      text: 'Every check you keep, side by side. F1 or the question mark shows words and keys on any screen.',
    },
  ] as readonly { readonly head: string; readonly text: string }[],
};
