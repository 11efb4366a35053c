import type { Piece } from '../../../core/model/piece.ts';
import type { Landing } from '../../../core/replan/landings.ts';
import type { ReplanEffect as Effect } from '../../../core/replan/replanEffect.ts';
import { FiguresTable } from '../../parts/FiguresTable.tsx';
import { lengthSaid, numberSaid, yarnLengthSaid } from '../../words/figures.ts';
import { useWords } from '../../words/useWords.ts';

const LEAST_METRES = 0.5;
const LEAST_HOURS = 0.25;

interface ReplanEffectProps {
  readonly piece: Piece;
  readonly effect: Effect;
  /** Blocks still to come whose counts would change, of how many. */
  readonly blocks: { readonly anew: number; readonly toCome: number };
}

/** What planning the rest anew would change, before it is done: where everything lands, yarn, time. */
export function ReplanEffect({ piece, effect, blocks }: ReplanEffectProps) {
  const words = useWords().order.replan;
  const say = (value: number) => lengthSaid(value, piece.units, 'planned');
  const reach = ({ bottom, top }: Landing['now']) => words.reach(say(bottom), say(top));
  const nameOf = (id: string) => piece.shapes.find((shape) => shape.id === id)?.name ?? '';
  const yarns = effect.yarns.filter(({ planned, now }) => Math.abs(now - planned) >= LEAST_METRES);
  const hours = effect.hours.now - effect.hours.planned;
  return (
    <>
      <FiguresTable columns={words.columns}>
        {effect.landings.map((landing) => (
          <tr key={landing.shape}>
            <th scope="row">{nameOf(landing.shape)}</th>
            <td>{reach(landing.planned)}</td>
            <td>{reach(landing.unchanged)}</td>
            <td>{reach(landing.now)}</td>
          </tr>
        ))}
        <tr>
          <th scope="row">{words.wholeCloth}</th>
          <td>{say(effect.height.planned)}</td>
          <td>{say(effect.height.unchanged)}</td>
          <td>{say(effect.height.now)}</td>
        </tr>
      </FiguresTable>
      <p>
        {words.passes(effect.passes.planned, effect.passes.now)} {words.blocks(blocks.anew, blocks.toCome)}{' '}
        {yarns.map(({ yarn, planned, now }) => (
          <span key={yarn}>
            {words.yarn(
              piece.yarns[yarn]?.name ?? '',
              yarnLengthSaid(Math.abs(now - planned), piece.units),
              now > planned,
            )}{' '}
          </span>
        ))}
        {Math.abs(hours) >= LEAST_HOURS && words.hours(numberSaid(Math.abs(hours), 1), hours > 0)}
      </p>
    </>
  );
}
