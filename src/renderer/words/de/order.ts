import { listInWords } from '../../../core/model/listWords.ts';
import { blockName } from '../../../core/words/de/blockName.ts';
import type { Words } from '../en.ts';

const wenden = (count: number) =>
  `${count === 0.5 ? '½' : String(count).replace('.5', ' ½')} ${count > 1 ? 'Wenden' : 'Wende'}`;
const enden = (count: number) => (count === 1 ? '1 Kettfaden' : `${count} Kettfäden`);

export const order: Words['order'] = {
  turns: wenden,
  ends: enden,
  nothing: 'Noch keine Reihenfolge.',
  nothingSecond: 'Eine Form zeichnen oder den Grund glatt weben: beides ergibt eine Reihenfolge.',
  block: blockName,
  begin: (name) => `Zuerst ganz unten: ${name}.`,
  next: (block, name) => `Jetzt Fläche ${block}: ${name}.`,
  done: 'Alles ist gewebt.',
  last: 'Zuletzt',
  after: (blocks, left) => `danach ${blocks === 1 ? '1 Fläche' : `${blocks} Flächen`} und ${left}`,
  span: (from, to) => (from === to ? `Kettfaden ${from}` : `Kettfäden ${from} bis ${to}`),
  woven: (to) => (to === 1 ? 'Fläche 1 gewebt' : `Flächen 1 bis ${to} gewebt`),
  show: 'Zeigen',
  fold: 'Einklappen',
  inBy: (count) => `${count} ein`,
  outBy: (count) => `${count} aus`,
  bothSides: (move) => `beidseits ${move}`,
  leftSide: (move) => `${move} links`,
  rightSide: (move) => `${move} rechts`,
  start: (side, over, end) =>
    `Beginn ${side === 'left' ? 'links' : 'rechts'}, ${over ? 'über' : 'unter'} Kettfaden ${end}.`,
  together: (blocks) =>
    `Wächst zusammen mit ${blocks.length === 1 ? 'Fläche' : 'den Flächen'} ${listInWords(blocks, 'und')}: der Webplatz zeigt sie als einen Schritt, Schuss für Schuss.`,
  tails: (joins) => (joins === 1 ? 'Unterwegs einmal ansetzen.' : `Unterwegs ${joins}-mal ansetzen.`),
  toBench: 'Am Webplatz weben',
  weave: (block) => `Fläche ${block} weben`,
  finish: 'Festhalten, was entstand',
  print: 'Drucken',
  grow: 'Wachsen sehen',
  stopGrowing: 'Anhalten',
  fell: 'Rand',
  picture: 'Das Gewebe, soweit es gewebt ist, und die kommenden Flächen',
  list: 'Flächen in Webfolge, die erste unten',
  replan: {
    title: 'Den Rest neu planen',
    lead: 'Gewebtes bleibt, wie es ist. Der Rest des Kartons wird über Schüsse dieser Höhe gelegt, damit jede Form dort landet, wo sie gezeichnet ist. Rückgängig nimmt es zurück.',
    leadBefore: 'Noch ist nichts gewebt: der ganze Karton wird über Schüsse dieser Höhe gelegt.',
    planned: (pass) => `Geplant: ${pass} je Schuss.`,
    measured: (pass) => `Die neueste Messung ergab ${pass}.`,
    notMeasured: 'Noch hat keine Messung den Anschlag ergeben.',
    same: 'Damit ist schon geplant.',
    doIt: 'Neu planen',
    columns: ['Form', 'Gezeichnet', 'Wenn es so bleibt', 'Neu geplant'],
    reach: (bottom, top) => `${bottom} bis ${top}`,
    wholeCloth: 'Ganzes Gewebe',
    passes: (planned, now) => (planned === now ? `${now} Schüsse wie bisher.` : `${now} Schüsse statt ${planned}.`),
    blocks: (anew, toCome) =>
      anew === 0
        ? 'Keine der kommenden Flächen zählt anders.'
        : `${anew} von ${toCome} kommenden Flächen zählen anders.`,
    yarn: (name, length, more) => `${name}: ${length} ${more ? 'mehr' : 'weniger'}.`,
    hours: (hours, more) => `${hours} Stunden ${more ? 'mehr' : 'weniger'}.`,
  },
  anew: 'neu',
  overhangs: 'Überhänge',
  noOverhangs: 'Keine Fläche ragt über eine andere.',
  overhang: (block, over, ends, side) =>
    `Fläche ${block} ragt ${side === 'left' ? 'links' : 'rechts'} um ${ends === 1 ? '1 Kettfaden' : `${ends} Kettfäden`} über Fläche ${over}: die wird zuerst gewebt und trägt sie.`,
  slits: 'Schlitze und Überhänge',
  noSlits: 'Keine Schlitze, die länger als erlaubt sind.',
  showSlits: () => 'Zeigen',
  foldSlits: () => 'Einklappen',
  shortSlits: (count, more) =>
    `${count}${more ? (count === 1 ? ' weiterer' : ' weitere') : ''} ${count === 1 ? 'ist' : 'sind'} kurz genug, um offen zu bleiben.`,
  slit: (from, to, length) => `Zwischen Kettfaden ${from} und ${to}: ${length} lang.`,
  marks: 'Marken auf den Fäden',
  marksLead: 'Höhen ab Oberkante der Zwirnung.',
  markColumns: ['Kettfaden', 'Höhen'],
  tableColumns: ['Fläche', 'Name', 'Garn', 'Kettfäden', 'Wenden', 'Stand'],
  states: { woven: 'gewebt', now: 'jetzt', toCome: 'kommt noch' },
  changedPlan: 'Der Plan hat sich seit der letzten Wende geändert.',
  changedPlanSecond: 'Gewebte Wenden bleiben von unten gezählt. Stimmt das Bild mit dem Rahmen überein?',
  matches: 'Es stimmt',
  startAgain: 'Von unten neu zählen',
  checkShowsMore: (check, place, giveOrTake) =>
    place === null
      ? `Messung ${check} zeigt alles gewebt.`
      : `Messung ${check} zeigt mehr gewebt, als abgehakt ist: Fläche ${place.block}, Wende ${place.turn}, ±\u00a0${wenden(giveOrTake).replace(' ', '\u00a0')}.`,
  countFromThere: 'Bis dort abhaken',
  countedByCheck: (check) => `Abgehakt, so weit Messung ${check} es zeigt.`,
  countTakenBack: 'Zurücknehmen',
  checkShowsOtherOrder: (check) =>
    `Messung ${check} zeigt Gewebtes, in anderer Folge als hier; abgehakt ist davon nichts.`,
  keys: {
    move: 'durch die Flächen',
    slits: 'Schlitze und Überhänge',
    replan: 'neu planen',
    marks: 'Marken auf den Fäden',
    grow: 'wachsen sehen',
  },
};
