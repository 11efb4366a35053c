import { memo, useState } from 'react';
import { setMirror } from '../../../core/cartoon/mirror.ts';
import { resizeShape } from '../../../core/cartoon/place.ts';
import { shapeBox } from '../../../core/cartoon/shapeBox.ts';
import { clothBox } from '../../../core/cartoon/snap.ts';
import type { Piece, Shape } from '../../../core/model/piece.ts';
import { mm } from '../../../core/model/units.ts';
import type { Plan } from '../../../core/plan/planPiece.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { DimensionField } from '../../parts/DimensionField.tsx';
import { Sign } from '../../parts/Sign.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import type { Planned } from '../../state/planning/planned.ts';
import { lengthSaid } from '../../words/figures.ts';
import { useTell } from '../../words/telling.ts';
import { useWords } from '../../words/useWords.ts';
import { CornerFields } from './CornerFields.tsx';
import { ShapeMore } from './ShapeMore.tsx';
import { ShapeSteps } from './ShapeSteps.tsx';
import { Stray } from './Stray.tsx';
import { replaceShape } from './useCartoonPointer.ts';

interface ShapeWordsProps {
  readonly piece: Piece;
  readonly shape: Shape;
  /** The newest plan, perhaps of the piece a moment ago; null before the first. */
  readonly planned: Planned | null;
}

/** The chosen shape: its size to type, how far its steps stray, its steps in counts, and what else can be done with it. */
export function ShapeWords({ piece, shape, planned }: ShapeWordsProps) {
  const words = useWords().cartoon;
  const change = usePiece((state) => state.change);
  const [more, setMore] = useState(false);
  const cloth = clothBox(piece);
  const box = shapeBox(shape, cloth);
  const put = (update: (now: Shape) => Shape, gather: string | null = null) =>
    change((now) => replaceShape(now, shape.id, update), gather);
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
      {box !== null && (
        <p className="shape-sizes">
          {shape.form.kind !== 'band' &&
            size(words.widthOf(shape.name), box.right - box.left, words.wide, (width) => ({ width }))}
          {size(words.heightOf(shape.name), box.top - box.bottom, words.tall, (height) => ({ height }))}
          {box.bottom >= 0 && size(words.upOf(shape.name), box.bottom, words.up, (bottom) => ({ bottom }))}
        </p>
      )}
      <Stray piece={piece} shape={shape.id} />
      <p className="shape-actions">
        <QuietButton onPress={() => put((now) => setMirror(now, now.mirrorAbout === null ? 0 : null))}>
          {shape.mirrorAbout === null ? words.mirrorBoth : words.unmirror}
        </QuietButton>
        <QuietButton onPress={() => setMore(!more)}>{more ? words.less : words.more}</QuietButton>
      </p>
      {more && <ShapeMore piece={piece} shape={shape} />}
      <CornerFields piece={piece} shape={shape} />
      {planned !== null && <PlannedSteps planned={planned} shape={shape.id} />}
    </>
  );
}

/** What the plan makes of the shape: its turns, and slits beside it. Stands still while the shape is dragged. */
const PlannedSteps = memo(function PlannedSteps({
  planned,
  shape,
}: {
  readonly planned: Planned;
  readonly shape: string;
}) {
  const words = useWords().cartoon;
  const tell = useTell();
  const { piece, plan } = planned;
  const area = piece.shapes.findIndex((each) => each.id === shape) + 1;
  if (area === 0) return null;
  const slits = slitsBeside(plan, area);
  const [longest] = slits.toSorted((one, other) => other.lengthMm - one.lengthMm);
  return (
    <>
      <ShapeSteps plan={plan} area={area} />
      {longest !== undefined && (
        <p className="shape-slit">
          <Sign name="slit" size={26} />
          <span>
            <strong>{words.slits(slits.length, lengthSaid(longest.lengthMm, piece.units))}</strong>{' '}
            {tell(longest.remedy)}
          </span>
        </p>
      )}
    </>
  );
});

/** Slits that run along the shape's cells. */
function slitsBeside(plan: Plan, area: number): Plan['slits'] {
  const { areas, ends } = plan.chart;
  return plan.slits.filter((slit) => {
    const pass = Math.floor((slit.fromPass + slit.toPass) / 2);
    return slit.between.some((end) => areas[pass * ends + end] === area);
  });
}
