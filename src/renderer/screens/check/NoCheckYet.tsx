import { useCommands, withRuns } from '../../keys/commandStore.ts';
import { Footer, type KeyHint, useHelpHint } from '../../parts/Footer.tsx';
import { ScreenFrame } from '../../parts/ScreenFrame.tsx';
import { useWords } from '../../words/useWords.ts';
import { bringInCommands, cameraCommand } from './checkCommands.ts';
import { type Job, useChecks } from './checkStore.ts';
import { EmptyCheck } from './EmptyCheck.tsx';
import { stageWords } from './stageWords.ts';

interface NoCheckYetProps {
  readonly over: boolean;
  readonly job: Job | null;
  readonly preview: Blob | null;
  readonly onCamera: () => void;
  readonly onChoose: () => void;
  readonly onWatch: () => void;
  readonly onPhotographs: () => void;
  /** Back to the newest check, when there is one and the new photograph could not be read. */
  readonly onLetGo?: () => void;
}

/** Nothing measured yet, or a photograph being read; Esc stops the reading. */
export function NoCheckYet({
  over,
  job,
  preview,
  onCamera,
  onChoose,
  onWatch,
  onPhotographs,
  onLetGo,
}: NoCheckYetProps) {
  const all = useWords();
  const words = all.check;
  const help = useHelpHint();
  const stop = () => useChecks.getState().stop();
  useCommands('no-check', [
    ...withRuns(cameraCommand(all), { camera: onCamera }),
    ...withRuns(bringInCommands(all), {
      'choose-photograph': onChoose,
      'watch-folder': onWatch,
      photographs: onPhotographs,
    }),
    ...(job === null ? [] : [{ id: 'stop', words: words.stop, keys: ['Escape'], run: stop }]),
    ...(onLetGo === undefined ? [] : [{ id: 'let-go', words: words.letItGo, keys: ['Delete'], run: onLetGo }]),
  ]);
  const hints: readonly KeyHint[] =
    job === null
      ? [
          { keys: ['Space'], words: words.keyCamera },
          { keys: ['O'], words: words.keyChoose },
          onLetGo === undefined ? help : { keys: ['Delete'], words: words.keyLetGo },
        ]
      : [{ keys: ['Escape'], words: words.keyStop }];
  return (
    <ScreenFrame
      className="check-screen"
      footer={
        <Footer
          hints={hints}
          {...(job === null ? { second: { words: words.wayChoose, sign: 'open' as const, onPress: onChoose } } : {})}
          main={{
            words: words.photograph,
            sign: 'photograph',
            onPress: onCamera,
            ...(job === null ? {} : { working: stageWords(job, words), onStop: stop }),
          }}
        />
      }
    >
      <EmptyCheck over={over} job={job} preview={preview} onCamera={onCamera} onChoose={onChoose} onWatch={onWatch} />
    </ScreenFrame>
  );
}
