import { useCallback, useEffect, useState } from 'react';
import './checkScreen.css';
import { chooseFile, isPhotograph, photographTypes, useFileDrop } from '../../parts/useFileDrop.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useShell } from '../../state/shellStore.ts';
import { useWaitingPhoto } from '../../state/waitingPhoto.ts';
import { useWords } from '../../words/useWords.ts';
import { Camera } from './Camera.tsx';
import { CannotMeasure } from './CannotMeasure.tsx';
import { useChecks } from './checkStore.ts';
import { MarkPhotograph } from './MarkPhotograph.tsx';
import { MeasuredCheck } from './MeasuredCheck.tsx';
import { NoCheckYet } from './NoCheckYet.tsx';
import { PhotographsSheet } from './PhotographsSheet.tsx';
import { useWatchedFolder } from './useWatchedFolder.ts';
import { WatchFolderSheet } from './WatchFolderSheet.tsx';

/** Loom check: a photograph comes in, millimetres come out. */
export function Screen() {
  const words = useWords().check;
  const { key, piece } = usePiece();
  const { look, job, problem, ready, summaries, summariesOf, load, measureFile } = useChecks();
  const [way, setWay] = useState<'look' | 'camera' | 'points'>('look');
  const [open, setSheet] = useState<'watch' | 'photographs' | null>(null);
  const [preview, setPreview] = useState<Blob | null>(null);
  const take = useCallback(
    (photo: Blob, name: string, camera: string | null = null) => {
      setWay('look');
      setPreview(photo);
      useShell.getState().say(words.sentenceReading);
      void measureFile(photo, name, camera);
    },
    [measureFile, words],
  );
  useEffect(() => {
    if (key !== null) void load();
  }, [key, load]);
  useEffect(() => {
    const waiting = useWaitingPhoto.getState().take();
    if (waiting !== null) take(waiting, waiting.name);
  }, [take]);
  useWatchedFolder(take);
  const over = useFileDrop((file) => {
    if (isPhotograph(file.name) || file.type.startsWith('image/')) take(file, file.name);
    else
      useChecks.setState({
        problem: { tag: 'not-a-photograph', sentence: words.notAPhotograph, remedy: words.notAPhotographDo },
      });
  });
  const choose = () => chooseFile(photographTypes, (file) => take(file, file.name));
  // Nothing is drawn until it is known whether there is a check: "no checks yet" must not flash by.
  if (piece === null || summariesOf !== key || (look === null && job === null && !ready)) return null;
  if (way === 'camera' && job === null) {
    const refused = look === null ? problem !== null : look.reading.status !== 'measured';
    return (
      <Camera
        piece={piece}
        afterRefusal={refused}
        onTaken={(photo, camera) => take(photo, words.cameraName, camera)}
        onLeave={() => setWay('look')}
      />
    );
  }
  if (way === 'points' && look !== null && job === null) {
    return (
      <MarkPhotograph
        look={look}
        piece={piece}
        start={look.marks}
        onLeave={() => setWay('look')}
        onMeasure={(marks) => {
          setWay('look');
          void useChecks.getState().measureWithMarks(marks);
        }}
      />
    );
  }
  const again = () => setWay('camera');
  const watch = () => setSheet('watch');
  const photographs = () => setSheet('photographs');
  const close = () => setSheet(null);
  const sheet =
    open === 'watch' ? (
      <WatchFolderSheet onClose={close} />
    ) : (
      open === 'photographs' && <PhotographsSheet onClose={close} />
    );
  if (job !== null || look === null) {
    return (
      <>
        <NoCheckYet
          over={over}
          job={job}
          preview={preview}
          onCamera={again}
          onChoose={choose}
          onWatch={watch}
          onPhotographs={photographs}
          {...(problem !== null && summaries.length > 0 ? { onLetGo: useChecks.getState().letGo } : {})}
        />
        {sheet}
      </>
    );
  }
  if (look.reading.status !== 'measured') {
    return (
      <CannotMeasure
        look={look}
        piece={piece}
        preview={look.kept === null ? preview : null}
        onAgain={again}
        onFourPoints={() => setWay('points')}
      />
    );
  }
  return (
    <>
      <MeasuredCheck
        key={`${look.hash} ${look.draft}`}
        look={look}
        piece={piece}
        onAgain={again}
        onChoose={choose}
        onWatch={watch}
        onPhotographs={photographs}
        onFourPoints={() => setWay('points')}
      />
      {sheet}
    </>
  );
}
