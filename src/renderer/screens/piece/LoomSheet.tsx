import type { Loom, Piece } from '../../../core/model/piece.ts';
import { mm } from '../../../core/model/units.ts';
import { centredFirstNotch } from '../../../core/warp/centring.ts';
import { SecondButton } from '../../parts/Actions.tsx';
import { DimensionField } from '../../parts/DimensionField.tsx';
import { FieldRow, NumberField, TextField } from '../../parts/Fields.tsx';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useSettings } from '../../state/settingsStore.ts';
import type { PieceField } from '../../state/shellStore.ts';
import { useWords } from '../../words/useWords.ts';
import { KeptLoom, keptAnew } from './KeptLoom.tsx';

interface LoomSheetProps {
  readonly piece: Piece;
  /** The field it is opened for; null for the whole loom. */
  readonly first: PieceField | null;
  readonly onClose: () => void;
}

/** The loom as it stands on the table, and the looms kept for other pieces. */
export function LoomSheet({ piece, first, onClose }: LoomSheetProps) {
  const words = useWords().piece;
  const change = usePiece((state) => state.change);
  const { settings, change: changeSettings } = useSettings();
  const { loom } = piece;
  const put = (part: Partial<Loom>) => change((now) => withLoom(now, { ...now.loom, ...part }), 'loom');
  const length = (
    label: string,
    value: number,
    name: 'notchPitch' | 'openingWidth' | 'openingHeight' | 'bar' | 'depth',
    fine: boolean,
  ) => (
    <FieldRow label={label}>
      <DimensionField
        label={label}
        value={mm(value)}
        units={piece.units}
        kind={fine ? 'pass-height' : 'planned'}
        // The least is said in the units' own steps, and must not round to nothing.
        least={fine ? 0.5 : 1}
        most={5_000}
        first={name === first}
        onChange={(typed) => put({ [name]: typed })}
      />
    </FieldRow>
  );
  return (
    <SheetDialog title={words.loom} onClose={onClose}>
      <TextField label={words.loomName} value={loom.name} onChange={(name) => put({ name })} />
      {length(words.pitch, loom.notchPitch, 'notchPitch', true)}
      <NumberField
        label={words.notches}
        value={loom.notches}
        least={2}
        most={2000}
        whole
        onChange={(notches) => notches !== null && put({ notches })}
      />
      {length(words.openingWidth, loom.openingWidth, 'openingWidth', false)}
      {length(words.openingUp, loom.openingHeight, 'openingHeight', false)}
      {length(words.barHeight, loom.bar, 'bar', false)}
      {length(words.depth, loom.depth, 'depth', false)}
      <p className="sheet-action">
        <SecondButton
          action={{
            words: words.keepLoom,
            onPress: () =>
              changeSettings({
                looms: keptAnew(settings.looms, loom),
              }),
          }}
        />
      </p>
      {settings.looms.length > 0 && (
        <section>
          <h3>{words.keptLooms}</h3>
          <ul className="kept-looms">
            {settings.looms.map((kept) => (
              <KeptLoom key={kept.loom.name} kept={kept} onTake={() => change((now) => withLoom(now, kept.loom))} />
            ))}
          </ul>
        </section>
      )}
    </SheetDialog>
  );
}

/** The same piece on another loom: ends that no longer have a notch are let go, and the rest is centred again. */
function withLoom(piece: Piece, loom: Loom): Piece {
  const ends = Math.min(piece.warp.ends, loom.notches);
  const fits =
    piece.warp.firstNotch + ends <= loom.notches && ends === piece.warp.ends && loom.notches === piece.loom.notches;
  return {
    ...piece,
    loom,
    warp: { ...piece.warp, ends, firstNotch: fits ? piece.warp.firstNotch : centredFirstNotch(loom, ends) },
  };
}
