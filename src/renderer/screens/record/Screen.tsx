import { useEffect, useMemo, useState } from 'react';
import { lengthSaid } from '../../words/figures.ts';
import './record.css';
import { useCommands, withRuns } from '../../keys/commandStore.ts';
import { DrawingTable } from '../../parts/DrawingTable.tsx';
import { Footer, useHelpHint } from '../../parts/Footer.tsx';
import { ScreenFrame } from '../../parts/ScreenFrame.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { makeSheet } from '../../state/sheets.ts';
import { useShell } from '../../state/shellStore.ts';
import { shortDate } from '../../words/dates.ts';
import { useWords } from '../../words/useWords.ts';
import { changesBetween } from '../check/changesBetween.ts';
import { lookAtKept, useChecks } from '../check/checkStore.ts';
import { handOverPicture } from '../check/handOverPicture.ts';
import { CompareSlide } from './CompareSlide.tsx';
import { NoteSheet } from './NoteSheet.tsx';
import { RecordActions } from './RecordActions.tsx';
import { RecordTrends } from './RecordTrends.tsx';
import { recordCommands } from './recordCommands.ts';
import { recordSentence } from './recordSentence.ts';
import { useRecords } from './recordStore.ts';
import { recordTable } from './recordTable.ts';
import { revealFolder } from './revealFolder.ts';
import { Timeline } from './Timeline.tsx';

/** Record: what was done and measured, and what changed since. */
export function Screen() {
  const all = useWords();
  const words = all.record;
  const { key, piece } = usePiece();
  const { summaries, summariesOf, ready, load, listProblem } = useChecks();
  const { records, problems, read } = useRecords();
  const [chosen, setChosen] = useState<string | null>(null);
  const [at, setAt] = useState(0.36);
  const [sheet, setSheet] = useState<'note' | 'table' | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const [working, setWorking] = useState(false);
  const measured = useMemo(() => summaries.filter((each) => each.status === 'measured'), [summaries]);
  useEffect(() => {
    if (key !== null) void load();
  }, [key, load]);
  useEffect(() => {
    if (key !== null)
      void read(
        key,
        // The newest is shown first.
        measured.map((each) => each.id).reverse(),
      );
  }, [key, measured, read]);
  const current = chosen ?? measured.at(-1)?.id ?? null;
  const place = measured.findIndex((each) => each.id === current);
  const later = current === null ? null : (records.get(current) ?? null);
  const earlierId = measured[place - 1]?.id ?? null;
  const earlier = earlierId === null ? null : (records.get(earlierId) ?? null);
  const inOrder = useMemo(
    () => measured.map((each) => records.get(each.id)).filter((each) => each !== undefined),
    [measured, records],
  );
  const step = (by: number) => {
    const next = measured[Math.min(measured.length - 1, Math.max(0, place + by))];
    if (next !== undefined) setChosen(next.id);
  };
  const open = () => {
    if (current === null) return;
    void useChecks.getState().openCheck(current);
    useShell.getState().goTo('check');
  };
  const report = () => {
    if (key === null || working) return;
    setWorking(true);
    void makeSheet(key, 'report', current).then((trouble) => {
      setWorking(false);
      setSaid(trouble === null ? words.reportMade : `${trouble.sentence} ${trouble.remedy}`);
    });
  };
  const share = () => {
    if (key === null || piece === null || later === null) return;
    const number = summaries.findIndex((each) => each.id === later.id) + 1;
    setSaid(all.check.sharing);
    void handOverPicture(key, piece, lookAtKept(later), number, all).then((trouble) =>
      setSaid(trouble === null ? all.check.shared : `${trouble.sentence} ${trouble.remedy}`),
    );
  };
  const folder = () => {
    if (key !== null) void revealFolder(key).then(setSaid);
  };
  const none = current === null;
  const help = useHelpHint();
  useCommands(
    'record',
    withRuns(
      recordCommands(all),
      {
        'slide-left': () => setAt(Math.max(0, at - 0.02)),
        'slide-right': () => setAt(Math.min(1, at + 0.02)),
        'earlier-check': () => step(-1),
        'later-check': () => step(1),
        note: () => setSheet('note'),
        table: () => setSheet('table'),
        'open-check': open,
        report,
        share,
        folder,
      },
      {
        'slide-left': none,
        'slide-right': none,
        'earlier-check': none,
        'later-check': none,
        'open-check': none,
        report: none,
        share: none,
      },
    ),
  );
  const problem = listProblem ?? (current === null ? null : (problems.get(current) ?? null));
  const reading = current !== null && later === null && problem === null;
  // Nothing is drawn until it is known what there is: "no checks yet" must not flash by.
  if (piece === null || summariesOf !== key || !ready || reading) return null;
  const nameOf = (id: string) => {
    const summary = summaries.find((each) => each.id === id);
    const number = summaries.findIndex((each) => each.id === id) + 1;
    return `${words.checkNumber(number)} · ${shortDate(summary?.taken ?? summary?.kept ?? '')}`;
  };
  const second =
    said ??
    (earlier !== null && later !== null
      ? `${changesBetween(earlier.reading, later.reading, piece, all.check)} ${words.shaded(lengthSaid(piece.making.allowance, piece.units))}`
      : measured.length === 0
        ? all.check.leadNone(lengthSaid(Math.max(2, piece.cloth.headerPasses * piece.cloth.passHeight), piece.units))
        : words.shaded(lengthSaid(piece.making.allowance, piece.units)));
  return (
    <ScreenFrame
      className="record"
      footer={
        <Footer
          hints={
            none
              ? [{ keys: ['N'], words: words.keyNote }, help]
              : [
                  { keys: ['ArrowLeft', 'ArrowRight'], words: words.keySlide },
                  { keys: ['[', ']'], words: words.keyChecks },
                  { keys: ['N'], words: words.keyNote },
                ]
          }
          second={{ words: words.folder, onPress: folder }}
          main={{
            words: words.report,
            onPress: report,
            ...(working ? { working: words.reportWorking } : {}),
            ...(current === null ? { notYet: words.reportNeedsCheck } : {}),
          }}
        />
      }
    >
      <Timeline piece={piece} checks={summaries} chosen={current} onChoose={setChosen} />
      <div className="record-body">
        {later !== null && current !== null ? (
          <CompareSlide
            piece={piece}
            earlier={earlier}
            later={later}
            earlierName={earlierId === null ? '' : nameOf(earlierId)}
            laterName={nameOf(current)}
            at={at}
            onSlide={setAt}
          />
        ) : (
          <div className="record-empty">
            <p>{words.emptyPicture}</p>
          </div>
        )}
        <section className="record-words" aria-label={words.wordsLabel}>
          <div className="record-said">
            <Sentence>{problem === null ? recordSentence(earlier, later, piece, all) : problem.sentence}</Sentence>
            <p className="second" role={said === null ? undefined : 'status'}>
              {problem === null ? second : problem.remedy}
            </p>
            {inOrder.length > 0 && <RecordTrends piece={piece} records={inOrder} chosen={current} />}
          </div>
          <RecordActions
            check={current}
            onOpen={open}
            onNote={() => setSheet('note')}
            onTable={() => setSheet('table')}
            onShare={share}
            onSaid={setSaid}
          />
        </section>
      </div>
      {sheet === 'note' && <NoteSheet onClose={() => setSheet(null)} />}
      {sheet === 'table' && (
        <DrawingTable table={recordTable(inOrder, piece, nameOf, all)} onClose={() => setSheet(null)} />
      )}
    </ScreenFrame>
  );
}
