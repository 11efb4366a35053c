import { useEffect, useState } from 'react';
import type { Answer, CallParams } from '../../../core/contract/hostApi.ts';
import type { Outcome } from '../../../core/model/outcome.ts';
import { host } from '../../host/currentHost.ts';
import { newJob } from '../../state/newJob.ts';

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

/** What picture it is; the name of the job is made here. */
type Picture<Name extends 'photoImage' | 'frontOnImage'> = Omit<CallParams<Name>, 'job'>;

export type Asked =
  | { readonly call: 'photoImage'; readonly params: Picture<'photoImage'> }
  | { readonly call: 'frontOnImage'; readonly params: Picture<'frontOnImage'> }
  | { readonly call: 'loomPhoto'; readonly params: CallParams<'loomPhoto'> };

function ask(question: Asked, job: string): Promise<Outcome<Answer<Asked['call']>>> {
  switch (question.call) {
    case 'photoImage':
      return host().call('photoImage', { job, ...question.params });
    case 'frontOnImage':
      return host().call('frontOnImage', { job, ...question.params });
    case 'loomPhoto':
      return host().call('loomPhoto', question.params);
  }
}

/**
 * A picture from the host as an object address. The one before stays on screen until the new one is there; one that is
 * no longer wanted, or whose screen is left, is stopped, so that nothing waits behind it.
 */
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
    const job = newJob('picture');
    let answered = false;
    const answering = ask(question, job);
    void answering.then((answer) => {
      answered = true;
      if (!wanted) return;
      if (!answer.ok) return setImage({ ...empty, problem: `${answer.problem.sentence} ${answer.problem.remedy}` });
      const { bytes, result } = answer.value;
      if (bytes === null) return setImage(empty);
      const address = URL.createObjectURL(new Blob([bytes.slice()], { type: result.type }));
      setImage({ address, width: result.width, height: result.height, problem: null, asked: question });
    });
    return () => {
      wanted = false;
      if (!answered) void host().call('cancelJob', { job });
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
