import { clothBox, weavingGrid } from '../../../core/cartoon/snap.ts';
import { deleteVertex, insertVertex } from '../../../core/cartoon/vertices.ts';
import type { Piece, Shape } from '../../../core/model/piece.ts';
import { mm } from '../../../core/model/units.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { DimensionField } from '../../parts/DimensionField.tsx';
import { NumberField } from '../../parts/Fields.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useWords } from '../../words/useWords.ts';
import { useCartoon } from './cartoonStore.ts';
import { type Handle, handlesOf, moveHandle } from './handles.ts';
import { replaceShape } from './useCartoonPointer.ts';

interface CornerFieldsProps {
  readonly piece: Piece;
  readonly shape: Shape;
}

/** The next handle in a shape's own order; before the first comes the last. */
export function nextHandle(shape: Shape, from: number | null, step: 1 | -1): number | null {
  const handles = handlesOf(shape, 0);
  if (handles.length === 0) return null;
  const at = handles.findIndex((handle) => handle.index === from);
  if (at < 0) return (step === 1 ? handles[0]! : handles.at(-1)!).index;
  return handles[(at + step + handles.length) % handles.length]!.index;
}

/** The chosen corner's place in numbers: across in mm from the left edge and in ends, up in mm and in turns. */
export function CornerFields({ piece, shape }: CornerFieldsProps) {
  const all = useWords();
  const words = all.cartoon;
  const { vertex, chooseVertex } = useCartoon();
  const change = usePiece((state) => state.change);
  const handles = handlesOf(shape, 0);
  if (handles.length === 0) return null;
  const place = handles.findIndex((handle) => handle.index === vertex);
  const chosen: Handle | undefined = handles[place];
  const move = (step: 1 | -1) => chooseVertex(nextHandle(shape, vertex, step));
  const cloth = clothBox(piece);
  const grid = weavingGrid(piece);
  const put = (x: number, y: number) =>
    chosen &&
    change(
      (now) => replaceShape(now, shape.id, (each) => moveHandle(each, chosen.index, x, y)),
      `corner ${shape.id} ${chosen.index}`,
    );
  const turn = 2 * grid.passHeight;
  return (
    <section className="corner">
      <p className="corner-choice">
        <span>{chosen === undefined ? words.corners(handles.length) : words.cornerOf(place + 1, handles.length)}</span>
        <QuietButton onPress={() => move(-1)}>{words.cornerBefore}</QuietButton>
        <QuietButton onPress={() => move(1)}>{words.cornerNext}</QuietButton>
      </p>
      {chosen !== undefined && (
        <>
          <p className="shape-sizes">
            {shape.form.kind !== 'band' && (
              <DimensionField
                label={words.cornerAcross}
                value={mm(chosen.x - cloth.left)}
                units={piece.units}
                kind="edge"
                after={words.fromLeft}
                step={mm(grid.pitch / 2)}
                onChange={(value) => put(value + cloth.left, chosen.y)}
              />
            )}
            <DimensionField
              label={words.cornerUp}
              value={mm(Math.max(0, chosen.y))}
              units={piece.units}
              kind="edge"
              after={words.up}
              step={mm(turn)}
              onChange={(value) => put(chosen.x, value)}
            />
          </p>
          {shape.form.kind !== 'band' && (
            <NumberField
              label={words.cornerEnds}
              value={Math.round(((chosen.x - cloth.left) / grid.pitch) * 100) / 100}
              least={-grid.ends}
              most={2 * grid.ends}
              onChange={(ends) => ends !== null && put(cloth.left + ends * grid.pitch, chosen.y)}
            />
          )}
          <NumberField
            label={words.cornerTurns}
            value={Math.round((chosen.y / turn) * 100) / 100}
            least={-1000}
            most={10_000}
            onChange={(turns) => turns !== null && put(chosen.x, turns * turn)}
          />
          {chosen.corner && (
            <p className="shape-actions">
              <QuietButton
                onPress={() => change((now) => replaceShape(now, shape.id, (each) => insertVertex(each, vertex!, 0.5)))}
              >
                {words.cornerAdd}
              </QuietButton>
              <QuietButton
                onPress={() => {
                  change((now) => replaceShape(now, shape.id, (each) => deleteVertex(each, vertex!)));
                  chooseVertex(null);
                }}
              >
                {words.cornerRemove}
              </QuietButton>
            </p>
          )}
        </>
      )}
    </section>
  );
}
