import '@fontsource/b612/latin-400.css';
import '@fontsource/b612/latin-700.css';
import '@fontsource/b612-mono/latin-400.css';
import './theme/tokens.css';
import './theme/base.css';
import './theme/fields.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { firstSample, loadSample } from './samples/sampleCabinets.ts';
import { App } from './shell/App.tsx';
import { CrashBoundary } from './shell/CrashBoundary.tsx';
import { openWindow } from './shell/openWindow.ts';
import { WindowContext } from './state/useWorkbench.ts';

const root = document.getElementById('root');
if (!root) throw new Error('the page has no root element');

const first = await loadSample(firstSample);
if (!first.ok) throw new Error(`the first sample is damaged: ${JSON.stringify(first.problems)}`);

createRoot(root).render(
  <StrictMode>
    <CrashBoundary>
      <WindowContext value={openWindow(first.value, { kind: 'sample', name: firstSample })}>
        <App />
      </WindowContext>
    </CrashBoundary>
  </StrictMode>,
);
