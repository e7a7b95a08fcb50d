import type {
  Behaviour,
  CabinetContent,
  ChainRecord,
  DisplayMeaning,
  Fault,
  FaultMode,
  LinkEnd,
  LinkRecord,
  LookObservation,
  Onset,
  UnitRecord,
} from '../../engine/schema/index.ts';

/*
 * Sections 1 to 5 of the domain text (engine/DOMAIN.md), written down step by step from the text alone: it reads the file as it is,
 * and shares nothing with the engine but the names of its types. Slow and plain; what the engine says is held against it. Left out
 * are what is done to a cabinet (section 7) and the 24 V sums (section 8).
 */

/** The default of every parameter is the first value of its row in section 3. */
const defaults: Behaviour = {
  lossScope: 'neighbour',
  onReceiveLoss: 'mute',
  idleLight: 'yes',
  complainsFrom: 'link-up',
  whenBoth: 'both',
  holds: 'until-reset',
  shortEffect: 'dark',
};

export interface PlainInput {
  readonly content: CabinetContent;
  /** Those of the trip; `absentNow` ones are gone since. */
  readonly faults: readonly Fault[];
  readonly onset: Onset;
  readonly halted: boolean;
}

/** A look without what was seen. */
type Look = Omit<LookObservation, 'outcomes'>;

/** One chain from the controller outward: `links[i − 1]` is link i, `units[i − 1]` the unit at position i. */
interface PlainChain {
  readonly record: ChainRecord;
  readonly units: readonly string[];
  readonly links: readonly LinkRecord[];
}

interface PlainMoment {
  readonly powered: ReadonlySet<string>;
  readonly alive: ReadonlyMap<string, boolean>;
  readonly shorted: ReadonlySet<string>;
  readonly controllerAlive: ReadonlyMap<string, boolean>;
  readonly lostUp: ReadonlyMap<string, boolean>;
  readonly lostDown: ReadonlyMap<string, boolean>;
  readonly reports: ReadonlyMap<string, number | 'none'>;
}

/** Whether some fault is of this kind, on this thing, in one of these modes (none named: in any). */
const has = (faults: readonly Fault[], item: Fault['item'], at: Readonly<Record<string, unknown>>, ...modes: readonly FaultMode[]) =>
  faults.some(
    (fault) =>
      fault.item === item &&
      Object.entries(at).every(([name, value]) => (fault as Readonly<Record<string, unknown>>)[name] === value) &&
      (modes.length === 0 || modes.includes(fault.mode)),
  );

function chainsOf({ chains = [], links = [] }: CabinetContent): readonly PlainChain[] {
  return chains.map((record) => {
    const found: { units: string[]; links: LinkRecord[] } = { units: [], links: [] };
    let next = links.find(({ upper }) => upper !== undefined && 'chain' in upper && upper.chain === record.id);
    while (next?.lower !== undefined) {
      const reached = next.lower.unit;
      found.links.push(next);
      found.units.push(reached);
      next = links.find(({ upper }) => upper !== undefined && 'unit' in upper && upper.unit === reached);
    }
    return { record, ...found };
  });
}

function behaviourOf({ types = [] }: CabinetContent, unit: UnitRecord | undefined): Behaviour {
  // The cabinets that this is asked about have no unknown behaviour.
  return { ...defaults, ...(types.find(({ id }) => id === unit?.type)?.behaviour as Partial<Behaviour> | undefined) };
}

