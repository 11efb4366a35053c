export const firstRun = {
  sentence: 'Nothing on the loom yet.',
  lead: 'Give a width, a height and the loom you have. You’ll see how many strings to tie, at which notches, and how much yarn to buy.',
  open: 'Open a piece',
  openSecond: 'a zip you kept before; or drop it here',
  openSecondFolder: 'a folder or zip you kept before; or drop it here',
  photograph: 'Already weaving? Start from a photograph',
  photographSecond: 'give the sizes first; the photograph is measured next',
  sample: 'Look round “Harbour lantern”',
  sampleSecond: 'an example you can’t spoil, with rendered photographs',
  recent: 'On the loom before',
  drawing: 'An empty loom with a plumb line hanging in it',
  dropHere: 'Let go to open it',
  notAPiece:
    'That file is neither a kept piece nor a photograph. A kept piece ends in .zip; photographs end in .jpg, .png or .heic.',
  photographFirst: 'The photograph waits. Give the loom and the sizes, then Loom check measures it.',
  start: 'Start a piece',
  /** What stands in a new piece until the weaver names it. */
  called: { loom: 'notched frame', warp: 'Warp', yarn: (number: number) => `Yarn ${number}` },
  newName: 'New piece',
  opening: 'Opening',
  keyOpen: 'open',
  keySample: 'look round the sample',
};
