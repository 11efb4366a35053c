import { useEffect, useState } from 'react';
import './photographsSheet.css';
import type { CallResult } from '../../../core/contract/hostApi.ts';
import { host } from '../../host/currentHost.ts';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { useWords } from '../../words/useWords.ts';
import { useChecks } from './checkStore.ts';
import { useHostImage } from './useHostImage.ts';

type KeptPhoto = CallResult<'listPhotos'>[number];

function Row({ photo, onMeasure }: { readonly photo: KeptPhoto; readonly onMeasure: () => void }) {
  const words = useWords().check;
  const key = usePiece((state) => state.key);
  const image = useHostImage(
    key === null ? null : { call: 'photoImage', params: { key, hash: photo.hash, size: 'thumbnail' } },
  );
  return (
    <li>
      <button type="button" onClick={onMeasure}>
        {image.address === null ? <span className="photographs-blank" /> : <img src={image.address} alt="" />}
        <span className="row-words">
          {photo.name}
          <span className="second">
            {photo.checks === 0 ? words.photographUnmeasured : words.photographChecks(photo.checks)}
            {photo.rendered && ` · ${words.rendered}`}
          </span>
        </span>
      </button>
    </li>
  );
}

/** Every photograph in the piece, newest first; pressing one measures it again. */
export function PhotographsSheet({ onClose }: { readonly onClose: () => void }) {
  const words = useWords().check;
  const key = usePiece((state) => state.key);
  const [photos, setPhotos] = useState<readonly KeptPhoto[] | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    if (key === null) return;
    void host()
      .call('listPhotos', { key })
      .then((answer) => {
        if (answer.ok) setPhotos([...answer.value.result].reverse());
        else setTrouble(`${answer.problem.sentence} ${answer.problem.remedy}`);
      });
  }, [key]);
  return (
    <SheetDialog title={words.photographs} onClose={onClose}>
      <p>{words.photographsLead}</p>
      {trouble !== null && <p role="alert">{trouble}</p>}
      {photos?.length === 0 && <p className="second">{words.photographsNone}</p>}
      <ul className="sheet-rows photographs">
        {photos?.map((photo) => (
          <Row
            key={photo.hash}
            photo={photo}
            onMeasure={() => {
              onClose();
              void useChecks.getState().measureKept(photo.hash, photo.name);
            }}
          />
        ))}
      </ul>
    </SheetDialog>
  );
}
