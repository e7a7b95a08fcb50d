import { Component } from 'react';
import { windowTexts } from '../../engine/messages/index.ts';

interface State {
  readonly error: Error | null;
}

/** A mistake of ours while drawing: says so, and offers to begin again. */
export class CrashBoundary extends Component<{ readonly children: React.ReactNode }, State> {
  override state: State = { error: null };

  static getDerivedStateFromError(error: Error): State {
    return { error };
  }

  override render() {
    const { error } = this.state;
    if (!error) return this.props.children;
    return (
      <main className="crash">
        <h1>{windowTexts.crash.title}</h1>
        <p>{windowTexts.crash.what}</p>
        <pre className="code">{error.stack ?? error.message}</pre>
        <button type="button" className="button primary" onClick={() => location.reload()}>
          {windowTexts.crash.reload}
        </button>
      </main>
    );
  }
}
