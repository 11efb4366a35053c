/**
 * Our own signs: a 24 grid, a 2 px line, square ends. Always beside a word, so they are hidden from screen readers.
 * A few beyond the twenty (play, pause, sound, print, left, right) are drawn the same way.
 */
const drawings = {
  undo: 'M9.5 4.5 5 9l4.5 4.5M5 9h8.5a5 5 0 0 1 0 10H10',
  redo: 'M14.5 4.5 19 9l-4.5 4.5M19 9h-8.5a5 5 0 0 0 0 10H14',
  photograph: 'M3 7h4.5L9 4.5h6L16.5 7H21v12H3ZM12 9.5a3.3 3.3 0 1 0 .01 0Z',
  agrees: 'M4 12.5 9.5 18 20.5 7',
  mend: 'M12 3.5 21.5 20.5h-19ZM12 10v5M12 16.8v2',
  watch: 'M12 3a9 9 0 1 0 .01 0ZM12 7v5.5l4 2',
  turn: 'M3 7.5h12a4.5 4.5 0 0 1 0 9H3M16 2v20',
  pass: 'M2.5 12h18M14.5 6l6 6-6 6',
  end: 'M10 2v20M14 2v20',
  fell: 'M2.5 20.5h19M3 15h4v-4h4V6h4v5h2v4h4.5',
  shed: 'M2.5 12C6 7.5 9 6 12 6s6 1.5 9.5 6c-3.5 4.5-6.5 6-9.5 6s-6-1.5-9.5-6Z',
  join: 'M1.5 10h13M9.5 14.5h13',
  slit: 'M8.5 2v20M15.5 2v20',
  butterfly:
    'M12 12C9 6 4 4 3 7.5c-.6 2.5 4 3 9 4.5C7 13.5 2.4 14 3 16.5 4 20 9 18 12 12c3 6 8 8 9 4.5.6-2.5-4-3-9-4.5 5-1.5 9.6-2 9-4.5C20 4 15 6 12 12Z',
  fourPoints: 'M4 9V4h5M15 4h5v5M20 15v5h-5M9 20H4v-5',
  card: 'M2.5 5h19v14h-19ZM2.5 9.5h19',
  open: 'M3 5h6.5l2 3H21v11.5H3Z',
  add: 'M12 3v18M3 12h18',
  close: 'M4.5 4.5l15 15M19.5 4.5l-15 15',
  more: 'M5 9l7 7 7-7',
  left: 'M15 5l-7 7 7 7',
  right: 'M9 5l7 7-7 7',
  find: 'M10.5 4a6.5 6.5 0 1 0 .01 0ZM15.5 15.5l5.5 5.5',
  print: 'M7 9V3.5h10V9M7 17H3.5V9h17v8H17M7 14h10v6.5H7Z',
  sound: 'M3 9.5h4l5-4.5v14l-5-4.5H3ZM16 8.5a5 5 0 0 1 0 7M18.5 5.5a9 9 0 0 1 0 13',
  play: 'M7 4.5 19 12 7 19.5Z',
  pause: 'M8 5v14M16 5v14',
} as const;

export type SignName = keyof typeof drawings;
export const signNames = Object.keys(drawings) as SignName[];

export function Sign({ name, size = 24 }: { readonly name: SignName; readonly size?: number }) {
  return (
    <svg className="sign" aria-hidden="true" viewBox="0 0 24 24" width={`${size / 16}rem`} height={`${size / 16}rem`}>
      <path d={drawings[name]} fill="none" stroke="currentColor" strokeWidth="2" strokeMiterlimit="10" />
    </svg>
  );
}
