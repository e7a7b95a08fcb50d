import { assertNever, type ChainId, type FeedbackId, type LeadId, type LinkId, Recent, type UnitId } from '../base/index.ts';
import type { Intervention, LinkEnd } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';

/**
 * How the parts of a cabinet lie at one moment, after everything that was done to it. Faults sit on items and places; the
 * arrangement tells where an item is now, and which faults are gone because they were mended.
 */
export interface Arrangement {
  /** The cable that lies on a link, named by the link it was documented on; `null` for a new one. */
  readonly cableOn: ReadonlyMap<LinkId, CableLie>;
  /** The board in a unit, named by the unit it was documented in; `null` for a new one. */
  readonly boardIn: ReadonlyMap<UnitId, UnitId | null>;
  /** Ends that hang free, as `link/end`. */
  readonly unplugged: ReadonlySet<string>;
  /** Units that were taken out and not put back. */
  readonly takenOut: ReadonlySet<UnitId>;
  /** Bridged units, with the link whose cable spans the gap. */
  readonly bridged: ReadonlyMap<UnitId, LinkId>;
  readonly pulledFeedbacks: ReadonlySet<FeedbackId>;
  /** Mode keys (`modeKey`) that were mended, wherever the item lies now. */
  readonly cured: ReadonlySet<string>;
}

/** Which cable lies on a link, and whether it lies end for end. */
export interface CableLie {
  readonly cable: LinkId | null;
  readonly turned: boolean;
}

/** The other end of a link. */
export function otherEnd(end: LinkEnd): LinkEnd {
  return end === 'upper' ? 'lower' : 'upper';
}

/** The key under which a free end is kept in `Arrangement.unplugged`. */
export function endKey(link: LinkId, end: LinkEnd): string {
  return `${link}/${end}`;
}

/** The cabinet after `interventions`, done in order. Those that name nothing in this cabinet change nothing. */
export function arrange(cabinet: Cabinet, interventions: readonly Intervention[]): Arrangement {
  return recentArrangements.get(cabinet, JSON.stringify(interventions), () => {
    const state = new Workbench(cabinet);
    for (const intervention of interventions) {
      state.perform(intervention);
    }
    return state;
  });
}

/** Asked for thousands of times; what is worked out from an arrangement may be kept with it. */
const recentArrangements = new Recent<Cabinet, Arrangement>(64);

// The file schema holds plain strings; inside the engine ids are branded by kind.
const asLink = (id: string) => id as LinkId;
const asUnit = (id: string) => id as UnitId;
const asFeedback = (id: string) => id as FeedbackId;

/** The arrangement while it is being changed. What each act cures and moves: domain sections 4 and 7. */
class Workbench implements Arrangement {
  readonly cableOn = new Map<LinkId, CableLie>();
  readonly boardIn = new Map<UnitId, UnitId | null>();
  readonly unplugged = new Set<string>();
  readonly takenOut = new Set<UnitId>();
  readonly bridged = new Map<UnitId, LinkId>();
  readonly pulledFeedbacks = new Set<FeedbackId>();
  readonly cured = new Set<string>();

  constructor(private readonly cabinet: Cabinet) {
    for (const link of cabinet.links.keys()) {
      this.cableOn.set(link, { cable: link, turned: false });
    }
    for (const unit of cabinet.units.keys()) {
      this.boardIn.set(unit, unit);
    }
    for (const [id, record] of cabinet.feedbacks) {
      if (record.plugged === false) {
        this.pulledFeedbacks.add(id);
      }
    }
  }

