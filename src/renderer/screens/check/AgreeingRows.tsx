import './agreeingRows.css';
import { Sign } from '../../parts/Sign.tsx';
import { useWords } from '../../words/useWords.ts';
import type { AgreeingRow } from './agreeing.ts';

const signs = { agrees: 'agrees', close: 'watch', off: 'mend', told: 'turn' } as const;

/** What agrees with the plan: a tick and no colour; what is only told has a turn's sign. In a small window the rows fold into one. */
export function AgreeingRows({ rows }: { readonly rows: readonly AgreeingRow[] }) {
  const words = useWords().check;
  if (rows.length === 0) return null;
  const agreeing = rows.filter((row) => row.stands === 'agrees');
  return (
    <div className="agreeing">
      <ul className="agreeing-rows">
        {rows.map((row) => (
          <li key={row.name} className={`stands-${row.stands}`}>
            <Sign name={signs[row.stands]} size={22} />
            <span>{row.name}</span>
            <span className="figures">{row.stands === 'close' ? `${row.figure}, ${words.tooClose}` : row.figure}</span>
          </li>
        ))}
      </ul>
      {agreeing.length > 0 && (
        <p className="agreeing-folded">
          <Sign name="agrees" size={22} />
          <span>{words.joined(agreeing.map((row) => row.name))}</span>
          <span>{words.agree}</span>
        </p>
      )}
    </div>
  );
}
