import type { UnitId } from '../../engine/base/index.ts';
import {
  injectWords,
  unitKindWords,
  wordDisplayReason,
  wordFaultTag,
  wordInjectedClause,
  wordShortReason,
} from '../../engine/messages/index.ts';
import type { Fault } from '../../engine/schema/index.ts';
import type { FibreState, LinkState } from '../../engine/simulation/index.ts';
import { type CalloutRequest, placeCallouts } from '../canvas/callouts.ts';
import { strip } from '../canvas/geometry.ts';
import { projectController, projectLeads, projectLinks } from '../canvas/projectLinks.ts';
import { projectUnits, type Sources } from '../canvas/projectUnits.ts';
import type { ChainView, ControllerView, LeadView, LinkView, UnitView } from '../canvas/views.ts';
import { spotKey, spotOf } from '../find/candidates.ts';
import type { FindModel } from '../find/findModel.ts';
import type { InjectModel } from './injectModel.ts';
import { causesAtSender, settledUnits } from './lightWay.ts';

/*
 * What the drawing shows while a fault is simulated: the views of Find with nothing seen, and beside them what the simulation says.
 * Plain data, compared by value, as those are.
 */

export interface SimUnitView extends UnitView {
  /** The display is not decided by the hops so far. */
  readonly waiting: boolean;
  readonly why: string;
  readonly faultTag: string | null;
  readonly current: boolean;
  readonly deafUp: boolean;
  readonly deafDown: boolean;
}

/** One fibre of a link. */
export interface LaneView {
  /** Light leaves the sending end. */
  readonly sent: boolean;
  readonly heard: boolean;
  /** Where it ends, from 0 (upper plug) to 1 (lower plug); null where it passes the whole cable. */
  readonly breakAt: number | null;
  /** It arrives too weak. */
  readonly thin: boolean;
  readonly cut: boolean;
  /** Number of its hop, where that is done or looked at now. */
  readonly number: number | null;
  readonly hop: 'plain' | 'now' | 'waiting';
}

export interface SimLinkView extends LinkView {
  readonly outbound: LaneView;
  readonly back: LaneView;
  readonly faultTag: string | null;
  /** Plugs with a fault of their own. */
  readonly plugs: readonly ('upper' | 'lower')[];
}

export interface SimLeadView extends LeadView {
  readonly faultTag: string | null;
  readonly name: string;
}

export interface SimChainView extends ChainView {
  readonly waiting: boolean;
  readonly why: string;
  readonly faultTag: string | null;
  readonly current: boolean;
  readonly deaf: boolean;
}

export interface SimControllerView extends Omit<ControllerView, 'chains'> {
  readonly chains: readonly SimChainView[];
}

/** What the projections of Find are given: nothing was seen, and the simulation stands where a candidate's prediction does. */
export function simSources(
  model: InjectModel,
  sources: Pick<Sources, 'topology' | 'names' | 'placement' | 'detail'>,
  target: string | null,
): Sources {
  const best = { faults: [], probability: 0, priorOdds: 0, likelihood: 0, group: 0 };
  const stand: FindModel['chosen'] = {
    candidate: { key: '', spots: [], group: 0, probability: 0, best, parts: [] },
    prediction: { simulation: model.simulation, faults: [], assumedOnset: null, fitting: 0, against: 0 },
    letter: null,
  };
  return { ...sources, snapshot: {}, model: { chosen: stand, shares: new Map() }, lit: new Set(), displaced: [], entering: target };
}

/** The injected faults by the spot on which they lie. */
export function faultsBySpot(faults: readonly Fault[]): ReadonlyMap<string, readonly Fault[]> {
  const found = new Map<string, Fault[]>();
  for (const fault of faults) {
    const key = spotKey(spotOf(fault));
    const list = found.get(key) ?? [];
    list.push(fault);
    found.set(key, list);
  }
  return found;
}

function tagOf(faults: readonly Fault[]): string | null {
  const [first] = faults;
  if (!first) return null;
  return faults.length === 1 ? wordFaultTag(first) : injectWords.faultCount(faults.length);
}

