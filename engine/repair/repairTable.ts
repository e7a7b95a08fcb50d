import { type ActKind, actKinds, type CabinetContent, type Intervention, type MachineState } from '../schema/index.ts';
import { findWaitingTime } from '../sums/index.ts';
import { buildTopology } from '../topology/index.ts';
import {
  type ActRow,
  type ChanceName,
  type ChangePart,
  chanceNames,
  type Figure,
  type LookName,
  type LookRow,
  type RepairTable,
  type WeightName,
  weightNames,
} from './types.ts';

const assumed = 'assumed';

/** Minutes of hands, worth of the parts in minutes, state needed. All assumed: a cabinet has its own where it matters. */
const usualActs: { readonly [K in ActKind]: readonly [minutes: number, partMinutes: number, state: MachineState] } = {
  unplug: [1, 0, 'isolated'],
  'plug-in': [1, 0, 'isolated'],
  'reseat-plug': [2, 0, 'isolated'],
  'clean-plug': [4, 1, 'isolated'],
  're-route': [15, 0, 'isolated'],
  'replace-cable': [12, 30, 'isolated'],
  'exchange-cables': [16, 0, 'isolated'],
  'turn-cable': [8, 0, 'isolated'],
  'uncross-fibres': [5, 0, 'isolated'],
  'uncross-plugs': [3, 0, 'isolated'],
  'replace-board': [20, 240, 'isolated'],
  'exchange-boards': [30, 0, 'isolated'],
  'replace-unit': [40, 480, 'isolated'],
  'reseat-unit': [20, 0, 'isolated'],
  'take-out-unit': [15, 0, 'isolated'],
  'put-back-unit': [15, 0, 'isolated'],
  'replace-fuse': [5, 2, 'isolated'],
  'replace-supply': [60, 480, 'isolated'],
  'replace-lead': [15, 15, 'isolated'],
  'replace-controller-port': [40, 300, 'isolated'],
  'replace-controller': [120, 1000, 'isolated'],
  'pull-feedback': [3, 0, 'isolated'],
  'plug-feedback': [3, 0, 'isolated'],
  'replace-feedback': [30, 60, 'isolated'],
  'bridge-unit': [5, 0, 'isolated'],
  'unbridge-unit': [5, 0, 'isolated'],
};

/** Minutes and state of the looks. Light and 24 V are there only while the machine is on; through a removed cable one looks with it off. */
const usualLooks: { readonly [L in LookName]: readonly [minutes: number, state: MachineState] } = {
  display: [1, 'open'],
  report: [1, 'closed'],
  'light-at-plug': [3, 'open'],
  'light-at-port': [3, 'open'],
  lamp: [6, 'isolated'],
  voltage: [4, 'open'],
  'compare-plugs': [3, 'open'],
  'compare-fibres': [3, 'open'],
};

const usualChanges: { readonly [C in ChangePart]: number } = { open: 2, close: 1, lockOut: 3, discharge: 5, boot: 4, referencing: 15 };

/** `liveWork`: each look or act behind open doors under power; `partWait`: a part that is not in stock; `comeback`: called again because it was not mended; `outsideHelp`: giving up. */
const usualWeights: { readonly [W in WeightName]: number } = {
  liveWork: 2,
  referencePosition: 30,
  spoiledPart: 10,
  partWait: 120,
  comeback: 180,
  outsideHelp: 960,
};

const usualChances: { readonly [C in ChanceName]: number } = { handlingFault: 0.01, badSpare: 0.01, unknownFit: 0.5 };

/**
 * The repair table of a cabinet: its own figures (`repair`, `times`) in the place of the usual ones, all in minutes or worth so many,
 * each with its origin. The discharge time is that of the DC-link sums where the cabinet names none itself and they give one.
 */
