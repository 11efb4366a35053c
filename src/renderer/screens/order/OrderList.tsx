import { useEffect, useRef } from 'react';
import { QuietButton } from '../../parts/Actions.tsx';
import { Sign } from '../../parts/Sign.tsx';
import { useBoxSize } from '../../parts/useBoxSize.ts';
import { type Work, wholeTurns } from '../../state/useWork.ts';
import { useWords } from '../../words/useWords.ts';
import { BlockRow } from './BlockRow.tsx';

interface OrderListProps {
  readonly work: Work;
  readonly chosen: number;
  readonly showWoven: boolean;
  readonly onChoose: (block: number) => void;
  readonly onShowWoven: (show: boolean) => void;
}

/** Blocks in weaving order with the first at the foot, as the cloth grows; what is woven folds into one line. */
export function OrderList({ work, chosen, showWoven, onChoose, onShowWoven }: OrderListProps) {
  const words = useWords().order;
  const list = useRef<HTMLOListElement>(null);
  const blocks = work.plan.blocks.length;
  const first = showWoven ? 0 : Math.min(work.block, chosen);
  const { height } = useBoxSize(list);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a newly chosen block is brought into sight, and stays there when the list grows lower.
  useEffect(() => {
    const row = list.current?.querySelector('.is-chosen');
    // Of one taller than the list its name and its first steps.
    row?.scrollIntoView({ block: row.clientHeight > height ? 'start' : 'nearest' });
  }, [chosen, first, height]);
  const after = wholeTurns(work.turns.filter((turn) => turn.block > chosen));
  return (
    <section className="order-side">
      <p className="order-head second">
        <span>{words.last}</span>
        <span>{words.after(Math.max(0, blocks - chosen - 1), words.turns(after))}</span>
      </p>
      <ol className="order-list" ref={list} aria-label={words.list} reversed>
        {Array.from({ length: blocks - first }, (_, index) => blocks - 1 - index).map((index) => (
          <BlockRow key={index} work={work} index={index} chosen={index === chosen} onChoose={() => onChoose(index)} />
        ))}
      </ol>
      {work.block > 0 && (
        <p className="order-woven">
          <Sign name="agrees" size={20} />
          <strong>{words.woven(Math.min(blocks, work.block))}</strong>
          <QuietButton onPress={() => onShowWoven(!showWoven)}>{showWoven ? words.fold : words.show}</QuietButton>
        </p>
      )}
    </section>
  );
}
