import fc from 'fast-check';
import {
  type Behaviour,
  behaviourValues,
  type CabinetContent,
  type Fault,
  faultModes,
  linkEnds,
  presences,
} from '../../engine/schema/index.ts';

/*
 * Random small cabinets and faults for the comparison with general solvers. They are written here, apart from the generators of the
 * other tests, and use nothing but the file's own words, so that both sides of a comparison start from the file.
 */

const oneOf = <const V extends readonly [unknown, ...unknown[]]>(values: V): fc.Arbitrary<V[number]> => fc.constantFrom(...values);

const behaviour: fc.Arbitrary<Behaviour> = fc.record({
  lossScope: oneOf(behaviourValues.lossScope),
  onReceiveLoss: oneOf(behaviourValues.onReceiveLoss),
  idleLight: oneOf(behaviourValues.idleLight),
  complainsFrom: oneOf(behaviourValues.complainsFrom),
  whenBoth: oneOf(behaviourValues.whenBoth),
  holds: oneOf(behaviourValues.holds),
  shortEffect: oneOf(behaviourValues.shortEffect),
});

interface UnitDraw {
  readonly kind: 'servo-drive' | 'spindle-drive' | 'encoder-interface';
  readonly type: number;
  /** From which supply or earlier unit it is fed; taken modulo their number. */
  readonly fedFrom: number;
  readonly secondFeed: number | null;
  readonly feedback: 'none' | 'plugged' | 'unplugged';
}

const unitDraw: fc.Arbitrary<UnitDraw> = fc.record({
  kind: oneOf(['servo-drive', 'spindle-drive', 'encoder-interface'] as const),
  type: fc.nat(1),
  fedFrom: fc.nat(99),
  secondFeed: fc.option(fc.nat(99), { freq: 4 }),
  feedback: oneOf(['none', 'plugged', 'unplugged'] as const),
});

/** How large a random cabinet may be. */
export interface SmallCabinetSize {
  readonly chains: number;
  readonly unitsPerChain: number;
}

/**
 * A sound cabinet of at most this size: 1 or 2 supplies, fed as a tree with now and then a second feed, perhaps a drive off the chain;
 * in one of eight no lead is written down.
 */
export function smallCabinet({ chains, unitsPerChain }: SmallCabinetSize): fc.Arbitrary<CabinetContent> {
  return fc
    .record({
      chains: fc.array(
        fc.record({ mute: fc.boolean(), idleLight: fc.boolean(), units: fc.array(unitDraw, { minLength: 1, maxLength: unitsPerChain }) }),
        {
          minLength: 1,
          maxLength: chains,
        },
      ),
      offChain: fc.option(unitDraw, { freq: 3 }),
      supplies: fc.integer({ min: 1, max: 2 }),
      types: fc.tuple(behaviour, behaviour),
      areLeadsDocumented: fc.nat(7).map((n) => n > 0),
    })
    .map((draw): CabinetContent => {
      const sources = Array.from({ length: draw.supplies }, (_, s) => `s${s + 1}`);
      const units: NonNullable<CabinetContent['units']> = sources.map((id) => ({ id, kind: 'supply', designation: id }));
      const links: NonNullable<CabinetContent['links']> = [];
      const leads: NonNullable<CabinetContent['leads']> = [];
      const feedbacks: NonNullable<CabinetContent['feedbacks']> = [];
      const place = (id: string, unit: UnitDraw, onChain: boolean) => {
        const kind = !onChain && unit.kind === 'encoder-interface' ? 'servo-drive' : unit.kind;
        units.push({ id, kind, designation: id, type: `t${unit.type}`, ...(onChain ? {} : { onChain }) });
        const feeds = new Set([unit.fedFrom, unit.secondFeed ?? unit.fedFrom].map((n) => sources[n % sources.length] ?? 's1'));
        for (const from of feeds) leads.push({ id: `p${leads.length + 1}`, from: { unit: from }, to: { unit: id } });
        if (unit.feedback !== 'none') feedbacks.push({ id: `f-${id}`, unit: id, plugged: unit.feedback === 'plugged' });
        sources.push(id);
      };
      draw.chains.forEach((chain, c) => {
        chain.units.forEach((unit, i) => {
          const id = `u${c + 1}${i + 1}`;
          place(id, unit, true);
          links.push({
            id: `w${c + 1}${i + 1}`,
            upper: i === 0 ? { chain: `c${c + 1}` } : { unit: `u${c + 1}${i}` },
            lower: { unit: id },
          });
        });
      });
      if (draw.offChain !== null) place('off1', draw.offChain, false);
      return {
        id: 'small',
        name: 'Small cabinet',
        controller: { id: 'k', designation: 'k' },
        chains: draw.chains.map((chain, c) => ({
          id: `c${c + 1}`,
          number: c + 1,
          behaviour: { onReceiveLoss: chain.mute ? 'mute' : 'keep', idleLight: chain.idleLight ? 'yes' : 'no' },
        })),
        units,
        links,
        leads: draw.areLeadsDocumented ? leads : [],
        feedbacks,
        types: draw.types.map((b, t) => ({ id: `t${t}`, name: `Type ${t}`, behaviour: b })),
      };
    });
}

