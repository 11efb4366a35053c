import { useEffect, useMemo, useRef } from 'react';
import { passesOfTurns } from '../../../core/report/workTurns.ts';
import { blockOutline } from '../../canvas/blockOutline.ts';
import { type ClothView, freshContext, paintCloth, paintStrings, placeIn } from '../../canvas/paintCloth.ts';
import { useBoxSize } from '../../parts/useBoxSize.ts';
import { type Work, wovenAfter } from '../../state/useWork.ts';
import { useShownTheme } from '../../theme/useShownTheme.ts';
import { useWords } from '../../words/useWords.ts';

/** Ends' room beside the selvedge, for the arrow. */
const PAST = 2;
const ARROW = 'M0 0H34M25 -9L35 0L25 9';
const clamp = (value: number, least: number, most: number) => Math.max(least, Math.min(most, value));

/** The strings round the current turn, close enough to count: what is woven, the turn itself, and its block dotted. */
export function BenchPicture({ work, turn }: { readonly work: Work; readonly turn: number }) {
  const words = useWords().bench;
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const size = useBoxSize(box);
  const theme = useShownTheme();
  const { chart, blocks, parity } = work.plan;
  const now = work.turns[Math.min(turn, work.turns.length - 1)]!;
  const block = blocks[now.block]!;
  const view: ClothView = useMemo(() => {
    const span = now.right - now.left + 1;
    const endsShown = Math.max(9, Math.min(chart.ends + 2, span * 1.75 + 2));
    const pxPerEnd = Math.min(90, size.width / endsShown);
    const pxPerMm = pxPerEnd / chart.pitch;
    // Passes are drawn a little taller than life so that single ones can be told apart.
    const pxPerPass = Math.max(pxPerMm * chart.passHeight, 9);
    const shown = size.width / pxPerEnd;
    const centred = (now.left + now.right + 1) / 2 - shown / 2;
    // Past the selvedges there is nothing to see: a cloth wider than the window fills it.
    const leftEnd =
      shown >= chart.ends + 2 * PAST ? (chart.ends - shown) / 2 : clamp(centred, -PAST, chart.ends + PAST - shown);
    return {
      leftEnd,
      bottomPass: now.pass - (size.height * 0.56) / pxPerPass,
      pxPerEnd,
      pxPerPass,
      width: size.width,
      height: size.height,
    };
  }, [now, chart, size]);
  const woven = useMemo(() => wovenAfter(work, passesOfTurns(work.turns, turn)), [work, turn]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the colour of the strings changes with the theme.
  useEffect(() => {
    const context = canvas.current && freshContext(canvas.current, view.width, view.height);
    if (!context) return;
    const style = getComputedStyle(document.documentElement);
    paintStrings(context, view, chart.ends, {
      perEnd: work.piece.warp.stringsPerEnd,
      widthShare: (work.piece.warp.stringDiameter / chart.pitch) * 0.55,
      colour: style.getPropertyValue('--wood-line'),
      edge: style.getPropertyValue('--wood-line'),
    });
    paintCloth(context, view, { chart, parity, colours: work.piece.yarns.map((yarn) => yarn.colour), woven });
  }, [view, chart, parity, woven, work.piece, theme]);
  const place = placeIn(view);
  const outline = blockOutline({ rows: block.rows.filter((row) => row.pass >= now.pass) }, place);
  const from = place(now.left, now.pass + now.passes);
  const to = place(now.right + 1, now.pass);
  const goesRight = now.to >= now.from;
  // Beside the turn where there is room for it, else above its numbers.
  const beside = goesRight ? from.x - 52 : size.width - to.x - 52;
  const arrow = Math.max(12, beside);
  const arrowHigh = beside >= 12 ? (from.y + to.y) / 2 : from.y - 58;
  const middle = Math.round((now.left + now.right) / 2);
  const labels = [...new Set([now.left, middle, now.right])];
  return (
    <div className="bench-picture" ref={box}>
      <canvas ref={canvas} />
      {size.width > 0 && (
        <svg role="img" aria-label={words.picture} width={size.width} height={size.height}>
          <title>{words.picture}</title>
          <path className="bench-outline" d={outline.path} style={{ fill: work.piece.yarns[block.yarn]?.colour }} />
          <rect
            className="bench-turn-casing"
            x={from.x - 2}
            y={from.y - 2}
            width={to.x - from.x + 4}
            height={to.y - from.y + 4}
          />
          <rect
            className="bench-turn-box"
            x={from.x}
            y={from.y}
            width={to.x - from.x}
            height={to.y - from.y}
            style={{ fill: work.piece.yarns[block.yarn]?.colour }}
          />
          <g
            transform={`translate(${goesRight ? arrow : size.width - arrow} ${arrowHigh}) scale(${goesRight ? 1 : -1} 1)`}
          >
            <path className="bench-arrow is-casing" d={ARROW} />
            <path className="bench-arrow" d={ARROW} />
          </g>
          {labels.map((end) => (
            <text key={end} className="bench-end" x={place(end + 0.5, 0).x} y={from.y - 16}>
              {end + 1}
            </text>
          ))}
        </svg>
      )}
    </div>
  );
}
