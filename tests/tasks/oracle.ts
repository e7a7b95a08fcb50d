import type { ChainId, UnitId } from '../../engine/base/index.ts';
import { documentedBehaviour, unknownParameters } from '../../engine/cabinet/index.ts';
import {
  type Behaviour,
  type BehaviourParameter,
  behaviourValues,
  type Fault,
  type FaultMode,
  faultModes,
  type Intervention,
  type ItemKind,
  type Onset,
  type Presence,
  type Snapshot,
} from '../../engine/schema/index.ts';
import { itemKey, simulate } from '../../engine/simulation/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';

/*
 * Which single faults cannot be told from the true one by what was observed: every fault that a cabinet can have is
 * simulated, one after another, under every behaviour that is not known and in every way in which it may be there, and compared with
 * what the true one predicts. Nothing of the diagnosis is used.
 */

export type SettledFault = Fault & { readonly presence: Presence };

/** Every single fault that a cabinet can have (domain section 4), steady and intermittent. */
export function listSingles(cabinet: Cabinet, onset: Snapshot['onset']): readonly SettledFault[] {
  const of = <K extends ItemKind>(item: K, refs: readonly object[]) =>
    refs.flatMap((ref) => faultModes[item].map((mode: FaultMode) => ({ item, ...ref, mode }) as unknown as Fault)); // refs are those of the item
  const links = cabinet.chains.flatMap((chain) => chain.links.map((link) => ({ link })));
  const onChain = cabinet.chains.flatMap((chain) => chain.units.map((unit) => ({ unit })));
  const units = [...cabinet.units].map(([unit, { kind }]) => ({ unit, kind }));
  const drives = units.filter(({ kind }) => kind !== 'supply').map(({ unit }) => ({ unit }));
  const last = new Set(cabinet.chains.map((chain) => chain.units[chain.units.length - 1]));
  const all = [
    ...of('cable', links),
    ...of(
      'plug',
      links.flatMap(({ link }) => [
        { link, end: 'upper' },
        { link, end: 'lower' },
      ]),
    ),
    ...of('route', links),
    ...of('board', onChain),
    ...of('fuse', drives),
    ...of('place', drives),
    ...of('wiring', onChain),
    ...of(
      'controller-port',
      cabinet.chains.filter((chain) => chain.units.length > 0).map(({ id }) => ({ chain: id })),
    ),
    ...of('controller', [{}]),
    ...of(
      'lead',
      cabinet.feeds.map(({ lead }) => ({ lead })),
    ),
    ...of(
      'supply',
      units.filter(({ kind }) => kind === 'supply').map(({ unit }) => ({ unit })),
    ),
    ...of(
      'feedback',
      [...cabinet.feedbacks].filter(([, { plugged }]) => plugged !== false).map(([feedback]) => ({ feedback })),
    ),
  ];
  const isMistake = ({ item, mode }: Fault) => item === 'wiring' || mode === 'fibres-crossed';
  return all
    .filter((fault) => !(fault.item === 'board' && fault.mode.startsWith('down-') && last.has(fault.unit as UnitId)))
    .filter((fault) => !(isMistake(fault) && onset === 'while-running'))
    .flatMap((fault): SettledFault[] =>
      isMistake(fault) || fault.item === 'fuse'
        ? [{ ...fault, presence: 'steady' }]
        : [
            { ...fault, presence: 'steady' },
            { ...fault, presence: 'intermittent' },
          ],
    );
}

/**
 * The hypotheses that predict the same as the true one of all that was observed, look by look. Where two things are wrong, those
 * of two faults are found by exchanging one of them at a time, then both: all pairs of a large cabinet would take hours.
 */
export function findAlike(
  cabinet: Cabinet,
  looks: readonly Snapshot[],
  truth: readonly SettledFault[],
): readonly (readonly SettledFault[])[] {
  const wanted = signature(cabinet, looks, truth);
  const isAlike = (faults: readonly SettledFault[]) => signature(cabinet, looks, faults) === wanted;
  const singles = listSingles(cabinet, looks[0]?.onset);
  const alone = singles.map((fault) => [fault]).filter(isAlike);
  const [a, b] = truth;
  if (a === undefined || b === undefined) return alone;
  const firsts = singles.filter((fault) => itemKey(fault) !== itemKey(b) && isAlike([fault, b]));
  const seconds = singles.filter((fault) => itemKey(fault) !== itemKey(a) && isAlike([a, fault]));
  const pairs = firsts.flatMap((one) => seconds.filter((other) => itemKey(one) !== itemKey(other)).map((other) => [one, other]));
  return [...alone, ...pairs.filter(isAlike)];
}

