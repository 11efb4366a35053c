import { useState } from 'react';
import { mm } from '../../../core/model/units.ts';
import { SecondButton } from '../../parts/Actions.tsx';
import { DimensionField } from '../../parts/DimensionField.tsx';
import { FieldRow } from '../../parts/Fields.tsx';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { replanRest } from '../../state/replan.ts';
import { useMeasuredBeat } from '../../state/useMeasuredBeat.ts';
import type { Work } from '../../state/useWork.ts';
import { lengthSaid } from '../../words/figures.ts';
import { useWords } from '../../words/useWords.ts';
import { ReplanEffect } from './ReplanEffect.tsx';
import { useReplanned } from './useReplanned.ts';

interface ReplanSheetProps {
  readonly work: Work;
  /** The height of a pass to begin with, mm; null for the one the newest check measured. */
  readonly begin: number | null;
  readonly onClose: () => void;
}

const toMicrometres = (pass: number) => Math.round(pass * 1000) / 1000;

/** The rest laid over passes of another height: the one a check measured, or one typed. */
export function ReplanSheet({ work, begin, onClose }: ReplanSheetProps) {
  const all = useWords();
  const words = all.order.replan;
  const beat = useMeasuredBeat();
  const [typed, setTyped] = useState<number | null>(begin === null ? null : toMicrometres(begin));
  const planned = work.piece.cloth.passHeight;
  const pass = typed ?? (beat === null ? planned : toMicrometres(beat.pass));
  const say = (value: number) => lengthSaid(value, work.piece.units, 'pass-height');
  const same = Math.abs(pass - planned) < 0.0005;
  const replanned = useReplanned(work, same ? null : pass);
  return (
    <SheetDialog title={words.title} onClose={onClose} place="wide">
      <p>{work.passesDone === 0 ? words.leadBefore : words.lead}</p>
      <p>
        {words.planned(say(planned))} {beat === null ? words.notMeasured : words.measured(say(beat.pass))}
      </p>
      <FieldRow label={all.piece.passHeight}>
        <DimensionField
          label={all.piece.passHeight}
          value={mm(pass)}
          units={work.piece.units}
          kind="pass-height"
          step={mm(0.01)}
          least={0.1}
          most={50}
          onChange={setTyped}
        />
      </FieldRow>
      {same && <p>{words.same}</p>}
      {!same && (
        <div role="status">
          {replanned === null ? (
            <p>{all.piece.workingOut}</p>
          ) : (
            <ReplanEffect piece={work.piece} effect={replanned.effect} blocks={replanned.blocks} />
          )}
        </div>
      )}
      {!same && (
        <p className="sheet-action">
          <SecondButton
            action={{
              words: words.doIt,
              onPress: () => {
                onClose();
                replanRest(pass);
              },
            }}
          />
        </p>
      )}
    </SheetDialog>
  );
}
