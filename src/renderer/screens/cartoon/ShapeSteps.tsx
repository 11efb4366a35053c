import type { Block, TurnStep } from '../../../core/model/plan.ts';
import type { Plan } from '../../../core/plan/planPiece.ts';
import { useWords } from '../../words/useWords.ts';

const MOST_BLOCKS = 6;

/** The turns of every block of a shape, edge by edge, as counts a hand can repeat. */
export function ShapeSteps({ plan, area }: { readonly plan: Plan; readonly area: number }) {
  const words = useWords().cartoon;
  const blocks = plan.blocks.filter((block) => block.area === area);
  return (
    <div className="shape-steps">
      {blocks.slice(0, MOST_BLOCKS).map((block) => (
        <BlockSteps key={block.order} block={block} />
      ))}
      {blocks.length > MOST_BLOCKS && (
        <p>{words.turns(blocks.slice(MOST_BLOCKS).reduce((sum, block) => sum + block.rows.length / 2, 0))}</p>
      )}
    </div>
  );
}

function BlockSteps({ block }: { readonly block: Block }) {
  const all = useWords();
  const words = all.cartoon;
  const same = sameSteps(block.left, block.right);
  const edges = same
    ? [{ label: words.bothEdges, steps: block.left }]
    : [
        { label: words.leftEdge, steps: block.left },
        { label: words.rightEdge, steps: block.right },
      ];
  return (
    <>
      <h2 className="is-block">{all.order.block(block.name)}</h2>
      <dl>
        {edges.map(({ label, steps }) => (
          <div key={label} className="edge-steps">
            <dt>{label}</dt>
            <dd>
              {runsOfMoves(steps).map((run, index, runs) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: runs have no other name and never move.
                <span key={index}>
                  {run.ends === 0
                    ? words.stands(run.counts[0]!)
                    : words.after(run.ends > 0 ? words.out(run.ends) : words.in(-run.ends))}
                  {run.ends !== 0 && <strong>{run.counts.join(', ')}</strong>}
                  {index === runs.length - 1 ? '.' : '; '}
                </span>
              ))}
            </dd>
          </div>
        ))}
      </dl>
    </>
  );
}

const sameSteps = (one: readonly TurnStep[], other: readonly TurnStep[]) =>
  one.length === other.length &&
  one.every((step, index) => step.turns === other[index]!.turns && step.ends === other[index]!.ends);

/** Neighbouring steps that move by the same number of ends, told together. */
function runsOfMoves(steps: readonly TurnStep[]): { ends: number; counts: string[] }[] {
  const runs: { ends: number; counts: string[] }[] = [];
  for (const step of steps) {
    // A half turn that moves nothing is the tail or the finish: the block's own words tell it.
    if (step.ends === 0 && step.turns < 1) continue;
    const count = step.turns === 0.5 ? '½' : String(step.turns).replace('.5', ' ½');
    const last = runs.at(-1);
    if (last && last.ends === step.ends) last.counts.push(count);
    else runs.push({ ends: step.ends, counts: [count] });
  }
  return runs;
}
