import { SaxesParser } from 'saxes';
import { failure, type Outcome, success } from '../../model/outcome.ts';
import type { DrawingNode, LeftOut } from './drawingNode.ts';
import { drawingLimits, LimitMet } from './limits.ts';

const svgNamespace = 'http://www.w3.org/2000/svg';
const scripted = new Set(['script', 'handler', 'listener']);
const foreign = new Set(['foreignobject', 'iframe', 'object', 'embed', 'audio', 'video', 'canvas']);
const animated = new Set(['animate', 'animatetransform', 'animatemotion', 'animatecolor', 'set', 'discard']);

/** Thrown by the reader's own handlers to stop reading text that is not a drawing. */
class NotDrawing extends Error {}

interface Growing {
  readonly name: string;
  readonly attributes: Map<string, string>;
  readonly children: Growing[];
  text: string;
}

export interface ReadDrawing {
  readonly root: DrawingNode;
  readonly leftOut: Set<LeftOut>;
}
export type ReadTag = 'drawing-too-large' | 'drawing-unreadable';

const tooLarge = (what: LimitMet['what']) => {
  const said: Partial<Record<LimitMet['what'], string>> = {
    characters: 'The drawing is longer than 8 million characters.',
    elements: 'The drawing has more than 60 000 parts.',
    depth: 'The drawing has groups inside groups, more than 256 deep.',
  };
  return failure(
    'drawing-too-large',
    said[what] ?? 'The drawing is larger than can be woven.',
    'Simplify it in a drawing program, or trace a picture of it.',
  );
};

const notDrawing = (detail: string) =>
  failure(
    'drawing-unreadable',
    'The file is not an SVG drawing that can be read.',
    'Open it in a drawing program and save it again as plain SVG.',
    detail,
  );

/** Why an element and everything in it is left out; null when it may be drawn. */
function whyLeftOut(name: string): LeftOut | null {
  if (scripted.has(name)) return 'script';
  if (foreign.has(name)) return 'foreign';
  if (animated.has(name)) return 'animation';
  if (name === 'image' || name === 'feimage') return 'image';
  if (name === 'text' || name === 'tspan' || name === 'textpath' || name === 'tref') return 'text';
  return null;
}

/**
 * Reads SVG text into a tree of the elements that can be drawn. Scripts, pictures, embedded pages, lettering and
 * animation never enter the tree; document entities are never expanded and nothing is fetched.
 * @param text the whole file as text.
 */
export function readNodes(text: string): Outcome<ReadDrawing, ReadTag> {
  if (text.length > drawingLimits.characters) return tooLarge('characters');
  const leftOut = new Set<LeftOut>();
  const open: Growing[] = [];
  let root: Growing | null = null;
  let elements = 0;
  let entities = 0;
  let depth = 0;
  /** Depth at which a left-out element began; everything deeper goes with it. */
  let skippingFrom: number | null = null;
  let prefix = '';

  const parser = new SaxesParser({ xmlns: false, position: false });
  parser.on('error', (problem) => {
    // An entity the document defines or forgets is left out; anything else means the text is not XML.
    if (problem.message.includes('entity') && ++entities <= drawingLimits.entities) leftOut.add('entity');
    else throw new NotDrawing(problem.message);
  });
  parser.on('doctype', (doctype) => {
    if (/<!ENTITY/i.test(doctype)) leftOut.add('entity');
  });
  parser.on('opentag', (tag) => {
    depth++;
    if (++elements > drawingLimits.elements) throw new LimitMet('elements');
    if (depth > drawingLimits.depth) throw new LimitMet('depth');
    if (skippingFrom !== null) return;
    if (root === null) {
      // The drawing's own elements may all wear a prefix, as in <svg:svg>.
      const colon = tag.name.indexOf(':');
      prefix = colon < 0 ? '' : tag.name.slice(0, colon + 1);
      const wanted = prefix === '' ? 'xmlns' : `xmlns:${prefix.slice(0, -1)}`;
      const namespace = tag.attributes[wanted];
      if (
        tag.name.slice(prefix.length).toLowerCase() !== 'svg' ||
        (namespace !== undefined && namespace !== svgNamespace)
      ) {
        throw new NotDrawing('the outermost element is not svg');
      }
    }
    const own = tag.name.startsWith(prefix) && !tag.name.slice(prefix.length).includes(':');
    const name = tag.name.slice(own ? prefix.length : 0).toLowerCase();
    const why = own ? whyLeftOut(name) : null;
    if (!own || why !== null) {
      if (why !== null) leftOut.add(why);
      skippingFrom = depth;
      return;
    }
    const attributes = new Map<string, string>();
    for (const [attribute, value] of Object.entries(tag.attributes)) {
      const local = attribute.replace(/^xlink:/, '').toLowerCase();
      if (/^on[a-z]/.test(local)) leftOut.add('script');
      // A plain href wins over an older xlink one, whichever comes first.
      else if (local === 'href' && attribute !== 'href' && attributes.has('href')) continue;
      else if (!local.includes(':')) attributes.set(local, value);
    }
    const node: Growing = { name, attributes, children: [], text: '' };
    open.at(-1)?.children.push(node);
    open.push(node);
    root ??= node;
  });
  const addText = (piece: string) => {
    const node = open.at(-1);
    if (skippingFrom === null && node?.name === 'style') node.text += piece;
  };
  parser.on('text', addText);
  parser.on('cdata', addText);
  parser.on('closetag', () => {
    if (skippingFrom === null) open.pop();
    else if (skippingFrom === depth) skippingFrom = null;
    depth--;
  });

  try {
    parser.write(text.startsWith('\uFEFF') ? text.slice(1) : text).close();
  } catch (thrown) {
    if (thrown instanceof LimitMet) return tooLarge(thrown.what);
    return notDrawing(thrown instanceof Error ? thrown.message : String(thrown));
  }
  if (root === null) return notDrawing('no elements');
  return success({ root, leftOut });
}
