import type { ReactNode } from 'react';
import './noteLine.css';
import { Sign, type SignName } from './Sign.tsx';

/** Something worth knowing beside the figures: a sign, a sentence, perhaps something to press. */
export function NoteLine({ sign, children }: { readonly sign: SignName; readonly children: ReactNode }) {
  return (
    <div className="note-line">
      <Sign name={sign} />
      <div>{children}</div>
    </div>
  );
}
