import { useEffect, useMemo, useState } from 'react';
import { compareReading } from '../../../core/compare/compareReading.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { plannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import { useCommands, withRuns } from '../../keys/commandStore.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { DrawingTable } from '../../parts/DrawingTable.tsx';
import { Footer } from '../../parts/Footer.tsx';
import { ScreenFrame } from '../../parts/ScreenFrame.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useShell } from '../../state/shellStore.ts';
import { dateAndTime } from '../../words/dates.ts';
import { tell } from '../../words/telling.ts';
import { useWords } from '../../words/useWords.ts';
import { AgreeingRows } from './AgreeingRows.tsx';
import { agreeingRows } from './agreeing.ts';
import { CameraTurns } from './CameraTurns.tsx';
import { CheckStage } from './CheckStage.tsx';
import {
  againCommand,
  bringInCommands,
  flagCommands,
  keepCommand,
  layerCommands,
  markPointsCommand,
  measuredCommands,
} from './checkCommands.ts';
import { checkSentence } from './checkSentence.ts';
import { type Look, useChecks } from './checkStore.ts';
import { FlagList } from './FlagList.tsx';
import { ForecastLines } from './ForecastLines.tsx';
import { handOverPicture } from './handOverPicture.ts';
import { type LayerName, usualLayers } from './layers.ts';
import { References } from './References.tsx';
import { readingTable } from './readingTable.ts';
import { SinceLast } from './SinceLast.tsx';

interface MeasuredCheckProps {
  readonly look: Look;
  readonly piece: Piece;
  readonly onAgain: () => void;
  readonly onChoose: () => void;
  readonly onWatch: () => void;
  readonly onPhotographs: () => void;
  readonly onFourPoints: () => void;
}

