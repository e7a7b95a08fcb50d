import type { ChainId, FeedbackId, UnitId } from '../base/index.ts';
import type { Evidence, Intervention, MachineState } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { Step } from './types.ts';

/** A caution that concerns a step, with what it is about. */
export type StepCaution =
  /** Switching off erases what these show; nobody has noted it yet. */
  | { readonly code: 'note-first'; readonly units: readonly UnitId[]; readonly chains: readonly ChainId[] }
  | { readonly code: 'live-cabinet' | 'all-feeds' | 'lock-out' | 'dc-link' | 'fibre-light' | 'esd' | 'safety-check' }
  | { readonly code: 'hanging-axes'; readonly axes: readonly string[] }
  | { readonly code: 'reference-position'; readonly feedbacks: readonly FeedbackId[] };

export function stateNeeded(step: Step): MachineState {
  switch (step.do) {
    case 'act':
      return 'isolated';
    case 'look':
      // Through a removed cable one looks with the machine off; light and 24 V are there only while it is on.
      return step.look.look === 'lamp' ? 'isolated' : 'open';
    case 'read-display':
      return 'open';
    default:
      return 'closed';
  }
}

/** Displays and reports of the last snapshot that nobody has noted; switching off erases them. */
export function listUnnoted(
  cabinet: Cabinet,
  evidence: Evidence,
): { readonly units: readonly UnitId[]; readonly chains: readonly ChainId[] } {
  const last = evidence.snapshots[evidence.snapshots.length - 1];
  const noted = new Set((last?.displays ?? []).map(({ unit }) => unit));
  const reported = new Set((last?.reports ?? []).map(({ chain }) => chain));
  return {
    units: [...cabinet.units.keys()].filter((unit) => !noted.has(unit)),
    chains: cabinet.chains.filter(({ id, units }) => units.length > 0 && !reported.has(id)).map(({ id }) => id),
  };
}

/** The cautions that concern a step, in the order in which they matter. None of them takes the place of the machine's manual. */
export function listCautions(cabinet: Cabinet, evidence: Evidence, step: Step): readonly StepCaution[] {
  const state = stateNeeded(step);
  if (state === 'closed') {
    return [];
  }
  if (state === 'open') {
    const light = step.do === 'look' && step.look.look.startsWith('light-');
    return [{ code: 'live-cabinet' }, ...(light ? [{ code: 'fibre-light' } as const] : [])];
  }
  const unnoted = listUnnoted(cabinet, evidence);
  const hanging = [...cabinet.units.values()].flatMap(({ axes }) => (axes ?? []).filter(({ hanging: hangs }) => hangs === true));
  const acts = step.do === 'act' ? step.acts : [];
  const lost = acts.flatMap((act) => positionsAtRisk(cabinet, act));
  return [
    ...(unnoted.units.length + unnoted.chains.length > 0 ? [{ code: 'note-first', ...unnoted } as const] : []),
    ...(hanging.length > 0 ? [{ code: 'hanging-axes', axes: hanging.map(({ name }) => name) } as const] : []),
    { code: 'all-feeds' },
    { code: 'lock-out' },
    { code: 'dc-link' },
    ...(lost.length > 0 ? [{ code: 'reference-position', feedbacks: [...new Set(lost)] } as const] : []),
    ...(step.do === 'look' || acts.some(touchesFibre) ? [{ code: 'fibre-light' } as const] : []),
    ...(acts.some(touchesBoard) ? [{ code: 'esd' } as const] : []),
    ...(acts.some(isExchange) ? [{ code: 'safety-check' } as const] : []),
  ];
}

/** Feedback cables whose reference position is lost, or may be, by an act: pulled plugs, units taken out, boards exchanged. */
export function positionsAtRisk(cabinet: Cabinet, act: Intervention): readonly FeedbackId[] {
  const kept = (feedback: FeedbackId) => cabinet.feedbacks.get(feedback)?.positionKept === 'none-needed';
  switch (act.do) {
    case 'pull-feedback':
    case 'replace-feedback':
      // The file schema holds plain strings; an id that does not occur is at risk of nothing.
      return [...cabinet.feedbacks.keys()].filter((id) => id === act.feedback && !kept(id));
    case 'replace-board':
    case 'exchange-boards':
    case 'replace-unit':
    case 'reseat-unit':
    case 'take-out-unit': {
      const units = 'other' in act ? [act.unit, act.other] : [act.unit];
      return units.flatMap((unit) => cabinet.feedbacksOf.get(unit as UnitId) ?? []).filter((id) => !kept(id));
    }
    default:
      return [];
  }
}

function touchesFibre({ do: kind }: Intervention): boolean {
  return /plug$|cable|fibres|plugs|board|-unit|port|controller|route/.test(kind);
}

function touchesBoard({ do: kind }: Intervention): boolean {
  return /board|-unit|controller/.test(kind);
}

function isExchange({ do: kind }: Intervention): boolean {
  return /^(replace|exchange)-(board|boards|unit|supply|feedback|controller|controller-port)$/.test(kind);
}
