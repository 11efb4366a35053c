import { contextBridge, ipcRenderer } from 'electron';
import type { PreloadBridge } from '../../core/contract/preloadBridge.ts';
import { BRIDGE_NAME, CALL_CHANNEL, EVENT_CHANNEL } from '../../core/contract/preloadBridge.ts';

contextBridge.exposeInMainWorld(BRIDGE_NAME, {
  invoke: (name, params, bytes) => ipcRenderer.invoke(CALL_CHANNEL, name, params, bytes),
  listen: (listener) => {
    const hear = (_event: unknown, value: unknown) => listener(value);
    ipcRenderer.on(EVENT_CHANNEL, hear);
    return () => {
      ipcRenderer.removeListener(EVENT_CHANNEL, hear);
    };
  },
} satisfies PreloadBridge);