/** Steps 1 to 5 and 7, for the faults of one moment. */
function momentOf(content: CabinetContent, faults: readonly Fault[]): PlainMoment {
  const { units = [], leads = [], feedbacks = [] } = content;
  const unitOf = (id: string | undefined) => units.find((unit) => unit.id === id);
  const powered = new Set<string>();
  for (const { id, kind } of units) {
    if (kind === 'supply' && !has(faults, 'supply', { unit: id })) powered.add(id);
  }
  for (let before = -1; before !== powered.size; ) {
    before = powered.size;
    for (const { id, from, to } of leads) {
      const isClosed = from !== undefined && to !== undefined && !has(faults, 'lead', { lead: id });
      if (isClosed && powered.has(from.unit) && unitOf(to.unit)?.kind !== 'supply') powered.add(to.unit);
    }
  }
  const shorted = new Set(
    feedbacks.filter(({ id, plugged }) => plugged !== false && has(faults, 'feedback', { feedback: id })).map(({ unit }) => unit),
  );
  const alive = new Map(
    units.map((unit) => {
      const at = { unit: unit.id };
      const isSilenced = shorted.has(unit.id) && behaviourOf(content, unit).shortEffect !== 'code-linked';
      const isDead = has(faults, 'board', at, 'dead-dark', 'dead-lit');
      return [unit.id, powered.has(unit.id) && !has(faults, 'fuse', at) && !has(faults, 'place', at) && !isSilenced && !isDead];
    }),
  );
  const answer = {
    powered,
    alive,
    shorted,
    controllerAlive: new Map<string, boolean>(),
    lostUp: new Map<string, boolean>(),
    lostDown: new Map<string, boolean>(),
    reports: new Map<string, number | 'none'>(),
  };
  for (const { record, units: ids, links } of chainsOf(content)) {
    const n = ids.length;
    const isOn = content.controller?.powered !== false;
    const isControllerAlive = isOn && !has(faults, 'controller', {}) && !has(faults, 'controller-port', { chain: record.id });
    answer.controllerAlive.set(record.id, isControllerAlive);
    const isAlive = (i: number) => (i === 0 ? isControllerAlive : alive.get(ids[i - 1] ?? '') === true);
    const isCrossed = (i: number) => i > 0 && has(faults, 'wiring', { unit: ids[i - 1] });
    const isBoard = (i: number, ...modes: readonly FaultMode[]) => i > 0 && has(faults, 'board', { unit: ids[i - 1] }, ...modes);
    const mutes = (i: number) =>
      (i === 0 ? { ...defaults, ...record.behaviour } : behaviourOf(content, unitOf(ids[i - 1]))).onReceiveLoss === 'mute';
    const hearsUp: boolean[] = [];
    const hearsDown: boolean[] = [];
    for (let i = 1; i <= n; i += 1) {
      const at = { link: links[i - 1]?.id };
      const passes =
        !has(faults, 'cable', at, 'cut', 'fibres-crossed') && !has(faults, 'plug', at) && !has(faults, 'route', at) && isAlive(i - 1);
      const both = passes && isAlive(i) && !isCrossed(i - 1) && !isCrossed(i);
      let out =
        both &&
        !has(faults, 'cable', at, 'outbound-cut', 'outbound-dim') &&
        !isBoard(i - 1, 'down-tx', 'down-port') &&
        !isBoard(i, 'up-rx', 'up-port');
      let ret =
        both &&
        !has(faults, 'cable', at, 'return-cut', 'return-dim') &&
        !isBoard(i, 'up-tx', 'up-port') &&
        !isBoard(i - 1, 'down-rx', 'down-port');
      for (let changed = true; changed; ) {
        const [outThen, retThen] = [out && !(mutes(i - 1) && !ret), ret && !(mutes(i) && !out)];
        changed = outThen !== out || retThen !== ret;
        [out, ret] = [outThen, retThen];
      }
      hearsUp[i] = out;
      hearsDown[i - 1] = ret;
    }
    const isPathUp = (i: number): boolean => hearsUp[i] === true && (i === 1 || isPathUp(i - 1));
    const isPathDown = (i: number): boolean => i === n || (hearsDown[i] === true && isPathDown(i + 1));
    for (let i = 1; i <= n; i += 1) {
      const id = ids[i - 1] ?? '';
      const isWide = behaviourOf(content, unitOf(id)).lossScope === 'chain';
      answer.lostUp.set(id, isWide ? !isPathUp(i) : hearsUp[i] !== true);
      answer.lostDown.set(id, isWide ? !isPathDown(i) : i < n && hearsDown[i] !== true);
    }
    const gap = links.findIndex((_, index) => !(hearsUp[index + 1] && hearsDown[index]));
    answer.reports.set(record.id, gap === -1 ? 'none' : gap + 1);
  }
  return answer;
}

const thereNow = (faults: readonly Fault[]) => faults.filter(({ absentNow }) => absentNow !== true);

