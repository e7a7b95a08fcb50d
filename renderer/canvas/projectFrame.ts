import type { LinkId, UnitId } from '../../engine/base/index.ts';
import { type Names, unitKindWords, windowTexts, wordCount, wordList } from '../../engine/messages/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import { shortUnitName } from '../state/names.ts';
import type { Detail } from './geometry.ts';
import { feedRoots, feedSource, laneStep, type PlacedUnit, type Placement } from './placement.ts';
import type { CaptionView, FrameView, LeadLine, LinkLine, Point } from './views.ts';

/*
 * What every workspace draws alike: where modules, cables and leads stand, and what is written on them whatever they show.
 */

export interface FrameSources {
  readonly topology: Topology;
  readonly names: Names;
  readonly placement: Placement;
  readonly detail: Detail;
}

/** Units in the order of the chains, then what is on none. */
export function inReadingOrder(topology: Topology): readonly UnitId[] {
  return [...topology.chains.flatMap(({ units }) => units), ...topology.orphans, ...topology.offChain, ...topology.supplies];
}

/** The frames of all modules that are placed, in chain order, then what stands apart: the order in which Tab walks. */
export function frameUnits(sources: FrameSources): readonly FrameView[] {
  return inReadingOrder(sources.topology).flatMap((id) => {
    const placed = sources.placement.units.get(id);
    return placed && sources.topology.units.has(id) ? [frameUnit(sources, id, placed)] : [];
  });
}

function frameUnit(sources: FrameSources, id: UnitId, placed: PlacedUnit): FrameView {
  const { topology } = sources;
  const record = topology.units.get(id);
  const place = topology.placeOf.get(id);
  const chain = place && topology.chainById.get(place.chain);
  const kind = record?.kind ?? 'servo-drive';
  return {
    id,
    designation: shortUnitName(topology, id),
    kind,
    kindWords: unitKindWords[kind],
    onChain: place !== undefined,
    isLast: chain !== undefined && chain.units[chain.units.length - 1] === id,
    folded: placed.folded,
    portY: placed.port,
    height: placed.height,
    footer: footerOf(sources, id),
    axes: (record?.axes ?? []).map(({ name }) => name).join(' '),
    outputs: kind === 'supply' ? outputsOf(sources, id) : [],
    position: place?.position ?? null,
  };
}

export function footerOf({ topology, names }: FrameSources, id: UnitId): string {
  if (topology.placeOf.has(id)) return names.ordinal(id);
  if (topology.units.get(id)?.kind === 'supply') return '';
  return topology.orphans.includes(id) ? windowTexts.cabinet.orphan : windowTexts.cabinet.offChain;
}

