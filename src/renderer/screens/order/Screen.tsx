import { useEffect, useState } from 'react';
import './order.css';
import { useCommands, withRuns } from '../../keys/commandStore.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { DrawingTable, type TableRows } from '../../parts/DrawingTable.tsx';
import { Footer } from '../../parts/Footer.tsx';
import { ScreenFrame } from '../../parts/ScreenFrame.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { yarnLetter } from '../../parts/Swatch.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { makeSheet } from '../../state/sheets.ts';
import { useShell } from '../../state/shellStore.ts';
import { countTurns, useWork, type Work } from '../../state/useWork.ts';
import { useWords } from '../../words/useWords.ts';
import { Bench } from '../bench/Bench.tsx';
import { blockSpan } from './BlockRow.tsx';
import { ClothPicture } from './ClothPicture.tsx';
import { OrderList } from './OrderList.tsx';
import { orderCommands } from './orderCommands.ts';
import { ReplanSheet } from './ReplanSheet.tsx';
import { ShownByCheck } from './ShownByCheck.tsx';
import { SlitsAndMarks } from './SlitsAndMarks.tsx';
import { useGrowing } from './useGrowing.ts';

/** The blocks in the order they are woven, drawn on the cloth as it grows, and the way to the bench. */
export function Screen() {
  const words = useWords().order;
  const work = useWork();
  const { bare, setBare } = useShell();
  useEffect(() => () => setBare(false), [setBare]);
  const waiting = useWords().piece.workingOut;
  if (work === null) {
    return (
      <ScreenFrame className="order" footer={<Footer hints={[]} />}>
        <Sentence>{waiting}</Sentence>
      </ScreenFrame>
    );
  }
  if (work.plan.blocks.length === 0) {
    return (
      <ScreenFrame className="order" footer={<Footer hints={[]} />}>
        <Sentence>{words.nothing}</Sentence>
        <p>{words.nothingSecond}</p>
      </ScreenFrame>
    );
  }
  return bare ? <Bench work={work} /> : <OrderOfWork work={work} />;
}

function OrderOfWork({ work }: { readonly work: Work }) {
  const all = useWords();
  const words = all.order;
  const { key, piece } = usePiece();
  const { setBare, goTo, say } = useShell.getState();
  const [begin] = useState(() => {
    const { opening } = useShell.getState();
    return opening !== null && 'replan' in opening ? opening : null;
  });
  const last = work.plan.blocks.length - 1;
  const [picked, setPicked] = useState<number | null>(null);
  const [showWoven, setShowWoven] = useState(false);
  const [sheet, setSheet] = useState<'slits' | 'marks' | 'table' | 'replan' | null>(begin === null ? null : 'replan');
  const total = work.turns.reduce((sum, turn) => sum + turn.passes, 0);
  const growing = useGrowing(total);
  const chosen = Math.min(last, picked ?? work.block);
  const finished = work.block > last;
  const choose = (next: number) => {
    const index = Math.max(0, Math.min(last, next));
    setPicked(index);
    if (index < work.block) setShowWoven(true);
    say(`${index + 1}. ${words.block(work.plan.blocks[index]!.name)}`);
  };
  const weave = () => setBare(true);
  const print = () => key !== null && void makeSheet(key, 'order', null);
  useCommands(
    'order',
    withRuns(orderCommands(all), {
      weave,
      'block-next': () => choose(chosen + 1),
      'block-before': () => choose(chosen - 1),
      slits: () => setSheet('slits'),
      marks: () => setSheet('marks'),
      replan: () => setSheet('replan'),
      grow: growing.toggle,
      'order-table': () => setSheet('table'),
      'print-order': print,
    }),
  );
  const sentence = finished
    ? words.done
    : work.turn === 0
      ? words.begin(words.block(work.plan.blocks[0]!.name))
      : words.next(work.block + 1, words.block(work.plan.blocks[work.block]!.name));
  return (
    <ScreenFrame
      className="order"
      footer={
        <Footer
          hints={[
            { keys: ['ArrowUp', 'ArrowDown'], words: words.keys.move },
            { keys: ['S'], words: words.keys.slits },
            { keys: ['R'], words: words.keys.replan },
            { keys: ['M'], words: words.keys.marks },
          ]}
          second={{ words: words.print, sign: 'print', onPress: print }}
          main={
            finished
              ? { words: words.finish, onPress: () => goTo('record') }
              : { words: words.weave(work.block + 1), onPress: weave }
          }
        />
      }
    >
      <div className="order-picture">
        <ClothPicture work={work} passesShown={growing.shown ?? work.passesDone} chosen={chosen} onChoose={choose} />
        <p>
          <QuietButton onPress={growing.toggle}>{growing.shown === null ? words.grow : words.stopGrowing}</QuietButton>
        </p>
      </div>
      <div className="order-words">
        <Sentence>{sentence}</Sentence>
        {work.planChanged ? (
          <p role="status" className="order-changed">
            <strong>{words.changedPlan}</strong> {words.changedPlanSecond}{' '}
            <QuietButton onPress={() => countTurns(work, work.turn)}>{words.matches}</QuietButton>{' '}
            <QuietButton onPress={() => countTurns(work, 0)}>{words.startAgain}</QuietButton>
          </p>
        ) : (
          <ShownByCheck work={work} />
        )}
        <OrderList work={work} chosen={chosen} showWoven={showWoven} onChoose={choose} onShowWoven={setShowWoven} />
      </div>
      {(sheet === 'slits' || sheet === 'marks') && (
        <SlitsAndMarks work={work} which={sheet} onClose={() => setSheet(null)} />
      )}
      {sheet === 'replan' && <ReplanSheet work={work} begin={begin?.replan ?? null} onClose={() => setSheet(null)} />}
      {sheet === 'table' && piece && <DrawingTable table={tableOf(work, words)} onClose={() => setSheet(null)} />}
    </ScreenFrame>
  );
}

function tableOf(work: Work, words: ReturnType<typeof useWords>['order']): TableRows {
  return {
    name: words.list,
    columns: words.tableColumns,
    rows: work.plan.blocks.map((block, index) => [
      String(index + 1),
      words.block(block.name),
      `${yarnLetter(block.yarn)} ${work.piece.yarns[block.yarn]?.name ?? ''}`,
      words.span(...blockSpan(block)),
      words.turns(block.rows.length / 2),
      index < work.block ? words.states.woven : index === work.block ? words.states.now : words.states.toCome,
    ]),
  };
}
