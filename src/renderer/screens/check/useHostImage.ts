import { useEffect, useState } from 'react';
import type { CallParams } from '../../../core/contract/hostApi.ts';
import { host } from '../../host/currentHost.ts';

export interface HostImage {
  readonly address: string | null;
  readonly width: number;
  readonly height: number;
  /** Why it can't be shown. */
  readonly problem: string | null;
  /** What was asked for when this picture came: while the next one is on its way, it is still the one before. */
  readonly asked: Asked | null;
}

const empty: HostImage = { address: null, width: 0, height: 0, problem: null, asked: null };

export type Asked =
  | { readonly call: 'photoImage'; readonly params: CallParams<'photoImage'> }
  | { readonly call: 'frontOnImage'; readonly params: CallParams<'frontOnImage'> };

/** A picture from the host as an object address. The one before stays on screen until the new one is there. */
export function useHostImage(asked: Asked | null): HostImage {
  const [image, setImage] = useState<HostImage>(empty);
  const name = asked === null ? '' : JSON.stringify(asked);
  useEffect(() => {
    if (name === '') {
      setImage(empty);
      return;
    }
    let wanted = true;
    const question = JSON.parse(name) as Asked;
    const { call, params } = question;
    const answering =
      call === 'photoImage'
        ? host().call('photoImage', params as CallParams<'photoImage'>)
        : host().call('frontOnImage', params as CallParams<'frontOnImage'>);
    void answering.then((answer) => {
      if (!wanted) return;
      if (!answer.ok) return setImage({ ...empty, problem: `${answer.problem.sentence} ${answer.problem.remedy}` });
      const { bytes, result } = answer.value;
      if (bytes === null) return setImage(empty);
      const address = URL.createObjectURL(new Blob([bytes.slice()], { type: result.type }));
      setImage({ address, width: result.width, height: result.height, problem: null, asked: question });
    });
    return () => {
      wanted = false;
    };
  }, [name]);
  // Each address is given back when the next one takes its place.
  useEffect(() => {
    const { address } = image;
    return () => {
      if (address !== null) URL.revokeObjectURL(address);
    };
  }, [image]);
  return image;
}
