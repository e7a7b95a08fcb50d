import type { UnitId } from '../base/index.ts';
import type { Game } from '../exercise/index.ts';
import { exercisePaperWords, type Names, drawingWords as words } from '../messages/index.ts';
import { displaySigns, type Figure, inks, placeSign, type Shape } from '../paper/index.ts';
import type { DisplayMeaning } from '../schema/index.ts';
import type { ChainTopology, Topology } from '../topology/index.ts';
import { fitText } from './drawText.ts';

/** mm. */
const unit = { width: 23, height: 20.5, gap: 10.6 } as const;
const controller = 20;
const rowHeight = 29.5;
/** Where the fibres run, below the upper edge of a unit. */
const fibres = 15;

/** The cabinet of an exercise, row by row: a window for each display, with what is known at the start, or empty to be filled in. */
export function drawKnown({ cabinet, exercise }: Game, names: Names, width: number): readonly Figure[] {
  const known = new Map<string, DisplayMeaning>((exercise.given.displays ?? []).map((one) => [one.unit, one.meaning]));
  const perRow = Math.max(1, Math.floor((width - controller) / (unit.width + unit.gap)));
  const rows = cabinet.chains.flatMap((chain) => rowsOf(chain.units, perRow).map((units, row) => ({ chain, units, start: row * perRow })));
  const apart = rowsOf([...cabinet.supplies, ...cabinet.offChain, ...cabinet.orphans], perRow);
  return [
    ...rows.map(({ chain, units, start }): Figure => {
      const shapes = units.flatMap((id, index) => [
        ...drawCable(cabinet, chain, start + index, leftOf(index)),
        ...drawBox(cabinet, names, id, leftOf(index), known.get(id)),
      ]);
      const head = start > 0 ? [] : drawController(names, chain);
      return figure(width, [...head, ...shapes], exercisePaperWords.picture(names.chain(chain.id), units.length));
    }),
    ...apart.map((units): Figure => {
      const shapes = units.flatMap((id, index) => drawBox(cabinet, names, id, leftOf(index), known.get(id)));
      return figure(width, shapes, exercisePaperWords.picture(units.map((id) => names.unit(id)).join(', '), units.length));
    }),
  ];
}

const figure = (width: number, shapes: readonly Shape[], said: string): Figure => ({ width, height: rowHeight, shapes, words: said });

const leftOf = (index: number) => controller + unit.gap + index * (unit.width + unit.gap);

function rowsOf(units: readonly UnitId[], perRow: number): readonly (readonly UnitId[])[] {
  return Array.from({ length: Math.ceil(units.length / perRow) }, (_, row) => units.slice(row * perRow, (row + 1) * perRow));
}

function drawController(names: Names, chain: ChainTopology): readonly Shape[] {
  return [
    { kind: 'box', x: 0, y: 0, width: controller, height: unit.height, line: { width: 0.6 } },
    ...fitText(names.controller(), 1.2, 4.6, controller - 2.4, 9, { face: 'bold', lines: 2 }),
    ...fitText(names.chain(chain.id), 1.2, 12, controller - 2.4, 8, { lines: 2 }),
  ];
}

function drawCable(topology: Topology, chain: ChainTopology, index: number, x: number): readonly Shape[] {
  const link = chain.links[index];
  if (link === undefined) return [];
  const from = x - unit.gap;
  const name = topology.links.get(link)?.designation?.trim() ?? '';
  return [
    { kind: 'line', points: [from, fibres - 0.9, x, fibres - 0.9], width: 0.7 },
    { kind: 'line', points: [from, fibres + 0.9, x, fibres + 0.9], width: 0.2 },
    { kind: 'line', points: [from, fibres + 1.5, x, fibres + 1.5], width: 0.2 },
    ...fitText(name, from + 0.6, fibres - 2.4, unit.gap - 1.2, 8, { align: 'center', lines: 2, isUpwards: true }),
  ];
}

function drawBox(topology: Topology, names: Names, id: UnitId, x: number, meaning: DisplayMeaning | undefined): readonly Shape[] {
  const feed = topology.feeds.find(({ to }) => to === id);
  const loud = meaning !== undefined && meaning !== 'quiet';
  return [
    { kind: 'box', x, y: 0, width: unit.width, height: unit.height, line: { width: 0.4 } },
    ...fitText(names.unit(id), x + 1.2, 4.2, unit.width - 2.4, 9, { face: 'bold' }),
    ...fitText(topology.placeOf.has(id) ? names.ordinal(id) : '', x + 1.2, 7.2, unit.width - 2.4, 7, { lines: 2, step: 2.6 }),
    { kind: 'box', x: x + 3, y: 11.2, width: unit.width - 6, height: 8, line: { width: 0.3 }, ...(loud ? { fill: inks.loss } : {}) },
    ...(meaning === undefined ? [] : placeSign(displaySigns[meaning], x + unit.width / 2 - 2.8, 12.4, 5.6)),
    ...(feed === undefined
      ? []
      : [
          { kind: 'line', points: [x + unit.width / 2, unit.height, x + unit.width / 2, unit.height + 2], width: 0.35 } as const,
          ...fitText(
            words.fedBy(topology.leads.get(feed.lead)?.designation?.trim() ?? '', names.unit(feed.from)),
            x - unit.gap / 2 + 0.6,
            unit.height + 5,
            unit.width + unit.gap - 1.2,
            7,
            { align: 'center', lines: 2 },
          ),
        ]),
  ];
}
