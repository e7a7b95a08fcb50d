import type { UnitId } from '../base/index.ts';
import { type Names, unitKindWords, drawingWords as words } from '../messages/index.ts';
import { inks, type Shape } from '../paper/index.ts';
import type { ChainTopology, Topology } from '../topology/index.ts';
import { markFrame } from './drawLink.ts';
import { fitsOneLine, fitText, metrics } from './drawText.ts';

const portSize = 2.4;
const pad = 2.6;

interface UnitOptions {
  /** mm */
  readonly width: number;
  /** Ids of what is marked. */
  readonly marked: ReadonlySet<string>;
  readonly onChain: boolean;
}

/** A unit as a neutral block: what it is called and is, where it is counted and stands; its ports at the edges, its feed below. */
export function drawUnit(
  topology: Topology,
  names: Names,
  unit: UnitId,
  x: number,
  top: number,
  { width, marked, onChain }: UnitOptions,
): readonly Shape[] {
  const record = topology.units.get(unit);
  if (record === undefined) return [];
  const { unitHeight: height } = metrics;
  const place = topology.placeOf.get(unit);
  const inner = width - 2 * pad;
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
    ...(marked.has(unit) ? [markFrame(x - 1.2, top - 1.2, width + 2.4, height + 2.4)] : []),
    { kind: 'box', x, y: top, width, height, corner: 0.8, line: { width: 0.35 } },
    ...stackLines(names.unit(unit), lines, x + pad, top, inner),
    ...(onChain ? [...drawPorts(x, top), ...drawPorts(x + width, top)] : []),
    ...drawFeeds(topology, names, unit, x, top, width, marked),
  ];
}

/** Rows that a block has room for, in small type. */
const mostRows = 9;

/** A designation, and lines below it; a long one takes two rows while there is room, and all move together for that. */
function stackLines(designation: string, lines: readonly string[], x: number, top: number, width: number): readonly Shape[] {
  const isLong = !fitsOneLine(designation, width, 11, 'bold');
  const first = top + (isLong ? 11.2 : 9.6);
  let spare = mostRows - lines.length;
  const rows = lines.map((line) => {
    if (spare <= 0 || fitsOneLine(line, width, 8)) return 1;
    spare -= 1;
    return 2;
  });
  const count = rows.reduce((sum, one) => sum + one, 0);
  const step = Math.min(4, (top + metrics.unitHeight - 1.9 - first) / Math.max(1, count - 1));
  const size = step < 3.6 ? 7 : 8;
  let at = 0;
  return [
    ...fitText(designation, x, top + (isLong ? 4 : 5), width, 11, { face: 'bold', align: 'center', lines: 2 }),
    ...lines.flatMap((line, index) => {
      const y = first + at * step;
      at += rows[index] ?? 1;
      return fitText(line, x, y, width, size, { align: 'center', lines: rows[index] ?? 1, step });
    }),
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
function drawFeeds(
  topology: Topology,
  names: Names,
  unit: UnitId,
  x: number,
  top: number,
  width: number,
  marked: ReadonlySet<string>,
): readonly Shape[] {
  // What is marked is named, however many there are.
  const feeds = topology.feeds.filter(({ to }) => to === unit).sort((a, b) => Number(marked.has(b.lead)) - Number(marked.has(a.lead)));
  const [first] = feeds;
  if (first === undefined) return [];
  const bottom = top + metrics.unitHeight;
  const said = feeds
    .slice(0, mostFeeds)
    .map(({ lead, from }) => words.fedBy(topology.leads.get(lead)?.designation?.trim() ?? '', names.unit(from)));
  const text = feeds.length > mostFeeds ? [...said.slice(0, 1), words.moreFeeds(feeds.length - 1)] : said;
  const middle = x + width / 2;
  return [
    ...(marked.has(first.lead) ? [markFrame(x - 4.4, bottom + 2.4, width + 8.8, 4.2)] : []),
    { kind: 'line', points: [middle, bottom, middle, bottom + 2.2], width: 0.35 },
    ...text.flatMap((line, index) => fitText(line, x - 4, bottom + 5.4 + index * 3.6, width + 8, 7.5, { align: 'center' })),
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
  const lines = [
    words.controller,
    topology.content.controller?.model?.trim() ?? '',
    names.chain(chain.id),
    chain.record.marking?.trim() ?? '',
    chain.record.name?.trim() ?? '',
  ].filter((line) => line !== '');
  return [
    ...(isMarked ? [markFrame(-1.2, top - 1.2, width + 2.4, height + 2.4)] : []),
    { kind: 'box', x: 0, y: top, width, height, corner: 0.8, line: { width: 0.7 } },
    ...stackLines(topology.content.controller?.designation.trim() ?? '', lines, pad, top, inner),
    ...(chain.units.length === 0 ? [] : drawPorts(width, top)),
  ];
}
