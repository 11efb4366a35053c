import { Footer, useHelpHint } from '../../parts/Footer.tsx';
import { ScreenFrame } from '../../parts/ScreenFrame.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useWords } from '../../words/useWords.ts';

export function Screen() {
  const words = useWords().shell;
  const piece = usePiece((state) => state.piece);
  const help = useHelpHint();
  return (
    <ScreenFrame className="piece" footer={<Footer hints={[help]} />}>
      <Sentence>
        {piece?.name}: {words.screens.piece}
      </Sentence>
    </ScreenFrame>
  );
}
