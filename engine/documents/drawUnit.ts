import type { UnitId } from '../base/index.ts';
import { type Names, unitKindWords, drawingWords as words } from '../messages/index.ts';
import { inks, type Shape } from '../paper/index.ts';
import type { ChainTopology, Topology } from '../topology/index.ts';
import { markFrame } from './drawLink.ts';
import { fitText, metrics } from './drawText.ts';

const portSize = 2.4;
const pad = 2.6;

interface UnitOptions {
  readonly isMarked: boolean;
  readonly onChain: boolean;
}

/** A unit as a neutral block: what it is called and is, where it is counted and stands; its ports at the edges, its feed below. */
export function drawUnit(
  topology: Topology,
  names: Names,
  unit: UnitId,
  x: number,
  top: number,
  { isMarked, onChain }: UnitOptions,
): readonly Shape[] {
  const record = topology.units.get(unit);
  if (record === undefined) return [];
  const { unitWidth: width, unitHeight: height } = metrics;
  const place = topology.placeOf.get(unit);
  const inner = width - 2 * pad;
  const centre = { align: 'center' } as const;
  const stands = record.row === undefined && record.slot === undefined ? '' : words.stands(record.row, record.slot);
  const axes = (record.axes ?? []).map(({ name }) => name).join(', ');
  const lines = [
    unitKindWords[record.kind],
    record.model?.trim() ?? '',
    place === undefined ? '' : words.position(place.position),
    place === undefined ? '' : names.ordinal(unit),
    axes,
    record.partNumber?.trim() ?? '',
    stands,
  ].filter((line) => line !== '');
  return [
    ...(isMarked ? [markFrame(x - 1.2, top - 1.2, width + 2.4, height + 2.4)] : []),
    { kind: 'box', x, y: top, width, height, corner: 0.8, line: { width: 0.35 } },
    ...fitText(names.unit(unit), x + pad, top + 5, inner, 11, { face: 'bold', ...centre }),
    ...lines.flatMap((line, index) => fitText(line, x + pad, top + 9.6 + index * 4, inner, 8, centre)),
    ...(onChain ? [...drawPorts(x, top), ...drawPorts(x + width, top)] : []),
    ...drawFeeds(topology, names, unit, x, top),
  ];
}

/** The two holes of a port: what goes out is full, what comes back is open. */
function drawPorts(x: number, top: number): readonly Shape[] {
  return [metrics.outbound, metrics.back].map(
    (at): Shape => ({
      kind: 'box',
      x: x - portSize / 2,
      y: top + at - portSize / 2,
      width: portSize,
      height: portSize,
      fill: at === metrics.outbound ? inks.black : inks.white,
      line: { width: 0.3 },
    }),
  );
}

const mostFeeds = 2;

/** The 24 V leads that feed it, below the block. */
function drawFeeds(topology: Topology, names: Names, unit: UnitId, x: number, top: number): readonly Shape[] {
  const feeds = topology.feeds.filter(({ to }) => to === unit);
  const [first] = feeds;
  if (first === undefined) return [];
  const bottom = top + metrics.unitHeight;
  const said = feeds
    .slice(0, mostFeeds)
    .map(({ lead, from }) => words.fedBy(topology.leads.get(lead)?.designation?.trim() ?? '', names.unit(from)));
  const text = feeds.length > mostFeeds ? [...said.slice(0, 1), words.moreFeeds(feeds.length - 1)] : said;
  const middle = x + metrics.unitWidth / 2;
  return [
    { kind: 'line', points: [middle, bottom, middle, bottom + 2.2], width: 0.35 },
    ...text.flatMap((line, index) => fitText(line, x - 4, bottom + 5.4 + index * 3.6, metrics.unitWidth + 8, 7.5, { align: 'center' })),
  ];
}

/** The controller's end of a chain: its designation, the chain, what is printed at the port. */
export function drawControllerEnd(
  topology: Topology,
  names: Names,
  chain: ChainTopology,
  top: number,
  isMarked: boolean,
): readonly Shape[] {
  const { controllerWidth: width, unitHeight: height } = metrics;
  const inner = width - 2 * pad;
  const name = chain.record.name?.trim() ?? '';
  const lines = [
    words.controller,
    topology.content.controller?.model?.trim() ?? '',
    names.chain(chain.id),
    chain.record.marking?.trim() ?? '',
  ].filter((line) => line !== '');
  return [
    ...(isMarked ? [markFrame(-1.2, top - 1.2, width + 2.4, height + 2.4)] : []),
    { kind: 'box', x: 0, y: top, width, height, corner: 0.8, line: { width: 0.7 } },
    ...fitText(topology.content.controller?.designation.trim() ?? '', pad, top + 5, inner, 11, { face: 'bold', align: 'center' }),
    ...lines.flatMap((line, index) => fitText(line, pad, top + 9.6 + index * 4, inner, 8, { align: 'center' })),
    ...fitText(name, pad, top + 9.6 + lines.length * 4, inner, 8, { align: 'center', lines: 3 }),
    ...(chain.units.length === 0 ? [] : drawPorts(width, top)),
  ];
}
