import type { ChainId } from '../../engine/base/index.ts';
import { reportAgreement } from '../../engine/diagnosis/index.ts';
import { windowTexts, wordDisplacedShort, wordGap, wordProbability } from '../../engine/messages/index.ts';
import { spotKey, spotOf } from '../find/candidates.ts';
import { displacedAt } from '../find/touched.ts';
import { findReport } from '../state/evidence.ts';
import { frameLeads, frameLinks, railCaptions } from './projectFrame.ts';
import type { Sources } from './projectUnits.ts';
import type { CaptionView, ChainView, ControllerView, LeadView, LinkView } from './views.ts';

const leastShown = 0.01;

/** What of the chosen candidate lies at a spot, and how probable it is that the fault is there. */
export function suspicion({ model }: Sources, key: string) {
  const chosen = model.chosen?.candidate.best.faults.some(({ fault }) => spotKey(spotOf(fault)) === key) ?? false;
  // What is laid over bears the figure that its list entry bears; all else the share of the spot.
  const share = chosen ? (model.chosen?.candidate.probability ?? 0) : (model.shares.get(key) ?? 0);
  return { share: share >= leastShown || chosen ? wordProbability(share) : null, chosen };
}

const spokenOf = ({ spoken }: { readonly spoken: string }, { share }: { readonly share: string | null }): string =>
  share === null ? spoken : windowTexts.cabinet.suspected(spoken, share);

export function projectLinks(sources: Sources): readonly LinkView[] {
  const { names, snapshot } = sources;
  return frameLinks(sources).map((line) => {
    const gaps = findReport(snapshot, line.chain)?.gaps ?? [];
    const moved = displacedAt(sources.displaced, line.id);
    const suspected = suspicion(sources, spotKey({ kind: 'link', link: line.id }));
    return {
      ...line,
      ...suspected,
      spoken: spokenOf(line, suspected),
      lit: sources.lit.has(line.id),
      displaced: moved && wordDisplacedShort(names, moved),
      lost: gaps.includes(line.gap) ? (gaps.length === 1 ? 'here' : 'perhaps') : null,
      name: windowTexts.report.gapName(names.chain(line.chain), wordGap(names, line.chain, line.gap)),
    };
  });
}

/** The report of a gap in as few words as the controller's window has room for. */
function gapLines(sources: Sources, chain: ChainId, gaps: readonly (number | 'none')[], length: number): readonly string[] {
  const [only] = gaps;
  if (only === 'none' && gaps.length === 1) return [windowTexts.report.allReached(length)];
  if (gaps.length !== 1 || only === undefined || only === 'none') return [windowTexts.report.several(gaps.length)];
  return [windowTexts.report.lost, gapWords(sources, chain, only)];
}

/** "drive 2 | 3"; where the two are counted in different groups their designations are shorter: "-TB2 | -KE1". */
function gapWords({ topology, names }: Sources, chain: ChainId, gap: number): string {
  const units = topology.chainById.get(chain)?.units ?? [];
  const before = units[gap - 2];
  const after = units[gap - 1];
  const [a, b] = [before && topology.placeOf.get(before), after && topology.placeOf.get(after)];
  if (a && b && a.group !== b.group) return windowTexts.report.namedGap(names.unit(before ?? ''), names.unit(after ?? ''));
  return windowTexts.report.shortGap(a ?? null, b ?? null);
}

export function projectController(sources: Sources): ControllerView | null {
  const { topology, names, placement, model } = sources;
  const box = placement.controller;
  if (!box) return null;
  const chains = topology.chains.flatMap((chain): ChainView[] => {
    const row = placement.chains.get(chain.id);
    if (!row) return [];
    const report = findReport(sources.snapshot, chain.id);
    const simulated = model.chosen?.prediction?.simulation.reports.get(chain.id);
    const predicted = simulated?.speaks ? simulated : null;
    const agreement = predicted && reportAgreement(report?.gaps, predicted.gap);
    const seen = report ? gapLines(sources, chain.id, report.gaps, chain.units.length) : null;
    const predictedLines = predicted && gapLines(sources, chain.id, [predicted.gap], predicted.length);
    const { share, chosen } = suspicion(sources, spotKey({ kind: 'chain-port', chain: chain.id }));
    return [
      {
        chain: chain.id,
        label: windowTexts.cabinet.chain(chain.record.number),
        rowY: row.y - box.y,
        portY: row.portY - box.y,
        folded: row.folded,
        seen,
        seenLost: report !== undefined && !report.gaps.includes('none'),
        predicted: predictedLines,
        predictedLost: predicted !== null && predicted.gap !== 'none',
        agreement,
        share,
        chosen,
        empty: chain.units.length === 0,
        name: windowTexts.unitName({
          unit: names.chain(chain.id),
          kind: windowTexts.grid.report,
          place: '',
          seen: seen ? seen.join(' ') : windowTexts.report.notEntered,
          predicted: predictedLines ? predictedLines.join(' ') : null,
          agreement: agreement && windowTexts.grid.agreement[agreement],
          suspect: share,
        }),
      },
    ];
  });
  return {
    designation: topology.content.controller?.designation.trim() || windowTexts.cabinet.controller,
    width: box.width,
    height: box.height,
    chosen: model.chosen?.candidate.best.faults.some(({ fault }) => fault.item === 'controller') ?? false,
    chains,
  };
}

export function projectLeads(sources: Sources): readonly LeadView[] {
  return frameLeads(sources).map((line) => {
    const suspected = suspicion(sources, spotKey({ kind: 'lead', lead: line.id }));
    return { ...line, ...suspected, spoken: spokenOf(line, suspected) };
  });
}

export function projectCaptions(sources: Sources): readonly CaptionView[] {
  const { placement, detail, model } = sources;
  if (detail !== 'full' || !placement.controller) return [];
  const x = placement.controller.width;
  const rows = placement.rows.filter((row) => row.first && !row.folded && row.used > 0);
  const besideWindows = rows.flatMap((row): CaptionView[] => [
    { key: `seen ${row.y}`, kind: 'seen', at: { x, y: row.y + 53 }, words: windowTexts.cabinet.seen },
    ...(model.chosen
      ? [{ key: `predicted ${row.y}`, kind: 'predicted', at: { x, y: row.y + 92 }, words: windowTexts.cabinet.predicted } as const]
      : []),
  ]);
  return [...besideWindows, ...railCaptions(sources)];
}
