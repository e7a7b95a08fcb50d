import { parseCaseFile, serializeCase } from '../../engine/cabinet/index.ts';
import { countsAs, withStrength } from '../../engine/experience/index.ts';
import { confirmedWords } from '../../engine/messages/index.ts';
import { endOf } from '../../engine/plan/index.ts';
import type { CaseContent, CaseEnd } from '../../engine/schema/index.ts';
import type { Desk } from '../files/desk.ts';
import { sameContent } from '../files/sameContent.ts';
import type { AppState } from '../state/appState.ts';
import { lastDiagnosis } from '../state/lastDiagnosis.ts';
import type { CaseRecord, FileActions } from '../state/sitting.ts';
import type { ConfirmedState, KeptCase } from './confirmedState.ts';
import { gatherAside } from './gatherAside.ts';
import { keptIdOf, ratesForCase } from './ownRates.ts';

type Confirmed = 'readKeptCases' | 'keepCase' | 'removeKept' | 'putBackKept';

interface Parts extends Pick<Desk, 'bench' | 'now'> {
  readonly access: Pick<Desk['access'], 'listKeptCases' | 'keepCase' | 'dropKeptCase'>;
}

interface ConfirmedDesk {
  readonly actions: Pick<FileActions, Confirmed>;
  /** A case that begins now, on the rates that confirmed cases sharpened, unless the user wants the assumed ones. */
  readonly beginOn: (caseRecord: CaseRecord) => CaseRecord;
}

/** What is done with the collection of confirmed cases. Every change reads it anew: another window may have changed it. */
export function makeConfirmedDesk({ bench, access, now }: Parts): ConfirmedDesk {
  const { store, announce } = bench;
  /** A case that was begun while the collection was still being read; it gets its rates afterwards. */
  let awaiting: CaseRecord | null = null;
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
    if (!listed.ok) {
      awaiting = null;
      return change({ state: 'read', trouble: listed.problems });
    }
    const cases: KeptCase[] = [];
    const damaged: { name: string; problems: ConfirmedState['trouble'] }[] = [];
    for (const { key, name, content } of listed.value.cases) {
      const parsed = parseCaseFile(content);
      if (parsed.ok) cases.push({ key, content: parsed.value });
      else damaged.push({ name, problems: parsed.problems });
    }
    if (listed.value.problems.length > 0) damaged.push({ name: '', problems: listed.value.problems });
    const gathered = await gatherAside(cases.map(({ content }) => content));
    // How much the assumed rates are worth may have been changed meanwhile.
    const experience = withStrength(gathered, store.getState().confirmedStrength);
    change({ state: 'read', cases, damaged, experience });
    giveRates();
  };

  const beginOn = (caseRecord: CaseRecord): CaseRecord => {
    const state = store.getState();
    const rates = state.takeConfirmed ? ratesForCase({ ...state, caseRecord }) : undefined;
    const begun = rates === undefined ? caseRecord : { ...caseRecord, evidence: { ...caseRecord.evidence, rates } };
    awaiting = state.confirmed.state === 'read' ? null : begun;
    return begun;
  };

  /** The case that waited gets what was read: without a word while nothing is entered in it, else as a step. */
  const giveRates = () => {
    const begun = awaiting;
    awaiting = null;
    const { takeConfirmed, caseRecord, saved, confirmed, revision } = store.getState();
    // Another document may have come, or the user may have chosen rates.
    if (begun === null || !takeConfirmed || saved.caseRecord !== begun) return;
    if (!sameContent(caseRecord.evidence.rates, begun.evidence.rates)) return;
    const rates = ratesForCase({ confirmed, caseRecord }) ?? null;
    if (caseRecord !== begun) return bench.dispatch('use-rates', { rates });
    const { rates: _, ...evidence } = begun.evidence;
    const given = { ...begun, evidence: rates === null ? evidence : { ...evidence, rates } };
    store.setState({ caseRecord: given, saved: { ...saved, caseRecord: given }, revision: revision + 1 });
  };

  /** Keeps a case file; whether it worked. */
  const keep = async (content: CaseContent): Promise<boolean> => {
    const kept = await access.keepCase(content.id, new TextEncoder().encode(serializeCase(content)));
    change({ trouble: kept.ok ? [] : kept.problems });
    if (kept.ok) await read();
    return kept.ok;
  };

  const actions: ConfirmedDesk['actions'] = {
    readKeptCases: () => inTurn(read),
    keepCase: () =>
      inTurn(async () => {
        const end = countsNow(store.getState());
        if (end === null) return;
        if (store.getState().caseRecord.result?.end !== end) bench.dispatch('write-result', { end, change: {}, at: now().toISOString() });
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
  return { actions, beginOn };
}

/** How a repair of the user's own that counts has ended; null where it does not count. */
function countsNow({ checked, caseRecord, diagnosis, source }: AppState): CaseEnd | null {
  const known = lastDiagnosis(diagnosis);
  if (!checked.cabinet || !known || source.kind === 'sample') return null;
  if (caseRecord.evidence.snapshots.some(({ simulated }) => simulated === true)) return null;
  const end = endOf(checked.cabinet, caseRecord.evidence, known);
  return countsAs(end, caseRecord.result ?? {}) ? end.end : null;
}
