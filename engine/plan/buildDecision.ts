import type { UnitId } from '../base/index.ts';
import type { Diagnosis } from '../diagnosis/index.ts';
import { changeCost, type RepairTable, rowOf } from '../repair/index.ts';
import { type Evidence, type Fault, type Intervention, type MachineState, machineStates, type Provocation } from '../schema/index.ts';
import { modeKey } from '../simulation/index.ts';
import {
  type BehaviourScenario,
  bulkOf,
  chanceWhile,
  type LookStep,
  likelyBehaviours,
  makeSetting,
  makeSettingAt,
  predictStep,
  type Setting,
  type Step,
} from '../steps/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { listCandidates } from './candidates.ts';
import { actCost, lookCost, type OwnCost, provocationCost, restartCost, sumOf } from './costs.ts';
import type { Decision, DecisionAct, DecisionLook, Spread } from './decision.ts';
import { mostActs } from './decision.ts';
import { plugsToPutBack } from './history.ts';
import { machineStateOf } from './machineState.ts';
import { type Cures, Workshop, type World, worldOf } from './worlds.ts';

export interface LookEntry {
  readonly step: LookStep;
  readonly own: OwnCost;
  /** Outcomes of each world now. */
  readonly spreads: readonly ReadonlyMap<string, number>[];
}

export interface ActEntry {
  readonly act: Intervention;
  readonly own: OwnCost;
  readonly cures: Cures;
  /** Probability that it works at all. */
  readonly works: number;
}

export interface ProvocationEntry {
  readonly step: Extract<Step, { do: 'provoke' }>;
  readonly minutes: number;
}

/** A cabinet's repair laid out for planning. Index by index `looks`, `acts` and `provocations` are those of the decision. */
export interface Built {
  readonly decision: Decision;
  readonly worlds: readonly World[];
  /** For each world the world of the decision that stands for it: those that nothing tells apart are one. */
  readonly groupOf: readonly number[];
  readonly looks: readonly LookEntry[];
  readonly acts: readonly ActEntry[];
  readonly provocations: readonly ProvocationEntry[];
  /** Feedback plugs that go in again with whatever is done next. */
  readonly plugs: readonly { readonly act: Intervention; readonly minutes: number }[];
  readonly seen: readonly number[];
  readonly setting: Setting;
  readonly workshop: Workshop;
  /** Share of the suspects' probability that the worlds make up. */
  readonly covered: number;
}

/** As `decisionInPieces`, in one piece. */
export function buildDecision(...given: Parameters<typeof decisionInPieces>): Built {
  const work = decisionInPieces(...given);
  let next = work.next();
  while (next.done !== true) {
    next = work.next();
  }
  return next.value;
}

/**
 * Lays out suspects, looks, acts and costs. `extra`: worlds with faults that handling may have added, with their probability. Yields the
 * share that is done every millisecond or so, so that it may be left off.
 */
