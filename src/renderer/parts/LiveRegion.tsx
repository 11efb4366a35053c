import { useShell } from '../state/shellStore.ts';

/** Says the sentence of a finished check, and each bench step, to a screen reader. */
export function LiveRegion() {
  const said = useShell((state) => state.said);
  return (
    <div className="out-of-sight" aria-live="polite" role="status">
      {/* A changed key makes the same words said twice be read twice. */}
      <span key={said.count}>{said.words}</span>
    </div>
  );
}
