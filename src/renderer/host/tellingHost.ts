import type { HostApi } from '../../core/contract/hostApi.ts';
import { tell } from '../words/telling.ts';

/** The host with its problems said in the weaver's language, in one place for every screen. */
export const tellingHost = (host: HostApi): HostApi => ({
  ...host,
  async call(name, params, bytes) {
    const answer = await host.call(name, params, bytes);
    if (answer.ok) return answer;
    const { sentence, remedy } = answer.problem;
    return { ok: false, problem: { ...answer.problem, sentence: tell(sentence), remedy: tell(remedy) } };
  },
});