export function* decisionInPieces(
  cabinet: Cabinet,
  evidence: Evidence,
  diagnosis: Diagnosis,
  table: RepairTable,
  extra: readonly World[],
): Generator<number, Built, void> {
  const scenarios = likelyBehaviours(cabinet, diagnosis);
  const setting = makeSetting(cabinet, evidence, scenarios);
  const { beforeTrip, sinceTrip, halted } = setting.state;
  const workshop = new Workshop(cabinet, [...beforeTrip, ...sinceTrip]);
  const { worlds, covered } = listWorlds(diagnosis, extra);
  const candidates = listCandidates(cabinet, evidence, diagnosis, extra);
  const kits = new Kits(cabinet, scenarios, setting, workshop);
  const faults = distinctFaults(worlds);
  const used = usedSpares(evidence);
  const looks = candidates.looks.map((step) => ({ step, own: lookCost(table, step), spreads: [] as ReadonlyMap<string, number>[] }));
  for (const [index, world] of worlds.entries()) {
    const { setting: there } = kits.of(world);
    for (const { step, spreads } of looks) {
      spreads.push(predictStep(step, there, world.faults));
    }
    yield index / (2 * worlds.length);
  }
  const entries: ActEntry[] = [];
  for (const act of candidates.acts) {
    const own = actCost(cabinet, table, act, used);
    const [source] = own.sources;
    const withSpare: Intervention = source?.spare ? ({ ...act, spare: source.spare } as Intervention) : act; // acts that put a part in name it
    entries.push({ act: withSpare, own, cures: workshop.curesOf(act, faults), works: source?.works ?? 1 });
    yield 0.5 + (0.4 * entries.length) / candidates.acts.length;
  }
  const acts = chooseActs(entries, worlds);
  const plugs = plugsToPutBack(cabinet, evidence).map((act) => ({ act, minutes: rowOf(table, act).minutes.value }));
  // An axis without its encoder is not run to see whether something comes again.
  const provocations = plugs.length > 0 ? [] : listProvocations(worlds);
  const groups = groupWorlds(worlds, looks, acts, kits);
  yield 0.9;
  const spreads = new Spreads(cabinet, kits, looks, acts, groups.members, groups.firsts);
  const change = changeMatrix(table);
  const decision: Decision = {
    weights: groups.weights,
    parts: groups.members.map((world) => kits.of(world).workshop.partsOf(world).length),
    absent: groups.members.map((world) => kits.absent(world)),
    start: machineStateOf(evidence),
    running: !halted,
    change,
    restart: mapStates((from) => restartCost(table, from)),
    looks: looks.map(
      (entry, index): DecisionLook => ({
        state: entry.own.state,
        cost: sumOf(entry.own),
        spread: (epoch) => spreads.of(index, epoch),
      }),
    ),
    acts: acts.map((entry, index) => decisionAct(entry, index, groups.members, kits, table, cabinet, used)),
    provocations: provocations.map(({ step, minutes }) => ({
      cost: minutes,
      absent: groups.members.map((world) => kits.absent(world, provokedChance(step))),
    })),
    comeback: table.weights.comeback.value,
    outsideHelp: table.weights.outsideHelp.value,
  };
  const seen = seenLooks(evidence, looks).flatMap((index) => spreads.of(index, '')?.id ?? []);
  return { decision, worlds, groupOf: groups.groupOf, looks, acts, provocations, plugs, seen, setting, workshop, covered };
}

function listWorlds(diagnosis: Diagnosis, extra: readonly World[]): { readonly worlds: readonly World[]; readonly covered: number } {
  const bulk = bulkOf(diagnosis.hypotheses);
  const sum = bulk.reduce((total, { probability }) => total + probability, 0);
  const handled = extra.reduce((total, { probability }) => total + probability, 0);
  const worlds = [...bulk.map(({ faults, probability }) => worldOf(faults, (probability / (sum || 1)) * (1 - handled))), ...extra];
  return { worlds, covered: sum };
}

function distinctFaults(worlds: readonly World[]): readonly Fault[] {
  return [...new Map(worlds.flatMap(({ faults }) => faults).map((fault) => [modeKey(fault), fault])).values()];
}

/** The acts that mend the most, as many as can be planned with. */
function chooseActs(acts: readonly ActEntry[], worlds: readonly World[]): readonly ActEntry[] {
  const helps = ({ act, cures }: ActEntry, { faults, displacement }: World) =>
    faults.some((fault) => cures.mends(fault)) || (displacement !== null && 'link' in act && act.link === displacement.link);
  const gain = (entry: ActEntry) => entry.works * worlds.reduce((sum, world) => sum + (helps(entry, world) ? world.probability : 0), 0);
  return acts
    .map((entry) => ({ entry, worth: gain(entry) / sumOf(entry.own) }))
    .sort((a, b) => b.worth - a.worth)
    .slice(0, mostActs)
    .map(({ entry }) => entry);
}

