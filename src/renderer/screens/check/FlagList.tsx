import { type ReactNode, useState } from 'react';
import './flagList.css';
import type { Flag } from '../../../core/model/check.ts';
import type { LengthUnits } from '../../../core/model/lengthWords.ts';
import type { Piece } from '../../../core/model/piece.ts';
import type { PlannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { tell } from '../../words/telling.ts';
import { useWords } from '../../words/useWords.ts';
import { CloseLook } from './CloseLook.tsx';
import { type Look, useChecks } from './checkStore.ts';
import { flagFigure } from './flagFigure.ts';

interface FlagListProps {
  readonly look: Look;
  readonly piece: Piece;
  readonly edges: PlannedSelvedges;
}

/** What was seen, as a title: its first sentence, without the full stop and the give or take that stands below it. */
export const flagTitle = (flag: Flag, units: LengthUnits): string => titleOf(flag.message[units]);

export const titleOf = (message: string): string =>
  tell((sentences(message)[0] ?? message).replace(/\.$/, '').replace(/, give or take [^,]+$/, ''));

const sentences = (text: string): string[] => text.split(/(?<=\.) (?=\S)/);

/** What the message says beyond its first sentence; the figure of an edge stands on its own already. */
const flagRest = (flag: Flag, units: LengthUnits): string =>
  flag.kind === 'draw-in' || (flag.kind === 'spreading' && flag.side !== null)
    ? ''
    : tell(sentences(flag.message[units]).slice(1).join(' '));

function PutAside({ index }: { readonly index: number }) {
  const words = useWords().check;
  const [asked, setAsked] = useState(false);
  const [reason, setReason] = useState('');
  if (!asked) return <QuietButton onPress={() => setAsked(true)}>{words.putAside}</QuietButton>;
  return (
    <form
      className="flag-aside"
      onSubmit={(event) => {
        event.preventDefault();
        if (reason.trim() !== '') void useChecks.getState().dismissFlag(index, reason.trim());
      }}
    >
      <label>
        <span className="second">{words.putAsideWhy}</span>
        {/* biome-ignore lint/a11y/noAutofocus: the weaver has just asked to type here. */}
        <input autoFocus value={reason} onChange={(event) => setReason(event.target.value)} maxLength={1000} />
      </label>
      <button type="submit" className="quiet-action">
        {words.putAside}
      </button>
    </form>
  );
}

/** Flags by number; the chosen one opens to its close look, its figure and what to do. */
export function FlagList({ look, piece, edges }: FlagListProps) {
  const words = useWords().check;
  const chosen = useChecks((state) => state.chosenFlag);
  const { flags } = look.reading;
  if (flags.length === 0) return null;
  const aside = (index: number) => look.kept?.dismissed.find((each) => each.flag === index)?.reason ?? null;
  const head = (flag: Flag, index: number, second: ReactNode) => (
    <button
      type="button"
      className="flag-head"
      aria-expanded={index === chosen}
      onClick={() => useChecks.getState().chooseFlag(index)}
    >
      <span className="flag-number">{index + 1}</span>
      <span>
        <span className={aside(index) === null ? 'flag-title' : 'flag-title is-aside'}>
          {flagTitle(flag, piece.units)}
        </span>
        {second}
      </span>
    </button>
  );
  return (
    <ol className="flags">
      {flags.map((flag, index) => {
        const figure = flagFigure(flag, piece.units);
        const reason = aside(index);
        const key = `${flag.kind} ${flag.side} ${flag.yMm} ${flag.xMm}`;
        if (index !== chosen) {
          const said =
            reason !== null ? words.asideBecause(reason) : figure === null ? tell(flag.advice) : figure.figure;
          return (
            <li key={key}>
              {head(
                flag,
                index,
                <span className="second">
                  {said}
                  {reason === null && figure !== null && `, ${figure.giveOrTake}`}
                </span>,
              )}
            </li>
          );
        }
        return (
          <li key={key} className="is-chosen">
            {head(flag, index, null)}
            {flag.yMm !== null && <CloseLook look={look} piece={piece} edges={edges} flag={flag} />}
            {figure !== null && (
              <p className="finding">
                <strong>{figure.figure}</strong> <span>{figure.giveOrTake}</span>
              </p>
            )}
            {flagRest(flag, piece.units) !== '' && <p>{flagRest(flag, piece.units)}</p>}
            <p>{tell(flag.advice)}</p>
            {reason !== null && <p className="second">{words.asideBecause(reason)}</p>}
            {reason === null && look.kept !== null && <PutAside index={index} />}
          </li>
        );
      })}
    </ol>
  );
}
