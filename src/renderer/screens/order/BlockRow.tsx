import type { Block } from '../../../core/model/plan.ts';
import { Swatch, yarnLetter } from '../../parts/Swatch.tsx';
import type { Work } from '../../state/useWork.ts';
import { useTell } from '../../words/telling.ts';
import { useWords } from '../../words/useWords.ts';
import { Steps } from './Steps.tsx';

/** Ends a block ever touches, both included, counted from 1. */
export function blockSpan(block: Pick<Block, 'rows'>): readonly [number, number] {
  let from = Number.POSITIVE_INFINITY;
  let to = 0;
  for (const row of block.rows) {
    from = Math.min(from, row.from, row.to);
    to = Math.max(to, row.from, row.to);
  }
  return [from + 1, to + 1];
}

interface BlockRowProps {
  readonly work: Work;
  readonly index: number;
  readonly chosen: boolean;
  readonly onChoose: () => void;
}

/** One block of the list: number, yarn, name, ends, turns; the chosen one also tells its steps. */
export function BlockRow({ work, index, chosen, onChoose }: BlockRowProps) {
  const words = useWords().order;
  const tell = useTell();
  const block = work.plan.blocks[index]!;
  const yarn = work.piece.yarns[block.yarn];
  const [from, to] = blockSpan(block);
  const turns = words.turns(block.rows.length / 2);
  const joins = work.plan.joins.filter((join) => join.block === index).length;
  return (
    <li className={chosen ? 'block-row is-chosen' : index < work.block ? 'block-row is-woven' : 'block-row'}>
      <button
        type="button"
        onClick={onChoose}
        aria-current={index === work.block ? 'step' : undefined}
        aria-pressed={chosen}
      >
        <span className="block-order">{index + 1}</span>
        <Swatch colour={yarn?.colour ?? null} letter={yarnLetter(block.yarn)} />
        <span className={chosen ? 'block-name is-large' : 'block-name'}>
          {words.block(block.name)} {work.anew.has(index) && <span className="block-anew">{words.anew}</span>}
        </span>
        {!chosen && <span className="block-ends">{words.span(from, to)}</span>}
        <span className="block-turns">{turns}</span>
      </button>
      {chosen && (
        <div className="block-detail">
          <Steps work={work} index={index} />
          <p className="second">
            {words.start(block.start.side, block.start.over, block.start.end + 1)}{' '}
            {block.together.length > 0 && `${words.together(block.together.map((other) => other + 1))} `}
            {joins > 0 && `${words.tails(joins)} `}
            {block.remarks.map((remark) => tell(remark)).join(' ')}
          </p>
        </div>
      )}
    </li>
  );
}
