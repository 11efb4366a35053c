import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

const same = (a: string, b: string): boolean =>
  timingSafeEqual(createHash('sha256').update(a).digest(), createHash('sha256').update(b).digest());

/** Who may talk to the local host: whoever was given the address that was printed, and nobody else. */
export interface Session {
  /** Stands in the first address; opens a browser once it is known. */
  readonly token: string;
  opens(token: string): boolean;
  /** Sets the cookie the browser shows from then on. */
  readonly setCookie: string;
  isKnown(cookieHeader: string | undefined): boolean;
}

/** @param port cookies aren't kept apart by port, so its number is part of the name. */
export function openSession(port: number): Session {
  const token = randomBytes(32).toString('base64url');
  const secret = randomBytes(32).toString('base64url');
  const name = `plumbweft-${port}`;
  return {
    token,
    opens: (given) => same(given, token),
    setCookie: `${name}=${secret}; HttpOnly; SameSite=Strict; Path=/`,
    isKnown(cookieHeader) {
      for (const part of (cookieHeader ?? '').split(';')) {
        const at = part.indexOf('=');
        if (at > 0 && part.slice(0, at).trim() === name && same(part.slice(at + 1).trim(), secret)) return true;
      }
      return false;
    },
  };
}
