import type { ChainId, LinkId } from '../../engine/base/index.ts';
import { windowTexts, wordGap, wordProbability } from '../../engine/messages/index.ts';
import { spotKey, spotOf } from '../find/candidates.ts';
import { reportAgreement } from '../find/predict.ts';
import { findReport } from '../state/evidence.ts';
import { feedRootsOf, feedSource, portOffset } from './placement.ts';
import type { Sources } from './projectUnits.ts';
import type { CaptionView, ChainView, ControllerView, LeadView, LinkView, Point } from './views.ts';

const leastShown = 0.01;

/** What of the chosen candidate lies at a spot, and how probable it is that the fault is there. */
export function suspicion({ model }: Sources, key: string) {
  const chosen = model.chosen?.candidate.best.faults.some(({ fault }) => spotKey(spotOf(fault)) === key) ?? false;
  // What is laid over bears the figure that its list entry bears; all else the share of the spot.
  const share = chosen ? (model.chosen?.candidate.probability ?? 0) : (model.shares.get(key) ?? 0);
  return { share: share >= leastShown || chosen ? wordProbability(share) : null, chosen };
}

export function projectLinks(sources: Sources): readonly LinkView[] {
  return sources.topology.chains.flatMap(({ id, links }) =>
    links.flatMap((link, index) => {
      const view = projectLink(sources, id, link, index + 1);
      return view ? [view] : [];
    }),
  );
}

function projectLink(sources: Sources, chain: ChainId, link: LinkId, gap: number): LinkView | null {
  const { topology, names, placement, snapshot, detail } = sources;
  const units = topology.chainById.get(chain)?.units ?? [];
  const lower = units[gap - 1];
  const upper = gap > 1 ? units[gap - 2] : undefined;
  const to = lower && placement.units.get(lower);
  const from = upper && placement.units.get(upper);
  const row = placement.rows.find((one) => one.chain === chain && one.first);
  if (!to || !row || !placement.controller) return null;
  // Strip marks are narrower than their slots: the line runs on behind them.
  const inset = detail === 'strip' ? to.width / 2 : 0;
  const start: Point = from
    ? { x: from.x + from.width - inset, y: from.y + portOffset(from, detail) }
    : { x: placement.controller.x + placement.controller.width, y: row.y + portOffset(row, detail) };
  const gaps = findReport(snapshot, chain)?.gaps ?? [];
  return {
    id: link,
    designation: topology.links.get(link)?.designation?.trim() ?? '',
    chain,
    gap,
    from: start,
    to: { x: to.x + inset, y: to.y + portOffset(to, detail) },
    turnY: from && from.row !== to.row ? to.y - 9 : null,
    folded: to.folded,
    ...suspicion(sources, spotKey({ kind: 'link', link })),
    lit: sources.lit.has(link),
    lost: gaps.includes(gap) ? (gaps.length === 1 ? 'here' : 'perhaps') : null,
    name: windowTexts.report.gapName(names.chain(chain), wordGap(names, chain, gap)),
  };
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
  const { topology, names, placement, detail, model } = sources;
  const box = placement.controller;
  if (!box) return null;
  const chains = placement.rows.flatMap((row): ChainView[] => {
    const chain = topology.chains.find(({ id }) => id === row.chain);
    if (!chain || !row.first) return [];
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
        portY: row.y - box.y + portOffset(row, detail),
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

/** Each lead as a line: down from the unit it feeds to the rail of its row, along it, and to the unit that feeds it. */
export function projectLeads(sources: Sources): readonly LeadView[] {
  const { topology, placement, detail } = sources;
  if (detail === 'strip') return [];
  return topology.feeds.flatMap((feed): LeadView[] => {
    const to = placement.units.get(feed.to);
    const from = placement.units.get(feed.from);
    if (!to || !from) return [];
    const isSupply = topology.units.get(feed.from)?.kind === 'supply';
    const own = [...placement.rails.values()].filter((one) => one.row === to.row);
    const rail = own.find((one) => isSupply && one.source === feedSource(topology, feed)) ?? own[0];
    const rank = rail ? own.indexOf(rail) : 0;
    const railY = rail?.y ?? to.y + to.height + 12;
    const toX = to.x + to.width / 2;
    // Outputs of one supply leave it side by side, so that two rails do not look like one.
    const fromX = from.x + from.width / 2 + (isSupply ? rank * 9 : 0);
    const fromEdge = from.row > to.row ? from.y : from.y + from.height;
    return [
      {
        id: feed.lead,
        points: [
          { x: toX, y: to.y + to.height },
          { x: toX, y: railY },
          { x: fromX, y: railY },
          { x: fromX, y: fromEdge },
        ],
        ...suspicion(sources, spotKey({ kind: 'lead', lead: feed.lead })),
      },
    ];
  });
}

export function projectCaptions(sources: Sources): readonly CaptionView[] {
  const { placement, topology, names, detail, model } = sources;
  if (detail !== 'full' || !placement.controller) return [];
  const x = placement.controller.width;
  const rows = placement.rows.filter((row) => row.first && !row.folded && row.used > 0);
  const besideWindows = rows.flatMap((row): CaptionView[] => [
    { key: `seen ${row.y}`, kind: 'seen', at: { x, y: row.y + 53 }, words: windowTexts.cabinet.seen },
    ...(model.chosen
      ? [{ key: `predicted ${row.y}`, kind: 'predicted', at: { x, y: row.y + 92 }, words: windowTexts.cabinet.predicted } as const]
      : []),
  ]);
  const manySupplies = topology.supplies.length > 1;
  const rails = [...placement.rails.values()].map((rail): CaptionView => {
    const [unit = '', output] = rail.source.split(' ');
    const supply = [...topology.units.values()].find(({ id }) => id === unit);
    const outputName = supply?.supply?.outputs?.find(({ id }) => id === output)?.name ?? '';
    const words = [manySupplies ? names.unit(unit) : '', outputName].filter((part) => part !== '').join(' ');
    const fed = [...placement.units].filter(([id, placed]) => placed.row === rail.row && feedRootsOf(topology, id).includes(rail.source));
    const own = [...placement.units].find(([id]) => id === unit);
    // On the line itself: where it begins, be that at its source or at the first unit that it feeds.
    const left = Math.min(...[...fed, ...(own ? [own] : [])].map(([, placed]) => placed.x + placed.width / 2));
    return {
      key: `rail ${rail.row} ${rail.source}`,
      kind: 'rail',
      at: { x: left + 14, y: rail.y },
      words: windowTexts.cabinet.rail(words),
    };
  });
  return [...besideWindows, ...rails];
}
