import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '@fontsource-variable/brygada-1918/wght.css';
import './theme/tokens.css';
import './theme/base.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { z } from 'zod';
import type { HostApi } from '../core/contract/hostApi.ts';
import { App } from './App.tsx';
import { setHost } from './host/currentHost.ts';
import { followHost } from './host/followHost.ts';
import { tellingHost } from './host/tellingHost.ts';
import { followJobs } from './screens/check/checkStore.ts';
import { usePiece } from './state/pieceStore.ts';
import { useRecent } from './state/recentStore.ts';
import { useSettings } from './state/settingsStore.ts';

// A strict content policy forbids making functions from text; the validator must not try.
z.config({ jitless: true });

/** Draws the program into `root`, talking to `host`. */
export async function mount(host: HostApi, root: HTMLElement): Promise<void> {
  setHost(tellingHost(host));
  followHost();
  followJobs();
  await Promise.all([useSettings.getState().load(), useRecent.getState().load()]);
  // Whatever is not yet on disk goes there when the window is put away.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void usePiece.getState().saveNow();
  });
  // Whoever loads the page again, or closes it, lets the piece go: what is not yet saved goes first.
  window.addEventListener('pagehide', () => {
    const { key, saveNow } = usePiece.getState();
    if (key === null) return;
    void saveNow();
    void host.call('closePiece', { key });
  });
  // Brought back from the browser's memory, the page would hold a piece that it has let go.
  window.addEventListener('pageshow', (event) => {
    if (event.persisted) window.location.reload();
  });
  window.addEventListener('dragover', (event) => event.preventDefault());
  window.addEventListener('drop', (event) => event.preventDefault());
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
}