  perform(act: Intervention): void {
    switch (act.do) {
      case 'unplug':
        this.unplugged.add(endKey(asLink(act.link), act.end));
        return;
      case 'plug-in':
      case 'reseat-plug':
        this.plugIn(asLink(act.link), act.end);
        return;
      case 'clean-plug':
        this.cure(this.plugAt(asLink(act.link), act.end), 'fouled');
        this.plugIn(asLink(act.link), act.end);
        return;
      case 're-route':
        this.cure(`route/${act.link}`, 'kinked');
        return;
      case 'replace-cable':
        this.cableOn.set(asLink(act.link), { cable: null, turned: false });
        this.plugInBoth(asLink(act.link));
        return;
      case 'exchange-cables':
        this.exchangeCables(asLink(act.link), asLink(act.other));
        return;
      case 'turn-cable':
        this.turnCable(asLink(act.link));
        return;
      case 'uncross-fibres':
        this.uncrossFibres(asLink(act.link));
        return;
      case 'uncross-plugs':
        this.cure(`wiring/${act.unit}`, 'crossed');
        this.reseatUnitPlugs(asUnit(act.unit));
        return;
      case 'replace-board':
        this.boardIn.set(asUnit(act.unit), null);
        this.reseatUnitPlugs(asUnit(act.unit));
        return;
      case 'exchange-boards':
        this.exchangeBoards(asUnit(act.unit), asUnit(act.other));
        return;
      case 'replace-unit':
        this.boardIn.set(asUnit(act.unit), null);
        this.cure(`fuse/${act.unit}`, 'open');
        this.putBack(asUnit(act.unit));
        return;
      case 'reseat-unit':
        this.cure(`place/${act.unit}`, 'contact-bad');
        return;
      case 'take-out-unit':
        this.takenOut.add(asUnit(act.unit));
        return;
      case 'put-back-unit':
        this.putBack(asUnit(act.unit));
        return;
      case 'replace-fuse':
        this.cure(`fuse/${act.unit}`, 'open');
        return;
      case 'replace-supply':
        this.cure(`supply/${act.unit}`, 'dead', 'output-lost');
        return;
      case 'replace-lead':
        this.cure(`lead/${act.lead}`, 'open');
        return;
      case 'replace-controller-port':
        this.replacePort(act.chain as ChainId);
        return;
      case 'replace-controller':
        this.replaceController();
        return;
      case 'pull-feedback':
        this.pulledFeedbacks.add(asFeedback(act.feedback));
        return;
      case 'plug-feedback':
        this.pulledFeedbacks.delete(asFeedback(act.feedback));
        return;
      case 'replace-feedback':
        this.cure(`feedback/${act.feedback}`, 'short');
        this.pulledFeedbacks.delete(asFeedback(act.feedback));
        return;
      case 'bridge-unit':
        this.bridge(asUnit(act.unit), asLink(act.cable));
        return;
      case 'unbridge-unit':
        this.bridged.delete(asUnit(act.unit));
        this.reseatUnitPlugs(asUnit(act.unit));
        return;
      default:
        assertNever(act);
    }
  }

  private cure(item: string, ...modes: readonly string[]): void {
    for (const mode of modes) {
      this.cured.add(`${item}:${mode}`);
    }
  }

  /** Item key of the plug that is now at an end of a link: a plug travels with its cable, also end for end. */
  private plugAt(link: LinkId, end: LinkEnd): string {
    const lie = this.cableOn.get(link);
    return lie === undefined || lie.cable === null ? 'plug/new' : `plug/${lie.cable}/${lie.turned ? otherEnd(end) : end}`;
  }

  private plugIn(link: LinkId, end: LinkEnd): void {
    this.unplugged.delete(endKey(link, end));
    this.cure(this.plugAt(link, end), 'loose');
  }

  private plugInBoth(link: LinkId): void {
    this.plugIn(link, 'upper');
    this.plugIn(link, 'lower');
  }

  private exchangeCables(one: LinkId, other: LinkId): void {
    const first = this.cableOn.get(one);
    const second = this.cableOn.get(other);
    if (first === undefined || second === undefined) {
      return;
    }
    this.cableOn.set(one, second);
    this.cableOn.set(other, first);
    this.plugInBoth(one);
    this.plugInBoth(other);
  }

  private turnCable(link: LinkId): void {
    const lie = this.cableOn.get(link);
    if (lie !== undefined) {
      this.cableOn.set(link, { cable: lie.cable, turned: !lie.turned });
      this.plugInBoth(link);
    }
  }

  private uncrossFibres(link: LinkId): void {
    const cable = this.cableOn.get(link)?.cable;
    if (cable !== undefined && cable !== null) {
      this.cure(`cable/${cable}`, 'fibres-crossed');
    }
  }

