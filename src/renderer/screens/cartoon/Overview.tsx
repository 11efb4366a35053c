import { useEffect, useRef } from 'react';
import type { Piece } from '../../../core/model/piece.ts';
import { BARE } from '../../../core/model/plan.ts';
import type { Plan } from '../../../core/plan/planPiece.ts';
import { useWords } from '../../words/useWords.ts';
import { useCartoon } from './cartoonStore.ts';

const HEIGHT = 162;

/** The whole piece, small; a press looks there. */
export function Overview({ piece, plan }: { readonly piece: Piece; readonly plan: Plan }) {
  const words = useWords().cartoon;
  const canvas = useRef<HTMLCanvasElement>(null);
  const { look, setLook } = useCartoon();
  const { chart } = plan;
  const scale = Math.min(HEIGHT / (chart.passes * chart.passHeight), 132 / (chart.ends * chart.pitch));
  const width = chart.ends * chart.pitch * scale;
  const height = chart.passes * chart.passHeight * scale;
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context) return;
    const image = context.createImageData(chart.ends, chart.passes);
    const colours = piece.yarns.map((yarn) =>
      [1, 3, 5].map((at) => Number.parseInt(yarn.colour.slice(at, at + 2), 16)),
    );
    for (let cell = 0; cell < chart.cells.length; cell++) {
      const yarn = chart.cells[cell]!;
      const row = chart.passes - 1 - Math.floor(cell / chart.ends);
      const colour = yarn === BARE ? undefined : colours[yarn];
      if (colour) image.data.set([...colour, 255], (row * chart.ends + (cell % chart.ends)) * 4);
    }
    context.putImageData(image, 0, 0);
  }, [chart, piece.yarns]);
  return (
    <button
      type="button"
      className="overview"
      aria-label={words.overview}
      style={{ width, height }}
      onClick={(event) => {
        const at = event.currentTarget.getBoundingClientRect();
        const x = event.clientX === 0 ? 0 : (event.clientX - at.left - width / 2) / scale;
        const y = event.clientY === 0 ? piece.cloth.height / 2 : (at.bottom - event.clientY) / scale;
        setLook({ x, y, pxPerMm: look?.pxPerMm ?? 3.4 });
      }}
    >
      <canvas ref={canvas} width={chart.ends} height={chart.passes} />
      {look && (
        <span
          className="overview-window"
          style={{
            left: width / 2 + (look.x - 370 / look.pxPerMm) * scale,
            width: (740 / look.pxPerMm) * scale,
            top: height - (look.y + 290 / look.pxPerMm) * scale,
            height: (580 / look.pxPerMm) * scale,
          }}
        />
      )}
    </button>
  );
}
