import type { Piece, Warp } from '../../../core/model/piece.ts';
import { Choice } from '../../parts/Choice.tsx';
import { DimensionField } from '../../parts/DimensionField.tsx';
import { FieldRow, NumberField, TextField } from '../../parts/Fields.tsx';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useWords } from '../../words/useWords.ts';
import { withEnds } from './LoomDrawing.tsx';

/** How the strings are put on. */
export function WarpSheet({ piece, onClose }: { readonly piece: Piece; readonly onClose: () => void }) {
  const words = useWords().piece;
  const change = usePiece((state) => state.change);
  const { warp, loom } = piece;
  const put = (part: Partial<Warp>) => change((now) => ({ ...now, warp: { ...now.warp, ...part } }), 'warp');
  return (
    <SheetDialog title={words.warp} onClose={onClose}>
      <NumberField
        label={words.endsCount}
        value={warp.ends}
        first
        least={2}
        most={loom.notches}
        whole
        onChange={(ends) => ends !== null && change((now) => withEnds(now, ends), 'width')}
      />
      <FieldRow label={words.stringsPerEnd}>
        <Choice
          label={words.stringsPerEnd}
          value={warp.stringsPerEnd}
          options={[
            { value: 1, words: words.oneString },
            { value: 2, words: words.twoStrings },
          ]}
          onChoose={(stringsPerEnd) => put({ stringsPerEnd })}
        />
      </FieldRow>
      <FieldRow label={words.stringDiameter}>
        <DimensionField
          label={words.stringDiameter}
          value={warp.stringDiameter}
          units={piece.units}
          kind="pass-height"
          least={0.05}
          most={20}
          onChange={(stringDiameter) => put({ stringDiameter })}
        />
      </FieldRow>
      <NumberField
        label={words.firstNotch}
        value={warp.firstNotch + 1}
        least={1}
        most={loom.notches - warp.ends + 1}
        whole
        onChange={(notch) => notch !== null && put({ firstNotch: notch - 1 })}
      />
      <TextField label={words.warpYarn} value={warp.yarnName} onChange={(yarnName) => put({ yarnName })} />
      <NumberField
        label={words.warpTex}
        value={warp.tex}
        least={1}
        most={100_000}
        maybe
        onChange={(tex) => put({ tex })}
      />
      <FieldRow label={words.warpColour}>
        <input
          type="color"
          className="field-colour"
          aria-label={words.warpColour}
          value={warp.colour}
          onChange={(event) => put({ colour: event.target.value.toLowerCase() })}
        />
      </FieldRow>
    </SheetDialog>
  );
}
