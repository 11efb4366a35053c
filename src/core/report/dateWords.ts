const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** The day of an ISO 8601 instant as `3 March 2026`; the text itself when it is not one. */
export function dayInWords(instant: string): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})/.exec(instant);
  const month = match === null ? undefined : months[Number(match[2]) - 1];
  return match === null || month === undefined ? instant : `${Number(match[3])} ${month} ${match[1]}`;
}
