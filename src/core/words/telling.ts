import { blockName } from './de/blockName.ts';
import { told } from './de/told.ts';
import { toldDrawings } from './de/toldDrawings.ts';
import { toldFinishing } from './de/toldFinishing.ts';
import { toldKeeping } from './de/toldKeeping.ts';
import { toldKeys } from './de/toldKeys.ts';
import { toldSheets } from './de/toldSheets.ts';
import { toldSums } from './de/toldSums.ts';
import { toldVerdicts } from './de/toldVerdicts.ts';
import type { Told } from './toldTable.ts';

/** The languages the weaver can choose. */
export type LanguageName = 'en' | 'de';

interface Saying {
  readonly pattern: RegExp;
  readonly translated: string;
}

/** Whatever stands in a hole, it never runs on into the next sentence; a figure is a figure, with its fraction. */
const HOLE = '(?:(?!\\. ).)+?';
const FIGURE = '[\\d.\u202f\u2044¼½¾⅛⅜⅝⅞ ]*[\\d¼½¾⅛⅜⅝⅞]';
const FIGURES = `${FIGURE}(?:, ${FIGURE})*`;
const hole = (name: string) =>
  `(?<${name}>${name.startsWith('figures') ? FIGURES : name.startsWith('figure') ? FIGURE : HOLE})`;

const sayings = (table: Told): readonly Saying[] =>
  table.map(([english, translated]) => ({
    pattern: new RegExp(
      `^${english.replace(/[.*+?^$()|[\]\\]/g, '\\$&').replace(/\{(\w+)\}/g, (_, name: string) => hole(name))}$`,
    ),
    translated,
  }));

interface Language {
  readonly sayings: readonly Saying[];
  readonly giveOrTake: (spread: string) => string;
}

const languages: Readonly<Record<LanguageName, Language | null>> = {
  en: null,
  de: {
    sayings: sayings([
      ...told,
      ...toldVerdicts,
      ...toldKeys,
      ...toldFinishing,
      ...toldKeeping,
      ...toldDrawings,
      ...toldSheets,
      ...toldSums,
    ]),
    giveOrTake: (spread) => `auf ${spread} genau`,
  },
};

/** What stands in a hole may itself be a saying: where a piece is open, which notches. */
const held = (text: string, language: Language): string => translated(text, language) ?? text;

function translated(text: string, language: Language): string | null {
  const { sayings, giveOrTake } = language;
  const [, body = '', spread] = /^(.*?)(?:, give or take ((?:(?!\. )[^,])+))?$/.exec(text) ?? [];
  for (const { pattern, translated } of sayings) {
    const groups = pattern.exec(body)?.groups;
    if (groups === undefined && !pattern.test(body)) continue;
    const said = translated.replace(/\{(\w+)\}/g, (_, name: string) => held(groups?.[name] ?? '', language));
    return spread === undefined ? said : `${said}, ${giveOrTake(spread)}`;
  }
  return null;
}

/** One sentence, with its full stop if it has one; null when it has no translation. */
function sentence(text: string, language: Language): string | null {
  const end = /[.?]$/.exec(text)?.[0] ?? '';
  const said = translated(end === '' ? text : text.slice(0, -1), language);
  return said === null ? null : said + end;
}

/**
 * The same in another language, its figures written as that language does: whole first, then sentence by sentence. What
 * has no translation keeps its words.
 */
export function tellIn(language: LanguageName, text: string): string {
  const table = languages[language];
  if (table === null || text === '') return text;
  const said =
    sentence(text, table) ??
    text
      .split(/(?<=[.?]) (?=\S)/)
      .map((part) => sentence(part, table) ?? part)
      .join(' ');
  return figuresIn(language, said);
}

/** A point between figures: not one of several, as in a date or a version, nor one before a file's ending. */
const DECIMAL_POINT = /(?<![\p{L}\d._/-])(\d[\d\u202f]*)\.(\d+)(?!\d|\.\d|\p{L})/gu;

/** Figures as the language writes them, `1.06 mm` as `1,06 mm`; the core and every file keep the point. */
export const figuresIn = (language: LanguageName, text: string): string =>
  language === 'de' ? text.replace(DECIMAL_POINT, '$1,$2') : text;

/** A length with its unit as the language writes it: inches have a name of their own in German. */
export const lengthIn = (language: LanguageName, length: string): string =>
  language === 'de' ? figuresIn(language, length).replace(/ in$/, ' Zoll') : length;

/** The name the core gives a block, in the weaver's language. */
export const blockNameIn = (language: LanguageName, name: string): string =>
  language === 'de' ? blockName(name) : name;
