import type { ReactNode } from 'react';
import { withTurnWorkedIn } from '../../../core/cartoon/formCommands.ts';
import { separateCopies, setMirror, setRepeat } from '../../../core/cartoon/mirror.ts';
import { shapeBox } from '../../../core/cartoon/shapeBox.ts';
import { clothBox, fitShapeToGrid, weavingGrid } from '../../../core/cartoon/snap.ts';
import type { Piece, Shape } from '../../../core/model/piece.ts';
import { radians } from '../../../core/model/units.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { NumberField, SelectField, TextField } from '../../parts/Fields.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useWords } from '../../words/useWords.ts';
import { useCartoon } from './cartoonStore.ts';
import { freeShapeId, nextName } from './freeShape.ts';
import { removeShape } from './removeShape.ts';
import { restackShape } from './restackShape.ts';
import { SlantedMirror } from './SlantedMirror.tsx';
import { replaceShape } from './useCartoonPointer.ts';

/** Everything else about a shape: yarn, borders, turning, mirror, copies, layers. */
export function ShapeMore({ piece, shape }: { readonly piece: Piece; readonly shape: Shape }) {
  const all = useWords();
  const words = all.cartoon;
  const change = usePiece((state) => state.change);
  const choose = useCartoon((state) => state.choose);
  const cloth = clothBox(piece);
  const box = shapeBox(shape, cloth);
  const middleEnd = (piece.warp.ends + 1) / 2;
  const put = (update: (now: Shape) => Shape, gather: string | null = null) =>
    change((now) => replaceShape(now, shape.id, update), gather);
  const grid = weavingGrid(piece);
  const turn = 2 * grid.passHeight;
  /** How far each copy lies from the one before, mm; null leaves that way as it is. */
  const putSpacing = (dx: number | null, dy: number | null) =>
    put((now) =>
      now.repeat === null ? now : setRepeat(now, now.repeat.copies, dx ?? now.repeat.dx, dy ?? now.repeat.dy),
    );
  // A way that is chosen while the copies lie on one another is kept by the sign of nothing.
  const leftward = isNegative(shape.repeat?.dx ?? 0);
  const downward = isNegative(shape.repeat?.dy ?? 0);
  const separate = () => {
    change((now) => {
      const ids: string[] = [];
      const of = now.shapes.find((each) => each.id === shape.id);
      if (of === undefined) return now;
      let taken: Piece = now;
      const copies = ((of.repeat?.copies ?? 0) + 1) * (of.mirrorAbout === null ? 1 : 2) - 1;
      for (let copy = 0; copy < copies; copy++) {
        const id = freeShapeId(taken);
        ids.push(id);
        taken = { ...taken, shapes: [...taken.shapes, { ...of, id }] };
      }
      const names = now.shapes.map((each) => each.name);
      const apart = separateCopies(of, ids, cloth).map((copy, at) => {
        if (at === 0) return copy;
        const name = nextName(of.name, names);
        names.push(name);
        return { ...copy, name };
      });
      return { ...now, shapes: now.shapes.flatMap((each) => (each.id === of.id ? apart : [each])) };
    });
  };
  return (
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
        onChange={(degrees) =>
          degrees !== null && put((now) => ({ ...now, rotation: radians((degrees * Math.PI) / 180) }))
        }
      />
      <NumberField
        label={words.mirrorAbout}
        value={shape.mirrorAbout === null ? null : shape.mirrorAbout / piece.loom.notchPitch + middleEnd}
        least={0.5}
        most={piece.warp.ends + 0.5}
        maybe
        after={words.mirrorHalf}
        onChange={(end) =>
          put((now) =>
            setMirror(now, end === null ? null : (Math.round(end * 2) / 2 - middleEnd) * piece.loom.notchPitch),
          )
        }
      />
      <NumberField
        label={words.repeats}
        value={shape.repeat?.copies ?? 0}
        least={0}
        most={500}
        whole
        onChange={(copies) => {
          if (copies === null) return;
          const across = Math.max(2, Math.round(((box?.right ?? 10) - (box?.left ?? 0)) / piece.loom.notchPitch) + 1);
          put((now) =>
            copies === 0
              ? { ...now, repeat: null }
              : setRepeat(now, copies, now.repeat?.dx ?? across * piece.loom.notchPitch, now.repeat?.dy ?? 0),
          );
        }}
      />
      {shape.repeat !== null && (
        <>
          <SelectField
            label={words.copyWay}
            value={leftward ? 'left' : 'right'}
            options={[
              { value: 'right', words: words.rightward },
              { value: 'left', words: words.leftward },
            ]}
            onChange={() => putSpacing(-shape.repeat!.dx, null)}
          />
          <NumberField
            label={words.copyAcross}
            value={Math.round((Math.abs(shape.repeat.dx) / grid.pitch) * 100) / 100}
            least={0}
            most={2 * grid.ends}
            onChange={(ends) => ends !== null && putSpacing((leftward ? -ends : ends) * grid.pitch, null)}
          />
          <SelectField
            label={words.copyHeight}
            value={downward ? 'down' : 'up'}
            options={[
              { value: 'up', words: words.upward },
              { value: 'down', words: words.downward },
            ]}
            onChange={() => putSpacing(null, -shape.repeat!.dy)}
          />
          <NumberField
            label={words.copyUp}
            value={Math.round((Math.abs(shape.repeat.dy) / turn) * 100) / 100}
            least={0}
            most={10_000}
            onChange={(turns) => turns !== null && putSpacing(null, (downward ? -turns : turns) * turn)}
          />
        </>
      )}
      <p>
        <label className="cartoon-snap">
          <input
            type="checkbox"
            checked={shape.singlePass}
            onChange={() => put((now) => ({ ...now, singlePass: !now.singlePass }))}
          />
          <span>{words.singlePass}</span>
        </label>
      </p>
      <Row>
        {(shape.repeat !== null || shape.mirrorAbout !== null) && (
          <QuietButton onPress={separate}>{words.separate}</QuietButton>
        )}
        {shape.rotation !== 0 && (
          <QuietButton onPress={() => put((now) => withTurnWorkedIn(now, cloth))}>{words.turnIn}</QuietButton>
        )}
        <QuietButton onPress={() => put((now) => fitShapeToGrid(now, weavingGrid(piece), cloth))}>
          {words.fit}
        </QuietButton>
        <QuietButton onPress={() => restackShape(shape.id, 'up')}>{words.higher}</QuietButton>
        <QuietButton onPress={() => restackShape(shape.id, 'down')}>{words.lower}</QuietButton>
        <QuietButton
          onPress={() => {
            const id = freeShapeId(piece);
            const name = nextName(
              shape.name,
              piece.shapes.map((each) => each.name),
            );
            change((now) => ({ ...now, shapes: [{ ...shape, id, name }, ...now.shapes] }));
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
      <SlantedMirror piece={piece} shape={shape} />
    </div>
  );
}

const isNegative = (value: number) => value < 0 || Object.is(value, -0);

const Row = ({ children }: { readonly children: ReactNode }) => <p className="shape-actions">{children}</p>;
