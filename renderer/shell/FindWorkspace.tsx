import { CabinetCanvas } from '../canvas/CabinetCanvas.tsx';
import { CheckPopover } from '../find/CheckPopover.tsx';
import { EntryPopover } from '../find/EntryPopover.tsx';
import { HaltedPopover } from '../find/HaltedPopover.tsx';
import { PatternGrid } from '../find/PatternGrid.tsx';
import { ReportPopover } from '../find/ReportPopover.tsx';
import { SideColumn } from '../find/SideColumn.tsx';
import { AgainstSeen } from '../inject/AgainstSeen.tsx';
import { InjectPane } from '../inject/InjectPane.tsx';
import { InjectPopover } from '../inject/InjectPopover.tsx';
import { LightTable } from '../inject/LightTable.tsx';
import { LightWay } from '../inject/LightWay.tsx';
import { TakePattern } from '../inject/TakePattern.tsx';
import '../inject/inject.css';
import { useApp } from '../state/useWorkbench.ts';

/** Find: from what is seen to the repaired machine; or, while a fault is simulated, what would be seen. */
export function FindWorkspace() {
  const injecting = useApp((state) => state.inject.on);
  return (
    <main className="find">
      <div className={injecting ? 'evidence simulated' : 'evidence'}>
        <CabinetCanvas />
        {injecting ? <LightTable /> : <PatternGrid />}
      </div>
      {injecting ? (
        <aside className="side inject-side">
          <InjectPane />
          <LightWay />
          <AgainstSeen />
        </aside>
      ) : (
        <SideColumn />
      )}
    </main>
  );
}

/** What hangs on the units and cables of Find while something is entered or simulated. */
export function FindPopovers() {
  const entry = useApp((state) => state.entry);
  const injecting = useApp((state) => state.inject.on);
  const target = useApp((state) => state.inject.target);
  return (
    <>
      {entry?.kind === 'display' && <EntryPopover entry={entry} />}
      {entry?.kind === 'report' && <ReportPopover key={entry.chain} entry={entry} />}
      {entry?.kind === 'halted' && <HaltedPopover />}
      {entry?.kind === 'check' && <CheckPopover entry={entry} />}
      {injecting && target && <InjectPopover key={JSON.stringify(target)} target={target} />}
      <TakePattern />
    </>
  );
}
