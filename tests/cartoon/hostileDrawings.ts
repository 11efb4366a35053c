/** A small seeded source of chances (mulberry32), so a document that breaks something can be drawn again. */
export function seededChance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const oddNumbers = [
  'NaN',
  'Infinity',
  '-Infinity',
  '1e999',
  '-1e308',
  '1e-999',
  '',
  ' ',
  '--3',
  '0x1f',
  '1,2',
  '1..2',
  '.5.5',
  'auto',
  '50%',
  '-10%',
  '3em',
  '1e7',
  '99999999999999999999',
  '00',
];
const colours = [
  'red',
  '#abc',
  '#12345678',
  'rgb(1,2,3)',
  'rgb(10% 20% 300%)',
  'hsl(400,50%,50%)',
  'hsl(nan,1,1)',
  'url(#a)',
  'url(#g)',
  'url(http://example.org/x#y)',
  'currentColor',
  'inherit',
  'none',
  'transparent',
  'var(--x)',
  'rgba(',
  '#xyz',
];
const names = [
  'g',
  'svg',
  'path',
  'rect',
  'circle',
  'ellipse',
  'line',
  'polyline',
  'polygon',
  'use',
  'symbol',
  'defs',
  'style',
  'script',
  'image',
  'foreignObject',
  'text',
  'linearGradient',
  'stop',
  'clipPath',
  'mask',
  'pattern',
  'switch',
  'a',
  'title',
  'animate',
  'x:y',
  '__proto__',
  'constructor',
];

/** One drawing, sound or broken in some way, from a seed. Never longer than some ten thousand characters. */
export function hostileDrawing(seed: number): string {
  const chance = seededChance(seed);
  const one = <Kind>(list: readonly Kind[]): Kind => list[Math.floor(chance() * list.length)]!;
  const often = (share: number) => chance() < share;
  const number = () => (often(0.9) ? ((chance() - 0.3) * 10 ** Math.floor(chance() * 4)).toFixed(2) : one(oddNumbers));
  const numbers = (count: number) => Array.from({ length: count }, number).join(one([' ', ',', ' , ', '\n']));
  const pathData = () => {
    let data = often(0.9) ? `M${numbers(2)}` : '';
    const pieces = Math.floor(chance() * 12);
    for (let piece = 0; piece < pieces; piece++) {
      const letter = one([...'MmLlHhVvCcSsQqTtAaZz']);
      const counts: Record<string, number> = { m: 2, l: 2, h: 1, v: 1, c: 6, s: 4, q: 4, t: 2, a: 7, z: 0 };
      const count = counts[letter.toLowerCase()]!;
      const written =
        letter.toLowerCase() === 'a' && often(0.8)
          ? `${numbers(3)} ${one(['0', '1'])}${one(['0', '1'])}${numbers(2)}`
          : numbers(often(0.9) ? count * (often(0.2) ? 3 : 1) : Math.floor(chance() * 9));
      data += letter + written;
    }
    return often(0.05) ? data + one(['!', 'e', '%', '\u0000', '☃', '"']) : data;
  };
  const transform = () =>
    Array.from({ length: 1 + Math.floor(chance() * 3) }, () => {
      const kind = one(['matrix', 'translate', 'scale', 'rotate', 'skewX', 'skewY', 'spin', 'MATRIX']);
      return `${kind}(${numbers(one([0, 1, 2, 3, 6, 6, 9]))})`;
    }).join(one([' ', ',', '']));
  const attribute = (): string => {
    const name = one([
      'd',
      'x',
      'y',
      'width',
      'height',
      'r',
      'rx',
      'ry',
      'cx',
      'cy',
      'points',
      'transform',
      'fill',
      'stroke',
      'stroke-width',
      'style',
      'class',
      'id',
      'href',
      'xlink:href',
      'viewBox',
      'preserveAspectRatio',
      'fill-rule',
      'display',
      'opacity',
      'onload',
      'clip-path',
      '__proto__',
    ]);
    const value = ((): string => {
      switch (name) {
        case 'd':
          return pathData();
        case 'points':
          return numbers(Math.floor(chance() * 14));
        case 'transform':
          return transform();
        case 'fill':
        case 'stroke':
          return one(colours);
        case 'style':
          return `fill:${one(colours)};stroke:${one(colours)};${one(['display:none', 'opacity:0', ';;:', 'a:b:c'])}`;
        case 'class':
        case 'id':
          return one(['a', 'b', 'g', 'a b', '']);
        case 'href':
        case 'xlink:href':
          return one([
            '#a',
            '#b',
            '#g',
            'http://example.org/',
            'file:///etc/passwd',
            'data:image/png;base64,AAAA',
            '#',
          ]);
        case 'viewBox':
          return often(0.6) ? numbers(4) : one(['0 0 0 0', '0 0 -5 9', '0 0 1e-300 1', '']);
        case 'preserveAspectRatio':
          return one(['none', 'xMinYMax slice', 'xMidYMid meet', 'sideways']);
        case 'fill-rule':
          return one(['evenodd', 'nonzero', 'oddeven']);
        default:
          return number();
      }
    })();
    return ` ${name}="${value}"`;
  };
  let room = 60;
  const element = (depth: number): string => {
    room--;
    const name = one(names);
    const written = new Map<string, string>();
    const add = (text: string) => {
      const attributeName = text.slice(1, text.indexOf('='));
      // Twice the same attribute makes the whole document unreadable: seldom enough that others are read.
      written.set(often(0.005) ? `${attributeName} again` : attributeName, text);
    };
    if (name === 'path' && often(0.9)) add(` d="${pathData()}"`);
    if ((name === 'polygon' || name === 'polyline') && often(0.9)) add(` points="${numbers(8)}"`);
    if (name === 'rect' && often(0.9)) {
      add(` width="${number()}"`);
      add(` height="${number()}"`);
    }
    for (let count = Math.floor(chance() * 5); count > 0; count--) add(attribute());
    const attributes = [...written.values()].join('');
    if (name === 'style') {
      return `<style>${one(['.a{fill:red}', '#b{fill', '*{}', '@import url(x);', '@media x{.a{fill:blue}}', '}{}{'])}</style>`;
    }
    const inside = [];
    while (room > 0 && depth < 12 && often(0.55))
      inside.push(often(0.1) ? one(['&lt;', '&bomb;', 'words', '<![CDATA[x]]>']) : element(depth + 1));
    return `<${name}${attributes}>${inside.join('')}</${name}>`;
  };
  const head = one([
    '',
    '<?xml version="1.0"?>',
    '<!DOCTYPE svg [<!ENTITY bomb "&b;&b;"><!ENTITY b "ha">]>',
    '<!DOCTYPE svg SYSTEM "file:///etc/passwd">',
    '\uFEFF',
  ]);
  let body = '';
  while (room > 0 && often(0.9)) body += element(1);
  const opening = `<svg xmlns="http://www.w3.org/2000/svg"${often(0.6) ? ` viewBox="${often(0.9) ? '0 0 100 100' : numbers(4)}"` : ''}${often(0.3) ? ` width="${number()}" height="${number()}"` : ''}>`;
  let text = `${head}${opening}${body}</svg>`;
  // Some are cut, some have a few characters changed.
  if (often(0.1)) text = text.slice(0, Math.floor(chance() * text.length));
  if (often(0.15)) {
    const at = Math.floor(chance() * text.length);
    text = text.slice(0, at) + one(['<', '>', '&', '"', '\u0000', '\uD800', '/>', '<!--', ']]>']) + text.slice(at + 1);
  }
  return text;
}
