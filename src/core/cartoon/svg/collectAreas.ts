import { type Affine, compose, determinant, identity, translation } from '../../geometry/affine.ts';
import { mapCommands } from '../../geometry/mapCommands.ts';
import type { PathCommand } from '../../model/piece.ts';
import { drawnBy } from './basicShapes.ts';
import type { DrawingNode, LeftOut } from './drawingNode.ts';
import { drawingLimits, LimitMet } from './limits.ts';
import { lengthOf } from './numbers.ts';
import { colourOf, meanColour, type Paint, paintOf } from './paint.ts';
import { declarations, StyleSheet, styleRules } from './styles.ts';
import { transformOf } from './transform.ts';
import { type Viewport, viewBoxMap, viewBoxOf } from './viewport.ts';

/** One filled area or drawn line, in the drawing's own units, y down, in painting order. */
export interface DrawnArea {
  readonly commands: readonly PathCommand[];
  readonly fillRule: 'nonzero' | 'evenodd';
  readonly colour: string;
  /** Width of a drawn line; null for a filled area. */
  readonly lineWidth: number | null;
  /** The element's id or title, for a name. */
  readonly label: string | null;
}

interface Style {
  readonly fill: Paint;
  readonly stroke: Paint;
  readonly fillRule: 'nonzero' | 'evenodd';
  readonly strokeWidth: string;
  readonly colour: string;
  readonly visible: boolean;
}

const containers = new Set(['svg', 'g', 'a', 'switch', 'symbol']);
const unseen = new Set(['defs', 'title', 'desc', 'metadata', 'style', 'lineargradient', 'radialgradient', 'marker']);

/** Walks a drawing's tree and gathers what it paints. */
export class AreaCollector {
  readonly areas: DrawnArea[] = [];
  private readonly byId = new Map<string, DrawingNode>();
  private readonly sheet: StyleSheet;
  private visits = 0;
  private characters = 0;
  private commands = 0;

