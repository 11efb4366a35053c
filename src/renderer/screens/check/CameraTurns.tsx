import { useMemo } from 'react';
import type { Piece } from '../../../core/model/piece.ts';
import { looksSameMirrored } from '../../../core/report/looksSameMirrored.ts';
import { QuietButton, SecondButton } from '../../parts/Actions.tsx';
import { usePlanned } from '../../state/planning/planned.ts';
import { useSettings } from '../../state/settingsStore.ts';
import { useWords } from '../../words/useWords.ts';

interface CameraTurnsProps {
  readonly piece: Piece;
  /** The camera's name; null when nothing names it: all such pictures count as by one camera. */
  readonly camera: string | null;
  /** The picture itself makes one doubt it: asked whatever the piece looks like, and whatever was said before. */
  readonly doubted?: boolean;
  /** The answer is kept; whoever shows a picture by this camera can look at it anew. */
  readonly onAnswered?: (mirrors: boolean) => void;
}

/**
 * Whether this camera turns its pictures over, as some do with a picture of oneself. Where the piece is the same left and
 * right the photograph can't tell, so the weaver is asked, once for each camera.
 */
export function CameraTurns({ piece, camera, doubted = false, onAnswered }: CameraTurnsProps) {
  const words = useWords().check.cameraTurns;
  const planned = usePlanned();
  const { settings, change } = useSettings();
  const same = useMemo(() => planned !== null && looksSameMirrored(piece, planned.plan.chart), [piece, planned]);
  const known = settings.cameras.find(({ name }) => name === camera);
  // An answer once given is always shown: it can be taken back on whatever picture it is found to be wrong.
  if (!(same || doubted || known !== undefined)) return null;
  const say = async (mirrors: boolean) => {
    const others = settings.cameras.filter(({ name }) => name !== camera);
    await change({ cameras: [{ name: camera, mirrors }, ...others].slice(0, 200) });
    onAnswered?.(mirrors);
  };
  if (known !== undefined && !doubted) {
    return (
      <p className="second">
        {known.mirrors ? words.doesTurn(camera) : words.doesNotTurn(camera)}{' '}
        <QuietButton onPress={() => void say(!known.mirrors)}>{words.change}</QuietButton>
      </p>
    );
  }
  return (
    <section className="camera-turns" aria-label={words.label}>
      <p>
        <strong>{words.ask}</strong> {!doubted && `${words.whySame} `}
        {words.tryIt}
        {camera === null && !doubted && ` ${words.unnamed}`}
      </p>
      <p className="shape-actions">
        <SecondButton action={{ words: words.no, onPress: () => void say(false) }} />
        <SecondButton action={{ words: words.yes, onPress: () => void say(true) }} />
      </p>
    </section>
  );
}
