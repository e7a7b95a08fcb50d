import {
  type Behaviour,
  behaviourParameters,
  behaviourValues,
  type CabinetContent,
  type Fault,
  type UnitRecord,
} from '../../../engine/schema/index.ts';

/** One state of the machine as the solver is asked about it: its trip, its now (equal when not halted), and what was seen. */
export interface SolverSnapshot {
  readonly onset: 'while-running' | 'at-power-up';
  /** Left out: not observed (a trip is assumed, and no rule about broken chains applies). */
  readonly halted?: boolean;
  /** Switched off and on since the snapshot before: a trip of its own. The first has one in any case. */
  readonly restarted?: boolean;
  /** Unit → meanings that fit what was read. */
  readonly displays?: ReadonlyMap<string, readonly string[]>;
  /** Chain → gaps that fit what was read. */
  readonly reports?: ReadonlyMap<string, readonly (number | 'none')[]>;
}

const text = (value: string): string => JSON.stringify(value);

/** The cabinet file as atoms: nothing derived, no engine code but the file's own words. Sums (section 8) are left out. */
export function cabinetFacts(content: CabinetContent): string {
  const lines: string[] = [];
  const add = (name: string, ...args: readonly (string | number)[]) =>
    lines.push(`${name}${args.length === 0 ? '' : `(${args.map((a) => (typeof a === 'number' ? a : text(a))).join(',')})`}.`);
  for (const unit of content.units ?? []) {
    if (unit.kind === 'supply') {
      add('supply', unit.id);
      continue;
    }
    add(unit.onChain === false ? 'offUnit' : 'chainUnit', unit.id);
    const behaviour = writtenBehaviour(content, unit);
    for (const parameter of behaviourParameters) add('beh', unit.id, parameter, behaviour[parameter]);
  }
  if (content.controller?.powered !== false) add('controllerPowered');
  for (const chain of content.chains ?? []) {
    add('chain', chain.id);
    if ((chain.behaviour?.onReceiveLoss ?? behaviourValues.onReceiveLoss[0]) === 'mute') add('portMute', chain.id);
    if ((chain.behaviour?.idleLight ?? behaviourValues.idleLight[0]) === 'yes') add('portIdleLight', chain.id);
  }
  for (const link of content.links ?? []) {
    if (link.upper !== undefined) {
      if ('chain' in link.upper) add('fromPort', link.id, link.upper.chain);
      else add('fromUnit', link.id, link.upper.unit);
    }
    if (link.lower !== undefined) add('toUnit', link.id, link.lower.unit);
  }
  for (const lead of content.leads ?? []) {
    if (lead.from !== undefined && lead.to !== undefined) add('lead', lead.id, lead.from.unit, lead.to.unit);
  }
  for (const feedback of content.feedbacks ?? []) {
    add('feedback', feedback.id, feedback.unit);
    if (feedback.plugged !== false) add('plugged', feedback.id);
  }
  return lines.join('\n');
}

/** Behaviour as the file writes it; what is left out has its default, the first value of the domain's table. Unknown is refused. */
function writtenBehaviour(content: CabinetContent, unit: UnitRecord): Behaviour {
  const written = content.types?.find((type) => type.id === unit.type)?.behaviour ?? {};
  const entries = behaviourParameters.map((parameter) => {
    const value = written[parameter] ?? behaviourValues[parameter][0];
    if (value === 'unknown') throw new Error('the solver is not asked about unknown behaviour');
    return [parameter, value] as const;
  });
  // Every parameter is there, each with one of its own values.
  return Object.fromEntries(entries) as Behaviour;
}

/**
 * Names of the moments of each snapshot: one that is not halted has only its now; another shares the trip of the one before, unless
 * there was a restart or the one before was not halted.
 */