export function simUnits(model: InjectModel, sources: Sources): readonly SimUnitView[] {
  const { names, topology } = sources;
  const spots = faultsBySpot(model.faults);
  const settled = model.hop === null ? null : settledUnits(model.hops, model.hop);
  const now = model.hop === null ? undefined : model.hops[model.hop];
  const views = projectUnits(sources).map((base): SimUnitView => {
    const id = base.id as UnitId; // the view bears the id of its own unit
    const state = model.moment.units.get(id);
    const display = model.simulation.displays.get(id);
    const onWay = topology.placeOf.get(id)?.chain === model.chain;
    const waiting = settled !== null && onWay && !settled.has(id);
    const own = [
      ...(spots.get(`unit/${id}`) ?? []),
      ...(spots.get(`supply/${id}`) ?? []),
      ...(topology.feedbacksOf.get(id) ?? []).flatMap((feedback) => spots.get(`feedback/${feedback}`) ?? []),
    ];
    const deaf = (hears: boolean | undefined) => base.onChain && state?.alive === true && hears === false;
    return {
      ...base,
      waiting,
      why: waiting || !display ? '' : wordShortReason(display.because),
      faultTag: tagOf(own),
      current: now !== undefined && (now.kind === 'outbound' || now.kind === 'return') && now.to === id,
      deafUp: deaf(state?.hearsUp),
      deafDown: deaf(state?.hearsDown) && !base.isLast,
      callout: null,
      name: injectWords.unitName({
        unit: names.unit(id),
        kind: unitKindWords[base.kind],
        place: base.onChain ? names.place(id) : base.footer,
        faults: own.map((fault) => wordInjectedClause(names, fault)),
        shows: waiting ? null : (base.reading.predicted?.words ?? null),
        why: display ? wordDisplayReason(names, display) : '',
      }),
    };
  });
  return sources.detail === 'strip' ? withCallouts(views, sources) : views;
}

/** On a strip whatever is not quiet keeps its words, above its row. */
function withCallouts(views: readonly SimUnitView[], { placement }: Sources): readonly SimUnitView[] {
  const rows = new Map<number, CalloutRequest[]>();
  for (const view of views) {
    const placed = placement.units.get(view.id as UnitId); // the view bears the id of its own unit
    const shown = view.reading.predicted;
    if (!placed || view.waiting || !shown || (shown.mark === 'quiet' && view.faultTag === null)) continue;
    const row = rows.get(placed.row) ?? [];
    const words = `${view.designation} ${view.faultTag ?? ''} ${shown.words}`;
    row.push({ id: view.id, x: (placed.x + placed.width / 2) * placement.stripZoom, words });
    rows.set(placed.row, row);
  }
  const edges = { leftmost: 0, rightmost: placement.width * placement.stripZoom + strip.edge };
  const places = new Map([...rows.values()].flatMap((row) => [...placeCallouts(row, edges)]));
  return views.map((view) => ({ ...view, callout: places.get(view.id) ?? null }));
}

export function simLinks(model: InjectModel, sources: Sources): readonly SimLinkView[] {
  const spots = faultsBySpot(model.faults);
  return projectLinks(sources).flatMap((base): SimLinkView[] => {
    const state = [...model.moment.links.values()].find(({ link }) => link === base.id);
    if (!state) return [];
    const own = spots.get(`link/${base.id}`) ?? [];
    const clauses = own.map((fault) => wordInjectedClause(sources.names, fault));
    return [
      {
        ...base,
        outbound: laneOf(model, state, 'outbound'),
        back: laneOf(model, state, 'return'),
        faultTag: tagOf(own),
        plugs: own.flatMap((fault) => (fault.item === 'plug' ? [fault.end] : [])),
        name: injectWords.linkName(sources.names.link(base.id), clauses, heardWords(state.outbound), heardWords(state.return)),
      },
    ];
  });
}

const heardWords = ({ hears }: FibreState) => (hears ? injectWords.legend.heard : injectWords.legend.unheard);