/** Every fault that a part of this cabinet can have in itself, steady, whatever its weight as a hypothesis. */
export function allSteadyFaults(content: CabinetContent): readonly Fault[] {
  const faults: Fault[] = [];
  for (const { id: link } of content.links ?? []) {
    faults.push(...faultModes.cable.map((mode): Fault => ({ item: 'cable', link, mode })));
    faults.push(...linkEnds.flatMap((end) => faultModes.plug.map((mode): Fault => ({ item: 'plug', link, end, mode }))));
    faults.push({ item: 'route', link, mode: 'kinked' });
  }
  for (const { id: unit, kind, onChain } of content.units ?? []) {
    if (kind === 'supply') {
      faults.push(...faultModes.supply.map((mode): Fault => ({ item: 'supply', unit, mode })));
      continue;
    }
    faults.push({ item: 'fuse', unit, mode: 'open' }, { item: 'place', unit, mode: 'contact-bad' });
    if (onChain === false) continue;
    faults.push(...faultModes.board.map((mode): Fault => ({ item: 'board', unit, mode })));
    faults.push({ item: 'wiring', unit, mode: 'crossed' });
  }
  for (const { id: chain } of content.chains ?? []) faults.push({ item: 'controller-port', chain, mode: 'dead' });
  faults.push({ item: 'controller', mode: 'all-ports-dead' });
  for (const { id: lead } of content.leads ?? []) faults.push({ item: 'lead', lead, mode: 'open' });
  for (const { id: feedback } of content.feedbacks ?? []) faults.push({ item: 'feedback', feedback, mode: 'short' });
  return faults;
}

/** One to `max` random faults of this cabinet on different items, some of them intermittent and perhaps gone now. */
export function someFaults(content: CabinetContent, max: number): fc.Arbitrary<readonly Fault[]> {
  // First the kind, then the fault: else the many faults of boards and cables would leave hardly a run for the others.
  const byKind = new Map<string, Fault[]>();
  for (const fault of allSteadyFaults(content)) byKind.set(fault.item, [...(byKind.get(fault.item) ?? []), fault]);
  const anyFault = fc.constantFrom(...byKind.values()).chain((faults) => fc.constantFrom(...faults));
  const one = fc
    .record({ fault: anyFault, presence: oneOf(presences), absentNow: fc.boolean() })
    .map(({ fault, presence, absentNow }): Fault => {
      const onlySteady = fault.item === 'fuse' || fault.item === 'wiring' || fault.mode === 'fibres-crossed';
      return presence === 'steady' || onlySteady ? { ...fault, presence: 'steady' } : { ...fault, presence, absentNow };
    });
  return fc.uniqueArray(one, { minLength: 1, maxLength: max, comparator: exclude });
}

/** Whether two faults do not go together: one mode per board, plug, …; a mode of the whole cable bars every other of that cable. */
function exclude(a: Fault, b: Fault): boolean {
  if (a.item === 'cable' && b.item === 'cable' && a.link === b.link) {
    const [fibreOfA, fibreOfB] = [a.mode, b.mode].map((mode) => /^(outbound|return)-/.exec(mode)?.[1]);
    return fibreOfA === undefined || fibreOfB === undefined || fibreOfA === fibreOfB;
  }
  return itemOf(a) === itemOf(b);
}

function itemOf({ mode: _mode, presence: _presence, absentNow: _absentNow, ...reference }: Fault): string {
  return JSON.stringify(reference);
}
