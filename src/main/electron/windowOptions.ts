import type { BrowserWindowConstructorOptions } from 'electron';

/** Where the window stood last time. */
export interface WindowState {
  readonly x?: number;
  readonly y?: number;
  readonly width: number;
  readonly height: number;
  readonly maximised: boolean;
}

/** A page gets no Node, no shared context and a sandbox; all it has is the preload bridge. */
export const windowOptions = (preload: string, state: WindowState, dark: boolean): BrowserWindowConstructorOptions => ({
  ...(state.x === undefined || state.y === undefined ? {} : { x: state.x, y: state.y }),
  width: state.width,
  height: state.height,
  minWidth: 640,
  minHeight: 480,
  show: false,
  title: 'Plumbweft',
  backgroundColor: dark ? '#12171a' : '#e4e8e6',
  webPreferences: {
    preload,
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    webviewTag: false,
    allowRunningInsecureContent: false,
    experimentalFeatures: false,
    navigateOnDragDrop: false,
    spellcheck: false,
    devTools: process.env.PLUMBWEFT_DEVTOOLS === '1',
  },
});