/** A measured photograph: the picture with its strips, the sentence, the flags, what agrees. */
export function MeasuredCheck(props: MeasuredCheckProps) {
  const { look, piece, onAgain, onChoose, onWatch, onPhotographs, onFourPoints } = props;
  const all = useWords();
  const words = all.check;
  const key = usePiece((state) => state.key);
  const [shared, setShared] = useState<string | null>(null);
  const summaries = useChecks((state) => state.summaries);
  const problem = useChecks((state) => state.problem);
  const [layers, setLayers] = useState(usualLayers);
  const [asTaken, setAsTaken] = useState(false);
  const [fell, setFell] = useState(look.reading.flags[0]?.kind === 'tilt');
  const [table, setTable] = useState(false);
  const { reading, kept } = look;
  const edges = useMemo(() => plannedSelvedges(piece, reading.selvedge), [piece, reading]);
  const comparison = useMemo(() => compareReading(reading, piece), [reading, piece]);
  const dismissed = useMemo(() => kept?.dismissed.map((each) => each.flag) ?? [], [kept]);
  const sentence = checkSentence(reading, comparison, dismissed, piece.making.allowance, piece.units, words);
  const rows = agreeingRows(reading, comparison, piece, words);
  const number = kept === null ? summaries.length + 1 : summaries.findIndex((each) => each.id === kept.id) + 1;
  const keep = () => void useChecks.getState().keep('');
  const share = () => {
    if (key === null) return;
    setShared(words.sharing);
    void handOverPicture(key, piece, look, number, all).then((trouble) =>
      setShared(trouble === null ? words.shared : `${trouble.sentence} ${trouble.remedy}`),
    );
  };
  const toggle = (layer: LayerName) => setLayers((before) => ({ ...before, [layer]: !before[layer] }));
  const flags = reading.flags;
  useEffect(() => useShell.getState().say(sentence), [sentence]);
  useCommands('measured-check', [
    ...layerCommands(all).map((command) => ({ ...command, run: () => toggle(command.layer) })),
    ...flagCommands(all, flags.length).map((command, index) => ({
      ...command,
      run: () => useChecks.getState().chooseFlag(index),
    })),
    ...withRuns(markPointsCommand(all, ['M']), { 'four-points': onFourPoints }),
    ...withRuns(measuredCommands(all), {
      'fell-strip': () => setFell(!fell),
      'as-taken': () => setAsTaken(!asTaken),
      table: () => setTable(true),
      share,
    }),
    ...withRuns(bringInCommands(all), {
      'choose-photograph': onChoose,
      'watch-folder': onWatch,
      photographs: onPhotographs,
    }),
    ...withRuns(againCommand(all), { camera: onAgain }),
    ...(look.draft === null ? [] : withRuns(keepCommand(all), { keep })),
  ]);
  const seen = reading.ends.filter((end) => end.seen).length;
  const aside =
    kept === null
      ? words.notKeptYet(seen, reading.ends.length)
      : words.checkNumber(number, dateAndTime(kept.taken ?? kept.kept));
  const pass = reading.pass;
  const replan = pass === null ? undefined : () => useShell.getState().goTo('order', { replan: pass.value });
  return (
    <ScreenFrame
      className="check-screen"
      footer={
        <Footer
          // The only flag is open already; what brings another photograph in may lie under the fold.
          hints={[
            { keys: ['P'], words: words.keyPlan },
            { keys: ['D'], words: words.keyDifference },
            ...(flags.length === 0
              ? [{ keys: ['T'], words: words.keyTable }]
              : flags.length === 1
                ? [{ keys: ['O'], words: words.keyChoose }]
                : [{ keys: [`1–${Math.min(9, flags.length)}`], words: words.keyFlag }]),
          ]}
          aside={aside}
          {...(kept === null
            ? { second: { words: words.again, sign: 'photograph' as const, onPress: onAgain } }
            : replan === undefined
              ? {}
              : { second: { words: words.replan, onPress: replan } })}
          main={
            kept === null
              ? { words: words.keep, sign: 'agrees', onPress: keep }
              : { words: words.again, sign: 'photograph', onPress: onAgain }
          }
        />
      }
    >
      <CheckStage
        look={look}
        piece={piece}
        edges={edges}
        comparison={comparison}
        layers={layers}
        onToggle={toggle}
        asTaken={asTaken}
        onAsTaken={setAsTaken}
        fell={fell}
        onFell={setFell}
      />
      <section className="check-words" aria-label={words.wordsLabel}>
        <div className="check-said">
          <Sentence>{sentence}</Sentence>
          <References reference={reading.reference} />
          {problem !== null && (
            <p role="alert">
              {problem.sentence} {problem.remedy}
            </p>
          )}
          <FlagList look={look} piece={piece} edges={edges} />
          {reading.reasons.map((reason) => (
            <p key={reason.message.mm} className="second">
              {tell(reason.message[piece.units])} {tell(reason.remedy)}
            </p>
          ))}
          {!look.rendered && (
            <CameraTurns
              piece={piece}
              camera={look.camera}
              onAnswered={(mirrors) => void useChecks.getState().measureAgain(mirrors)}
            />
          )}
          <ForecastLines forecasts={comparison.forecasts} units={piece.units} />
          <SinceLast look={look} piece={piece} />
          <AgreeingRows rows={rows} />
          {shared !== null && (
            <p className="second" role="status">
              {shared}
            </p>
          )}
        </div>
        <div className="check-further">
          <QuietButton onPress={onChoose}>{words.wayChoose}</QuietButton>
          <QuietButton onPress={onWatch}>{words.watchFolder}</QuietButton>
          <QuietButton onPress={() => setTable(true)} label={words.table}>
            {words.tableShort}
          </QuietButton>
          <QuietButton onPress={share}>{words.share}</QuietButton>
          <QuietButton onPress={onPhotographs}>{words.photographs}</QuietButton>
        </div>
      </section>
      {table && (
        <DrawingTable table={readingTable(reading, edges, piece.units, words)} onClose={() => setTable(false)} />
      )}
    </ScreenFrame>
  );
}
