import { useState } from 'react';
import type { Settings } from '../../../core/contract/hostApi.ts';
import type { Loom } from '../../../core/model/piece.ts';
import { host } from '../../host/currentHost.ts';
import { fileBytes } from '../../host/fileBytes.ts';
import { QuietButton, SecondButton } from '../../parts/Actions.tsx';
import { chooseFile, photographTypes } from '../../parts/useFileDrop.ts';
import { useSettings } from '../../state/settingsStore.ts';
import { useWords } from '../../words/useWords.ts';
import { useHostImage } from '../check/useHostImage.ts';

type Kept = Settings['looms'][number];

/** A loom kept under its name: what was kept under it before is replaced, its photograph stays. */
export function keptAnew(looms: readonly Kept[], loom: Loom): Kept[] {
  const photo = looms.find((kept) => kept.loom.name === loom.name)?.photo ?? null;
  return [{ loom, photo }, ...looms.filter((kept) => kept.loom.name !== loom.name)].slice(0, 200);
}

interface KeptLoomProps {
  readonly kept: Kept;
  readonly onTake: () => void;
}

/** A loom kept for other pieces, with the photograph that shows which one it is. */
export function KeptLoom({ kept, onTake }: KeptLoomProps) {
  const words = useWords().piece;
  const { settings, change } = useSettings();
  const [trouble, setTrouble] = useState<string | null>(null);
  const { loom, photo } = kept;
  const image = useHostImage(photo === null ? null : { call: 'loomPhoto', params: { photo } });
  const photograph = () =>
    chooseFile(photographTypes, async (file) => {
      setTrouble(null);
      const bytes = await fileBytes(file);
      const answer = bytes.ok ? await host().call('keepLoomPhoto', {}, bytes.value) : bytes;
      if (!answer.ok) return setTrouble(`${answer.problem.sentence} ${answer.problem.remedy}`);
      const taken = answer.value.result.photo;
      const { looms } = useSettings.getState().settings;
      await change({ looms: looms.map((each) => (each.loom.name === loom.name ? { ...each, photo: taken } : each)) });
    });
  return (
    <li>
      {image.address !== null && <img className="loom-photo" src={image.address} alt={words.loomPhotoOf(loom.name)} />}
      {image.problem !== null && <p>{image.problem}</p>}
      <p className="kept-loom-actions">
        <SecondButton action={{ words: words.takeLoom(loom.name), onPress: onTake }} />
        <QuietButton onPress={photograph}>{photo === null ? words.loomPhoto : words.loomPhotoAgain}</QuietButton>
        <QuietButton onPress={() => void change({ looms: settings.looms.filter((other) => other !== kept) })}>
          {words.forgetLoom(loom.name)}
        </QuietButton>
      </p>
      {trouble !== null && <p role="alert">{trouble}</p>}
    </li>
  );
}
