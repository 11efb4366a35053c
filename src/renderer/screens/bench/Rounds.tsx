import type { Round } from '../../../core/report/benchSteps.ts';
import { Swatch, yarnLetter } from '../../parts/Swatch.tsx';
import type { Work } from '../../state/useWork.ts';
import { useWords } from '../../words/useWords.ts';
import type { BenchMoment } from './benchMoment.ts';

interface RoundsProps {
  readonly work: Work;
  readonly together: NonNullable<BenchMoment['together']>;
  readonly times: number;
}

/** Rounds in sight at once: a repeat may be of more than there is room for. */
const MOST_SHOWN = 4;

/**
 * Wefts that rise together: one under another in weaving order, with the one that comes now marked. Where several rounds
 * repeat, the others of the repeat stand above and below in a line each, by the ends each yarn goes over.
 */
export function Rounds({ work, together, times }: RoundsProps) {
  const words = useWords().bench;
  const { rounds, round, part } = together;
  const swatch = (block: number) => {
    const { yarn } = work.plan.blocks[block]!;
    return <Swatch colour={work.piece.yarns[yarn]?.colour ?? null} letter={yarnLetter(yarn)} />;
  };
  const now = <RoundNow work={work} parts={rounds[round]!} now={part} swatch={swatch} />;
  if (rounds.length === 1) {
    return (
      <section className="bench-round">
        <h2>{words.together}</h2>
        {now}
      </section>
    );
  }
  // The round just woven stays in sight, then those to come.
  const first = Math.max(0, Math.min(round - 1, rounds.length - MOST_SHOWN));
  const shown = rounds.slice(first, first + MOST_SHOWN);
  return (
    <section className="bench-round">
      <h2>{words.repeated(rounds.length, times)}</h2>
      <ol className="bench-repeat">
        {shown.map((each, index) => {
          const at = first + index;
          const state = at === round ? 'is-open' : at < round ? 'is-done' : 'is-to-come';
          return (
            <li key={at} className={state} aria-current={at === round ? 'step' : undefined}>
              <span className="bench-round-number">{at + 1}</span>
              {at === round ? now : <RoundInALine round={each} swatch={swatch} />}
            </li>
          );
        })}
      </ol>
    </section>
  );
}

interface RoundNowProps {
  readonly work: Work;
  readonly parts: Round;
  readonly now: number;
  readonly swatch: (block: number) => React.ReactNode;
}

function RoundNow({ work, parts, now, swatch }: RoundNowProps) {
  const all = useWords();
  const words = all.bench;
  return (
    <ol className="bench-parts">
      {parts.map((part, index) => {
        const state = index === now ? 'is-now' : index < now ? 'is-done' : 'is-to-come';
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a part has no other name than its place in the round.
          <li key={index} className={state} aria-current={index === now ? 'step' : undefined}>
            {swatch(part.block)}
            <span>
              {words.part(all.order.block(work.plan.blocks[part.block]!.name), part.left + 1, part.right + 1)}
            </span>
            <span className="bench-round-size">{words.partSize(part.passes)}</span>
          </li>
        );
      })}
    </ol>
  );
}

/** What lies on the row in such a round, from the left: each weft once. */
function RoundInALine({ round, swatch }: { readonly round: Round; readonly swatch: RoundNowProps['swatch'] }) {
  const words = useWords().bench;
  const spans = [...new Map(round.map((part) => [`${part.block} ${part.left} ${part.right}`, part])).values()];
  return (
    <span className="bench-round-line">
      {spans
        .sort((one, other) => one.left - other.left)
        .map(({ block, left, right }) => (
          <span key={`${block} ${left} ${right}`}>
            {swatch(block)}
            {words.span(left + 1, right + 1)}
          </span>
        ))}
    </span>
  );
}
