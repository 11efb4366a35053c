import type { IncomingMessage } from 'node:http';

/** A request's body up to a limit; null when it is larger, whatever the request said of its length. */
export async function readBody(request: IncomingMessage, limit: number): Promise<Buffer | null> {
  const declared = Number(request.headers['content-length'] ?? 0);
  if (!(declared <= limit)) return null;
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    size += part.length;
    if (size > limit) return null;
    parts.push(part);
  }
  return Buffer.concat(parts);
}
