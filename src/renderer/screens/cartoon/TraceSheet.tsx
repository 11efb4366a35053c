import { useEffect, useRef, useState } from 'react';
import { outlinesOf } from '../../../core/cartoon/outline.ts';
import { clothBox } from '../../../core/cartoon/snap.ts';
import type { TracedPicture, TraceInto } from '../../../core/cartoon/trace/tracePicture.ts';
import type { Picture } from '../../../core/cartoon/trace/yarnRaster.ts';
import type { Outcome } from '../../../core/model/outcome.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { QuietButton, SecondButton } from '../../parts/Actions.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { FieldRow } from '../../parts/Fields.tsx';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { Swatch, yarnLetter } from '../../parts/Swatch.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useTell } from '../../words/telling.ts';
import { useWords } from '../../words/useWords.ts';
import { useCartoon } from './cartoonStore.ts';

type Detail = 'bold' | 'plain' | 'fine';
/** Smallest area kept and how far an edge may be smoothed, in ends. */
const details: Readonly<Record<Detail, { readonly area: number; readonly smooth: number }>> = {
  bold: { area: 12, smooth: 0.6 },
  plain: { area: 4, smooth: 0.35 },
  fine: { area: 1, smooth: 0.2 },
};

interface TraceSheetProps {
  readonly piece: Piece;
  readonly picture: Picture;
  readonly onClose: () => void;
}

/** A picture in the piece's yarns: seen before it is put on the cloth, as detailed as the weaver likes. */
export function TraceSheet({ piece, picture, onClose }: TraceSheetProps) {
  const words = useWords().cartoon;
  const tell = useTell();
  const [detail, setDetail] = useState<Detail>('plain');
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [traced, setTraced] = useState<Outcome<TracedPicture> | null>(null);
  const worker = useRef<Worker | null>(null);
  const yarns = piece.yarns.filter((yarn) => !left.has(yarn.id));
  const stop = () => {
    worker.current?.terminate();
    worker.current = null;
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: traced anew when a choice changes; the piece holds still under the sheet.
  useEffect(() => {
    stop();
    setTraced(null);
    if (yarns.length === 0) return;
    const cloth = clothBox(piece);
    const { headerPasses, footerPasses, passHeight } = piece.cloth;
    const { area, smooth } = details[detail];
    const pitch = piece.loom.notchPitch;
    let round = 1;
    while (piece.shapes.some((shape) => shape.id.startsWith(`p${round}-`))) round++;
    const into: TraceInto = {
      box: { ...cloth, bottom: headerPasses * passHeight, top: cloth.top - footerPasses * passHeight },
      yarns,
      ground: piece.cloth.ground,
      smallest: area * pitch * pitch,
      tolerance: smooth * pitch,
      idPrefix: `p${round}-`,
    };
    const asked = new Worker(new URL('./traceWorker.ts', import.meta.url), { type: 'module' });
    worker.current = asked;
    asked.onmessage = ({ data }: MessageEvent<Outcome<TracedPicture>>) => {
      setTraced(data);
      stop();
    };
    asked.postMessage({ picture, into });
    return stop;
  }, [picture, detail, left]);
  const put = () => {
    if (traced === null || !traced.ok) return;
    const { shapes } = traced.value;
    usePiece.getState().change((now) => ({ ...now, shapes: [...shapes, ...now.shapes] }));
    useCartoon.getState().choose(shapes[0]?.id ?? null);
    onClose();
  };
  const close = () => {
    stop();
    onClose();
  };
  return (
    <SheetDialog title={words.trace} onClose={close} place="wide">
      <div className="trace">
        <TracedDrawing piece={piece} traced={traced?.ok ? traced.value : null} />
        <div>
          <FieldRow label={words.traceDetail}>
            <Choice
              label={words.traceDetail}
              value={detail}
              options={(['bold', 'plain', 'fine'] as const).map((value) => ({
                value,
                words: words.traceDetails[value],
              }))}
              onChoose={setDetail}
            />
          </FieldRow>
          <h3>{words.traceYarns}</h3>
          <ul className="trace-yarns">
            {piece.yarns.map((yarn, index) => {
              const at = yarns.indexOf(yarn);
              const share = traced?.ok && at >= 0 ? (traced.value.shares[at] ?? 0) : 0;
              return (
                <li key={yarn.id}>
                  <label>
                    <input
                      type="checkbox"
                      checked={!left.has(yarn.id)}
                      onChange={() => {
                        const next = new Set(left);
                        if (!next.delete(yarn.id)) next.add(yarn.id);
                        setLeft(next);
                      }}
                    />
                    <Swatch colour={yarn.colour} letter={yarnLetter(index)} />
                    <span>{yarn.name}</span>
                    <span className="second">{at >= 0 && traced?.ok && `${Math.round(share * 100)} %`}</span>
                  </label>
                </li>
              );
            })}
          </ul>
          <div role="status">
            {yarns.length === 0 && <p>{words.traceNoYarn}</p>}
            {traced === null && yarns.length > 0 && (
              <p>
                {words.tracing} <QuietButton onPress={close}>{words.traceStop}</QuietButton>
              </p>
            )}
            {traced !== null && !traced.ok && (
              <p>
                {tell(traced.problem.sentence)} {tell(traced.problem.remedy)}
              </p>
            )}
            {traced?.ok && (
              <>
                <p>{words.traceFound(traced.value.shapes.length)}</p>
                {traced.value.told.map((sentence) => (
                  <p key={sentence} className="second">
                    {tell(sentence)}
                  </p>
                ))}
              </>
            )}
          </div>
          {traced?.ok && (
            <p className="sheet-action">
              <SecondButton action={{ words: words.letteringAdd, onPress: put }} />
            </p>
          )}
        </div>
      </div>
    </SheetDialog>
  );
}

function TracedDrawing({ piece, traced }: { readonly piece: Piece; readonly traced: TracedPicture | null }) {
  const words = useWords().cartoon;
  const cloth = clothBox(piece);
  const colourOf = (id: string) => piece.yarns.find((yarn) => yarn.id === id)?.colour;
  return (
    <svg
      className="trace-drawing"
      role="img"
      aria-label={words.trace}
      viewBox={`${cloth.left} ${-cloth.top} ${cloth.right - cloth.left} ${cloth.top}`}
    >
      <rect
        x={cloth.left}
        y={-cloth.top}
        width={cloth.right - cloth.left}
        height={cloth.top}
        style={{ fill: colourOf(piece.cloth.ground) }}
      />
      {traced?.shapes.toReversed().map((shape) => (
        <path
          key={shape.id}
          fillRule="evenodd"
          style={{ fill: colourOf(shape.yarn) }}
          d={outlinesOf(shape, cloth)
            .flatMap((outline) => outline.rings)
            .map((ring) => {
              const points = [];
              for (let at = 0; at < ring.length; at += 2)
                points.push(`${ring[at]!.toFixed(1)} ${(-ring[at + 1]!).toFixed(1)}`);
              return `M${points.join('L')}Z`;
            })
            .join('')}
        />
      ))}
    </svg>
  );
}
