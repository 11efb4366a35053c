/** A check's id begins with the instant it is kept, so that file names sort by time: `20261125-093015-482-k3f9`. */
export function checkId(now: Date, token: string): string {
  const digits = now.toISOString().replace(/\D/g, '');
  return `${digits.slice(0, 8)}-${digits.slice(8, 14)}-${digits.slice(14, 17)}-${token.slice(0, 4)}`;
}
