import type { ChainId, FeedbackId, UnitId } from '../base/index.ts';
import type { Evidence, Intervention, MachineState } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { Step } from './types.ts';

/** A caution that concerns a step, with what it is about. */
export type StepCaution =
  /** Switching off erases what these show; nobody has noted it yet. */
  | { readonly code: 'note-first'; readonly units: readonly UnitId[]; readonly chains: readonly ChainId[] }
  | { readonly code: 'live-cabinet' | 'axes-may-start' | 'all-feeds' | 'lock-out' | 'dc-link' | 'fibre-light' | 'esd' | 'safety-check' }
  /** Axes that hang, and those of which nobody has said whether they do: axes by name, and drives without any axis written down. */
  | {
      readonly code: 'hanging-axes';
      readonly axes: readonly string[];
      readonly unsaid: { readonly axes: readonly string[]; readonly units: readonly UnitId[] };
    }
  | { readonly code: 'reference-position'; readonly feedbacks: readonly FeedbackId[] };

/** The state of the machine in which a step is done (domain section 7). */
export function stateNeeded(step: Step): MachineState {
  switch (step.do) {
    case 'act':
      return 'isolated';
    case 'look':
      // Through a removed cable one looks with the machine off; light and 24 V are there only while it is on.
      return step.look.look === 'lamp' ? 'isolated' : 'open';
    case 'read-display':
      return 'open';
    case 'provoke':
      // Cables inside the cabinet are moved with its door open.
      return step.how === 'flex' ? 'open' : 'closed';
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
  const live = state === 'open' ? [{ code: 'live-cabinet' } as const] : [];
  if (state !== 'isolated') {
    const light = step.do === 'look' && step.look.look.startsWith('light-');
    const starting = step.do === 'provoke' ? [...beforeOff(cabinet, evidence), { code: 'axes-may-start' } as const] : [];
    return [...starting, ...live, ...(light ? [{ code: 'fibre-light' } as const] : [])];
  }
  const acts = step.do === 'act' ? step.acts : [];
  const lost = acts.flatMap((act) => positionsAtRisk(cabinet, act));
  return [
    ...beforeOff(cabinet, evidence),
    { code: 'all-feeds' },
    { code: 'lock-out' },
    { code: 'dc-link' },
    ...(lost.length > 0 ? [{ code: 'reference-position', feedbacks: [...new Set(lost)] } as const] : []),
    ...(step.do === 'look' || acts.some(touchesFibre) ? [{ code: 'fibre-light' } as const] : []),
    ...(acts.some(touchesBoard) ? [{ code: 'esd' } as const] : []),
    ...(acts.some(isExchange) ? [{ code: 'safety-check' } as const] : []),
  ];
}

/** What concerns every switching off, also the short one of a restart. */
function beforeOff(cabinet: Cabinet, evidence: Evidence): readonly StepCaution[] {
  const unnoted = listUnnoted(cabinet, evidence);
  const { axes, unsaid } = hangingAxes(cabinet);
  return [
    ...(unnoted.units.length + unnoted.chains.length > 0 ? [{ code: 'note-first', ...unnoted } as const] : []),
    ...(axes.length + unsaid.axes.length + unsaid.units.length > 0 ? [{ code: 'hanging-axes', axes, unsaid } as const] : []),
  ];
}

/**
 * The axes that hang, and those that may: where nothing is written down of a servo drive's axis it counts as hanging until somebody has
 * looked. A spindle counts as hanging only where that is written down.
 */
export function hangingAxes(cabinet: Cabinet): Omit<Extract<StepCaution, { code: 'hanging-axes' }>, 'code'> {
  const units = [...cabinet.units.values()];
  const servos = units.filter(({ kind }) => kind === 'servo-drive');
  const named = (among: typeof units, hanging: boolean | undefined) =>
    among.flatMap(({ axes }) => (axes ?? []).filter((axis) => axis.hanging === hanging).map(({ name }) => name));
  const bare = [...cabinet.units].filter(([, { kind, axes }]) => kind === 'servo-drive' && (axes ?? []).length === 0).map(([id]) => id);
  return { axes: named(units, true), unsaid: { axes: named(servos, undefined), units: bare } };
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
  return /plug$|^plug-in$|cable|fibres|plugs|board|-unit|port|controller|route/.test(kind);
}

function touchesBoard({ do: kind }: Intervention): boolean {
  return /board|-unit|controller/.test(kind);
}

function isExchange({ do: kind }: Intervention): boolean {
  return /^(replace|exchange)-(board|boards|unit|supply|feedback|controller|controller-port)$/.test(kind);
}
