import { DEGRADATIONS, type Degradation } from '../scripts/pictures/degrade.ts';

export interface DegradationPoint {
  readonly kind: Degradation;
  readonly level: number;
  readonly photographs: number;
  readonly measured: number;
  readonly asked: number;
  readonly refused: number;
  readonly wrong: number;
  /** Median |error| and median sigma over all measured photographs, mm; null where none was measured. */
  readonly selvedge: number | null;
  readonly selvedgeSigma: number | null;
  readonly fell: number | null;
  readonly fellSigma: number | null;
}

const INK = '#171d20';
const INK_2 = '#465256';
const RULE = '#bcc6c3';
const CLOTH = '#9a4a00';
const SHEET = '#f5f7f5';
const WIDE = 380;
const TALL = 220;
const TITLES: Readonly<Record<Degradation, string>> = {
  blur: 'Blur',
  noise: 'Noise',
  jpeg: 'JPEG',
  tilt: 'Tilt',
  resolution: 'Resolution',
  occlusion: 'Things lying over it',
};

/** 0.03 to 10 mm on a logarithmic scale, upward. */
const height = (mm: number): number =>
  TALL - (Math.log10(Math.max(0.03, Math.min(10, mm)) / 0.03) / Math.log10(10 / 0.03)) * TALL;

function course(
  values: readonly (number | null)[],
  x: (index: number) => number,
  stroke: string,
  dash: string,
): string {
  let path = '';
  let marks = '';
  let open = false;
  for (const [index, value] of values.entries()) {
    if (value === null) {
      open = false;
      continue;
    }
    path += `${open ? 'L' : 'M'}${x(index).toFixed(1)} ${height(value).toFixed(1)}`;
    marks += `<circle cx="${x(index).toFixed(1)}" cy="${height(value).toFixed(1)}" r="2.6" fill="${stroke}"/>`;
    open = true;
  }
  return `<path d="${path}" fill="none" stroke="${stroke}" stroke-width="2" stroke-dasharray="${dash}"/>${marks}`;
}

/** Six panels: error solid, sigma dashed, selvedge in the cloth's colour, fell in ink; below, how many were measured. */
export function degradationPlot(points: readonly DegradationPoint[]): string {
  let body = '';
  for (const [index, kind] of (Object.keys(DEGRADATIONS) as Degradation[]).entries()) {
    const own = points.filter((point) => point.kind === kind);
    if (own.length === 0) continue;
    const left = 70 + (index % 3) * (WIDE + 70);
    const top = 110 + Math.floor(index / 3) * (TALL + 130);
    const x = (k: number): number => ((k + 0.5) / own.length) * WIDE;
    let panel = `<rect width="${WIDE}" height="${TALL}" fill="#ffffff" stroke="${RULE}"/>`;
    for (const mm of [0.1, 0.3, 1, 3])
      panel += `<line x1="0" x2="${WIDE}" y1="${height(mm)}" y2="${height(mm)}" stroke="${RULE}"/><text x="-8" y="${height(mm) + 5}" text-anchor="end" fill="${INK_2}">${mm} mm</text>`;
    panel += course(
      own.map((point) => point.selvedge),
      x,
      CLOTH,
      'none',
    );
    panel += course(
      own.map((point) => point.selvedgeSigma),
      x,
      CLOTH,
      '6 5',
    );
    panel += course(
      own.map((point) => point.fell),
      x,
      INK,
      'none',
    );
    panel += course(
      own.map((point) => point.fellSigma),
      x,
      INK,
      '6 5',
    );
    for (const [k, point] of own.entries()) {
      panel += `<text x="${x(k)}" y="${TALL + 18}" text-anchor="middle" fill="${INK}">${point.level}</text>`;
      panel += `<text x="${x(k)}" y="${TALL + 36}" text-anchor="middle" fill="${INK_2}">${point.measured}/${point.photographs}</text>`;
      if (point.measured === 0)
        panel += `<text x="${x(k)}" y="${TALL / 2}" text-anchor="middle" fill="${INK_2}" transform="rotate(-90 ${x(k)} ${TALL / 2})">turned away</text>`;
    }
    panel += `<text x="0" y="-10" fill="${INK}" font-size="17" font-weight="600">${TITLES[kind]}, ${DEGRADATIONS[kind].unit}</text>`;
    body += `<g transform="translate(${left} ${top})">${panel}</g>`;
  }
  const width = 70 + 3 * (WIDE + 70);
  const tall = 110 + 2 * (TALL + 130);
  const key = (x: number, stroke: string, dash: string, words: string): string =>
    `<line x1="${x}" x2="${x + 36}" y1="62" y2="62" stroke="${stroke}" stroke-width="2.5" stroke-dasharray="${dash}"/><text x="${x + 44}" y="67" fill="${INK}">${words}</text>`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${tall}" font-family="'Atkinson Hyperlegible Next', sans-serif" font-size="14">` +
    `<rect width="${width}" height="${tall}" fill="${SHEET}"/>` +
    `<text x="70" y="36" font-size="22" font-weight="600" fill="${INK}">What a worse photograph does to the figures (rendered and, leaned, drawn photographs, ${points[0]?.photographs ?? 0} at each step)</text>` +
    key(70, CLOTH, 'none', 'selvedge, median error') +
    key(300, CLOTH, '6 5', 'selvedge, median sigma') +
    key(530, INK, 'none', 'fell, median error') +
    key(740, INK, '6 5', 'fell, median sigma') +
    `<text x="950" y="67" fill="${INK_2}">3/3: measured of photographs</text>${body}</svg>\n`
  );
}
