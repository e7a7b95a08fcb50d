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
import { StepCard } from '../find/StepCard.tsx';
import { Suspects } from '../find/Suspects.tsx';
import { AgainstSeen } from '../inject/AgainstSeen.tsx';
import { InjectAnswer } from '../inject/InjectAnswer.tsx';
import { InjectPane } from '../inject/InjectPane.tsx';
import { InjectPopover } from '../inject/InjectPopover.tsx';
import { LightTable } from '../inject/LightTable.tsx';
import { LightWay } from '../inject/LightWay.tsx';
import { TakePattern } from '../inject/TakePattern.tsx';
import '../inject/inject.css';
import { EquipmentDialog } from '../legend/EquipmentDialog.tsx';
import { useApp } from '../state/useWorkbench.ts';
import { SumsPage } from '../sums/SumsPage.tsx';
import { RefusedDialog, ShortcutsDialog } from './Dialogs.tsx';
import { LiveRegion } from './LiveRegion.tsx';
import { MenuBar } from './MenuBar.tsx';
import { SkipLinks } from './SkipLinks.tsx';
import './app.css';

/** The window: Find. */
export function App() {
  const entry = useApp((state) => state.entry);
  const injecting = useApp((state) => state.inject.on);
  const target = useApp((state) => state.inject.target);
  const summing = useApp((state) => state.sums.shown && !state.inject.on);
  return (
    <>
      <SkipLinks />
      <div className="app">
        <MenuBar />
        <div>
          <Alerts />
          {!summing && (injecting ? <InjectAnswer /> : <AnswerLine />)}
        </div>
        {summing ? (
          <SumsPage />
        ) : (
          <main className="find">
            <div className={injecting ? 'evidence simulated' : 'evidence'}>
              <CabinetCanvas />
              {injecting ? <LightTable /> : <PatternGrid />}
            </div>
            <aside className="side">
              {injecting ? (
                <>
                  <InjectPane />
                  <LightWay />
                  <AgainstSeen />
                </>
              ) : (
                <>
                  <Suspects />
                  <StepCard />
                  <SeenPane />
                  <Log />
                </>
              )}
            </aside>
          </main>
        )}
        {!injecting && <CautionStrip />}
      </div>
      {entry?.kind === 'display' && <EntryPopover entry={entry} />}
      {entry?.kind === 'report' && <ReportPopover key={entry.chain} entry={entry} />}
      {injecting && target && <InjectPopover key={JSON.stringify(target)} target={target} />}
      <TakePattern />
      <div className="drop-hint" aria-hidden="true">
        {fileWords.dropHint}
      </div>
      <EquipmentDialog />
      <RefusedDialog />
      <ShortcutsDialog />
      <QuestionDialog />
      <LiveRegion />
    </>
  );
}