/** The items of each hypothesis, joined; each once. */
export const itemsOf = (alike: readonly (readonly Fault[])[]): readonly string[] => [
  ...new Set(alike.map((faults) => faults.map(itemKey).sort().join(' + '))),
];

/**
 * Everything a hypothesis predicts of the observed: for each behaviour, onset and look the set of what may be seen. Whether a fault that
 * comes and goes is there is drawn anew for each look, so that the sets of the looks say all that the joint patterns would.
 */
function signature(cabinet: Cabinet, [first = {}, ...later]: readonly Snapshot[], faults: readonly SettledFault[]): string {
  const onsets: readonly Onset[] =
    first.onset === undefined || first.onset === 'unknown' ? ['while-running', 'at-power-up'] : [first.onset];
  const ways = waysToBeThere(faults);
  const parts: string[] = [];
  for (const behaviourOf of behaviours(cabinet)) {
    const view = { cabinet, behaviourOf, ways };
    for (const onset of onsets) parts.push(predictLook(view, first, onset, []));
    const acts: Intervention[] = [];
    for (const look of later) {
      // Two looks at a machine that stays halted share their trip; this oracle knows those after a restart that went well only.
      if (look.restarted !== true || look.halted !== false) throw new Error('a later look that is not after a restart that went well');
      acts.push(...(look.interventions ?? []));
      parts.push(predictLook(view, look, 'at-power-up', [...acts]));
    }
  }
  return parts.join('\n');
}

/** At the first trip an intermittent fault was there; at every later moment it may be gone. */
function waysToBeThere(faults: readonly SettledFault[]): readonly (readonly Fault[])[] {
  return faults.reduce<readonly (readonly Fault[])[]>(
    (lists, fault) =>
      lists.flatMap((list) =>
        (fault.presence === 'steady' ? [false] : [false, true]).map((absentNow) => [...list, { ...fault, absentNow }]),
      ),
    [[]],
  );
}

interface View {
  readonly cabinet: Cabinet;
  readonly behaviourOf: (unit: UnitId) => Behaviour;
  readonly ways: readonly (readonly Fault[])[];
}

function predictLook({ cabinet, behaviourOf, ways }: View, seen: Snapshot, onset: Onset, beforeTrip: readonly Intervention[]): string {
  const predictions = ways.map((way) => {
    const { displays, reports, trip } = simulate({ cabinet, faults: way, onset, behaviourOf, beforeTrip, halted: seen.halted !== false });
    const isBroken = [...trip.links.values()].some((link) => !link.outbound.hears || !link.return.hears);
    if (seen.halted === !isBroken) return 'excluded';
    return [
      ...(seen.displays ?? []).map(({ unit }) => displays.get(unit as UnitId)?.meaning),
      ...(seen.reports ?? []).map(({ chain }) => reports.get(chain as ChainId)?.gap),
    ].join(' ');
  });
  return [...new Set(predictions)].sort().join(' | ');
}

function* behaviours(cabinet: Cabinet): Generator<(unit: UnitId) => Behaviour> {
  const open: { readonly type: string; readonly parameter: BehaviourParameter }[] = [];
  for (const [unit, { type, kind }] of cabinet.units) {
    for (const parameter of kind === 'supply' || type === undefined ? [] : unknownParameters(cabinet, unit)) {
      if (type !== undefined && !open.some((one) => one.type === type && one.parameter === parameter)) open.push({ type, parameter });
    }
  }
  function* choose(chosen: readonly string[]): Generator<readonly string[]> {
    const next = open[chosen.length];
    if (!next) yield chosen;
    else for (const value of behaviourValues[next.parameter]) yield* choose([...chosen, value]);
  }
  for (const chosen of choose([])) {
    yield (unit) => {
      const type = cabinet.units.get(unit)?.type;
      const own = open.flatMap((one, index) => (one.type === type ? [[one.parameter, chosen[index]]] : []));
      return { ...documentedBehaviour(cabinet, unit), ...(Object.fromEntries(own) as Partial<Behaviour>) }; // values of their own parameters
    };
  }
}