  private exchangeBoards(one: UnitId, other: UnitId): void {
    const first = this.boardIn.get(one);
    const second = this.boardIn.get(other);
    if (first === undefined || second === undefined) {
      return;
    }
    this.boardIn.set(one, second);
    this.boardIn.set(other, first);
    this.reseatUnitPlugs(one);
    this.reseatUnitPlugs(other);
  }

  /** One of the unit's own two cables spans the gap; another one changes nothing. */
  private bridge(unit: UnitId, cable: LinkId): void {
    const place = this.cabinet.placeOf.get(unit);
    const links =
      place === undefined ? [] : (this.cabinet.chainById.get(place.chain)?.links.slice(place.position - 1, place.position + 1) ?? []);
    if (links.includes(cable)) {
      this.bridged.set(unit, cable);
      this.plugInBoth(cable);
    }
  }

  private putBack(unit: UnitId): void {
    this.takenOut.delete(unit);
    this.cure(`place/${unit}`, 'contact-bad');
    this.reseatUnitPlugs(unit);
  }

  /** Both plugs of a unit were out and are in again: the lower end of its link, the upper end of the next one. */
  private reseatUnitPlugs(unit: UnitId): void {
    const place = this.cabinet.placeOf.get(unit);
    const chain = place && this.cabinet.chainById.get(place.chain);
    if (place === undefined || chain === undefined) {
      return;
    }
    const above = chain.links[place.position - 1];
    const below = chain.links[place.position];
    if (above !== undefined) {
      this.plugIn(above, 'lower');
    }
    if (below !== undefined) {
      this.plugIn(below, 'upper');
    }
  }

  /** A new port board; its plug was out and is in again. */
  private replacePort(chain: ChainId): void {
    this.cure(`controller-port/${chain}`, 'dead');
    const [first] = this.cabinet.chainById.get(chain)?.links ?? [];
    if (first !== undefined) {
      this.plugIn(first, 'upper');
    }
  }

  private replaceController(): void {
    this.cure('controller', 'all-ports-dead');
    for (const chain of this.cabinet.chains) {
      this.replacePort(chain.id);
    }
  }
}

/** A chain as it hangs together in an arrangement: bridged units left out, the bridging cable in their place. */
export interface ArrangedChain {
  readonly id: ChainId;
  readonly units: readonly UnitId[];
  /** `links[i-1]` is the link between position *i−1* and *i* of `units`. */
  readonly links: readonly LinkId[];
}

/** The chains of a cabinet in an arrangement. The same list every time, so that what is found out about it may be kept with it. */
export function arrangedChains(cabinet: Cabinet, arrangement: Arrangement): readonly ArrangedChain[] {
  if (arrangement.bridged.size === 0) {
    return cabinet.chains;
  }
  let chains = bridgedChains.get(arrangement);
  if (chains === undefined) {
    chains = cabinet.chains.map((chain) => leaveOutBridged(chain, arrangement));
    bridgedChains.set(arrangement, chains);
  }
  return chains;
}

/** An arrangement is one of one cabinet. */
const bridgedChains = new WeakMap<Arrangement, readonly ArrangedChain[]>();

function leaveOutBridged(chain: ArrangedChain, { bridged }: Arrangement): ArrangedChain {
  const units: UnitId[] = [];
  const links: LinkId[] = [];
  let bridge: LinkId | null = null;
  chain.units.forEach((unit, index) => {
    const link = chain.links[index];
    const spanning = bridged.get(unit);
    if (spanning !== undefined) {
      bridge = spanning;
    } else if (link !== undefined) {
      units.push(unit);
      links.push(bridge ?? link);
      bridge = null;
    }
  });
  return { id: chain.id, units, links };
}

/** Leads that reach their unit at all in an arrangement: a unit that is out passes no power on and takes none. */
export function isLeadInPlace(
  arrangement: Arrangement,
  feed: { readonly lead: LeadId; readonly from: UnitId; readonly to: UnitId },
): boolean {
  return !arrangement.takenOut.has(feed.from) && !arrangement.takenOut.has(feed.to);
}