  constructor(
    private readonly root: DrawingNode,
    private readonly leftOut: Set<LeftOut>,
  ) {
    const sheets: string[] = [];
    const waiting: DrawingNode[] = [root];
    for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
      const id = node.attributes.get('id');
      if (id !== undefined && !this.byId.has(id)) this.byId.set(id, node);
      if (node.name === 'style') sheets.push(node.text);
      // One by one: a spread of many thousand arguments would overflow the stack.
      for (const child of node.children) waiting.push(child);
    }
    const { rules, whole } = styleRules(sheets);
    if (!whole) leftOut.add('style');
    this.sheet = new StyleSheet(rules);
  }

  /** Fills `areas`; throws `LimitMet` when the drawing is too large. */
  collect(): void {
    const { attributes } = this.root;
    const box = viewBoxOf(attributes.get('viewbox'));
    if (box === 'empty') this.leftOut.add('page');
    const view = box === null || box === 'empty' ? null : box;
    const width = lengthOf(attributes.get('width'), view?.width ?? 300, view?.width ?? 300);
    const height = lengthOf(attributes.get('height'), view?.height ?? 150, view?.height ?? 150);
    const place = { x: 0, y: 0, width: width > 0 ? width : 300, height: height > 0 ? height : 150 };
    const map = view === null ? identity : viewBoxMap(view, place, attributes.get('preserveaspectratio'));
    const start: Style = {
      fill: { colour: '#000000' },
      stroke: 'none',
      fillRule: 'nonzero',
      strokeWidth: '1',
      colour: '#000000',
      visible: true,
    };
    const style = this.styleOf(this.root, start);
    if (style !== null) this.children(this.root, map, style, view ?? place, 0);
  }

  private children(node: DrawingNode, map: Affine, style: Style, page: Viewport, reuse: number): void {
    for (const child of node.children) {
      this.draw(child, map, style, page, reuse);
      // The first alternative that is understood stands for the whole switch.
      if (node.name === 'switch') break;
    }
  }

  private draw(node: DrawingNode, outer: Affine, inherited: Style, page: Viewport, reuse: number): void {
    if (++this.visits > drawingLimits.visits) throw new LimitMet('visits');
    for (const value of node.attributes.values()) this.characters += value.length;
    if (this.characters > drawingLimits.attributeCharacters) throw new LimitMet('attributeCharacters');
    if (unseen.has(node.name)) return;
    if (node.name === 'pattern' || node.name === 'mask' || node.name === 'clippath' || node.name === 'filter') return;
    const style = this.styleOf(node, inherited);
    if (style === null) return;
    for (const effect of ['clip-path', 'mask', 'filter']) {
      if (node.attributes.has(effect) && node.attributes.get(effect) !== 'none') this.leftOut.add('clip');
    }
    const own = transformOf(node.attributes.get('transform'));
    if (own === null) this.leftOut.add('numbers');
    const map = compose(outer, own ?? identity);
    if (!map.every(Number.isFinite)) {
      this.leftOut.add('numbers');
      return;
    }
    if (node.name === 'use') this.reuse(node, map, style, page, reuse);
    else if (node.name === 'svg') this.nested(node, map, style, page, reuse);
    else if (containers.has(node.name)) {
      if (node.name !== 'symbol') this.children(node, map, style, page, reuse);
    } else this.paint(node, map, style, page);
  }

  private nested(node: DrawingNode, map: Affine, style: Style, page: Viewport, reuse: number, size?: Viewport): void {
    const { attributes } = node;
    const place = {
      x: lengthOf(attributes.get('x'), page.width, 0),
      y: lengthOf(attributes.get('y'), page.height, 0),
      width: size?.width ?? lengthOf(attributes.get('width'), page.width, page.width),
      height: size?.height ?? lengthOf(attributes.get('height'), page.height, page.height),
    };
    const box = viewBoxOf(attributes.get('viewbox'));
    // An inner page without size shows nothing, by SVG's own rule.
    if (box === 'empty' || !(place.width > 0 && place.height > 0)) {
      this.leftOut.add('page');
      return;
    }
    const inner =
      box === null ? translation(place.x, place.y) : viewBoxMap(box, place, attributes.get('preserveaspectratio'));
    this.children(node, compose(map, inner), style, box ?? place, reuse);
  }

  private reuse(node: DrawingNode, map: Affine, style: Style, page: Viewport, reuse: number): void {
    const link = node.attributes.get('href') ?? '';
    const target = link.startsWith('#') ? this.byId.get(link.slice(1)) : undefined;
    if (target === undefined) {
      this.leftOut.add('reference');
      return;
    }
    if (reuse >= drawingLimits.reuseDepth) {
      this.leftOut.add('reuse');
      return;
    }
    const { attributes } = node;
    const moved = compose(
      map,
      translation(lengthOf(attributes.get('x'), page.width, 0), lengthOf(attributes.get('y'), page.height, 0)),
    );
    if (target.name === 'symbol' || target.name === 'svg') {
      const from = (name: string, whole: number) =>
        lengthOf(attributes.get(name) ?? target.attributes.get(name), whole, whole);
      const size = { x: 0, y: 0, width: from('width', page.width), height: from('height', page.height) };
      const inner = this.styleOf(target, style);
      if (inner !== null) this.nested(target, moved, inner, page, reuse + 1, size);
    } else this.draw(target, moved, style, page, reuse + 1);
  }

  private paint(node: DrawingNode, map: Affine, style: Style, page: Viewport): void {
    const drawn = drawnBy(node, page, drawingLimits.commands);
    if (drawn === null || !style.visible) return;
    if (!drawn.whole) this.leftOut.add('unfinished-path');
    this.commands += drawn.commands.length;
    if (this.commands > drawingLimits.commands) throw new LimitMet('commands');
    if (drawn.commands.length === 0) return;
    const commands = mapCommands(map, drawn.commands);
    const sound = commands.every(
      (command) =>
        command.to === 'close' || Object.values(command).every((n) => typeof n !== 'number' || Math.abs(n) < 1e7),
    );
    if (!sound) {
      this.leftOut.add('numbers');
      return;
    }
    const label = node.attributes.get('id') ?? null;
    const fill = this.colourOfPaint(style.fill, style);
    if (fill !== null && node.name !== 'line') {
      this.areas.push({ commands, fillRule: style.fillRule, colour: fill, lineWidth: null, label });
    }
    const stroke = this.colourOfPaint(style.stroke, style);
    const width = lengthOf(style.strokeWidth, Math.hypot(page.width, page.height) / Math.SQRT2, 1);
    if (stroke !== null && width > 0) {
      const lineWidth = width * Math.sqrt(Math.abs(determinant(map)));
      this.areas.push({ commands, fillRule: 'nonzero', colour: stroke, lineWidth, label });
    }
  }

  private colourOfPaint(paint: Paint, style: Style): string | null {
    if (paint === 'none') return null;
    if (paint === 'current') return style.colour;
    if ('colour' in paint) return paint.colour;
    // A gradient is woven as the mean of its colours; a pattern can't be woven at all.
    let node = this.byId.get(paint.reference);
    for (let step = 0; step < 5 && node !== undefined; step++) {
      if (!/^(linear|radial)gradient$/.test(node.name)) break;
      const stops = node.children.filter((child) => child.name === 'stop').slice(0, 100);
      if (stops.length > 0) {
        this.leftOut.add('gradient');
        return meanColour(
          stops.map((stop) => {
            const inline = declarations(stop.attributes.get('style') ?? '');
            return colourOf(this.sheet.own(stop, inline, 'stop-color') ?? 'black') ?? '#000000';
          }),
        );
      }
      const link = node.attributes.get('href') ?? '';
      node = link.startsWith('#') ? this.byId.get(link.slice(1)) : undefined;
    }
    this.leftOut.add('pattern');
    return null;
  }

  /** @returns null when the element and all inside it are not shown. */
  private styleOf(node: DrawingNode, inherited: Style): Style | null {
    const inline = declarations(node.attributes.get('style') ?? '');
    const own = (property: string) => {
      const value = this.sheet.own(node, inline, property);
      return value === 'inherit' ? undefined : value;
    };
    const unseenShare = (property: string) => {
      const value = own(property);
      return value !== undefined && Number.parseFloat(value) === 0;
    };
    if (own('display') === 'none' || unseenShare('opacity')) return null;
    const rule = own('fill-rule');
    const visibility = own('visibility');
    const fill = paintOf(own('fill') ?? '') ?? inherited.fill;
    const stroke = paintOf(own('stroke') ?? '') ?? inherited.stroke;
    return {
      fill: unseenShare('fill-opacity') ? 'none' : fill,
      stroke: unseenShare('stroke-opacity') ? 'none' : stroke,
      fillRule: rule === 'evenodd' ? 'evenodd' : rule === 'nonzero' ? 'nonzero' : inherited.fillRule,
      strokeWidth: own('stroke-width') ?? inherited.strokeWidth,
      colour: colourOf(own('color') ?? '') ?? inherited.colour,
      visible: visibility === undefined ? inherited.visible : visibility === 'visible',
    };
  }
}
