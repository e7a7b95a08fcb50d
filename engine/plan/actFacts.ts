import type { UnitId } from '../base/index.ts';
import { checkCabinet, defaultBehaviour } from '../cabinet/index.ts';
import {
  type ActKind,
  actKinds,
  type CabinetContent,
  type Fault,
  faultModes,
  type Intervention,
  type ItemKind,
  itemKinds,
} from '../schema/index.ts';
import { arrange, effectsOf } from '../simulation/index.ts';
import { listCautions, type StepCaution } from '../steps/index.ts';
import type { Cabinet } from '../topology/index.ts';

/** Modes of one kind of item or place. `isAll`: all that it has. */
export interface ItemModes {
  readonly item: ItemKind;
  readonly modes: readonly string[];
  readonly isAll: boolean;
}

/** What an act does wherever it is done. */
export interface ActFacts {
  readonly mends: readonly ItemModes[];
  /** Faults that go elsewhere with what is exchanged. */
  readonly moves: readonly ItemModes[];
  /** Meanwhile the 24 V pass-through and the battery feed of the unit are open. */
  readonly opensFeed: boolean;
  /** Cautions besides those of every switching off. */
  readonly cautions: readonly StepCaution[];
}

const subject = { unit: 'u2', other: 'u3', link: 'w2', end: 'upper', lead: 'p2', feedback: 'g2', chain: 'c1', supply: 's1' } as const;

/** The smallest cabinet in which each act has something to be done to, with a neighbour on both sides. */
const probe: CabinetContent = {
  id: 'probe',
  name: 'probe',
  controller: { id: 'nc', designation: '-K' },
  chains: [{ id: 'c1', number: 1 }],
  units: [
    { id: 's1', kind: 'supply', designation: '-S' },
    ...[1, 2, 3].map((n) => ({ id: `u${n}`, kind: 'servo-drive' as const, designation: `-T${n}`, board: { partNumber: 'x' } })),
  ],
  links: [1, 2, 3].map((n) => ({
    id: `w${n}`,
    designation: `-W${n}`,
    upper: n === 1 ? { chain: 'c1' } : { unit: `u${n - 1}` },
    lower: { unit: `u${n}` },
  })),
  leads: [1, 2, 3].map((n) => ({ id: `p${n}`, from: { unit: 's1' }, to: { unit: `u${n}` } })),
  feedbacks: [1, 2, 3].map((n) => ({ id: `g${n}`, unit: `u${n}`, positionKept: 'battery-in-unit' as const })),
};

/** Said with every switching off already. */
const usual: readonly StepCaution['code'][] = ['note-first', 'all-feeds', 'lock-out', 'dc-link', 'hanging-axes'];

const takingOut: readonly ActKind[] = ['take-out-unit', 'reseat-unit', 'replace-unit'];

let known: ReadonlyMap<ActKind, ActFacts> | null = null;

/** What each act mends and moves, by the simulation of one on a small cabinet, and what it endangers. */
export function actFacts(act: ActKind): ActFacts {
  known ??= new Map(actKinds.map((kind) => [kind, findFacts(kind)]));
  const facts = known.get(act);
  if (facts === undefined) throw new Error(`no facts of ${act}`);
  return facts;
}

function findFacts(kind: ActKind): ActFacts {
  const { cabinet } = checkCabinet(probe);
  if (cabinet === null) throw new Error('the probe is not sound');
  const done = actOn(kind);
  // What is put back or undone was taken away before.
  const before = kind === 'plug-in' ? [actOn('unplug')] : [];
  const mended: Fault[] = [];
  const moved: Fault[] = [];
  for (const fault of everyFault()) {
    const then = placesOf(cabinet, fault, before);
    const now = placesOf(cabinet, fault, [...before, done]);
    if (then !== '[]' && now === '[]') mended.push(fault);
    else if (then !== now) moved.push(fault);
  }
  return {
    mends: byItem(mended),
    moves: byItem(moved),
    opensFeed: takingOut.includes(kind),
    cautions: listCautions(cabinet, { snapshots: [] }, { do: 'act', acts: [done] }).filter(({ code }) => !usual.includes(code)),
  };
}

const placesOf = (cabinet: Cabinet, fault: Fault, acts: readonly Intervention[]): string =>
  JSON.stringify(effectsOf(fault, cabinet, arrange(cabinet, acts), (_unit: UnitId) => defaultBehaviour));

/** Every fault of what an act may be done to. */
function everyFault(): readonly Fault[] {
  return itemKinds.flatMap((item) =>
    faultModes[item].map((mode) => {
      const { unit, link, end, lead, feedback, chain, supply } = subject;
      const at = {
        cable: { link },
        plug: { link, end },
        route: { link },
        board: { unit },
        fuse: { unit },
        place: { unit },
        wiring: { unit },
        'controller-port': { chain },
        controller: {},
        lead: { lead },
        supply: { unit: supply },
        feedback: { feedback },
      }[item];
      return { item, ...at, mode } as Fault; // item, place and mode belong together by the table
    }),
  );
}

function actOn(kind: ActKind): Intervention {
  const { unit, other, link, end, lead, feedback, chain, supply } = subject;
  const on: { readonly [K in ActKind]: object } = {
    unplug: { link, end },
    'plug-in': { link, end },
    'reseat-plug': { link, end },
    'clean-plug': { link, end },
    're-route': { link },
    'replace-cable': { link },
    'exchange-cables': { link, other: 'w3' },
    'turn-cable': { link },
    'uncross-fibres': { link },
    'uncross-plugs': { unit },
    'replace-board': { unit },
    'exchange-boards': { unit, other },
    'replace-unit': { unit },
    'reseat-unit': { unit },
    'take-out-unit': { unit },
    'put-back-unit': { unit },
    'replace-fuse': { unit },
    'replace-supply': { unit: supply },
    'replace-lead': { lead },
    'replace-controller-port': { chain },
    'replace-controller': {},
    'pull-feedback': { feedback },
    'plug-feedback': { feedback },
    'replace-feedback': { feedback },
    'bridge-unit': { unit, cable: link },
    'unbridge-unit': { unit },
  };
  return { do: kind, ...on[kind] } as Intervention; // what each act is done to stands in the table
}

function byItem(faults: readonly Fault[]): readonly ItemModes[] {
  return itemKinds.flatMap((item): ItemModes | readonly ItemModes[] => {
    const modes = faults.filter((fault) => fault.item === item).map(({ mode }) => mode);
    return modes.length === 0 ? [] : { item, modes, isAll: modes.length === faultModes[item].length };
  });
}
