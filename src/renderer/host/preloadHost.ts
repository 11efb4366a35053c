import { type Answer, type CallName, type HostApi, type HostEvent, hostEvent } from '../../core/contract/hostApi.ts';
import type { PreloadBridge } from '../../core/contract/preloadBridge.ts';
import { BRIDGE_NAME } from '../../core/contract/preloadBridge.ts';
import { failure, type Outcome } from '../../core/model/outcome.ts';
import { readAnswer } from './readAnswer.ts';

/** The host through Electron's preload script; null where there is none. */
export function preloadHost(): HostApi | null {
  const bridge = (globalThis as Record<string, unknown>)[BRIDGE_NAME] as PreloadBridge | undefined;
  if (bridge === undefined) return null;
  return {
    async call<Name extends CallName>(name: Name, params: unknown, bytes?: Uint8Array): Promise<Outcome<Answer<Name>>> {
      try {
        const outcome = await bridge.invoke(name, params, bytes ?? null);
        return outcome.ok
          ? readAnswer(name, { ok: true, value: outcome.value.result }, outcome.value.bytes)
          : readAnswer(name, outcome, null);
      } catch {
        return failure(
          'host-gone',
          'The program did not answer.',
          'Close the window and start Plumbweft again; what was kept is on the disk.',
        );
      }
    },
    listen(listener: (event: HostEvent) => void) {
      return bridge.listen((value) => {
        const event = hostEvent.safeParse(value);
        if (event.success) listener(event.data);
      });
    },
  };
}
