import { fileWords } from '../../engine/messages/index.ts';
import { NewMachineDialog } from '../compare/NewMachineDialog.tsx';
import { ConfirmedDialog } from '../confirmed/ConfirmedDialog.tsx';
import { DrawWorkspace } from '../draw/DrawWorkspace.tsx';
import { Alerts } from '../files/Alerts.tsx';
import { QuestionDialog } from '../files/QuestionDialog.tsx';
import { AnswerLine } from '../find/AnswerLine.tsx';
import { CautionStrip } from '../find/CautionStrip.tsx';
import { HandBackDialog } from '../handback/HandBackDialog.tsx';
import { InjectAnswer } from '../inject/InjectAnswer.tsx';
import { EquipmentDialog } from '../legend/EquipmentDialog.tsx';
import { DocumentsDialog } from '../papers/DocumentsDialog.tsx';
import { ImportDialog } from '../papers/ImportDialog.tsx';
import { PracticeWorkspace } from '../practice/PracticeWorkspace.tsx';
import { RatesDialog } from '../rates/RatesDialog.tsx';
import { RepairTableDialog } from '../repair/RepairTableDialog.tsx';
import { useApp } from '../state/useWorkbench.ts';
import { SumsPage } from '../sums/SumsPage.tsx';
import { AboutDialog, RefusedDialog } from './Dialogs.tsx';
import { FindPopovers, FindWorkspace } from './FindWorkspace.tsx';
import { HelpDialog } from './HelpDialog.tsx';
import { LiveRegion } from './LiveRegion.tsx';
import { MenuBar } from './MenuBar.tsx';
import { Palette } from './Palette.tsx';
import { SkipLinks } from './SkipLinks.tsx';
import './app.css';
import './narrow.css';

/** The window: one workspace on the cabinet, or the page of sums. */
export function App() {
  const injecting = useApp((state) => state.inject.on);
  const summing = useApp((state) => state.sums.shown && !state.inject.on);
  const workspace = useApp((state) => state.workspace);
  const finding = workspace === 'find';
  return (
    <>
      <SkipLinks />
      <div className="app">
        <MenuBar />
        <div>
          <Alerts />
          {finding && !summing && (injecting ? <InjectAnswer /> : <AnswerLine />)}
        </div>
        {summing ? <SumsPage /> : finding ? <FindWorkspace /> : workspace === 'draw' ? <DrawWorkspace /> : <PracticeWorkspace />}
        {finding && !injecting && <CautionStrip />}
      </div>
      {finding && <FindPopovers />}
      <div className="drop-hint" aria-hidden="true">
        {fileWords.dropHint}
      </div>
      <HandBackDialog />
      <RepairTableDialog />
      <RatesDialog />
      <ConfirmedDialog />
      <EquipmentDialog />
      <NewMachineDialog />
      <DocumentsDialog />
      <ImportDialog />
      <RefusedDialog />
      <HelpDialog />
      <AboutDialog />
      <QuestionDialog />
      <Palette />
      <LiveRegion />
    </>
  );
}
