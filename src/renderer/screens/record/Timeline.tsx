import { useEffect, useRef } from 'react';
import { lengthSaid } from '../../words/figures.ts';
import './timeline.css';
import type { CheckSummary } from '../../../core/contract/hostApi.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { Sign } from '../../parts/Sign.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { shortDate } from '../../words/dates.ts';
import { useWords } from '../../words/useWords.ts';
import { titleOf } from '../check/FlagList.tsx';
import { spread } from '../check/probe.ts';
import { useHostImage } from '../check/useHostImage.ts';
import { nextCheck } from './nextCheck.ts';

/** More flags than these are told in a number: the check itself shows them all. */
const SHOWN_FLAGS = 2;

interface TimelineProps {
  readonly piece: Piece;
  readonly checks: readonly CheckSummary[];
  readonly chosen: string | null;
  readonly onChoose: (id: string) => void;
}

function Thumbnail({ hash }: { readonly hash: string }) {
  const key = usePiece((state) => state.key);
  const image = useHostImage(key === null ? null : { call: 'photoImage', params: { key, hash, size: 'thumbnail' } });
  return image.address === null ? <span className="timeline-blank" /> : <img src={image.address} alt="" />;
}

/** Notes and checks from left to right by date, and where the next look is worth taking. */
export function Timeline({ piece, checks, chosen, onChoose }: TimelineProps) {
  const words = useWords().record;
  const next = nextCheck(checks.at(-1), piece);
  const notes = piece.notes.map((note) => ({ at: note.at, note, check: null, number: 0 }));
  const looks = checks.map((check, index) => ({ at: check.taken ?? check.kept, note: null, check, number: index + 1 }));
  const events = [...notes, ...looks].sort((one, other) => one.at.localeCompare(other.at));
  const list = useRef<HTMLOListElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the list grows when checks arrive.
  useEffect(() => {
    const row = list.current;
    const item = row?.querySelector<HTMLElement>('.is-chosen');
    if (row == null || item == null) return;
    // Only sideways, and only the row: the window itself stays where it is.
    const left = item.offsetLeft - row.offsetLeft;
    if (left < row.scrollLeft || left + item.offsetWidth > row.scrollLeft + row.clientWidth) {
      row.scrollLeft = left + item.offsetWidth - row.clientWidth * 0.8;
    }
  }, [chosen, checks.length]);
  if (events.length === 0 && next === null) return null;
  return (
    <ol ref={list} className="timeline" aria-label={words.timeline}>
      {events.map(({ at, note, check, number }) => {
        if (note !== null) {
          return (
            <li key={note.id} className="timeline-note">
              <strong>{note.kind === 'note' ? words.note : words.kinds[note.kind]}</strong>
              <span className="second">{shortDate(at)}</span>
              <span className="second timeline-text">{note.text}</span>
            </li>
          );
        }
        const fell =
          check.fellMm === null
            ? words.statuses[check.status]
            : words.fellAt(
                lengthSaid(Math.abs(check.fellMm), piece.units, 'edge'),
                check.fellMm < 0,
                spread(check.fellSigmaMm ?? 1, piece.units),
              );
        return (
          <li key={check.id} className={check.id === chosen ? 'timeline-check is-chosen' : 'timeline-check'}>
            <button type="button" aria-pressed={check.id === chosen} onClick={() => onChoose(check.id)}>
              <Thumbnail hash={check.photoHash} />
              <span className="timeline-words">
                <strong>{words.checkNumber(number)}</strong>
                <span className="second">{shortDate(at)}</span>
                <span className="second">{fell}</span>
                {check.rendered && <span className="second">{words.rendered}</span>}
              </span>
              {check.flags.slice(0, SHOWN_FLAGS).map((flag) => (
                <span key={flag.mm} className="timeline-flag">
                  <Sign name="mend" size={18} />
                  <span>{titleOf(flag[piece.units])}</span>
                </span>
              ))}
              {check.flags.length > SHOWN_FLAGS && (
                <span className="timeline-flag second">{words.moreFlags(check.flags.length - SHOWN_FLAGS)}</span>
              )}
            </button>
          </li>
        );
      })}
      {next !== null && (
        <li className="timeline-next">
          <strong>{words.nextAt(lengthSaid(next.heightMm, piece.units))}</strong>
          <span className="second">{words.turnsOn(next.turns)}</span>
        </li>
      )}
    </ol>
  );
}