/** Outputs of a supply with what hangs on them: "X1: chain 1", "X2: 3 units". */
function outputsOf({ topology, names }: FrameSources, id: UnitId): readonly string[] {
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

/** The lines of all cables that hang on a chain. */
export function frameLinks(sources: FrameSources): readonly LinkLine[] {
  const lanes = new Map<number, number>();
  return sources.topology.chains.flatMap(({ id, units, links }) =>
    links.flatMap((link, index) => {
      const lower = units[index];
      const line = lower && frameLink(sources, link, { chain: id, gap: index + 1, upper: units[index - 1] ?? null, lower }, lanes);
      return line ? [line] : [];
    }),
  );
}

export interface LinkPlace {
  readonly chain: string;
  readonly gap: number;
  /** Null: the controller. */
  readonly upper: UnitId | null;
  readonly lower: UnitId;
}

/** The line of one cable; null where an end is not drawn. `lanes` counts the cables that run above each row. */
export function frameLink(
  { topology, names, placement, detail }: FrameSources,
  link: LinkId,
  place: LinkPlace,
  lanes: Map<number, number>,
): LinkLine | null {
  const to = placement.units.get(place.lower);
  const from = place.upper && placement.units.get(place.upper);
  const port = [...placement.chains].find(([id]) => id === place.chain)?.[1];
  if (!to || (!from && (place.upper !== null || !port || !placement.controller))) return null;
  // Strip marks are narrower than their slots: the line runs on behind them.
  const inset = detail === 'strip' ? to.width / 2 : 0;
  const start: Point = from
    ? { x: from.x + from.width - inset, y: from.y + from.port }
    : { x: (placement.controller?.x ?? 0) + (placement.controller?.width ?? 0), y: port?.portY ?? 0 };
  const end: Point = { x: to.x + inset, y: to.y + to.port };
  const straight = to.left === place.upper && Math.abs(start.y - end.y) < 1;
  const lane = lanes.get(to.row) ?? 0;
  if (!straight) lanes.set(to.row, lane + 1);
  return {
    id: link,
    designation: topology.links.get(link)?.designation?.trim() ?? '',
    chain: place.chain,
    gap: place.gap,
    upper: place.upper,
    lower: place.lower,
    from: start,
    to: end,
    // Not straight from the left neighbour: it runs in the gap above the row, where it hides nothing.
    turnY: straight ? null : to.y - 9 - lane * laneStep,
    folded: to.folded,
    spoken: windowTexts.cabinet.joins(
      names.link(link),
      place.upper === null
        ? windowTexts.answer.atController(names.chain(place.chain), names.unit(place.lower))
        : windowTexts.answer.between(names.unit(place.upper), names.unit(place.lower)),
    ),
  };
}

/** Each lead as a line: down from the unit it feeds to the rail of its row, along it, and to the unit that feeds it. */
export function frameLeads({ topology, names, placement, detail }: FrameSources): readonly LeadLine[] {
  if (detail === 'strip') return [];
  const railsOf = new Map<number, (typeof rails)[number][]>();
  const rails = [...placement.rails.values()];
  for (const rail of rails) railsOf.set(rail.row, [...(railsOf.get(rail.row) ?? []), rail]);
  return topology.feeds.flatMap((feed): LeadLine[] => {
    const to = placement.units.get(feed.to);
    const from = placement.units.get(feed.from);
    if (!to || !from) return [];
    const isSupply = topology.units.get(feed.from)?.kind === 'supply';
    const own = railsOf.get(to.row) ?? [];
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
        from: feed.from,
        to: feed.to,
        points: [
          { x: toX, y: to.y + to.height },
          { x: toX, y: railY },
          { x: fromX, y: railY },
          { x: fromX, y: fromEdge },
        ],
        spoken: windowTexts.cabinet.joins(names.lead(feed.lead), windowTexts.answer.leadFrom(names.unit(feed.from), names.unit(feed.to))),
      },
    ];
  });
}

/** The names of the 24 V rails, each on its line: where it begins, be that at its source or at the first unit that it feeds. */
export function railCaptions({ placement, topology, names, detail }: FrameSources): readonly CaptionView[] {
  if (detail !== 'full') return [];
  const manySupplies = topology.supplies.length > 1;
  const roots = feedRoots(topology);
  return [...placement.rails.values()].map((rail): CaptionView => {
    const [unit = '', output] = rail.source.split(' ');
    const own = [...placement.units].find(([id]) => id === unit);
    const supply = own && topology.units.get(own[0]);
    const outputName = supply?.supply?.outputs?.find(({ id }) => id === output)?.name ?? '';
    const words = [manySupplies ? names.unit(unit) : '', outputName].filter((part) => part !== '').join(' ');
    const fed = [...placement.units].filter(([id, placed]) => placed.row === rail.row && roots.get(id)?.includes(rail.source));
    const left = Math.min(...[...fed, ...(own ? [own] : [])].map(([, placed]) => placed.x + placed.width / 2));
    return {
      key: `rail ${rail.row} ${rail.source}`,
      kind: 'rail',
      at: { x: left + 14, y: rail.y },
      words: windowTexts.cabinet.rail(words),
    };
  });
}
