import type { UnitId } from '../../engine/base/index.ts';
import {
  meaningWords,
  type Names,
  unitKindWords,
  windowTexts,
  wordCount,
  wordList,
  wordMeanings,
  wordProbability,
} from '../../engine/messages/index.ts';
import type { DisplayMeaning, Snapshot } from '../../engine/schema/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import { spotKey, spotOf } from '../find/candidates.ts';
import type { FindModel } from '../find/findModel.ts';
import { displayAgreement } from '../find/predict.ts';
import { markOf } from '../marks/DisplayMark.tsx';
import { findDisplay } from '../state/evidence.ts';
import { shortUnitName } from '../state/names.ts';
import { type CalloutRequest, placeCallouts } from './callouts.ts';
import type { Detail } from './geometry.ts';
import { type PlacedUnit, type Placement, portOffset } from './placement.ts';
import type { ReadingView, UnitView } from './views.ts';

/** A share below this is not written on the drawing: it would only be noise there. */
const leastShown = 0.01;

export interface Sources {
  readonly topology: Topology;
  readonly names: Names;
  readonly snapshot: Snapshot;
  readonly model: FindModel;
  readonly placement: Placement;
  readonly detail: Detail;
  /** Units named by the report that is being entered. */
  readonly lit: ReadonlySet<string>;
  /** The unit whose display is being entered. */
  readonly entering: string | null;
}

export function projectUnits(sources: Sources): readonly UnitView[] {
  // In chain order, then what stands apart: the order in which Tab walks.
  const views = inReadingOrder(sources.topology).flatMap((id) => {
    const placed = sources.placement.units.get(id);
    const record = sources.topology.units.get(id);
    return placed && record ? [projectUnit(sources, id, placed)] : [];
  });
  return sources.detail === 'strip' ? withCallouts(views, sources.placement) : views;
}

/** On a strip whatever is not quiet keeps its words, above its row. */
function withCallouts(views: readonly UnitView[], { units, stripZoom }: Placement): readonly UnitView[] {
  const rows = new Map<number, CalloutRequest[]>();
  for (const view of views) {
    const placed = [...units].find(([id]) => id === view.id)?.[1];
    const { mark, words } = view.reading.seen;
    if (!placed || (!view.lit && (mark === 'quiet' || mark === 'not-looked-at'))) continue;
    const row = rows.get(placed.row) ?? [];
    row.push({ id: view.id, x: (placed.x + placed.width / 2) * stripZoom, words: `${view.designation} ${words}` });
    rows.set(placed.row, row);
  }
  const places = new Map([...rows.values()].flatMap((row) => [...placeCallouts(row)]));
  return views.map((view) => ({ ...view, callout: places.get(view.id) ?? null }));
}

/** Units in the order of the chains, then what is on none. */
export function inReadingOrder(topology: Topology): readonly UnitId[] {
  return [...topology.chains.flatMap(({ units }) => units), ...topology.orphans, ...topology.offChain, ...topology.supplies];
}

