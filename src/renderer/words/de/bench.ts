import type { Words } from '../en.ts';

const faeden = (ends: number) => (Math.abs(ends) === 1 ? '1 Kettfaden' : `${Math.abs(ends)} Kettfäden`);

export const bench: Words['bench'] = {
  name: 'Webplatz',
  of: (turns) => (turns === 1 ? 'von 1 Wende' : `von ${turns} Wenden`),
  half: 'ein einzelner Schuss',
  over: (ends) => `über ${faeden(ends)}`,
  span: (from, to) => (from === to ? `Kettfaden ${from}` : `${from} bis ${to}`),
  ofRounds: (rounds) => (rounds === 1 ? 'von 1 Runde' : `von ${rounds} Runden`),
  ofRepeats: (repeats) => `von ${repeats} Rapporten`,
  together: 'Diese Schüsse wachsen zusammen, in dieser Folge:',
  repeated: (rounds, times) => `Diese ${rounds} Runden ${times}-mal weben:`,
  part: (name, from, to) => `${name}, ${from === to ? `Kettfaden ${from}` : `${from} bis ${to}`}`,
  partSize: (passes) => (passes === 1 ? 'ein Schuss' : 'eine Wende'),
  nextRound: (changes) => (changes === '' ? 'Danach die nächste Runde.' : `Danach ${changes}.`),
  nextInRepeat: (round) => (round === 1 ? 'Danach wieder Runde 1.' : `Danach Runde ${round}.`),
  nextRepeat: (rounds, times, changes) =>
    `Danach ${rounds} Runden ${times}-mal weben${changes === '' ? '' : `: zuerst ${changes}`}.`,
  goesOver: (name, spans) =>
    `${name} über Kettfäden ${spans.map(([from, to]) => (from === to ? from : `${from} bis ${to}`)).join(', dann ')}`,
  far: (block, blocks, left) => `Fläche ${block} von ${blocks}. Noch ${left}.`,
  turnOf: (turn, of) => `Wende ${turn} von ${of}`,
  after: (turns) => (turns === 1 ? 'Nach dieser' : `Nach ${turns}`),
  inBoth: (ends) => `beidseits ${faeden(ends)} ein.`,
  outBoth: (ends) => `beidseits ${faeden(ends)} aus.`,
  move: (side, ends) => `${faeden(ends)} ${ends > 0 ? 'aus' : 'ein'} ${side === 'left' ? 'links' : 'rechts'}`,
  both: (first, second) => `${first}, ${second}.`,
  one: (first) => `${first}.`,
  afterwards: (name) => `Dann: ${name}.`,
  lastOne: 'Dann ist alles gewebt.',
  going: (over, end, back) =>
    `${over ? 'Über' : 'Unter'} Kettfaden ${end} hinaus, ${over ? 'unter' : 'über'} ihm zurück, bis Kettfaden ${back}.`,
  goingSingle: (over, end, to) => `${over ? 'Über' : 'Unter'} Kettfaden ${end}, bis Kettfaden ${to}.`,
  join: 'Hier endet diese Länge. Innen in der Fläche ansetzen, weg von den Rändern.',
  done: 'Wende fertig',
  doneHint: 'Leertaste drücken oder irgendwohin tippen',
  back: 'Eine zurück',
  leave: 'Verlassen',
  leaveBench: 'Den Webplatz verlassen',
  sound: 'Ton',
  speech: 'Schritte vorlesen',
  allDone: 'Alles ist gewebt.',
  allDoneHint: 'Den Webplatz verlassen; beim Stück zeigt F den Weg von hier bis an die Wand.',
  rest: 'Eine Stunde gewebt. Aufrichten und in die Ferne schauen.',
  picture: 'Die nächste Wende auf den Fäden',
  announce: (unit, turn, of, from, to) =>
    `${{ turn: 'Wende', round: 'Runde', repeat: 'Rapport' }[unit]} ${turn} von ${of}, ${from === to ? `Kettfaden ${from}` : `Kettfäden ${from} bis ${to}`}.`,
  takenBack: 'Eine zurückgenommen.',
  ahead: 'Vorausschau',
  backToNow: 'Zurück zu jetzt',
  keys: { done: 'Wende fertig', back: 'eine zurück', ahead: 'vorausschauen', leave: 'verlassen' },
};
