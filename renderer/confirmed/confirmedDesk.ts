import { parseCaseFile, serializeCase } from '../../engine/cabinet/index.ts';
import { confirmedWords } from '../../engine/messages/index.ts';
import { endOf } from '../../engine/plan/index.ts';
import type { CaseContent } from '../../engine/schema/index.ts';
import type { Desk } from '../files/desk.ts';
import type { AppState } from '../state/appState.ts';
import { lastDiagnosis } from '../state/lastDiagnosis.ts';
import type { FileActions } from '../state/sitting.ts';
import type { ConfirmedState, KeptCase } from './confirmedState.ts';
import { gatherAside } from './gatherAside.ts';
import { keptIdOf } from './ownRates.ts';

type Confirmed = 'readKeptCases' | 'keepCase' | 'removeKept' | 'putBackKept';

/** What is done with the collection of confirmed cases. Every change reads it anew: another window may have changed it. */
export function makeConfirmedDesk({ bench, access, now }: Desk): Pick<FileActions, Confirmed> {
  const { store, announce } = bench;
  let last: Promise<unknown> = Promise.resolve();
  const inTurn = (work: () => Promise<void>): Promise<void> => {
    const turn = last.then(work);
    last = turn.catch(() => undefined);
    return turn;
  };
  const change = (part: Partial<ConfirmedState>) => store.setState(({ confirmed }) => ({ confirmed: { ...confirmed, ...part } }));

  const read = async () => {
    change({ state: 'reading' });
    const listed = await access.listKeptCases();
    if (!listed.ok) return change({ state: 'read', trouble: listed.problems });
    const cases: KeptCase[] = [];
    const damaged: { name: string; problems: ConfirmedState['trouble'] }[] = [];
    for (const { key, name, content } of listed.value.cases) {
      const parsed = parseCaseFile(content);
      if (parsed.ok) cases.push({ key, content: parsed.value });
      else damaged.push({ name, problems: parsed.problems });
    }
    if (listed.value.problems.length > 0) damaged.push({ name: '', problems: listed.value.problems });
    const experience = await gatherAside(cases.map(({ content }) => content));
    change({ state: 'read', cases, damaged, experience });
  };

  /** Keeps a case file; whether it worked. */
  const keep = async (content: CaseContent): Promise<boolean> => {
    const kept = await access.keepCase(content.id, new TextEncoder().encode(serializeCase(content)));
    change({ trouble: kept.ok ? [] : kept.problems });
    if (kept.ok) await read();
    return kept.ok;
  };

  return {
    readKeptCases: () => inTurn(read),
    keepCase: () =>
      inTurn(async () => {
        if (!isProvedNow(store.getState())) return;
        if (store.getState().caseRecord.result?.end !== 'proved') {
          bench.dispatch('write-result', { end: 'proved', change: {}, at: now().toISOString() });
        }
        const state = store.getState();
        // Photos say nothing of rates, and would fill the disk.
        const { photos: _, ...cabinet } = state.cabinet;
        if (await keep({ ...state.caseRecord, id: keptIdOf(state), cabinet })) announce(confirmedWords.keptNow);
      }),
    removeKept: (key) =>
      inTurn(async () => {
        const found = store.getState().confirmed.cases.find((one) => one.key === key);
        if (!found) return;
        const dropped = await access.dropKeptCase(key);
        change(dropped.ok ? { removed: found.content, trouble: [] } : { trouble: dropped.problems });
        if (!dropped.ok) return;
        await read();
        announce(confirmedWords.removed(found.content.name));
      }),
    putBackKept: () =>
      inTurn(async () => {
        const { removed } = store.getState().confirmed;
        if (removed !== null && (await keep(removed))) change({ removed: null });
      }),
  };
}

/** Whether the cause is proved, by a repair of the user's own. */
function isProvedNow({ checked, caseRecord, diagnosis, source }: AppState): boolean {
  const known = lastDiagnosis(diagnosis);
  if (!checked.cabinet || !known || source.kind === 'sample') return false;
  if (caseRecord.evidence.snapshots.some(({ simulated }) => simulated === true)) return false;
  return endOf(checked.cabinet, caseRecord.evidence, known).end === 'proved';
}
