import { Fragment } from 'react';
import { keyGroups } from '../../core/report/keyGroups.ts';
import { useTell } from '../words/telling.ts';

/** Each key of a row as a cap: `Ctrl + Z`, `P, R, E`. */
const caps = (keys: string) =>
  keys.split(', ').map((chord) => (
    <kbd key={chord} className="key-cap">
      {chord}
    </kbd>
  ));

/** The keys of every screen, the same as on the printed sheet. */
export function AllKeys() {
  const tell = useTell();
  return (
    <div className="all-keys">
      {keyGroups.map(({ title, keys }) => (
        <section key={title} aria-label={tell(title)}>
          <h4>{tell(title)}</h4>
          <dl className="key-rows">
            {keys.map((row) => (
              <Fragment key={row.does}>
                <dt>{caps(tell(row.keys))}</dt>
                <dd>{tell(row.does)}</dd>
              </Fragment>
            ))}
          </dl>
        </section>
      ))}
    </div>
  );
}
