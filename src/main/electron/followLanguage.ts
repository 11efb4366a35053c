import type { Settings } from '../../core/contract/hostApi.ts';
import { settingsSchema } from '../../core/contract/hostApi.ts';
import type { HostService } from '../service/service.ts';

/** The service, which also says in which language to speak on once other settings are kept. */
export function followLanguage(
  service: Pick<HostService, 'call'>,
  speak: (language: Settings['language']) => void,
): Pick<HostService, 'call'> {
  return {
    async call(name, params, bytes) {
      const outcome = await service.call(name, params, bytes);
      if (name === 'writeSettings' && outcome.ok) speak(settingsSchema.parse(outcome.value.result).language);
      return outcome;
    },
  };
}
