import { Swatch, yarnLetter } from '../../parts/Swatch.tsx';
import type { Work } from '../../state/useWork.ts';
import { useWords } from '../../words/useWords.ts';
import type { BenchMoment } from './benchMoment.ts';

interface RoundProps {
  readonly work: Work;
  readonly round: NonNullable<BenchMoment['round']>;
}

/** Wefts that rise together: one under another in weaving order, with the one that comes now marked. */
export function Round({ work, round }: RoundProps) {
  const all = useWords();
  const words = all.bench;
  return (
    <section className="bench-round">
      <h2>{words.together}</h2>
      <ol>
        {round.parts.map((part, index) => {
          const block = work.plan.blocks[part.block]!;
          const state = index === round.now ? 'is-now' : index < round.now ? 'is-done' : 'is-to-come';
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a part has no other name than its place in the round.
            <li key={index} className={state} aria-current={index === round.now ? 'step' : undefined}>
              <Swatch colour={work.piece.yarns[block.yarn]?.colour ?? null} letter={yarnLetter(block.yarn)} />
              <span>{words.part(all.order.block(block.name), part.left + 1, part.right + 1)}</span>
              <span className="bench-round-size">{words.partSize(part.passes)}</span>
            </li>
          );
        })}
      </ol>
    </section>
  );
}