function laneOf(model: InjectModel, state: LinkState, direction: 'outbound' | 'return'): LaneView {
  const fibre = state[direction];
  const units = model.moment.chains.find(({ id }) => id === state.chain)?.units ?? [];
  const sender = (direction === 'outbound' ? units[state.index - 2] : units[state.index - 1]) ?? null;
  const faults = fibre.causes.flatMap((cause) => (cause.code === 'fault' ? [cause.fault] : []));
  const onWay = state.chain === model.chain && model.hop !== null;
  const hop = model.hops.findIndex((one) => one.kind === direction && one.link === state.link);
  const at = model.hop ?? -1;
  return {
    sent: causesAtSender(fibre, sender).length === 0,
    heard: fibre.hears,
    breakAt: breakOf(faults, direction),
    thin: faults.some((fault) => wordFaultTag(fault) === 'dim' || fault.mode === 'fouled' || fault.mode === 'kinked'),
    cut: faults.some((fault) => fault.item === 'cable' && fault.mode.endsWith('cut')),
    number: onWay && hop <= at ? hop + 1 : null,
    hop: !onWay ? 'plain' : hop === at ? 'now' : hop < at ? 'plain' : 'waiting',
  };
}

/** Where along the cable the light ends: at the first break by the way it runs. */
function breakOf(faults: readonly Fault[], direction: 'outbound' | 'return'): number | null {
  const places = faults.flatMap((fault) => {
    if (fault.item === 'cable' && fault.mode.endsWith('cut')) return [0.5];
    if (fault.item === 'plug' && fault.mode === 'loose') return [fault.end === 'upper' ? 0.08 : 0.92];
    return [];
  });
  if (places.length === 0) return null;
  return direction === 'outbound' ? Math.min(...places) : Math.max(...places);
}

export function simLeads(model: InjectModel, sources: Sources): readonly SimLeadView[] {
  const spots = faultsBySpot(model.faults);
  return projectLeads(sources).map((base) => {
    const own = spots.get(`lead/${base.id}`) ?? [];
    const clauses = own.map((fault) => wordInjectedClause(sources.names, fault));
    return { ...base, faultTag: tagOf(own), name: injectWords.leadName(sources.names.lead(base.id), clauses) };
  });
}

export function simController(model: InjectModel, sources: Sources): SimControllerView | null {
  const base = projectController(sources);
  if (!base) return null;
  const { names } = sources;
  const spots = faultsBySpot(model.faults);
  const last = model.hops.length - 1;
  const common = spots.get('controller') ?? [];
  return {
    ...base,
    chains: base.chains.map((view): SimChainView => {
      const waiting = view.chain === model.chain && model.hop !== null && model.hop < last;
      const own = [...(spots.get(`chain-port/${view.chain}`) ?? []), ...common];
      const first = [...model.moment.links.values()].find(({ chain, index }) => chain === view.chain && index === 1);
      const report = [...model.simulation.reports.values()].find(({ chain }) => chain === view.chain);
      return {
        ...view,
        waiting,
        why: '',
        faultTag: tagOf(own),
        current: view.chain === model.chain && model.hop !== null && (model.hop === 0 || model.hop === last),
        deaf: first !== undefined && !first.return.hears,
        name: injectWords.unitName({
          unit: names.chain(view.chain),
          kind: injectWords.reportOf,
          place: '',
          faults: own.map((fault) => wordInjectedClause(names, fault)),
          shows: waiting || !report ? null : (view.predicted?.join(' ') ?? injectWords.notYet),
          why: '',
        }),
      };
    }),
  };
}

/** Chains that no injected fault lies on; they may be folded to one line. As one text, so that an equal answer is the same. */
export function foldableInSimulation({ cabinet, simulation, chain, hop }: InjectModel): string {
  if (cabinet.chains.length < 2) return '';
  const involved = cabinet.chains.filter(
    ({ id, units }) =>
      (hop !== null && id === chain) ||
      simulation.reports.get(id)?.gap !== 'none' ||
      units.some((unit) => simulation.displays.get(unit)?.meaning !== 'quiet'),
  );
  const kept = involved.length > 0 ? involved : cabinet.chains.slice(0, 1);
  return cabinet.chains
    .filter((one) => !kept.includes(one))
    .map(({ id }) => id)
    .join(' ');
}
