import { type ReactNode, useState } from 'react';
import { setMirror, setRepeat } from '../../../core/cartoon/mirror.ts';
import { resizeShape } from '../../../core/cartoon/place.ts';
import { shapeBox } from '../../../core/cartoon/shapeBox.ts';
import { clothBox, fitShapeToGrid, weavingGrid } from '../../../core/cartoon/snap.ts';
import { restack } from '../../../core/cartoon/stack.ts';
import { lengthInWords } from '../../../core/model/lengthWords.ts';
import type { Piece, Shape } from '../../../core/model/piece.ts';
import { mm, radians } from '../../../core/model/units.ts';
import type { Plan } from '../../../core/plan/planPiece.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { DimensionField } from '../../parts/DimensionField.tsx';
import { NumberField, SelectField, TextField } from '../../parts/Fields.tsx';
import { Sign } from '../../parts/Sign.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useWords } from '../../words/useWords.ts';
import { useCartoon } from './cartoonStore.ts';
import { ShapeSteps } from './ShapeSteps.tsx';
import { freeShapeId, replaceShape } from './useCartoonPointer.ts';

interface ShapeWordsProps {
  readonly piece: Piece;
  readonly plan: Plan;
  readonly shape: Shape;
}

/** The chosen shape: its size to type, how far its steps stray, its steps in counts, and what else can be done with it. */
export function ShapeWords({ piece, plan, shape }: ShapeWordsProps) {
  const all = useWords();
  const words = all.cartoon;
  const change = usePiece((state) => state.change);
  const choose = useCartoon((state) => state.choose);
  const [more, setMore] = useState(false);
  const cloth = clothBox(piece);
  const box = shapeBox(shape, cloth);
  const put = (update: (now: Shape) => Shape, gather: string | null = null) =>
    change((now) => replaceShape(now, shape.id, update), gather);
  const errors = plan.edges.filter((edge) => edge.shape === shape.id);
  const worst = errors.reduce<(typeof errors)[number] | null>(
    (known, edge) => (known === null || edge.largestMm > known.largestMm ? edge : known),
    null,
  );
  const area = piece.shapes.indexOf(shape) + 1;
  const slits = slitsBeside(plan, area);
  const longest = Math.max(0, ...slits.map((slit) => slit.lengthMm));
  const size = (
    label: string,
    value: number,
    after: string,
    wanted: (typed: number) => Parameters<typeof resizeShape>[1],
  ) => (
    <DimensionField
      label={label}
      value={mm(value)}
      units={piece.units}
      after={after}
      onChange={(typed) => put((now) => resizeShape(now, wanted(typed), cloth), `size ${shape.id}`)}
    />
  );
  return (
    <>
      <h2 className="shape-name">{shape.name}</h2>
      {box !== null && (
        <p className="shape-sizes">
          {shape.form.kind !== 'band' &&
            size(words.widthOf(shape.name), box.right - box.left, words.wide, (width) => ({ width }))}
          {size(words.heightOf(shape.name), box.top - box.bottom, words.tall, (height) => ({ height }))}
          {box.bottom >= 0 && size(words.upOf(shape.name), box.bottom, words.up, (bottom) => ({ bottom }))}
        </p>
      )}
      {worst !== null && (
        <p className="shape-stray">
          <span className="shape-figure">{lengthInWords(worst.largestMm, piece.units, 'edge')}</span>
          <span className="second">
            {words.strays}, {words.straysAt(lengthInWords(worst.largestAtMm, piece.units))}
          </span>
        </p>
      )}
      <ShapeSteps plan={plan} area={area} />
      {slits.length > 0 && (
        <p className="shape-slit">
          <Sign name="slit" size={26} />
          <span>
            <strong>{words.slits(slits.length, lengthInWords(longest, piece.units))}</strong> {slits[0]?.remedy}
          </span>
        </p>
      )}
      <p>
        <QuietButton onPress={() => setMore(!more)}>{more ? words.less : words.more}</QuietButton>
      </p>
      {more && (
        <div className="shape-more">
          <TextField label={words.name} value={shape.name} onChange={(name) => put((now) => ({ ...now, name }))} />
          <SelectField
            label={words.yarn}
            value={shape.yarn}
            options={piece.yarns.map((yarn) => ({ value: yarn.id, words: yarn.name }))}
            onChange={(yarn) => put((now) => ({ ...now, yarn }))}
          />
          <SelectField
            label={words.boundary}
            value={shape.boundary}
            options={(['slit', 'shared-end', 'interlocked', 'dovetailed'] as const).map((value) => ({
              value,
              words: words.boundaries[value],
            }))}
            onChange={(boundary) => put((now) => ({ ...now, boundary }))}
          />
          <NumberField
            label={words.turnOf(shape.name)}
            value={Math.round((shape.rotation * 180) / Math.PI)}
            least={-360}
            most={360}
            refusal={all.piece.refusal}
            onChange={(degrees) =>
              degrees !== null && put((now) => ({ ...now, rotation: radians((degrees * Math.PI) / 180) }))
            }
          />
          <NumberField
            label={words.repeats}
            value={shape.repeat?.copies ?? 0}
            least={0}
            most={500}
            whole
            refusal={all.piece.refusal}
            onChange={(copies) => {
              if (copies === null) return;
              const across = Math.max(
                2,
                Math.round(((box?.right ?? 10) - (box?.left ?? 0)) / piece.loom.notchPitch) + 1,
              );
              put((now) =>
                copies === 0
                  ? { ...now, repeat: null }
                  : setRepeat(now, copies, now.repeat?.dx ?? across * piece.loom.notchPitch, now.repeat?.dy ?? 0),
              );
            }}
          />
          <Row>
            <QuietButton onPress={() => put((now) => setMirror(now, now.mirrorAbout === null ? 0 : null))}>
              {shape.mirrorAbout === null ? words.mirrorBoth : words.unmirror}
            </QuietButton>
            <QuietButton onPress={() => put((now) => fitShapeToGrid(now, weavingGrid(piece), cloth))}>
              {words.fit}
            </QuietButton>
            <QuietButton onPress={() => change((now) => ({ ...now, shapes: restack(now.shapes, shape.id, 'up') }))}>
              {words.higher}
            </QuietButton>
            <QuietButton onPress={() => change((now) => ({ ...now, shapes: restack(now.shapes, shape.id, 'down') }))}>
              {words.lower}
            </QuietButton>
            <QuietButton
              onPress={() => {
                const id = freeShapeId(piece);
                change((now) => ({ ...now, shapes: [{ ...shape, id, name: `${shape.name} 2` }, ...now.shapes] }));
                choose(id);
              }}
            >
              {words.copy}
            </QuietButton>
            <QuietButton onPress={() => put((now) => ({ ...now, hidden: !now.hidden }))}>
              {shape.hidden ? words.unhide : words.hide}
            </QuietButton>
            <QuietButton onPress={() => put((now) => ({ ...now, locked: !now.locked }))}>
              {shape.locked ? words.unlock : words.lock}
            </QuietButton>
            <QuietButton onPress={() => removeShape(shape.id)}>{words.remove}</QuietButton>
          </Row>
        </div>
      )}
    </>
  );
}

const Row = ({ children }: { readonly children: ReactNode }) => <p className="shape-actions">{children}</p>;

/** Takes a shape out; undo brings it back. */
export function removeShape(id: string): void {
  usePiece.getState().change((now) => ({ ...now, shapes: now.shapes.filter((shape) => shape.id !== id) }));
  useCartoon.getState().choose(null);
}

/** Slits that run along the shape's cells. */
function slitsBeside(plan: Plan, area: number): Plan['slits'] {
  const { areas, ends } = plan.chart;
  return plan.slits.filter((slit) => {
    const pass = Math.floor((slit.fromPass + slit.toPass) / 2);
    return slit.between.some((end) => areas[pass * ends + end] === area);
  });
}