export function momentNames(snapshots: readonly SolverSnapshot[]): readonly { trip: string; now: string }[] {
  const names: { trip: string; now: string }[] = [];
  snapshots.forEach((snapshot, i) => {
    const now = `now${i}`;
    const before = names[i - 1];
    const shared = before !== undefined && snapshot.restarted !== true && snapshots[i - 1]?.halted !== false;
    if (snapshot.halted === false) names.push({ trip: now, now });
    else if (shared) names.push({ trip: before.trip, now });
    else names.push({ trip: `trip${i}`, now });
  });
  return names;
}

/** Moments, snapshots, onsets and observations as atoms. A look before the first trip is like any look: present or not. */
export function snapshotFacts(snapshots: readonly SolverSnapshot[]): string {
  const lines: string[] = [];
  const names = momentNames(snapshots);
  const firstHalted = snapshots.findIndex((snapshot) => snapshot.halted !== false);
  snapshots.forEach((snapshot, i) => {
    const { trip, now } = names[i] ?? { trip: '', now: '' };
    lines.push(`moment(${text(trip)}). moment(${text(now)}). snapshot(${i},${text(trip)},${text(now)}).`);
    if (i === firstHalted) lines.push(`firstTrip(${text(trip)}).`);
    lines.push(`onset(${i},${text(snapshot.onset)}).`);
    if (snapshot.halted === true) lines.push(`halted(${i}).`);
    if (snapshot.halted === false) lines.push(`notHalted(${i}).`);
    for (const [unit, meanings] of snapshot.displays ?? []) {
      lines.push(`seen(${i},${text(unit)}).`);
      for (const meaning of meanings) lines.push(`seenMeaning(${i},${text(unit)},${text(meaning)}).`);
    }
    for (const [chain, gaps] of snapshot.reports ?? []) {
      lines.push(`read(${i},${text(chain)}).`);
      for (const gap of gaps) lines.push(`readGap(${i},${text(chain)},${gap === 'none' ? text('none') : gap}).`);
    }
  });
  return lines.join('\n');
}

/** The item of a fault in the program's words: kind, reference, part; and the mode there. A fibre's mode is cut in two. */
export function faultWords(fault: Fault): { readonly kind: string; readonly ref: string; readonly part: string; readonly mode: string } {
  switch (fault.item) {
    case 'cable': {
      const fibre = /^(outbound|return)-(cut|dim)$/.exec(fault.mode);
      const [, direction, mode] = fibre ?? [];
      return direction === undefined || mode === undefined
        ? { kind: 'cable', ref: fault.link, part: '', mode: fault.mode }
        : { kind: 'fibre', ref: fault.link, part: direction, mode };
    }
    case 'plug':
      return { kind: 'plug', ref: fault.link, part: fault.end, mode: fault.mode };
    case 'route':
      return { kind: 'route', ref: fault.link, part: '', mode: fault.mode };
    case 'controller-port':
      return { kind: fault.item, ref: fault.chain, part: '', mode: fault.mode };
    case 'controller':
      return { kind: fault.item, ref: '', part: '', mode: fault.mode };
    case 'lead':
      return { kind: fault.item, ref: fault.lead, part: '', mode: fault.mode };
    case 'feedback':
      return { kind: fault.item, ref: fault.feedback, part: '', mode: fault.mode };
    default:
      return { kind: fault.item, ref: fault.unit, part: '', mode: fault.mode };
  }
}

/** Given faults as atoms for a single snapshot; `absentNow` says that an intermittent one is gone now. */
export function faultFacts(faults: readonly Fault[], now: string): string {
  return faults
    .map((fault) => {
      const { kind, ref, part, mode } = faultWords(fault);
      const item = `it(${[kind, ref, part].map(text).join(',')})`;
      const presence = fault.presence ?? 'steady';
      const gone = presence === 'intermittent' && fault.absentNow === true ? ` absent(${item},${text(now)}).` : '';
      return `fault(${item},${text(mode)},${text(presence)}).${gone}`;
    })
    .join('\n');
}
