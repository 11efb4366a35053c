import { mirrorImage } from '../../../core/cartoon/mirror.ts';
import { shapeBox } from '../../../core/cartoon/shapeBox.ts';
import { clothBox, weavingGrid } from '../../../core/cartoon/snap.ts';
import type { Piece, Shape } from '../../../core/model/piece.ts';
import { mm } from '../../../core/model/units.ts';
import { QuietButton, SecondButton } from '../../parts/Actions.tsx';
import { DimensionField } from '../../parts/DimensionField.tsx';
import { FieldRow, NumberField } from '../../parts/Fields.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useWords } from '../../words/useWords.ts';
import { useCartoon } from './cartoonStore.ts';
import { freeShapeId, nextName } from './freeShape.ts';

const DEGREE = Math.PI / 180;

interface SlantedMirrorProps {
  readonly piece: Piece;
  readonly shape: Shape;
}

/** A mirror line at any slant, drawn on the cloth while it is set; the image becomes a shape of its own. */
export function SlantedMirror({ piece, shape }: SlantedMirrorProps) {
  const all = useWords();
  const words = all.cartoon.slanted;
  const { mirrorLine, setMirrorLine, choose } = useCartoon();
  const { change } = usePiece.getState();
  const grid = weavingGrid(piece);
  const cloth = clothBox(piece);
  if (mirrorLine === null) {
    const box = shapeBox(shape, cloth);
    // At the shape's right end to begin with, where the image lies beside it.
    const begin = () =>
      setMirrorLine({ x: box?.right ?? 0, y: ((box?.bottom ?? 0) + (box?.top ?? 0)) / 2, angle: 60 * DEGREE });
    return <QuietButton onPress={begin}>{words.begin}</QuietButton>;
  }
  const put = (part: Partial<typeof mirrorLine>) => setMirrorLine({ ...mirrorLine, ...part });
  const add = () => {
    const id = freeShapeId(piece);
    change((now) => {
      const of = now.shapes.find((each) => each.id === shape.id);
      if (of === undefined) return now;
      const name = nextName(
        of.name,
        now.shapes.map((each) => each.name),
      );
      return { ...now, shapes: [{ ...mirrorImage(of, mirrorLine, cloth), id, name }, ...now.shapes] };
    });
    setMirrorLine(null);
    choose(id);
  };
  return (
    <section className="slanted-mirror" aria-label={words.title}>
      <h2>{words.title}</h2>
      <NumberField
        label={words.slant}
        value={Math.round((mirrorLine.angle / DEGREE) * 10) / 10}
        least={0}
        most={180}
        after={words.slantSecond}
        onChange={(degrees) => degrees !== null && put({ angle: degrees * DEGREE })}
      />
      <NumberField
        label={words.end}
        value={Math.round((mirrorLine.x / grid.pitch + (grid.ends + 1) / 2) * 2) / 2}
        least={0.5}
        most={grid.ends + 0.5}
        onChange={(end) => end !== null && put({ x: (end - (grid.ends + 1) / 2) * grid.pitch })}
      />
      <FieldRow label={words.up}>
        <DimensionField
          label={words.up}
          value={mm(Math.max(0, mirrorLine.y))}
          units={piece.units}
          step={mm(2 * grid.passHeight)}
          onChange={(y) => put({ y })}
        />
      </FieldRow>
      <p className="shape-actions">
        <SecondButton action={{ words: words.add, onPress: add }} />
        <QuietButton onPress={() => setMirrorLine(null)}>{words.leave}</QuietButton>
      </p>
    </section>
  );
}
