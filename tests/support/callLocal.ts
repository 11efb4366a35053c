import { packEnvelope, unpackEnvelope } from '../../src/core/contract/envelope.ts';

/** A browser's side of the local host, as plain requests. */
export interface LocalPage {
  readonly base: string;
  readonly cookie: string;
  request(path: string, init?: RequestInit & { readonly headers?: Record<string, string> }): Promise<Response>;
  call(name: string, params: unknown, bytes?: Uint8Array): Promise<{ json: Outcome; bytes: Uint8Array | null }>;
}
type Outcome = {
  ok: boolean;
  value?: Record<string, unknown>;
  problem?: { tag: string; sentence: string; remedy: string };
};

export async function openLocalPage(address: string): Promise<LocalPage> {
  const base = address.slice(0, address.indexOf('/start/'));
  const first = await fetch(address, { redirect: 'manual' });
  const cookie = (first.headers.get('set-cookie') ?? '').split(';')[0]!;
  const request: LocalPage['request'] = (path, init = {}) =>
    fetch(`${base}${path}`, { redirect: 'manual', ...init, headers: { cookie, ...init.headers } });
  return {
    base,
    cookie,
    request,
    async call(name, params, bytes) {
      const response = await request(`/call/${name}`, {
        method: 'POST',
        headers: { origin: base, 'content-type': 'application/octet-stream' },
        body: packEnvelope(params, bytes ?? null) as Uint8Array<ArrayBuffer>,
      });
      const envelope = unpackEnvelope(new Uint8Array(await response.arrayBuffer()));
      return { json: envelope?.json as Outcome, bytes: envelope?.bytes ?? null };
    },
  };
}
