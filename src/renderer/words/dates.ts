import { useSettings } from '../state/settingsStore.ts';

const place = () => (useSettings.getState().settings.language === 'de' ? 'de-DE' : 'en-GB');

/** A date as `3 March`, `14 Feb`; with the year when it is not this one. */
export function shortDate(iso: string, now: Date = new Date()): string {
  const date = new Date(iso);
  if (Number.isNaN(date.getTime())) return '';
  const sameYear = date.getFullYear() === now.getFullYear();
  return date.toLocaleDateString(place(), { day: 'numeric', month: 'short', ...(sameYear ? {} : { year: 'numeric' }) });
}

/** `Tuesday 3 March, 16:20`: the time only beside the check it belongs to. */
export function dateAndTime(iso: string): string {
  const date = new Date(iso);
  if (Number.isNaN(date.getTime())) return '';
  const day = date.toLocaleDateString(place(), { weekday: 'long', day: 'numeric', month: 'long' }).replace(',', '');
  return `${day}, ${date.toLocaleTimeString(place(), { hour: '2-digit', minute: '2-digit' })}`;
}
