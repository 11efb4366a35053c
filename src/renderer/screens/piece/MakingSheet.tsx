import { yarnMeasures } from '../../../core/model/lengthWords.ts';
import type { Making, Piece } from '../../../core/model/piece.ts';
import { metres, mm } from '../../../core/model/units.ts';
import { DimensionField } from '../../parts/DimensionField.tsx';
import { FieldRow, NumberField, SelectField } from '../../parts/Fields.tsx';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useWords } from '../../words/useWords.ts';

type Length = 'tail' | 'fringe' | 'hillLimit' | 'slitLimit' | 'allowance' | 'dowelSag';

/** The weaver's own ways: pass height, header, working length, what she doesn't mind. */
export function MakingSheet({ piece, onClose }: { readonly piece: Piece; readonly onClose: () => void }) {
  const words = useWords().piece;
  const change = usePiece((state) => state.change);
  const { making, cloth } = piece;
  const yarnMeasure = yarnMeasures[piece.units];
  const put = (part: Partial<Making>) => change((now) => ({ ...now, making: { ...now.making, ...part } }), 'making');
  const putCloth = (part: Partial<Piece['cloth']>) =>
    change((now) => ({ ...now, cloth: { ...now.cloth, ...part } }), 'making');
  const yarns = piece.yarns.map((yarn) => ({ value: yarn.id, words: yarn.name }));
  const length = (label: string, name: Length, fine: boolean) => (
    <FieldRow label={label}>
      <DimensionField
        label={label}
        value={making[name]}
        units={piece.units}
        kind={fine ? 'edge' : 'planned'}
        least={name === 'dowelSag' ? 0.1 : 0}
        most={2_000}
        onChange={(value) => put({ [name]: value })}
      />
    </FieldRow>
  );
  return (
    <SheetDialog title={words.making} onClose={onClose}>
      <FieldRow
        label={words.passHeight}
        after={cloth.passHeightSource === 'measured' ? words.passMeasured : words.passPlanned}
      >
        <DimensionField
          label={words.passHeight}
          value={cloth.passHeight}
          units={piece.units}
          kind="pass-height"
          least={0.05}
          most={50}
          onChange={(passHeight) => putCloth({ passHeight: mm(passHeight), passHeightSource: 'planned' })}
        />
      </FieldRow>
      <SelectField
        label={words.groundYarn}
        value={cloth.ground}
        options={yarns}
        onChange={(ground) => putCloth({ ground })}
      />
      <SelectField
        label={words.headerYarn}
        value={cloth.headerYarn}
        options={yarns}
        onChange={(headerYarn) => putCloth({ headerYarn })}
      />
      <NumberField
        label={words.headerPasses}
        value={cloth.headerPasses}
        least={0}
        most={1000}
        whole
        onChange={(value) => value !== null && putCloth({ headerPasses: value })}
      />
      <NumberField
        label={words.footerPasses}
        value={cloth.footerPasses}
        least={0}
        most={1000}
        whole
        onChange={(value) => value !== null && putCloth({ footerPasses: value })}
      />
      {length(words.allowance, 'allowance', true)}
      <NumberField
        label={words.workingLength}
        value={making.workingLength / yarnMeasure.metres}
        least={0.5}
        most={50}
        after={yarnMeasure.unit}
        onChange={(value) => value !== null && put({ workingLength: metres(value * yarnMeasure.metres) })}
      />
      {length(words.tail, 'tail', false)}
      {length(words.fringe, 'fringe', false)}
      <NumberField
        label={words.spare}
        value={Math.round(making.spare * 100)}
        least={0}
        most={200}
        whole
        onChange={(value) => value !== null && put({ spare: value / 100 })}
      />
      <NumberField
        label={words.pace}
        value={making.passesPerMinute}
        least={0.05}
        most={60}
        onChange={(value) => value !== null && put({ passesPerMinute: value })}
      />
      {length(words.hill, 'hillLimit', false)}
      {length(words.slit, 'slitLimit', false)}
      {length(words.sag, 'dowelSag', true)}
    </SheetDialog>
  );
}
