import type { Session, WebContents } from 'electron';
import { isOwnPage } from './appProtocol.ts';

/** Electron's name for a page that copies text when the weaver asks it to. */
const WRITE_WORDS = 'clipboard-sanitized-write';

type MediaDetails = { readonly mediaTypes?: readonly string[]; readonly mediaType?: string };

/**
 * For our own page only: the camera that photographs the loom, video alone, and putting words on the clipboard, never
 * reading them. Everything else is refused.
 */
export function allowsPermission(permission: string, address: string, details: MediaDetails): boolean {
  if (permission === WRITE_WORDS && isOwnPage(address)) return true;
  if (permission !== 'media' || !isOwnPage(address)) return false;
  const kinds = details.mediaTypes ?? (details.mediaType === undefined ? [] : [details.mediaType]);
  return kinds.length > 0 && kinds.every((kind) => kind === 'video');
}

/** Permissions and requests of every page in a session. */
export function guardSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, permission, answer, details) => {
    answer(allowsPermission(permission, details.requestingUrl, details as MediaDetails));
  });
  session.setPermissionCheckHandler((_contents, permission, origin, details) => {
    // The check names an origin, `app://plumbweft`, with or without the slash.
    const address = details.requestingUrl ?? `${origin.replace(/\/?$/, '/')}`;
    return allowsPermission(permission, address, details as MediaDetails);
  });
  session.setDevicePermissionHandler(() => false);
  // Nothing leaves: the page is ours, and all it shows comes with it or through the bridge.
  session.webRequest.onBeforeRequest((details, answer) => {
    const ours = isOwnPage(details.url) || /^(?:blob:app:\/\/plumbweft\/|data:|devtools:)/.test(details.url);
    answer({ cancel: !ours });
  });
}

/** A window stays on our page: no navigation away, no new windows, no embedded pages. */
export function guardContents(contents: WebContents): void {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  const stay = (event: { preventDefault: () => void }, address: string) => {
    if (!isOwnPage(address)) event.preventDefault();
  };
  contents.on('will-navigate', (event) => stay(event, event.url));
  contents.on('will-redirect', (event) => stay(event, event.url));
  contents.on('will-frame-navigate', (event) => stay(event, event.url));
  contents.on('will-attach-webview', (event) => event.preventDefault());
}
