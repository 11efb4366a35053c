import { useEffect, useMemo, useRef } from 'react';
import { heightOfPasses, passesAtHeight } from '../../../core/chart/clothGrid.ts';
import { MM_PER_INCH, mm } from '../../../core/model/units.ts';
import { blockOutline } from '../../canvas/blockOutline.ts';
import { type ClothView, freshContext, paintCloth, paintStrings, placeIn } from '../../canvas/paintCloth.ts';
import { useBoxSize } from '../../parts/useBoxSize.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { type Work, wovenAfter } from '../../state/useWork.ts';
import { useShownTheme } from '../../theme/useShownTheme.ts';
import { inchesSaid, lengthSaid } from '../../words/figures.ts';
import { useWords } from '../../words/useWords.ts';

interface ClothPictureProps {
  readonly work: Work;
  /** Passes shown as woven: the count, or a moment of the growing cloth. */
  readonly passesShown: number;
  readonly chosen: number;
  readonly onChoose: (block: number) => void;
}

const MARGIN = { left: 66, right: 54, top: 22, bottom: 26 };
/** Steps of the ruler, in the weaver's unit. */
const steps = { mm: [5, 10, 20, 25, 50, 100, 200, 500], in: [0.5, 1, 2, 4, 8, 20] } as const;

/** The woven cloth as floats, the blocks to come dotted and numbered on their strings, the fell with its height. */
export function ClothPicture({ work, passesShown, chosen, onChoose }: ClothPictureProps) {
  const { order: words, shell } = useWords();
  const units = usePiece((state) => state.piece?.units ?? 'mm');
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const size = useBoxSize(box);
  const theme = useShownTheme();
  const { chart, blocks, parity } = work.plan;
  const room = {
    width: Math.max(50, size.width - MARGIN.left - MARGIN.right),
    height: Math.max(50, size.height - MARGIN.top - MARGIN.bottom),
  };
  const pxPerMm = Math.min(
    room.width / (chart.ends * chart.pitch),
    room.height / ((chart.passes + 14) * chart.passHeight),
  );
  const view: ClothView = useMemo(
    () => ({
      leftEnd: 0,
      bottomPass: -6,
      pxPerEnd: pxPerMm * chart.pitch,
      pxPerPass: pxPerMm * chart.passHeight,
      width: pxPerMm * chart.pitch * chart.ends,
      height: pxPerMm * chart.passHeight * (chart.passes + 14),
    }),
    [pxPerMm, chart],
  );
  const woven = useMemo(() => wovenAfter(work, passesShown), [work, passesShown]);
  const outlines = useMemo(() => blocks.map((block) => blockOutline(block, placeIn(view))), [blocks, view]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the colour of the strings changes with the theme.
  useEffect(() => {
    const context = canvas.current && freshContext(canvas.current, view.width, view.height);
    if (!context) return;
    const style = getComputedStyle(document.documentElement);
    paintStrings(context, view, chart.ends, {
      perEnd: work.piece.warp.stringsPerEnd,
      widthShare: (work.piece.warp.stringDiameter / chart.pitch) * 0.6,
      colour: style.getPropertyValue('--wood'),
      edge: style.getPropertyValue('--wood-line'),
    });
    paintCloth(context, view, { chart, parity, colours: work.piece.yarns.map((yarn) => yarn.colour), woven });
  }, [view, chart, parity, woven, work.piece, theme]);
  const place = placeIn(view);
  const unit = units === 'mm' ? 1 : MM_PER_INCH;
  const step = steps[units].find((each) => each * unit * pxPerMm >= 44) ?? steps[units].at(-1)!;
  const stands = { passHeight: chart.passHeight, measured: work.plan.measured };
  const heights = Array.from(
    { length: Math.floor(heightOfPasses(stands, chart.passes) / (step * unit)) + 1 },
    (_, index) => index * step,
  );
  const highest = woven.reduce((most, passes) => Math.max(most, passes), 0);
  const left = MARGIN.left + (room.width - view.width) / 2;
  return (
    <div className="cloth-picture" ref={box}>
      <canvas ref={canvas} style={{ left, top: MARGIN.top, width: view.width, height: view.height }} />
      <svg role="img" aria-label={words.picture} width={size.width} height={size.height}>
        <title>{words.picture}</title>
        <g transform={`translate(${left} ${MARGIN.top})`}>
          {blocks.map((block, index) => {
            const outline = outlines[index]!;
            const now = index === chosen;
            const done = index < work.block && !now;
            return (
              <g
                key={block.order}
                onPointerDown={() => onChoose(index)}
                className={now ? 'block is-now' : done ? 'block is-done' : 'block'}
              >
                <path d={outline.path} style={{ fill: done ? 'transparent' : work.piece.yarns[block.yarn]?.colour }} />
              </g>
            );
          })}
          {blocks.map((block, index) =>
            index < work.block && index !== chosen ? null : (
              <text key={block.order} className="block-number" x={outlines[index]!.labelX} y={outlines[index]!.labelY}>
                {index + 1}
              </text>
            ),
          )}
        </g>
        <g className="ruler" transform={`translate(${left - 6} ${MARGIN.top})`}>
          <text x={-14}>{shell[units === 'mm' ? 'millimetres' : 'inches']}</text>
          {heights.map((height) => (
            <g key={height} transform={`translate(0 ${place(0, passesAtHeight(stands, height * unit)).y.toFixed(1)})`}>
              <line x1={-8} x2={0} />
              <text x={-14}>{units === 'mm' ? height : inchesSaid(height, 2)}</text>
            </g>
          ))}
        </g>
        {highest > 0 && (
          <g
            className="fell-mark"
            transform={`translate(${left + view.width + 4} ${MARGIN.top + place(0, highest).y})`}
          >
            <line x1={0} x2={26} />
            <text x={4} y={-8} className="fell-word">
              {words.fell}
            </text>
            <text x={4} y={17}>
              {lengthSaid(mm(heightOfPasses(stands, highest)), units, 'planned').replace(/\u00a0(mm|in|Zoll)$/, '')}
            </text>
          </g>
        )}
      </svg>
    </div>
  );
}
