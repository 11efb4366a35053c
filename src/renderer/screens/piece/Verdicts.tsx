import type { Piece } from '../../../core/model/piece.ts';
import { mm } from '../../../core/model/units.ts';
import type { Verdict } from '../../../core/model/verdict.ts';
import { centredFirstNotch, centringVerdict } from '../../../core/warp/centring.ts';
import { loomFit } from '../../../core/warp/loomFit.ts';
import { expectedPass } from '../../../core/warp/passHeight.ts';
import type { SettCheck } from '../../../core/warp/settCheck.ts';
import { strandsThatSuit } from '../../../core/warp/settSuggestion.ts';
import { SecondButton } from '../../parts/Actions.tsx';
import { Sign } from '../../parts/Sign.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { lengthSaid } from '../../words/figures.ts';
import { tell } from '../../words/telling.ts';
import { useWords } from '../../words/useWords.ts';
import { withEnds } from './LoomDrawing.tsx';

interface Finding {
  readonly verdict: Verdict;
  readonly fix: { readonly words: string; readonly apply: (() => void) | ((piece: Piece) => Piece) } | null;
}

interface VerdictsProps {
  readonly piece: Piece;
  readonly sett: SettCheck;
  readonly onYarn: (yarn: string) => void;
}

/** What doesn't agree yet: each with its reason, and one press that mends it where one can. What agrees is quiet. */
export function Verdicts({ piece, sett, onYarn }: VerdictsProps) {
  const words = useWords().piece;
  const change = usePiece((state) => state.change);
  const findings = useFindings(piece, sett, words, onYarn);
  if (findings.length === 0) return null;
  return (
    <ul className="verdicts" aria-label={words.verdicts}>
      {findings.map(({ verdict, fix }) => (
        <li key={verdict.sentence}>
          <Sign name="mend" size={20} />
          {verdict.sentence === sett.headline.sentence ? (
            // What the head of the screen has said is not said twice: here is only what to do about it.
            <p>{tell(verdict.remedy ?? '')}</p>
          ) : (
            <p>
              <strong>{tell(verdict.sentence)}</strong> {tell(verdict.why)} {tell(verdict.remedy ?? '')}
            </p>
          )}
          {fix && (
            <SecondButton
              action={{
                words: fix.words,
                onPress: () => {
                  const result = (fix.apply as (piece: Piece) => Piece | undefined)(piece);
                  if (result !== undefined) change(() => result);
                },
              }}
            />
          )}
        </li>
      ))}
    </ul>
  );
}

function useFindings(
  piece: Piece,
  sett: SettCheck,
  words: ReturnType<typeof useWords>['piece'],
  onYarn: (yarn: string) => void,
): Finding[] {
  const fit = loomFit(piece);
  const centring = centringVerdict(piece);
  const findings: Finding[] = [];
  if (fit.width.remedy !== null) {
    const ends = Math.min(fit.widestEnds, piece.warp.ends);
    findings.push({
      verdict: fit.width,
      fix: { words: words.fixes.ends(ends), apply: (now: Piece) => withEnds(now, ends) },
    });
  }
  if (fit.height.remedy !== null && fit.tallest > piece.cloth.passHeight) {
    const height = mm(Math.floor(fit.tallest));
    const say = words.fixes.height(lengthSaid(height, piece.units));
    findings.push({
      verdict: fit.height,
      fix: { words: say, apply: (now: Piece) => ({ ...now, cloth: { ...now.cloth, height } }) },
    });
  }
  if (centring.verdict === 'off-centre') {
    const notch = centredFirstNotch(piece.loom, piece.warp.ends);
    const apply = (now: Piece) => ({ ...now, warp: { ...now.warp, firstNotch: notch } });
    findings.push({ verdict: centring, fix: { words: words.fixes.centre(notch + 1), apply } });
  }
  // Of several yarns that are alike unsuited, the first speaks for all.
  const said = new Set<string>();
  for (const found of sett.yarns) {
    const yarn = piece.yarns.find((each) => each.id === found.yarn);
    if (!yarn) continue;
    for (const verdict of [found.room, found.cover]) {
      if (verdict.remedy === null || said.has(verdict.verdict)) continue;
      said.add(verdict.verdict);
      if (verdict.verdict === 'unknown') {
        findings.push({ verdict, fix: { words: words.fixes.yarn(yarn.name), apply: () => onYarn(yarn.id) } });
        continue;
      }
      const strands = strandsThatSuit(piece, yarn);
      const apply = (now: Piece) => ({
        ...now,
        yarns: now.yarns.map((each) => (each.id === yarn.id && strands !== null ? { ...each, strands } : each)),
      });
      const fix = strands !== null && strands !== yarn.strands ? { words: words.fixes.strands(strands), apply } : null;
      findings.push({ verdict, fix });
    }
    const expected = expectedPass(piece, yarn);
    if (yarn.id === piece.cloth.ground && found.pass.remedy !== null && expected !== null) {
      const passHeight = mm(Math.round(expected.passHeight * 100) / 100);
      const say = words.fixes.pass(lengthSaid(passHeight, piece.units, 'pass-height'));
      findings.push({
        verdict: found.pass,
        fix: { words: say, apply: (now: Piece) => ({ ...now, cloth: { ...now.cloth, passHeight } }) },
      });
    }
  }
  return findings;
}
