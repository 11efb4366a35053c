import type { Protocol } from 'electron';
import { listPageFiles, readPageFile } from '../page/pageFiles.ts';
import { contentPolicy } from '../page/pagePolicy.ts';

/** The page's own protocol and address: nothing is ever loaded from `file:` or the network. */
export const SCHEME = 'app';
export const PAGE_PREFIX = `${SCHEME}://plumbweft/`;

/** Must be said before the app is ready. */
export const schemePrivileges = {
  scheme: SCHEME,
  privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true, codeCache: true },
} as const;

/** Whether an address is a page of ours. Compared by prefix: `new URL('app://x').origin` is 'null' in Node. */
export const isOwnPage = (address: string): boolean => address.startsWith(PAGE_PREFIX);

const headers = (type: string): Record<string, string> => ({
  'Content-Type': type,
  'Content-Security-Policy': contentPolicy("'self'"),
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
});

/** Serves the built page from a list made once; a request's path is never joined to a folder. */
export function serveApp(protocol: Protocol, page: string): void {
  const files = listPageFiles(page);
  protocol.handle(SCHEME, (request) => {
    if (!isOwnPage(request.url) || request.method !== 'GET') {
      return new Response('Not served here.', { status: 403, headers: headers('text/plain') });
    }
    // Taken from the text, not from a parsed address, which would quietly resolve `..` first.
    const path = `/${request.url.slice(PAGE_PREFIX.length).split(/[?#]/)[0]}`;
    const file = files.get(path === '/' ? '/index.html' : path);
    if (file === undefined) return new Response('Nothing there.', { status: 404, headers: headers('text/plain') });
    return new Response(new Uint8Array(readPageFile(file)), { headers: headers(file.type) });
  });
}