/** Steps 6 and 7: what every display shows now, and every report; `lookAt` says what a look shows now. */
export function plainSimulation({ content, faults, onset, halted }: PlainInput) {
  const now = momentOf(content, thereNow(faults));
  const trip = halted ? momentOf(content, faults) : now;
  const displays = new Map((content.units ?? []).map((unit) => [unit.id, shownBy(unit)]));
  return { displays, reports: trip.reports, lookAt: (look: Look) => seenAt(look, content, thereNow(faults), now) };

  function shownBy(unit: UnitRecord): DisplayMeaning {
    const { id, kind } = unit;
    const present = thereNow(faults);
    const at = { unit: id };
    if (kind === 'supply') return has(present, 'supply', at, 'dead') ? 'dark' : 'quiet';
    const { shortEffect, holds, complainsFrom, whenBoth } = behaviourOf(content, unit);
    const isShorted = now.shorted.has(id);
    if (!now.powered.has(id) || has(present, 'fuse', at) || has(present, 'place', at)) return 'dark';
    if ((isShorted && shortEffect === 'dark') || has(present, 'board', at, 'dead-dark')) return 'dark';
    if (!now.lostUp.has(id)) return 'quiet'; // off the chain
    if (isShorted) return 'other';
    if (has(present, 'board', at, 'dead-lit')) return 'quiet';
    const hasRestarted = trip.alive.get(id) !== true;
    if (complainsFrom === 'link-up' && (onset === 'at-power-up' || hasRestarted)) return 'quiet';
    const holdsTrip = holds === 'until-reset' && !hasRestarted;
    const up = now.lostUp.get(id) || (holdsTrip && trip.lostUp.get(id));
    const down = now.lostDown.get(id) || (holdsTrip && trip.lostDown.get(id));
    if (up && down) return whenBoth === 'both' ? 'both-losses' : `${whenBoth}-loss`;
    return up ? 'upstream-loss' : down ? 'downstream-loss' : 'quiet';
  }
}

/** Step 8 and the looks of section 7. */
function seenAt(look: Look, content: CabinetContent, present: readonly Fault[], now: PlainMoment): string {
  const { link, unit, end, fibre } = look as { link?: string; unit?: string; end?: LinkEnd; fibre?: 'outbound' | 'return' };
  const onLink = (item: Fault['item'], ...modes: readonly FaultMode[]) => has(present, item, { link }, ...modes);
  const isCut = (way: 'outbound' | 'return') => onLink('cable', 'cut', `${way}-cut`);
  const isDim = (way: 'outbound' | 'return') => onLink('cable', `${way}-dim`) || onLink('plug', 'fouled');
  switch (look.look) {
    case 'voltage':
      return now.powered.has(unit ?? '') ? 'steady' : 'absent';
    case 'compare-plugs':
      return has(present, 'wiring', { unit }) ? 'differs' : 'same';
    case 'compare-fibres':
      return onLink('cable', 'fibres-crossed') ? 'differs' : 'same';
    case 'lamp':
      return isCut(fibre ?? 'outbound') ? 'none' : isDim(fibre ?? 'outbound') ? 'weak' : 'clear';
    case 'light-at-port':
      return givesLight(end ?? 'upper') ? 'bright' : 'none';
    case 'light-at-plug': {
      const [far, way] = end === 'upper' ? (['lower', 'return'] as const) : (['upper', 'outbound'] as const);
      if (!givesLight(far) || isCut(way) || has(present, 'plug', { link, end: far }, 'loose')) return 'none';
      if (onLink('cable', 'fibres-crossed')) return 'wrong-hole';
      return isDim(way) || onLink('route') ? 'weak' : 'bright';
    }
    default:
      throw new Error(`no look of this kind: ${look.look}`);
  }

  /** Whether the transmitter at one end of the link, unplugged as it is and so deaf, gives light. */
  function givesLight(at: LinkEnd): boolean {
    const chain = chainsOf(content).find(({ links }) => links.some(({ id }) => id === link));
    const index = chain?.links.findIndex(({ id }) => id === link) ?? -1;
    const id = chain?.units[at === 'upper' ? index - 1 : index];
    if (id === undefined) {
      const { onReceiveLoss, idleLight } = { ...defaults, ...chain?.record.behaviour };
      return now.controllerAlive.get(chain?.record.id ?? '') === true && (onReceiveLoss === 'keep' || idleLight === 'yes');
    }
    const { onReceiveLoss, idleLight } = behaviourOf(
      content,
      content.units?.find((one) => one.id === id),
    );
    // With the plugs of the unit exchanged, this one sits in the other port.
    const port = (at === 'upper') === has(present, 'wiring', { unit: id }) ? 'up' : 'down';
    const works = !has(present, 'board', { unit: id }, `${port}-tx`, `${port}-port`);
    return now.alive.get(id) === true && works && (onReceiveLoss === 'keep' || idleLight === 'yes');
  }
}
