import type { Settings } from '../../core/contract/hostApi.ts';
import { useSettings } from '../state/settingsStore.ts';
import { told } from './de/told.ts';
import { toldFinishing } from './de/toldFinishing.ts';
import { toldKeeping } from './de/toldKeeping.ts';
import { toldKeys } from './de/toldKeys.ts';
import { toldVerdicts } from './de/toldVerdicts.ts';
import type { Told } from './toldTable.ts';

interface Saying {
  readonly pattern: RegExp;
  readonly translated: string;
}

/** Whatever stands in a hole, it never runs on into the next sentence. */
const HOLE = '(?:(?!\\. ).)+?';

const sayings = (table: Told): readonly Saying[] =>
  table.map(([english, translated]) => ({
    pattern: new RegExp(
      `^${english.replace(/[.*+?^$()|[\]\\]/g, '\\$&').replace(/\{(\w+)\}/g, (_, name: string) => `(?<${name}>${HOLE})`)}$`,
    ),
    translated,
  }));

interface Language {
  readonly sayings: readonly Saying[];
  readonly giveOrTake: string;
}

const languages: Readonly<Record<Settings['language'], Language | null>> = {
  en: null,
  de: {
    sayings: sayings([...told, ...toldVerdicts, ...toldKeys, ...toldFinishing, ...toldKeeping]),
    giveOrTake: 'auf oder ab',
  },
};

/** What stands in a hole may itself be a saying: where a piece is open, which notches. */
const held = (text: string, language: Language): string => translated(text, language) ?? text;

function translated(text: string, language: Language): string | null {
  const { sayings, giveOrTake } = language;
  const [, body = '', spread] = /^(.*?)(?:, give or take ([^,]+))?$/.exec(text) ?? [];
  for (const { pattern, translated } of sayings) {
    const groups = pattern.exec(body)?.groups;
    if (groups === undefined && !pattern.test(body)) continue;
    const said = translated.replace(/\{(\w+)\}/g, (_, name: string) => held(groups?.[name] ?? '', language));
    return spread === undefined ? said : `${said}, ${giveOrTake} ${spread}`;
  }
  return null;
}

/** One sentence, with its full stop if it has one; null when it has no translation. */
function sentence(text: string, language: Language): string | null {
  const end = /[.?]$/.exec(text)?.[0] ?? '';
  const said = translated(end === '' ? text : text.slice(0, -1), language);
  return said === null ? null : said + end;
}

/** The same in another language: whole first, then sentence by sentence. What has no translation stays as it is. */
export function tellIn(language: Settings['language'], text: string): string {
  const table = languages[language];
  if (table === null || text === '') return text;
  return (
    sentence(text, table) ??
    text
      .split(/(?<=[.?]) (?=\S)/)
      .map((part) => sentence(part, table) ?? part)
      .join(' ')
  );
}

/** What the core or the host says, in the weaver's language. */
export const tell = (text: string): string => tellIn(useSettings.getState().settings.language, text);

/** The same for a component: it draws itself anew when the language changes. */
export function useTell(): (text: string) => string {
  const language = useSettings((state) => state.settings.language);
  return (text) => tellIn(language, text);
}
