import type { ReactNode } from 'react';
import './sentence.css';

interface SentenceProps {
  readonly children: ReactNode;
  readonly size?: 'sentence' | 'large' | 'welcome';
}

/** The one sentence at the head of a screen, as a neighbour could say it. */
export function Sentence({ children, size = 'sentence' }: SentenceProps) {
  return (
    <h1 className={`sentence is-${size}`} tabIndex={-1} data-sentence>
      {children}
    </h1>
  );
}
