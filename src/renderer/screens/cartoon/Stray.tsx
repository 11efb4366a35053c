import type { Piece } from '../../../core/model/piece.ts';
import type { EdgeError } from '../../../core/model/plan.ts';
import { useChartedStore } from '../../state/planning/charted.ts';
import { lengthSaid } from '../../words/figures.ts';
import { useWords } from '../../words/useWords.ts';

/** What is less is not told, mm. */
const SEEN = 0.05;

/** How far the stepped edge of a shape strays from its line: also while it is dragged. */
export function Stray({ piece, shape }: { readonly piece: Piece; readonly shape: string }) {
  const words = useWords().cartoon;
  const edges = useChartedStore((state) => state.errors?.edges ?? null);
  const worst = edges
    ?.filter((edge) => edge.shape === shape)
    .reduce<EdgeError | null>(
      (known, edge) => (known === null || edge.largestMm > known.largestMm ? edge : known),
      null,
    );
  if (!worst) return null;
  if (worst.largestMm < SEEN) return <p className="shape-stray second">{words.noStray}</p>;
  return (
    <p className="shape-stray">
      <span className="shape-figure">{lengthSaid(worst.largestMm, piece.units, 'edge')}</span>
      <span className="second">
        {words.strays}, {words.straysAt(lengthSaid(worst.largestAtMm, piece.units, 'planned'))}
      </span>
    </p>
  );
}
