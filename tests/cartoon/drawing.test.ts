import { describe, expect, it } from 'vitest';
import { shapeArea } from '../../src/core/cartoon/area.ts';
import { covers, outlinesOf } from '../../src/core/cartoon/outline.ts';
import { wholeShapeBox } from '../../src/core/cartoon/shapeBox.ts';
import { type ImportedDrawing, importDrawing } from '../../src/core/cartoon/svg/importDrawing.ts';
import { pieceSchema } from '../../src/core/project/pieceDocument.ts';
import { hostileDrawing } from './hostileDrawings.ts';

const cloth = { left: -100, right: 100, bottom: 0, top: 200 };
const yarns = [
  { id: 'ink', colour: '#2b3150' },
  { id: 'cream', colour: '#efe6d8' },
  { id: 'gold', colour: '#c9952e' },
];
const into = { box: cloth, yarns, idPrefix: 'd', areaName: 'Area', smallest: 1 };
const svg = (inside: string, attributes = 'viewBox="0 0 100 100"') =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${attributes}>${inside}</svg>`;
/** A frame that pins the fit: the drawing's 100 × 100 becomes the cloth's 200 × 200, one unit 2 mm. */
const frame = '<rect width="100" height="100" fill="#efe6d8"/>';
const read = (inside: string, attributes?: string): ImportedDrawing => {
  const outcome = importDrawing(svg(frame + inside, attributes), into);
  if (!outcome.ok) throw new Error(`${outcome.problem.tag}: ${outcome.problem.detail ?? outcome.problem.sentence}`);
  return outcome.value;
};
const topArea = (inside: string) => shapeArea(read(inside).shapes[0]!, cloth) / 4;
const topBox = (inside: string) => {
  const box = wholeShapeBox(read(inside).shapes[0]!, cloth)!;
  return [box.left / 2 + 50, 100 - box.top / 2, box.right / 2 + 50, 100 - box.bottom / 2].map(
    (value) => Math.round(value * 100) / 100,
  );
};

describe('drawings', () => {
  it('reads every basic shape', () => {
    expect(topArea('<rect x="10" y="20" width="30" height="40"/>')).toBeCloseTo(1200, 3);
    expect(topArea('<rect width="40" height="40" rx="10"/>')).toBeCloseTo(1600 - (4 - Math.PI) * 100, 0);
    expect(topArea('<circle cx="50" cy="50" r="20"/>') / (400 * Math.PI)).toBeCloseTo(1, 2.5);
    expect(topArea('<ellipse cx="50" cy="50" rx="20" ry="10"/>') / (200 * Math.PI)).toBeCloseTo(1, 2.5);
    expect(topArea('<polygon points="0,0 40,0 0,30"/>')).toBeCloseTo(600, 3);
    expect(topArea('<polyline points="0,0 40,0 0,30"/>')).toBeCloseTo(600, 3);
    expect(topArea('<line x1="10" y1="50" x2="90" y2="50" stroke="black" stroke-width="4"/>')).toBeCloseTo(320, 3);
    expect(topBox('<rect x="10" y="20" width="30" height="40"/>')).toEqual([10, 20, 40, 60]);
  });

  it('reads every path command, absolute and relative, with repeats left unwritten', () => {
    expect(topArea('<path d="M0 0 40 0 40 30 0 30z"/>')).toBeCloseTo(1200, 3);
    expect(topArea('<path d="m0,0h40v30h-40z"/>')).toBeCloseTo(1200, 3);
    expect(topArea('<path d="M0 0H40V30H0Z m50 50 l10 0 0 10 -10 0z"/>')).toBeCloseTo(1300, 3);
    // A half disc by arcs, cubics and quadratics; flags run together as SVG allows.
    expect(topArea('<path d="M10 50A20 20 0 0150 50Z"/>') / (200 * Math.PI)).toBeCloseTo(1, 2.5);
    expect(topArea('<path d="M10 50a20 20 0 1 1 40 0z"/>') / (200 * Math.PI)).toBeCloseTo(1, 2.5);
    // An arc too small for its ends grows to a half circle; a radius of nothing is a straight line.
    expect(topArea('<path d="M10 50A5 5 0 0 1 50 50Z"/>') / (200 * Math.PI)).toBeCloseTo(1, 2.5);
    expect(topArea('<path d="M0 0L40 0A0 9 0 0 1 0 30Z"/>')).toBeCloseTo(600, 3);
    // Area under a parabola: two thirds of width times height of the handle's half.
    expect(topArea('<path d="M0 50Q20 0 40 50Z"/>')).toBeCloseTo((2 / 3) * 40 * 25, 0);
    expect(topArea('<path d="M0 50Q10 30 20 50T40 50V80H0Z"/>')).toBeCloseTo(1200, 0);
    expect(topArea('<path d="M0 50C0 30 20 30 20 50S40 70 40 50V80H0Z"/>')).toBeCloseTo(1200, 0);
    expect(topBox('<path d="M10 10q10 20 20 0t20 0v30h-40z"/>')[3]).toBe(40);
  });

  it('follows groups, transforms, nested pages and reuse', () => {
    expect(topBox('<g transform="translate(10 20)"><rect width="10" height="10"/></g>')).toEqual([10, 20, 20, 30]);
    expect(topBox('<g transform="translate(10) scale(2,3)"><rect x="1" width="10" height="10"/></g>')).toEqual([
      12, 0, 32, 30,
    ]);
    expect(topBox('<rect transform="rotate(90 50 50)" x="50" y="40" width="30" height="10"/>')).toEqual([
      50, 50, 60, 80,
    ]);
    expect(topBox('<rect transform="matrix(0 1 -1 0 60 0)" width="30" height="10"/>')).toEqual([50, 0, 60, 30]);
    expect(topBox('<rect transform="skewX(45)" width="10" height="10"/>')).toEqual([0, 0, 20, 10]);
    expect(
      topBox('<svg x="20" y="10" width="40" height="20" viewBox="0 0 10 10"><rect width="10" height="10"/></svg>'),
    ).toEqual([30, 10, 50, 30]);
    expect(
      topBox(
        '<svg x="20" y="10" width="40" height="20" viewBox="0 0 10 10" preserveAspectRatio="none"><rect width="10" height="10"/></svg>',
      ),
    ).toEqual([20, 10, 60, 30]);
    expect(
      topBox(
        '<svg x="20" y="10" width="40" height="20" viewBox="0 0 10 10" preserveAspectRatio="xMaxYMid meet"><rect width="10" height="10"/></svg>',
      ),
    ).toEqual([40, 10, 60, 30]);
    expect(topBox('<defs><rect id="a" width="10" height="10"/></defs><use xlink:href="#a" x="5" y="6"/>')).toEqual([
      5, 6, 15, 16,
    ]);
    expect(
      topBox(
        '<symbol id="s" viewBox="0 0 1 1"><rect width="1" height="1"/></symbol><use href="#s" x="5" width="20" height="20"/>',
      ),
    ).toEqual([5, 0, 25, 20]);
  });

  it('takes the fill from attribute, style, class, id and what it inherits', () => {
    const yarnOf = (inside: string) => read(inside).shapes[0]!.yarn;
    const box = 'width="30" height="30"';
    expect(yarnOf(`<rect fill="#d09a30" ${box}/>`)).toBe('gold');
    expect(yarnOf(`<rect style="fill:#d09a30" fill="navy" ${box}/>`)).toBe('gold');
    expect(yarnOf(`<g fill="rgb(208,154,48)"><rect ${box}/></g>`)).toBe('gold');
    expect(yarnOf(`<style>.a,.c{fill:#d09a30}</style><rect class="b a" fill="navy" ${box}/>`)).toBe('gold');
    expect(yarnOf(`<style>rect{fill:navy} #q{fill:hsl(40 63% 50%)}</style><rect id="q" ${box}/>`)).toBe('gold');
    expect(yarnOf(`<g color="#d09a30"><rect fill="currentColor" ${box}/></g>`)).toBe('gold');
    expect(
      yarnOf(`<linearGradient id="g"><stop stop-color="#d09a30"/></linearGradient><rect fill="url(#g)" ${box}/>`),
    ).toBe('gold');
    expect(yarnOf(`<rect ${box}/>`)).toBe('ink');
  });

  it('says which yarn every colour was taken for, and how far off it is', () => {
    const { guesses } = read(
      '<rect width="30" height="30" fill="#c9952e"/><circle r="9" cx="20" cy="60" fill="lime"/>',
    );
    expect(guesses.map(({ colour, yarn, shapes }) => [colour, yarn, shapes])).toEqual([
      ['#efe6d8', 'cream', 1],
      ['#c9952e', 'gold', 1],
      ['#00ff00', 'cream', 1],
    ]);
    expect(guesses[1]!.difference).toBe(0);
    expect(guesses[2]!.difference).toBeGreaterThan(20);
  });

  it('keeps painting order: what is painted last lies on top', () => {
    const { shapes } = read('<rect id="low" width="9" height="9"/><rect id="high" width="9" height="9"/>');
    expect(shapes.map((shape) => shape.name)).toEqual(['high', 'low', 'Area 1']);
  });

  it('keeps holes by either fill rule', () => {
    const ring = 'd="M10 10H60V60H10Z M20 20H50V50H20Z"';
    const hole = outlinesOf(read(`<path fill-rule="evenodd" ${ring}/>`).shapes[0]!, cloth)[0]!;
    const filled = outlinesOf(read(`<path ${ring}/>`).shapes[0]!, cloth)[0]!;
    expect(covers(hole, -30, 130)).toBe(false);
    expect(covers(filled, -30, 130)).toBe(true);
  });

  it('leaves out what is not shown', () => {
    const hidden =
      '<g display="none"><rect width="9" height="9"/></g><rect style="visibility:hidden" width="9" height="9"/>' +
      '<rect opacity="0" width="9" height="9"/><rect fill="none" width="9" height="9"/><clipPath><rect width="9" height="9"/></clipPath>';
    expect(read(hidden).shapes).toHaveLength(1);
  });

  it('drops what could do harm, and says so', () => {
    const { told, shapes } = read(
      '<script>alert(1)</script><image href="http://example.org/x.png" width="9" height="9"/>' +
        '<foreignObject><p xmlns="http://www.w3.org/1999/xhtml">x</p></foreignObject><use href="http://example.org/a.svg#b"/>' +
        '<text>words</text><rect width="30" height="30" onclick="x()"/><animate/>',
    );
    expect(shapes).toHaveLength(2);
    expect(told).toHaveLength(6);
    expect(told.join(' ')).toMatch(/Scripts.*was run/);
    expect(told.join(' ')).toMatch(/nothing was fetched/);
    expect(JSON.stringify(shapes)).not.toContain('example.org');
  });

  it('always gives shapes a piece can keep', () => {
    const shape = pieceSchema as unknown as {
      readonly shape?: { readonly shapes: { safeParse(value: unknown): { success: boolean } } };
    };
    expect(shape.shape?.shapes.safeParse(read('<circle cx="50" cy="50" r="20"/>').shapes).success).toBe(true);
  });
});

