import { clothBox } from '../../../core/cartoon/snap.ts';
import type { Ornament, Piece } from '../../../core/model/piece.ts';
import { clothMm, type Mm, mm, radians } from '../../../core/model/units.ts';
import { ornamentPlans } from '../../../core/ornaments/ornamentPlans.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { DimensionField } from '../../parts/DimensionField.tsx';
import { FieldRow, NumberField, SelectField, TextField } from '../../parts/Fields.tsx';
import { Sign } from '../../parts/Sign.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useTell } from '../../words/telling.ts';
import { useWords } from '../../words/useWords.ts';
import { removeOrnament } from './ornaments.ts';

interface OrnamentWordsProps {
  readonly piece: Piece;
  readonly ornament: Ornament;
}

/** An applied piece: its sizes and place to type, how it is made, what holds it, what to take care of. */
export function OrnamentWords({ piece, ornament }: OrnamentWordsProps) {
  const all = useWords();
  const tell = useTell();
  const words = all.cartoon.ornament;
  const change = usePiece((state) => state.change);
  const put = (part: Partial<Ornament>) =>
    change(
      (now) => ({
        ...now,
        ornaments: now.ornaments.map((each) => (each.id === ornament.id ? ({ ...each, ...part } as Ornament) : each)),
      }),
      `ornament ${ornament.id}`,
    );
  const plan = ornamentPlans(piece)[piece.ornaments.indexOf(ornament)];
  if (plan === undefined) return null;
  const cloth = clothBox(piece);
  const length = (label: string, value: number, take: (typed: Mm) => void) => (
    <FieldRow label={label}>
      <DimensionField label={label} value={mm(value)} units={piece.units} least={1} most={2_000} onChange={take} />
    </FieldRow>
  );
  const whole = (label: string, value: number, least: number, most: number, take: (typed: number) => void) => (
    <NumberField
      label={label}
      value={value}
      least={least}
      most={most}
      whole
      onChange={(typed) => typed !== null && take(typed)}
    />
  );
  return (
    <>
      {plan.place.verdict.remedy !== null && (
        <p className="shape-slit">
          <Sign name="mend" size={22} />
          <span>
            <strong>{tell(plan.place.verdict.sentence)}</strong> {tell(plan.place.verdict.remedy)}
          </span>
        </p>
      )}
      <p className="second">{tell(plan.place.words)}</p>
      <p className="shape-sizes">
        <DimensionField
          label={all.cartoon.cornerAcross}
          value={mm(Math.max(0, ornament.at.x - cloth.left))}
          units={piece.units}
          after={all.cartoon.fromLeft}
          step={piece.loom.notchPitch}
          onChange={(value) => put({ at: { ...ornament.at, x: clothMm(value + cloth.left) } })}
        />
        <DimensionField
          label={all.cartoon.cornerUp}
          value={mm(Math.max(0, ornament.at.y))}
          units={piece.units}
          after={all.cartoon.up}
          step={mm(2 * piece.cloth.passHeight)}
          onChange={(value) => put({ at: { ...ornament.at, y: clothMm(value) } })}
        />
      </p>
      <TextField label={all.cartoon.name} value={ornament.name} onChange={(name) => put({ name })} />
      {whole(words.count, ornament.count, 1, 1000, (count) => put({ count }))}
      {ornament.kind === 'wrapped-flower' ? (
        <>
          <SelectField
            label={all.cartoon.yarn}
            value={ornament.yarn}
            options={piece.yarns.map((yarn) => ({ value: yarn.id, words: yarn.name }))}
            onChange={(yarn) => put({ yarn })}
          />
          {length(words.former, ornament.formerDiameter, (formerDiameter) => put({ formerDiameter }))}
          {whole(words.pegs, ornament.pegs, 3, 200, (pegs) => put({ pegs }))}
          {whole(words.wraps, ornament.wrapsPerPetal, 1, 50, (wrapsPerPetal) => put({ wrapsPerPetal }))}
          {whole(words.layers, ornament.layers, 1, 20, (layers) => put({ layers }))}
        </>
      ) : (
        <>
          <FieldRow label={all.piece.colour}>
            <input
              type="color"
              className="field-colour"
              aria-label={all.piece.colour}
              value={ornament.colour}
              onChange={(event) => put({ colour: event.target.value.toLowerCase() })}
            />
          </FieldRow>
          {length(words.length, ornament.length, (value) => put({ length: value }))}
          {length(words.width, ornament.width, (value) => put({ width: value }))}
          {length(words.thickness, ornament.thickness, (thickness) => put({ thickness }))}
          <NumberField
            label={all.cartoon.turnOf(ornament.name)}
            value={Math.round((ornament.rotation * 180) / Math.PI)}
            least={-360}
            most={360}
            onChange={(degrees) => degrees !== null && put({ rotation: radians((degrees * Math.PI) / 180) })}
          />
        </>
      )}
      <h2>{words.making}</h2>
      <ol className="ornament-steps">
        {plan.steps.map((step) => (
          <li key={step}>{tell(step)}</li>
        ))}
      </ol>
      <h2>{words.heldBy}</h2>
      <p>{tell(plan.heldBy)}</p>
      <h2>{words.cautions}</h2>
      <ul className="ornament-cautions">
        {plan.cautions.map((caution) => (
          <li key={caution}>
            <Sign name="mend" size={20} />
            <span>{tell(caution)}</span>
          </li>
        ))}
      </ul>
      <p className="shape-actions">
        <QuietButton onPress={() => removeOrnament(ornament.id)}>{all.cartoon.remove}</QuietButton>
      </p>
    </>
  );
}
