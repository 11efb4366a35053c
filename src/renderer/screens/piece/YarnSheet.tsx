import { useState } from 'react';
import { yarnMeasures } from '../../../core/model/lengthWords.ts';
import type { CountSystem, Piece, Yarn } from '../../../core/model/piece.ts';
import { grams, MM_PER_INCH, metres, mm } from '../../../core/model/units.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { FieldRow, NumberField, SelectField, TextField } from '../../parts/Fields.tsx';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { chooseFile, photographTypes } from '../../parts/useFileDrop.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useWords } from '../../words/useWords.ts';
import { ColourFromPhoto } from './ColourFromPhoto.tsx';

const systems: readonly CountSystem[] = [
  'metres-per-100-g',
  'yards-per-pound',
  'tex',
  'metric-nm',
  'cotton-ne',
  'worsted-nw',
  'linen-lea',
  'woollen-run',
];
const fibres: readonly Yarn['fibre'][] = ['wool', 'cotton', 'linen', 'silk', 'other'];

interface YarnSheetProps {
  readonly piece: Piece;
  readonly yarn: string;
  readonly onClose: () => void;
}

/** Everything a label, a ruler or a photograph says about one yarn. */
export function YarnSheet({ piece, yarn: id, onClose }: YarnSheetProps) {
  const { piece: words, shell } = useWords();
  const change = usePiece((state) => state.change);
  const [photo, setPhoto] = useState<File | null>(null);
  const yarn = piece.yarns.find((each) => each.id === id);
  if (!yarn) return null;
  const put = (part: Partial<Yarn>) =>
    change(
      (now) => ({ ...now, yarns: now.yarns.map((each) => (each.id === id ? { ...each, ...part } : each)) }),
      `yarn ${id}`,
    );
  const inUse =
    piece.cloth.ground === id ||
    piece.cloth.headerYarn === id ||
    piece.shapes.some((shape) => shape.yarn === id) ||
    piece.ornaments.some((ornament) => ornament.kind === 'wrapped-flower' && ornament.yarn === id);
  const remove = () => {
    change((now) => ({ ...now, yarns: now.yarns.filter((each) => each.id !== id) }));
    onClose();
  };
  const { count, label } = yarn;
  const onLabel = yarnMeasures[piece.units];
  const unit = piece.units === 'mm' ? 1 : MM_PER_INCH;
  /** Centimetres in the length that wraps are counted over. */
  const wrapped = piece.units === 'mm' ? 1 : MM_PER_INCH / 10;
  return (
    <SheetDialog title={yarn.name} onClose={onClose}>
      <TextField label={words.name} value={yarn.name} onChange={(name) => put({ name })} />
      <FieldRow label={words.colour}>
        <input
          type="color"
          className="field-colour"
          aria-label={words.colour}
          value={yarn.colour}
          onChange={(event) => put({ colour: event.target.value.toLowerCase() })}
        />
        <QuietButton onPress={() => chooseFile(photographTypes, setPhoto)}>{words.fromPhoto}</QuietButton>
      </FieldRow>
      {photo !== null && <ColourFromPhoto photo={photo} onPick={(colour) => put({ colour })} />}
      <SelectField
        label={words.fibre}
        value={yarn.fibre}
        options={fibres.map((value) => ({ value, words: words.fibres[value] }))}
        onChange={(fibre) => put({ fibre })}
      />
      <NumberField
        label={words.labelLength[piece.units]}
        value={label === null ? null : label.metres / onLabel.metres}
        least={1}
        most={100_000}
        maybe
        onChange={(value) =>
          put({
            label:
              value === null ? null : { metres: metres(value * onLabel.metres), grams: label?.grams ?? grams(100) },
          })
        }
      />
      {label !== null && (
        <NumberField
          label={words.labelGrams}
          value={label.grams}
          least={1}
          most={10_000}
          onChange={(value) => value !== null && put({ label: { ...label, grams: grams(value) } })}
        />
      )}
      <SelectField
        label={words.countSystem}
        value={count?.system ?? 'none'}
        options={[
          { value: 'none', words: words.systems.none },
          ...systems.map((value) => ({ value, words: words.systems[value] })),
        ]}
        onChange={(system) =>
          put({
            count:
              system === 'none'
                ? null
                : { system: system as CountSystem, size: count?.size ?? 200, plies: count?.plies ?? 1 },
          })
        }
      />
      {count !== null && (
        <>
          <NumberField
            label={words.countSize}
            value={count.size}
            least={0.01}
            most={100_000}
            onChange={(size) => size !== null && put({ count: { ...count, size } })}
          />
          <NumberField
            label={words.countPlies}
            value={count.plies}
            least={1}
            most={100}
            whole
            onChange={(plies) => plies !== null && put({ count: { ...count, plies } })}
          />
        </>
      )}
      <NumberField
        label={words.wraps[piece.units]}
        value={yarn.wrapsPerCm === null ? null : yarn.wrapsPerCm * wrapped}
        least={0.2}
        most={200}
        maybe
        onChange={(value) => put({ wrapsPerCm: value === null ? null : value / wrapped })}
      />
      <NumberField
        label={words.thickness}
        value={yarn.diameter === null ? null : yarn.diameter / unit}
        least={piece.units === 'mm' ? 0.05 : 0.002}
        most={piece.units === 'mm' ? 50 : 2}
        maybe
        after={shell[piece.units === 'mm' ? 'millimetres' : 'inches']}
        onChange={(value) => put({ diameter: value === null ? null : mm(value * unit) })}
      />
      <NumberField
        label={words.category}
        value={yarn.category}
        least={0}
        most={7}
        whole
        maybe
        after={words.categoryGuess}
        onChange={(category) => put({ category })}
      />
      <NumberField
        label={words.strands}
        value={yarn.strands}
        least={1}
        most={20}
        whole
        onChange={(strands) => strands !== null && put({ strands })}
      />
      <NumberField
        label={words.measuredUse}
        value={yarn.measuredUse ?? null}
        least={1}
        most={5}
        maybe
        after={words.measuredUseAfter}
        onChange={(measuredUse) => put({ measuredUse })}
      />
      <NumberField
        label={words.ballGrams}
        value={yarn.ballGrams}
        least={1}
        most={10_000}
        maybe
        onChange={(value) => put({ ballGrams: value === null ? null : grams(value) })}
      />
      <p className="sheet-action">
        {inUse ? (
          <span className="second">{words.yarnInUse}</span>
        ) : (
          <QuietButton onPress={remove}>{words.removeYarn}</QuietButton>
        )}
      </p>
    </SheetDialog>
  );
}