const tagOf = (text: string) => {
  const outcome = importDrawing(text, into);
  return outcome.ok ? 'read' : outcome.problem.tag;
};
/** Time this process itself worked: other work on the machine doesn't count. */
const within = (seconds: number, work: () => void) => {
  const start = process.cpuUsage();
  work();
  expect(process.cpuUsage(start).user / 1e6).toBeLessThan(seconds);
};

describe('hostile drawings', () => {
  it('refuses what is not a drawing', () => {
    for (const text of [
      '',
      'hello',
      '{"a":1}',
      '<html></html>',
      '<svg',
      '<svg><g></svg>',
      '\u0000',
      '<svg xmlns="x"/>',
    ]) {
      expect(tagOf(text)).toBe('drawing-unreadable');
    }
    expect(tagOf(svg(''))).toBe('drawing-empty');
    expect(tagOf(svg('<rect width="9" height="9" fill="none"/>'))).toBe('drawing-empty');
  });

  it('cleans paths that make no sense', () => {
    const { shapes, told } = read(
      '<path d="M NaN NaN L 10 10 z"/><path d="M0 0L1e999 0 0 9z"/><rect width="Infinity" height="3"/><rect x="1e300" width="1e300" height="9"/>' +
        '<path d="M0 0H30V30H0Z L oops"/>',
    );
    expect(shapes).toHaveLength(2);
    expect(told.join(' ')).toContain('breaks off');
  });

  it('passes over a page without size', () => {
    const { shapes, told } = read('<rect width="30" height="30"/>', 'viewBox="0 0 0 0" width="0" height="0"');
    expect(shapes).toHaveLength(2);
    expect(told.join(' ')).toContain('page without size');
  });

  it('never expands entities', () => {
    const levels = Array.from({ length: 12 }, (_, at) => `<!ENTITY l${at + 1} "${`&l${at};`.repeat(10)}">`).join('');
    within(2, () => {
      const outcome = importDrawing(
        `<!DOCTYPE svg [<!ENTITY l0 "ha">${levels}<!ENTITY x SYSTEM "file:///etc/passwd">]>${svg('<g>&l12;&x;</g><rect width="9" height="9"/>')}`,
        into,
      );
      expect(outcome.ok && outcome.value.told.join(' ')).toMatch(/entities/);
    });
  });

  it('stops at depth, number and length', () => {
    within(10, () => {
      expect(tagOf(svg('<g>'.repeat(100_000) + '</g>'.repeat(100_000)))).toBe('drawing-too-large');
      expect(tagOf(svg('<rect width="9" height="9"/>'.repeat(70_000)))).toBe('drawing-too-large');
      expect(tagOf(svg(`<path d="M0 0${' 1 2'.repeat(400_000)}"/>`))).toBe('drawing-too-large');
      expect(tagOf(svg(' '.repeat(9_000_000)))).toBe('drawing-too-large');
      expect(tagOf(svg('&x;'.repeat(2_000_000)))).toBe('drawing-unreadable');
    });
  });

  it('stops reuse that multiplies', () => {
    const doubling = Array.from(
      { length: 30 },
      (_, at) => `<g id="u${at + 1}"><use href="#u${at}"/><use href="#u${at}"/></g>`,
    ).join('');
    const wide = Array.from(
      { length: 8 },
      (_, at) => `<g id="w${at + 1}">${`<use href="#w${at}"/>`.repeat(50)}</g>`,
    ).join('');
    const box = '<rect id="u0" width="9" height="9"/><rect id="w0" width="9" height="9"/>';
    within(10, () => {
      expect(tagOf(svg(`<defs>${box}${doubling}</defs><use href="#u30"/>${frame}`))).toBe('read');
      expect(tagOf(svg(`<defs>${box}${wide}</defs><use href="#w8"/>`))).toBe('drawing-too-large');
      expect(tagOf(svg(`<g id="self"><use href="#self"/></g>${frame}`))).toBe('read');
      const long = `<path id="w0" d="${'9'.repeat(3_000_000)}"/>`;
      expect(tagOf(svg(`<defs>${long}</defs>${'<use href="#w0"/>'.repeat(20_000)}`))).toBe('drawing-too-large');
    });
  });

  it('is not slowed by texts made to slow a pattern', () => {
    within(10, () => {
      for (const bad of ['a', ' ', '1', '(', 'e', '!', '{', '/*', '.1', 'a{', '-']) {
        const long = bad.repeat(Math.floor(400_000 / bad.length));
        for (const name of ['transform', 'style', 'class', 'fill', 'width', 'viewBox', 'd', 'points', 'id']) {
          importDrawing(svg(`<path ${name}="${long}"/>${frame}`), into);
        }
        importDrawing(svg(`<style><![CDATA[${long}]]></style>${frame}`), into);
      }
    });
  });

  it('survives 3,000 seeded documents', () => {
    const seen = new Map<string, number>();
    for (let seed = 0; seed < 3_000; seed++) {
      const outcome = importDrawing(hostileDrawing(seed), into);
      const tag = outcome.ok ? 'read' : outcome.problem.tag;
      seen.set(tag, (seen.get(tag) ?? 0) + 1);
      if (!outcome.ok) continue;
      for (const shape of outcome.value.shapes) {
        if (shape.form.kind !== 'path') throw new Error('not a path');
        for (const command of shape.form.commands) {
          if (command.to === 'close') continue;
          for (const value of Object.values(command)) {
            if (typeof value === 'number' && !(Math.abs(value) <= 1e6)) throw new Error(`seed ${seed}: ${value}`);
          }
        }
      }
    }
    // The documents are worth reading: a good share are drawings, and a good share are not.
    expect(seen.get('read') ?? 0).toBeGreaterThan(450);
    expect(seen.get('drawing-unreadable') ?? 0).toBeGreaterThan(200);
  });
});