function usedSpares({ snapshots }: Evidence): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  for (const act of snapshots.flatMap(({ interventions }) => interventions ?? [])) {
    if ('spare' in act && act.spare !== undefined) {
      used.set(act.spare, (used.get(act.spare) ?? 0) + 1);
    }
  }
  return used;
}

/** Worlds that every look and every act treats alike are one. */
function groupWorlds(worlds: readonly World[], looks: readonly LookEntry[], acts: readonly ActEntry[], kits: Kits) {
  const groups = new Map<string, number>();
  const members: World[] = [];
  const firsts: number[] = [];
  const weights: number[] = [];
  const written = new Map<ReadonlyMap<string, number> | undefined, string>();
  const write = (spread: ReadonlyMap<string, number> | undefined): string => {
    const known = written.get(spread) ?? [...(spread ?? [])].map(([outcome, share]) => `${outcome}${Math.round(share * 1e9)}`).join();
    written.set(spread, known);
    return known;
  };
  const groupOf = worlds.map((world, index) => {
    const shown = looks.map(({ spreads }) => write(spreads[index]));
    const { workshop } = kits.of(world);
    const parts = workshop.partsOf(world);
    const mended = acts.map(
      ({ act, cures }) => `${parts.map((mends) => (mends(act) ? 1 : 0)).join('')}${cures.moves ? modesOf(world.faults) : ''}`,
    );
    const key = `${shown.join('|')} ${mended.join('|')} ${kits.absent(world)} ${world.evidence === null ? '' : index}`;
    const group = groups.get(key) ?? members.length;
    groups.set(key, group);
    if (group === members.length) {
      members.push(world);
      firsts.push(index);
      weights.push(0);
    }
    weights[group] = (weights[group] ?? 0) + world.probability;
    return group;
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0) || 1;
  return { members, firsts, weights: weights.map((weight) => weight / total), groupOf };
}

/** Setting and workshop of each world: those of the evidence, or its own where acts came out otherwise. */
class Kits {
  private readonly own = new Map<Evidence, { readonly setting: Setting; readonly workshop: Workshop }>();
  private readonly usual: { readonly setting: Setting; readonly workshop: Workshop };

  constructor(
    private readonly cabinet: Cabinet,
    readonly scenarios: readonly BehaviourScenario[],
    setting: Setting,
    workshop: Workshop,
  ) {
    this.usual = { setting, workshop };
  }

  of(world: World): { readonly setting: Setting; readonly workshop: Workshop } {
    if (world.evidence === null) {
      return this.usual;
    }
    let kit = this.own.get(world.evidence);
    if (kit === undefined) {
      const setting = makeSetting(this.cabinet, world.evidence, this.scenarios);
      const { beforeTrip, sinceTrip } = setting.state;
      kit = { setting, workshop: new Workshop(this.cabinet, [...beforeTrip, ...sinceTrip]) };
      this.own.set(world.evidence, kit);
    }
    return kit;
  }

  /** Probability that a restart finds the machine running although the world is as it is. */
  absent(world: World, chance?: (fault: Fault) => number): number {
    const { workshop } = this.of(world);
    return world.displacement !== null && workshop.isLoose(world.displacement) ? 0 : workshop.absentChance(world.faults, chance);
  }
}

function modesOf(faults: readonly Fault[]): string {
  return faults.map(modeKey).join();
}

function decisionAct(
  { act, own, cures, works }: ActEntry,
  index: number,
  members: readonly World[],
  kits: Kits,
  table: RepairTable,
  cabinet: Cabinet,
  used: ReadonlyMap<string, number>,
): DecisionAct {
  const bits = Int32Array.from(members, (world) =>
    kits
      .of(world)
      .workshop.partsOf(world)
      .reduce((sum, mends, part) => sum | (mends(act) ? 1 << part : 0), 0),
  );
  const mends = members.reduce((sum, { probability }, world) => sum + (bits[world] === 0 ? 0 : probability), 0);
  // What only goes round the fault leaves the repair itself to be done.
  const later = cures.isProvisional
    ? mends * Math.min(...properRepairs(act).map((proper) => sumOf(actCost(cabinet, table, proper, used))))
    : 0;
  return {
    state: own.state,
    cost: sumOf(own) + later,
    cures: bits,
    fails: 1 - works,
    marks: cures.moves ? `x${index}` : '',
    handling: handlingOf(act),
    isTrial: cures.moves || cures.isProvisional,
  };
}

/** What is done to both plugs of a cable is one handling. */
function handlingOf(act: Intervention): string {
  return 'end' in act ? `${act.do} ${act.link}` : JSON.stringify(act);
}

function properRepairs(act: Intervention): readonly Intervention[] {
  if ('feedback' in act) {
    return [{ do: 'replace-feedback', feedback: act.feedback }];
  }
  return 'link' in act ? [{ do: 'replace-cable', link: act.link }] : 'unit' in act ? [{ do: 'replace-board', unit: act.unit }] : [];
}

/** Ways to bring out what comes and goes: waiting always, moving cables and warming boards where such are suspected. */
function listProvocations(worlds: readonly World[]): readonly ProvocationEntry[] {
  const loose = worlds.flatMap(({ faults }) => faults.filter(({ presence }) => presence === 'intermittent'));
  if (loose.length === 0) {
    return [];
  }
  const subjects = (fits: (fault: Fault) => boolean) =>
    [
      ...new Set(
        loose
          .filter(fits)
          .flatMap((fault) => ('link' in fault ? fault.link : 'unit' in fault ? fault.unit : 'lead' in fault ? fault.lead : [])),
      ),
    ].sort();
  const cables = subjects((fault) => 'link' in fault || fault.item === 'lead');
  const warm = subjects(({ item }) => item === 'board' || item === 'supply');
  const entry = (how: Provocation, of: readonly string[]): ProvocationEntry => ({
    step: { do: 'provoke', how, subjects: of },
    minutes: provocationCost(how),
  });
  return [entry('wait', []), ...(cables.length > 0 ? [entry('flex', cables)] : []), ...(warm.length > 0 ? [entry('warm', warm)] : [])];
}

function provokedChance(step: ProvocationEntry['step']): (fault: Fault) => number {
  return (fault) => chanceWhile(step, fault);
}

/** Looks that were had since anything was last done or restarted. */
function seenLooks({ snapshots }: Evidence, looks: readonly LookEntry[]): readonly number[] {
  let from = snapshots.length - 1;
  while (from > 0 && snapshots[from]?.restarted !== true && (snapshots[from]?.interventions ?? []).length === 0) {
    from -= 1;
  }
  const keys = new Set<string>();
  for (const { displays, reports, looks: seen } of snapshots.slice(Math.max(0, from))) {
    for (const { unit } of displays ?? []) keys.add(keyOf({ do: 'read-display', unit: unit as UnitId })); // the file schema holds plain strings
    for (const { chain } of reports ?? []) keys.add(`report ${chain}`);
    for (const look of seen ?? []) keys.add(keyOf({ do: 'look', look }));
  }
  return looks.flatMap(({ step }, index) => (keys.has(keyOf(step)) ? [index] : []));
}

function keyOf(step: LookStep): string {
  switch (step.do) {
    case 'read-display':
      return `display ${step.unit}`;
    case 'read-report':
      return `report ${step.chain}`;
    case 'look': {
      const { look } = step;
      return `${look.look} ${'link' in look ? look.link : look.unit} ${'end' in look ? look.end : 'fibre' in look ? look.fibre : ''}`;
    }
  }
}

function changeMatrix(table: RepairTable): Decision['change'] {
  return mapStates((from) => mapStates((to) => changeCost(table, from, to)));
}

function mapStates<T>(of: (state: MachineState) => T): { readonly [S in MachineState]: T } {
  return Object.fromEntries(machineStates.map((state) => [state, of(state)])) as { [S in MachineState]: T }; // every state is there
}

/** What looks show now and after restarts, worked out when it is asked for. */
class Spreads {
  private readonly known = new Map<string, Spread | null>();
  private readonly ids = new Map<string, number>();
  private readonly settings = new Map<string, Map<Workshop, Setting>>();

  constructor(
    private readonly cabinet: Cabinet,
    private readonly kits: Kits,
    private readonly looks: readonly LookEntry[],
    private readonly acts: readonly ActEntry[],
    private readonly members: readonly World[],
    /** Index of each member among all worlds. */
    private readonly firsts: readonly number[],
  ) {}

  of(index: number, epoch: string): Spread | null {
    // While the machine runs, looks tell of nothing that is gone for the moment.
    if (epoch.startsWith('+')) {
      return null;
    }
    const key = `${index} ${epoch}`;
    let spread = this.known.get(key);
    if (spread === undefined) {
      spread = this.workOut(index, epoch);
      this.known.set(key, spread);
    }
    return spread;
  }

  private workOut(index: number, epoch: string): Spread | null {
    const entry = this.looks[index];
    if (entry === undefined) {
      return null;
    }
    const spreads = this.members.map((world, member) =>
      epoch === ''
        ? (entry.spreads[this.firsts[member] ?? 0] ?? new Map<string, number>())
        : predictStep(entry.step, this.settingOf(epoch, world), world.faults),
    );
    // It shows the same in every world. Whether it was seen matters now, later nothing of it does.
    if (spreads.every((spread) => spread === spreads[0])) {
      return epoch === '' ? this.constant(entry, spreads[0]) : null;
    }
    const outcomes = [...new Set(spreads.flatMap((spread) => [...spread.keys()]))];
    const rows = new Map<string, { names: string[]; row: Float64Array }>();
    for (const outcome of outcomes) {
      const row = Float64Array.from(spreads, (spread) => spread.get(outcome) ?? 0);
      const name = row.map((share) => Math.round(share * 1e9)).join();
      const like = rows.get(name);
      // Outcomes that are equally likely in every world say the same.
      if (like === undefined) {
        rows.set(name, { names: [outcome], row });
      } else {
        like.names.push(outcome);
        row.forEach((share, world) => {
          like.row[world] = (like.row[world] ?? 0) + share;
        });
      }
    }
    const list = [...rows.values()];
    const name = `${keyOf(entry.step)} ${list.map(({ row }) => row.map((share) => Math.round(share * 1e9)).join()).join('/')}`;
    const id = this.idOf(name);
    return { id, outcomes: list.map(({ names }) => names.join(' ')), rows: list.map(({ row }) => row) };
  }

  private constant({ step }: LookEntry, spread: ReadonlyMap<string, number> | undefined): Spread {
    const outcomes = [...(spread?.keys() ?? [])].join(' ');
    const id = this.idOf(`${keyOf(step)} always ${outcomes}`);
    return { id, outcomes: [outcomes], rows: [new Float64Array(this.members.length).fill(1)] };
  }

  private idOf(name: string): number {
    const id = this.ids.get(name) ?? this.ids.size;
    this.ids.set(name, id);
    return id;
  }

  private settingOf(epoch: string, world: World): Setting {
    const kit = this.kits.of(world);
    if (epoch === '') {
      return kit.setting;
    }
    const known = this.settings.get(epoch) ?? new Map<Workshop, Setting>();
    this.settings.set(epoch, known);
    let setting = known.get(kit.workshop);
    if (setting === undefined) {
      const moved = [...epoch.matchAll(/x(\d+)/g)].flatMap(([, index]) => this.acts[Number(index)]?.act ?? []);
      const beforeTrip = [...kit.workshop.done, ...moved];
      const { ownCodes } = kit.setting.state;
      const state = { onset: 'at-power-up', halted: true, isHaltedSaid: true, ownCodes, beforeTrip, sinceTrip: [] } as const;
      setting = makeSettingAt(this.cabinet, state, [], this.kits.scenarios);
      known.set(kit.workshop, setting);
    }
    return setting;
  }
}
