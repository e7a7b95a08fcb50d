import { fileWords } from '../../engine/messages/index.ts';
import { CabinetCanvas } from '../canvas/CabinetCanvas.tsx';
import { Alerts } from '../files/Alerts.tsx';
import { QuestionDialog } from '../files/QuestionDialog.tsx';
import { AnswerLine } from '../find/AnswerLine.tsx';
import { CautionStrip } from '../find/CautionStrip.tsx';
import { EntryPopover } from '../find/EntryPopover.tsx';
import { Log } from '../find/Log.tsx';
import { PatternGrid } from '../find/PatternGrid.tsx';
import { ReportPopover } from '../find/ReportPopover.tsx';
import { SeenPane } from '../find/SeenPane.tsx';
import { Suspects } from '../find/Suspects.tsx';
import { useApp } from '../state/useWorkbench.ts';
import { RefusedDialog, ShortcutsDialog } from './Dialogs.tsx';
import { LiveRegion } from './LiveRegion.tsx';
import { MenuBar } from './MenuBar.tsx';
import { SkipLinks } from './SkipLinks.tsx';
import './app.css';

/** The window: Find. */
export function App() {
  const entry = useApp((state) => state.entry);
  return (
    <>
      <SkipLinks />
      <div className="app">
        <MenuBar />
        <div>
          <Alerts />
          <AnswerLine />
        </div>
        <main className="find">
          <div className="evidence">
            <CabinetCanvas />
            <PatternGrid />
          </div>
          <aside className="side">
            <Suspects />
            <SeenPane />
            <Log />
          </aside>
        </main>
        <CautionStrip />
      </div>
      {entry?.kind === 'display' && <EntryPopover entry={entry} />}
      {entry?.kind === 'report' && <ReportPopover key={entry.chain} chain={entry.chain} />}
      <div className="drop-hint" aria-hidden="true">
        {fileWords.dropHint}
      </div>
      <RefusedDialog />
      <ShortcutsDialog />
      <QuestionDialog />
      <LiveRegion />
    </>
  );
}