function projectUnit(sources: Sources, id: UnitId, placed: PlacedUnit): UnitView {
  const { topology, names, snapshot, model, detail } = sources;
  const record = topology.units.get(id);
  const place = topology.placeOf.get(id);
  const chain = place && topology.chainById.get(place.chain);
  const reading = readingOf(sources, id);
  const seen = findDisplay(snapshot, id)?.meanings ?? [];
  const kind = record?.kind ?? 'servo-drive';
  const chosen = model.chosen?.candidate.best.faults.find((one) => standsAt(sources, one.fault, id));
  // What is laid over bears the figure that its list entry bears; all else the share of what stands there.
  const share = chosen ? (model.chosen?.candidate.probability ?? 0) : unitShare(sources, id);
  const deaf = (side: DisplayMeaning) => seen.length > 0 && seen.every((meaning) => meaning === side || meaning === 'both-losses');
  return {
    id,
    designation: shortUnitName(topology, id),
    kind,
    kindWords: unitKindWords[kind],
    onChain: place !== undefined,
    isLast: chain !== undefined && chain.units[chain.units.length - 1] === id,
    folded: placed.folded,
    portY: portOffset(placed, detail),
    height: placed.height,
    reading,
    deafUp: place !== undefined && deaf('upstream-loss'),
    deafDown: place !== undefined && deaf('downstream-loss'),
    share: share >= leastShown || chosen ? wordProbability(share) : null,
    chosen: chosen !== undefined,
    lit: sources.lit.has(id),
    entering: sources.entering === id,
    footer: footerOf(sources, id),
    axes: (record?.axes ?? []).map(({ name }) => name).join(' '),
    outputs: kind === 'supply' ? outputsOf(sources, id) : [],
    position: place?.position ?? null,
    callout: null,
    name: windowTexts.unitName({
      unit: names.unit(id),
      kind: unitKindWords[kind],
      place: place ? names.place(id) : footerOf(sources, id),
      seen: wordMeanings(seen) + (reading.code === null ? '' : `, ${windowTexts.cabinet.code(reading.code)}`),
      predicted: reading.predicted?.words ?? null,
      agreement: reading.agreement && windowTexts.grid.agreement[reading.agreement],
      suspect: share >= leastShown ? wordProbability(share) : null,
    }),
  };
}

function readingOf({ snapshot, model }: Sources, id: UnitId): ReadingView {
  const observation = findDisplay(snapshot, id);
  const meanings = observation?.meanings ?? [];
  const predicted = model.chosen?.prediction?.simulation.displays.get(id)?.meaning ?? null;
  return {
    seen: { mark: markOf(meanings), words: wordMeanings(meanings) },
    code: observation?.code ?? null,
    predicted: predicted && { mark: predicted, words: meaningWords[predicted].label },
    agreement: predicted && displayAgreement(meanings, predicted),
  };
}

/** A feedback cable's fault is shown at its unit. */
function standsAt({ topology }: Sources, fault: Parameters<typeof spotOf>[0], id: UnitId): boolean {
  const spot = spotOf(fault);
  if (spot.kind === 'unit' || spot.kind === 'supply') return spot.unit === id;
  return spot.kind === 'feedback' && (topology.feedbacksOf.get(id) ?? []).some((feedback) => feedback === spot.feedback);
}

function unitShare({ topology, model }: Sources, id: UnitId): number {
  const keys = [
    spotKey({ kind: 'unit', unit: id }),
    spotKey({ kind: 'supply', unit: id }),
    ...(topology.feedbacksOf.get(id) ?? []).map((feedback) => spotKey({ kind: 'feedback', feedback })),
  ];
  return Math.min(
    1,
    keys.reduce((sum, key) => sum + (model.shares.get(key) ?? 0), 0),
  );
}

function footerOf({ topology, names }: Sources, id: UnitId): string {
  if (topology.placeOf.has(id)) return names.ordinal(id);
  if (topology.units.get(id)?.kind === 'supply') return '';
  return topology.orphans.includes(id) ? windowTexts.cabinet.orphan : windowTexts.cabinet.offChain;
}

/** Outputs of a supply with what hangs on them: "X1: chain 1", "X2: 3 units". */
function outputsOf({ topology, names }: Sources, id: UnitId): readonly string[] {
  const outputs = topology.units.get(id)?.supply?.outputs ?? [];
  const fed = (output: string | null) => {
    const targets = topology.feeds.filter(
      (feed) => feed.from === id && (output === null || topology.leads.get(feed.lead)?.from?.output === output),
    );
    const chains = new Set(targets.map(({ to }) => topology.placeOf.get(to)?.chain));
    const onChains = [...chains].filter((chain) => chain !== undefined);
    if (targets.length === 0) return null;
    return onChains.length > 0 && onChains.length === chains.size
      ? wordList(onChains.map((chain) => names.chain(chain)))
      : wordCount(targets.length, 'unit');
  };
  if (outputs.length === 0) {
    const all = fed(null);
    return all === null ? [] : [windowTexts.cabinet.output('24 V', all)];
  }
  return outputs.map(({ id: output, name }) => windowTexts.cabinet.output(name, fed(output) ?? '–'));
}
