import type { ReactNode } from 'react';
import './screenFrame.css';

interface ScreenFrameProps {
  /** Class on the work area: the screen lays out its own columns. */
  readonly className: string;
  readonly children: ReactNode;
  readonly footer: ReactNode;
}

/** The room between bar and footer. Order of focus: bar, work, words, footer. */
export function ScreenFrame({ className, children, footer }: ScreenFrameProps) {
  return (
    <>
      <main id="work" className={`work ${className}`} tabIndex={-1}>
        {children}
      </main>
      {footer}
    </>
  );
}
