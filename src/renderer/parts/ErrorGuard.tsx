import { Component, type ReactNode } from 'react';
import { words } from '../words/useWords.ts';
import { TroubleReport } from './TroubleReport.tsx';

/** Catches a fault in one screen, so that the rest goes on: the piece is saved apart from what is drawn. */
export class ErrorGuard extends Component<
  { readonly name: string; readonly children: ReactNode },
  { message: string | null }
> {
  override state = { message: null };

  static getDerivedStateFromError(thrown: unknown) {
    return { message: thrown instanceof Error ? thrown.message : String(thrown) };
  }

  override componentDidUpdate(before: { readonly name: string }) {
    if (before.name !== this.props.name && this.state.message !== null) this.setState({ message: null });
  }

  override render() {
    if (this.state.message === null) return this.props.children;
    return (
      <main className="work">
        <h1>{words().shell.screenStopped}</h1>
        <p>{words().shell.screenStoppedAdvice}</p>
        <p className="second">{this.state.message}</p>
        <TroubleReport />
      </main>
    );
  }
}
