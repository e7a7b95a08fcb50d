import type { UnitId } from '../../engine/base/index.ts';
import { displayAgreement } from '../../engine/diagnosis/index.ts';
import { meaningWords, windowTexts, wordDisplacedShort, wordMeanings, wordProbability } from '../../engine/messages/index.ts';
import type { Displaced } from '../../engine/plan/index.ts';
import type { DisplayMeaning, Snapshot } from '../../engine/schema/index.ts';
import { spotKey, spotOf } from '../find/candidates.ts';
import type { FindModel } from '../find/findModel.ts';
import { displacedAt } from '../find/touched.ts';
import { markOf } from '../marks/DisplayMark.tsx';
import { findDisplay } from '../state/evidence.ts';
import { type CalloutRequest, placeCallouts } from './callouts.ts';
import { strip } from './geometry.ts';
import type { Placement } from './placement.ts';
import { type FrameSources, frameUnits } from './projectFrame.ts';
import type { FrameView, ReadingView, UnitView } from './views.ts';

/** A share below this is not written on the drawing: it would only be noise there. */
const leastShown = 0.01;

export interface Sources extends FrameSources {
  readonly snapshot: Snapshot;
  readonly model: Pick<FindModel, 'chosen' | 'shares'>;
  /** Units named by the report that is being entered. */
  readonly lit: ReadonlySet<string>;
  /** What does not stand in its place. */
  readonly displaced: readonly Displaced[];
  /** The unit whose display is being entered. */
  readonly entering: string | null;
}

export function projectUnits(sources: Sources): readonly UnitView[] {
  const views = frameUnits(sources).map((frame) => projectUnit(sources, frame));
  return sources.detail === 'strip' ? withCallouts(views, sources.placement) : views;
}

/** On a strip whatever is not quiet keeps its words, above its row. */
function withCallouts(views: readonly UnitView[], { units, stripZoom, width }: Placement): readonly UnitView[] {
  const rows = new Map<number, CalloutRequest[]>();
  for (const view of views) {
    const placed = units.get(view.id as UnitId); // the view bears the id of its own unit
    const { mark, words } = view.reading.seen;
    if (!placed || (!view.lit && (mark === 'quiet' || mark === 'not-looked-at'))) continue;
    const row = rows.get(placed.row) ?? [];
    row.push({ id: view.id, x: (placed.x + placed.width / 2) * stripZoom, words: `${view.designation} ${words}` });
    rows.set(placed.row, row);
  }
  const places = new Map([...rows.values()].flatMap((row) => [...placeCallouts(row, { rightmost: width * stripZoom + strip.edge })]));
  return views.map((view) => ({ ...view, callout: places.get(view.id) ?? null }));
}

function projectUnit(sources: Sources, frame: FrameView): UnitView {
  const { topology, names, snapshot, model } = sources;
  const id = frame.id as UnitId; // the frame bears the id of its own unit
  const place = topology.placeOf.get(id);
  const reading = readingOf(sources, id);
  const seen = findDisplay(snapshot, id)?.meanings ?? [];
  const chosen = model.chosen?.candidate.best.faults.find((one) => standsAt(sources, one.fault, id));
  // What is laid over bears the figure that its list entry bears; all else the share of what stands there.
  const share = chosen ? (model.chosen?.candidate.probability ?? 0) : unitShare(sources, id);
  const moved = displacedAt(sources.displaced, id, topology.feedbacksOf.get(id));
  const deaf = (side: DisplayMeaning) => seen.length > 0 && seen.every((meaning) => meaning === side || meaning === 'both-losses');
  return {
    ...frame,
    reading,
    deafUp: place !== undefined && deaf('upstream-loss'),
    deafDown: place !== undefined && deaf('downstream-loss'),
    share: share >= leastShown || chosen ? wordProbability(share) : null,
    chosen: chosen !== undefined,
    lit: sources.lit.has(id),
    displaced: moved && wordDisplacedShort(names, moved),
    entering: sources.entering === id,
    callout: null,
    name: windowTexts.unitName({
      unit: names.unit(id),
      kind: moved ? `${frame.kindWords}, ${wordDisplacedShort(names, moved)}` : frame.kindWords,
      place: place ? names.place(id) : frame.footer,
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
