import type { UnitId } from '../base/index.ts';
import type { Diagnosis } from '../diagnosis/index.ts';
import { type Names, wordList, reportWords as words } from '../messages/index.ts';
import { type Block, displaySigns, type Figure, inks, type PaperSize, pageSize, placeSign, type Shape } from '../paper/index.ts';
import type { EndState } from '../plan/index.ts';
import { subjectsOf } from '../repair/index.ts';
import type { CaseContent, DisplayMeaning } from '../schema/index.ts';
import type { ChainTopology, Topology } from '../topology/index.ts';

interface PlaceSource {
  readonly topology: Topology;
  readonly names: Names;
  readonly record: Omit<CaseContent, 'cabinet'>;
  readonly diagnosis: Diagnosis | null;
  readonly end: EndState;
}

/** A place this likely is marked where nothing was done yet. */
const standsOut = 0.5;
/** mm. */
const module = { width: 17, height: 15, gap: 7, controller: 21, row: 25 } as const;
/** White at both sides of a page. */
const margins = 22;

/** The chains as they stand, with what every display showed at first, and the place of the fault marked. */
export function drawPlace(source: PlaceSource, size: PaperSize): readonly Block[] {
  const marked = markedPlaces(source);
  const perRow = Math.floor((pageSize(size, false).width - margins - module.controller) / (module.width + module.gap));
  const rows = source.topology.chains.flatMap((chain) => rowsOf(chain, perRow));
  const apart = [...source.topology.supplies, ...source.topology.offChain];
  const shapes: Shape[] = rows.flatMap((row, index) => drawRow(source, row, index * module.row, marked));
  const apartTop = rows.length * module.row;
  apart.forEach((unit, index) => {
    const x = module.controller + (index % perRow) * (module.width + module.gap);
    shapes.push(...drawUnit(source, unit, x, apartTop + Math.floor(index / perRow) * module.row, marked));
  });
  const height = apartTop + Math.ceil(apart.length / perRow) * module.row;
  const caption = marked.size === 0 ? words.noPlace : words.placeMarked(wordList([...marked].map((id) => source.names.thing(id))));
  const figure: Figure = { width: module.controller + perRow * (module.width + module.gap), height, shapes, words: caption };
  return [{ kind: 'figure', figure, caption }];
}

/** Ids of the units and cables that were the cause, or may be: what was done last where the machine runs, else what is suspected most. */
function markedPlaces({ diagnosis, end }: PlaceSource): ReadonlySet<string> {
  if (end.end !== 'open') return new Set(end.lastActs.flatMap(subjectsOf));
  return new Set(
    (diagnosis?.items ?? [])
      .filter(({ probability }) => probability >= standsOut)
      .flatMap(({ item: { fault } }) => ('link' in fault ? fault.link : 'unit' in fault ? fault.unit : [])),
  );
}

interface Row {
  readonly chain: ChainTopology;
  readonly start: number;
  readonly units: readonly UnitId[];
}

function rowsOf(chain: ChainTopology, perRow: number): readonly Row[] {
  return Array.from({ length: Math.ceil(chain.units.length / perRow) }, (_, row) => ({
    chain,
    start: row * perRow,
    units: chain.units.slice(row * perRow, (row + 1) * perRow),
  }));
}

function drawRow(source: PlaceSource, { chain, start, units }: Row, top: number, marked: ReadonlySet<string>): readonly Shape[] {
  const { names } = source;
  const middle = top + module.height * 0.72;
  const shapes: Shape[] = [];
  if (start === 0) {
    shapes.push(
      { kind: 'box', x: 0, y: top, width: module.controller - module.gap, height: module.height, line: { width: 0.4 } },
      { kind: 'text', x: 1.2, y: top + 4.4, text: names.controller(), size: 8, face: 'bold' },
      { kind: 'text', x: 1.2, y: top + 8.6, text: names.chain(chain.id), size: 7 },
    );
  }
  units.forEach((unit, index) => {
    const x = module.controller + index * (module.width + module.gap);
    const link = chain.links[start + index];
    if (link !== undefined) shapes.push(...drawCable(names.link(link), x - module.gap, x, middle, marked.has(link)));
    shapes.push(...drawUnit(source, unit, x, top, marked));
  });
  return shapes;
}

/** One duplex cable: outbound thick, return two thin lines; two strokes across where the fault is. */
function drawCable(name: string, from: number, to: number, y: number, isMarked: boolean): readonly Shape[] {
  const colour = isMarked ? inks.plum : inks.black;
  const across = (x: number): Shape => ({ kind: 'line', points: [x - 1, y + 3.4, x + 1, y - 2.6], width: 0.7, colour: inks.plum });
  const middle = (from + to) / 2;
  return [
    { kind: 'line', points: [from, y - 0.9, to, y - 0.9], width: 0.7, colour },
    { kind: 'line', points: [from, y + 0.9, to, y + 0.9], width: 0.2, colour },
    { kind: 'line', points: [from, y + 1.5, to, y + 1.5], width: 0.2, colour },
    ...(isMarked
      ? [
          across(middle - 0.8),
          across(middle + 0.8),
          { kind: 'text', x: middle, y: y + 8.6, text: name.replace(/^cable (?=-)/, ''), size: 7, face: 'bold', align: 'center' } as const,
        ]
      : []),
  ];
}

function drawUnit({ names, record }: PlaceSource, unit: UnitId, x: number, top: number, marked: ReadonlySet<string>): readonly Shape[] {
  const seen = seenAtFirst(record, unit);
  const loud = seen !== null && seen !== 'quiet';
  const box: Shape = {
    kind: 'box',
    x,
    y: top,
    width: module.width,
    height: module.height,
    ...(loud ? { fill: inks.loss } : {}),
    line: marked.has(unit) ? { width: 0.9, colour: inks.plum } : { width: 0.4 },
  };
  return [
    box,
    { kind: 'text', x: x + 1.2, y: top + 4.4, text: names.unit(unit), size: 8, face: 'bold' },
    ...placeSign(displaySigns[seen ?? 'not-looked-at'], x + module.width / 2 - 2.4, top + 7.2, 4.8),
  ];
}

/** The only meaning of the first reading of a display; null where it was not read, or may have meant several things. */
function seenAtFirst({ evidence }: PlaceSource['record'], unit: UnitId): DisplayMeaning | null {
  const first = evidence.snapshots.flatMap(({ displays }) => displays ?? []).find((one) => one.unit === unit);
  return first?.meanings.length === 1 ? (first.meanings[0] ?? null) : null;
}
