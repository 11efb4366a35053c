import type { DrawingNode } from './drawingNode.ts';
import { drawingLimits } from './limits.ts';

/** One style rule with a plain selector: an element, a class, an id, or everything. */
interface Rule {
  readonly selector: string;
  readonly weight: number;
  readonly values: ReadonlyMap<string, string>;
}

const heard = new Set([
  'fill',
  'fill-rule',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-opacity',
  'opacity',
  'display',
  'visibility',
  'color',
  'stop-color',
]);

/** The declarations of a style attribute or rule that matter here. */
export function declarations(text: string): Map<string, string> {
  const values = new Map<string, string>();
  for (const part of text.slice(0, 20_000).split(';')) {
    const colon = part.indexOf(':');
    const property = part.slice(0, colon).trim().toLowerCase();
    const value = part
      .slice(colon + 1)
      .replace(/!\s*important\s*$/i, '')
      .trim();
    if (colon > 0 && heard.has(property) && value !== '') values.set(property, value);
  }
  return values;
}

/**
 * Rules from a drawing's style elements. Only plain selectors are followed (`path`, `.leaf`, `#sun`, `*`, lists of
 * them); media queries, imports and the like are passed over.
 * @returns `whole` is false when something was passed over.
 */
export function styleRules(sheets: readonly string[]): { readonly rules: readonly Rule[]; readonly whole: boolean } {
  const rules: Rule[] = [];
  let whole = true;
  let characters: number = drawingLimits.styleCharacters;
  for (const text of sheets) {
    const sheet = text.slice(0, characters);
    characters -= sheet.length;
    if (sheet.length < text.length) whole = false;
    // Scanned by position, not by one pattern, so that no text can make it slow.
    let at = 0;
    for (;;) {
      const open = sheet.indexOf('{', at);
      const close = open < 0 ? -1 : sheet.indexOf('}', open);
      if (close < 0) break;
      const head = sheet
        .slice(at, open)
        .replaceAll(/\/\*[^*]{0,2000}\*\//g, '')
        .trim();
      const inner = sheet.lastIndexOf('{', close);
      at = close + 1;
      if (inner !== open || head.startsWith('@') || head.length > 2_000) {
        whole = false;
        continue;
      }
      const values = declarations(sheet.slice(open + 1, close));
      for (const selector of head.split(',').map((one) => one.trim())) {
        if (!/^(\*|[.#]?[\w-]+)$/.test(selector) || rules.length >= drawingLimits.rules) {
          whole = false;
          continue;
        }
        const weight = selector.startsWith('#') ? 2 : selector.startsWith('.') ? 1 : 0;
        rules.push({ selector: weight === 0 ? selector.toLowerCase() : selector, weight, values });
      }
    }
  }
  return { rules: rules.sort((one, other) => one.weight - other.weight), whole };
}

/** Rules by what they select, so finding an element's rules doesn't mean trying all of them. */
export class StyleSheet {
  private readonly bySelector = new Map<string, Map<string, string>>();

  constructor(rules: readonly Rule[]) {
    for (const rule of rules) {
      const values = this.bySelector.get(rule.selector) ?? new Map<string, string>();
      for (const [property, value] of rule.values) values.set(property, value);
      this.bySelector.set(rule.selector, values);
    }
  }

  /** A property of an element: its style attribute first, then the sheet (id, class, element), then its attribute. */
  own(node: DrawingNode, inline: ReadonlyMap<string, string>, property: string): string | undefined {
    const written = inline.get(property);
    if (written !== undefined) return written;
    const id = node.attributes.get('id');
    const byId = id === undefined ? undefined : this.bySelector.get(`#${id}`)?.get(property);
    if (byId !== undefined) return byId;
    const classes = (node.attributes.get('class') ?? '').split(/\s+/, 20);
    for (let at = classes.length - 1; at >= 0; at--) {
      const value = this.bySelector.get(`.${classes[at]}`)?.get(property);
      if (value !== undefined) return value;
    }
    return (
      this.bySelector.get(node.name)?.get(property) ??
      this.bySelector.get('*')?.get(property) ??
      node.attributes.get(property)
    );
  }
}
