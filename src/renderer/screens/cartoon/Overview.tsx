import { useEffect, useRef } from 'react';
import { useChartedStore } from '../../state/planning/charted.ts';
import { useWords } from '../../words/useWords.ts';
import { useCartoon } from './cartoonStore.ts';

const HEIGHT = 162;

/** The whole piece, small; a press looks there. */
export function Overview() {
  const words = useWords().cartoon;
  const canvas = useRef<HTMLCanvasElement>(null);
  const { look, setLook } = useCartoon();
  const charted = useChartedStore((state) => state.charted);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context || charted === null) return;
    context.clearRect(0, 0, charted.grid.ends, charted.grid.passes);
    context.drawImage(charted.picture, 0, 0);
  }, [charted]);
  if (charted === null) return null;
  const { grid } = charted;
  const scale = Math.min(HEIGHT / (grid.passes * grid.passHeight), 132 / (grid.ends * grid.pitch));
  const width = grid.ends * grid.pitch * scale;
  const height = grid.passes * grid.passHeight * scale;
  return (
    <button
      type="button"
      className="overview"
      aria-label={words.overview}
      style={{ width, height }}
      onClick={(event) => {
        const at = event.currentTarget.getBoundingClientRect();
        const x = event.clientX === 0 ? 0 : (event.clientX - at.left - width / 2) / scale;
        const y = event.clientY === 0 ? (grid.passes * grid.passHeight) / 2 : (at.bottom - event.clientY) / scale;
        setLook({ x, y, pxPerMm: look?.pxPerMm ?? 3.4 });
      }}
    >
      <canvas ref={canvas} width={grid.ends} height={grid.passes} />
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