export function repairTable(content: CabinetContent): RepairTable {
  const { repair, times } = content;
  const own = (repair?.acts ?? []).map((row): ActRow => {
    const [minutes, partMinutes, state] = usualActs[row.act];
    return {
      act: row.act,
      subject: row.subject ?? null,
      minutes: figure(minutes, row.minutes, row.source),
      partMinutes: figure(partMinutes, row.partMinutes, row.source),
      state: row.state ?? state,
    };
  });
  const usual = actKinds.map((act): ActRow => {
    const [minutes, partMinutes, state] = usualActs[act];
    return { act, subject: null, minutes: figure(minutes), partMinutes: figure(partMinutes), state };
  });
  const { weights, chances } = repair ?? {};
  return {
    acts: [...own.filter(({ subject }) => subject !== null), ...own.filter(({ subject }) => subject === null), ...usual],
    looks: mapValues(usualLooks, ([minutes, state]): LookRow => ({ minutes: figure(minutes), state })),
    changes: {
      open: figure(usualChanges.open, times?.openMinutes),
      close: figure(usualChanges.close),
      lockOut: figure(usualChanges.lockOut),
      discharge: times?.dischargeMinutes === undefined ? dischargeBySums(content) : figure(usualChanges.discharge, times.dischargeMinutes),
      boot: figure(usualChanges.boot, times?.bootMinutes),
      referencing: figure(usualChanges.referencing, times?.referencingMinutes),
    },
    weights: named(weightNames, (name) => figure(usualWeights[name], weights?.[name], weights?.source)),
    chances: named(chanceNames, (name) => figure(usualChances[name], chances?.[name], chances?.source)),
  };
}

/** Discharge to a safe voltage by the DC-link sums (domain section 8); the usual figure where they give none. */
function dischargeBySums(content: CabinetContent): Figure {
  const seconds = findWaitingTime(buildTopology(content).topology);
  // A tenth of a minute, rounded up: nobody opens too early.
  return seconds === null ? figure(usualChanges.discharge) : { value: Math.ceil(seconds / 6) / 10, origin: 'sums' };
}

function figure(usual: number, own?: number, source?: string): Figure {
  return own === undefined ? { value: usual, origin: assumed } : { value: own, origin: source ?? 'cabinet' };
}

function named<N extends string>(names: readonly N[], of: (name: N) => Figure): { readonly [K in N]: Figure } {
  return Object.fromEntries(names.map((name) => [name, of(name)])) as { [K in N]: Figure }; // every name is there
}

function mapValues<K extends string, A, B>(record: { readonly [P in K]: A }, of: (value: A) => B): { readonly [P in K]: B } {
  return Object.fromEntries(Object.entries<A>(record).map(([key, value]) => [key, of(value)])) as { [P in K]: B }; // every key is there
}

/** The row that holds for an act: that of its subject, else the cabinet's own, else the usual one. Every kind of act has one. */
export function rowOf(table: RepairTable, act: Intervention): ActRow {
  const subjects = subjectsOf(act);
  const row = table.acts.find((one) => one.act === act.do && (one.subject === null || subjects.includes(one.subject)));
  if (row === undefined) {
    throw new Error(`no row for ${act.do}`);
  }
  return row;
}

/** The acts of which one thing can have figures of its own, by what it is. */
export function actsOfThing(content: CabinetContent, id: string): readonly ActKind[] {
  const unit = content.units?.find((one) => one.id === id);
  if (unit !== undefined) return unit.kind === 'supply' ? ofSupplies : ofUnits;
  if (content.links?.some((one) => one.id === id)) return ofLinks;
  if (content.leads?.some((one) => one.id === id)) return ['replace-lead'];
  if (content.feedbacks?.some((one) => one.id === id)) return ['pull-feedback', 'replace-feedback'];
  return content.chains?.some((one) => one.id === id) ? ['replace-controller-port'] : [];
}

const ofUnits = [
  'replace-unit',
  'reseat-unit',
  'take-out-unit',
  'replace-board',
  'exchange-boards',
  'replace-fuse',
  'bridge-unit',
] as const;
const ofSupplies = ['replace-supply'] as const;
const ofLinks = ['replace-cable', 'exchange-cables', 'turn-cable', 're-route', 'reseat-plug', 'clean-plug'] as const;

/** Ids of what an act is done to. */
export function subjectsOf(act: Intervention): readonly string[] {
  const { do: _do, end: _end, spare: _spare, serial: _serial, ...ids } = act as Readonly<Record<string, string>>;
  return Object.values(ids);
}
