const parts: Readonly<Record<string, string>> = {
  Ground: 'Grund',
  Header: 'Anfang',
  Footer: 'Abschluss',
  foot: 'unten',
  head: 'oben',
  middle: 'Mitte',
  left: 'links',
  centre: 'in der Mitte',
  right: 'rechts',
  lower: 'unterer Teil',
  upper: 'oberer Teil',
  'lower half': 'untere Hälfte',
  'upper half': 'obere Hälfte',
};

/** `the flame` is the shape called Flame; its name stands in marks, since its gender isn't known. */
const shape = (words: string): string =>
  words === 'the ground' ? 'dem Grund' : words.startsWith('the ') ? `„${capital(words.slice(4))}“` : `„${words}“`;
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function place(words: string): string {
  const [, side, of] = /^(left|right) of (.+)$/.exec(words) ?? [];
  if (side !== undefined) return `${side === 'left' ? 'links' : 'rechts'} von ${shape(of!)}`;
  const [, twin] = /^between (.+) and its twin$/.exec(words) ?? [];
  if (twin !== undefined) return `zwischen ${shape(twin)} und dem Gegenstück`;
  const [, count] = /^(\d+) from the left$/.exec(words) ?? [];
  if (count !== undefined) return `${count}. von links`;
  const [, one, other] = /^between (.+) and (.+)$/.exec(words) ?? [];
  if (one !== undefined) return `zwischen ${shape(one)} und ${shape(other!)}`;
  const [, within] = /^inside (.+)$/.exec(words) ?? [];
  if (within !== undefined) return `in ${shape(within)}`;
  const [, stage] = /^stage (\d+)$/.exec(words) ?? [];
  if (stage !== undefined) return `Abschnitt ${stage}`;
  return parts[words] ?? words;
}

/** The name the core gives a block, in German: `Grund, links von „Laterne“, unterer Teil`. */
export const blockName = (name: string): string => name.split(', ').map(place).join(', ');
