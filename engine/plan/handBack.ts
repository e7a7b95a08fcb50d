import type { Evidence, HandBackCheck } from '../schema/index.ts';
import { hangingAxes, positionsAtRisk } from '../steps/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { listDisplaced, listHandlings } from './history.ts';
import type { EndState } from './types.ts';

/** What is to be checked before a machine is handed back: what concerns it, by what was done. Never complete; the manual comes first. */
export function listHandBackChecks(cabinet: Cabinet, evidence: Evidence, end: Pick<EndState, 'end'>): readonly HandBackCheck[] {
  const acts = listHandlings(evidence).map(({ act }) => act);
  const touchesPlugs = acts.some(({ do: kind }) => /plug|cable|fibres|board|-unit|route|controller/.test(kind));
  const exchanges = acts.some(({ do: kind }) => /^(replace|exchange)-/.test(kind));
  const { axes, unsaid } = hangingAxes(cabinet);
  const mayHang = axes.length + unsaid.axes.length + unsaid.units.length > 0;
  const wasOff = acts.length > 0;
  const concerns: { readonly [C in HandBackCheck]: boolean } = {
    displays: end.end !== 'open',
    'put-back': listDisplaced(cabinet, evidence).length > 0 || acts.some(({ do: kind }) => kind.startsWith('exchange-')),
    plugs: touchesPlugs,
    reference: acts.some((act) => positionsAtRisk(cabinet, act).length > 0),
    'hanging-axes': wasOff && mayHang,
    safety: exchanges,
    closed: true,
    ran: end.end !== 'open',
    told: true,
  };
  // Object.keys is typed as string[]; these are the keys of the table above.
  return (Object.keys(concerns) as HandBackCheck[]).filter((check) => concerns[check]);
}
