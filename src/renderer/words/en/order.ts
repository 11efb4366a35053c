import { listInWords } from '../../../core/model/listWords.ts';

const turns = (count: number) =>
  `${count === 0.5 ? '½' : String(count).replace('.5', ' ½')} ${count > 1 ? 'turns' : 'turn'}`;
const ends = (count: number) => (count === 1 ? '1 end' : `${count} ends`);

export const order = {
  turns,
  ends,
  nothing: 'There is no order yet.',
  nothingSecond: 'Draw a shape, or weave the ground plain: either gives an order of work.',
  /** The name the core gives a block, as it is said on screen. */
  block: (name: string) => name,
  begin: (name: string) => `First at the foot: ${name}.`,
  next: (block: number, name: string) => `Now block ${block}: ${name}.`,
  done: 'Everything is woven.',
  last: 'Last',
  after: (blocks: number, left: string) =>
    `${blocks === 1 ? '1 block' : `${blocks} blocks`} and ${left} after this one`,
  span: (from: number, to: number) => (from === to ? `end ${from}` : `ends ${from} to ${to}`),
  woven: (to: number) => (to === 1 ? 'Block 1 woven' : `Blocks 1 to ${to} woven`),
  show: 'Show them',
  fold: 'Fold them',
  inBy: (count: number) => `in ${count}`,
  outBy: (count: number) => `out ${count}`,
  bothSides: (move: string) => `${move} at both sides`,
  leftSide: (move: string) => `${move} at the left`,
  rightSide: (move: string) => `${move} at the right`,
  start: (side: 'left' | 'right', over: boolean, end: number) =>
    `Start ${side}, ${over ? 'over' : 'under'} end ${end}.`,
  together: (blocks: readonly number[]) =>
    `Rises together with ${blocks.length === 1 ? 'block' : 'blocks'} ${listInWords(blocks)}: the bench shows them as one step, weft by weft.`,
  tails: (joins: number) => (joins === 1 ? 'One join on the way.' : `${joins} joins on the way.`),
  toBench: 'Weave at the bench',
  weave: (block: number) => `Weave block ${block}`,
  finish: 'Record what you made',
  print: 'Print',
  grow: 'See it grow',
  stopGrowing: 'Stop',
  fell: 'fell',
  picture: 'The cloth as far as it is woven, and the blocks to come',
  list: 'Blocks in the order they are woven, first at the foot',
  replan: {
    title: 'Re-plan the rest',
    lead: 'What is woven stays as it is. The rest of the cartoon is laid over passes of this height, so that every shape still lands where it was drawn. Undo takes it back.',
    leadBefore: 'Nothing is woven yet: the whole cartoon is laid over passes of this height.',
    planned: (pass: string) => `Planned: ${pass} a pass.`,
    measured: (pass: string) => `The newest check measured ${pass}.`,
    notMeasured: 'No check has measured the beat yet.',
    same: 'That is what it is planned with.',
    doIt: 'Plan it anew',
    columns: ['Shape', 'As drawn', 'If left as it is', 'Planned anew'],
    reach: (bottom: string, top: string) => `${bottom} to ${top}`,
    wholeCloth: 'Whole cloth',
    passes: (planned: number, now: number) =>
      planned === now ? `${now} passes, as before.` : `${now} passes instead of ${planned}.`,
    blocks: (anew: number, toCome: number) =>
      anew === 0 ? 'No block to come has other counts.' : `${anew} of ${toCome} blocks to come have other counts.`,
    yarn: (name: string, length: string, more: boolean) => `${name}: ${length} ${more ? 'more' : 'less'}.`,
    hours: (hours: string, more: boolean) => `${hours} hours ${more ? 'more' : 'less'}.`,
  },
  anew: 'anew',
  overhangs: 'Overhangs',
  noOverhangs: 'No block moves out over another.',
  overhang: (block: number, over: number, ends: number, side: 'left' | 'right') =>
    `Block ${block} moves out over block ${over} by ${ends === 1 ? '1 end' : `${ends} ends`} at the ${side}: that one is woven first and carries it.`,
  slits: 'Slits and overhangs',
  noSlits: 'No slits longer than you allow.',
  showSlits: (count: number): string => (count === 1 ? 'Show it' : 'Show them'),
  foldSlits: (count: number): string => (count === 1 ? 'Fold it' : 'Fold them'),
  shortSlits: (count: number, more: boolean) =>
    `${count}${more ? ' more' : ''} ${count === 1 ? 'is' : 'are'} short enough to leave open.`,
  slit: (from: number, to: number, length: string) => `Between ends ${from} and ${to}: ${length} long.`,
  marks: 'Marks on the strings',
  marksLead: 'Heights up from the top of the twining.',
  markColumns: ['End', 'Heights'],
  tableColumns: ['Block', 'Name', 'Yarn', 'Ends', 'Turns', 'State'],
  states: { woven: 'woven', now: 'now', toCome: 'to come' },
  changedPlan: 'The plan has changed since your last turn.',
  changedPlanSecond: 'Turns you have woven stay counted from the bottom. Look at the picture: does it match the loom?',
  matches: 'It matches',
  startAgain: 'Count from the bottom again',
  /** @param place the turn that would come next; null when all of it is woven. */
  checkShowsMore: (
    check: number,
    place: { readonly block: number; readonly turn: number } | null,
    giveOrTake: number,
  ): string =>
    place === null
      ? `Check ${check} shows all of it woven.`
      : `Check ${check} shows more woven than is ticked: block ${place.block}, turn ${place.turn}, give or take ${turns(giveOrTake).replace(' ', '\u00a0')}.`,
  countFromThere: 'Tick up to there',
  countedByCheck: (check: number) => `Ticked as far as check ${check} shows.`,
  countTakenBack: 'Take it back',
  checkShowsOtherOrder: (check: number) =>
    `Check ${check} shows cloth woven, in another order than this one; nothing of it is ticked.`,
  keys: {
    move: 'move through blocks',
    slits: 'slits and overhangs',
    replan: 're-plan',
    marks: 'marks on the strings',
    grow: 'see it grow',
  },
};
