import { meaningWords, patternSheetWords as words } from '../messages/index.ts';
import { type Block, displaySigns, type FigureCell, inks, type Paper, placeSign, type Shape } from '../paper/index.ts';
import { type DisplayMeaning, displayMeanings, supplyMeanings } from '../schema/index.ts';
import { inMountingOrder } from '../topology/index.ts';
import { type DocumentSource, makePaper } from './source.ts';

const shortColumn = 14;

/** A blank form to note what every display shows, with a pencil: units chain by chain, what stands apart last. */
export function patternSheet(source: DocumentSource): Paper {
  const { topology, names } = source;
  const onChains = topology.chains.flatMap(({ units }) => units);
  const units = [...onChains, ...inMountingOrder(topology).filter((unit) => !onChains.includes(unit))];
  const chains = topology.chains.filter((chain) => chain.units.length > 0);
  return makePaper(source, {
    id: 'pattern-sheet',
    title: words.title,
    blocks: [
      {
        kind: 'fields',
        columns: 3,
        fields: [
          {
            label: words.fields.machine,
            ...(topology.content.machineNumber === undefined ? {} : { value: topology.content.machineNumber }),
          },
          { label: words.fields.name },
          { label: words.fields.date },
        ],
      },
      { kind: 'list', isNumbered: true, items: words.how },
      {
        kind: 'table',
        words: words.title,
        rowHeight: 8.4,
        columns: [
          { head: words.unit },
          { head: words.counted, width: 34 },
          { head: words.shows, grow: 1 },
          ...displayMeanings.map((meaning) => ({
            head: meaningWords[meaning].label.replace(' ', '\n'),
            align: 'center' as const,
            // Short words leave boxes too close to one another to be ticked without a doubt.
            ...(meaning.includes('loss') ? {} : { width: shortColumn }),
          })),
        ],
        rows: units.map((unit) => {
          const meanings: readonly DisplayMeaning[] = topology.units.get(unit)?.kind === 'supply' ? supplyMeanings : displayMeanings;
          return [
            [{ text: names.unit(unit), face: 'bold' }],
            names.place(unit),
            '',
            ...displayMeanings.map((meaning) => (meanings.includes(meaning) ? tickCell(meaning) : '')),
          ];
        }),
      },
      ...(chains.length === 0
        ? []
        : ([
            {
              kind: 'together',
              blocks: [
                { kind: 'heading', level: 2, text: words.reportHead },
                {
                  kind: 'table',
                  words: words.reportHead,
                  rowHeight: 8.4,
                  columns: [
                    { head: words.chain },
                    { head: words.allReached, align: 'center' },
                    { head: words.between, grow: 1 },
                    { head: words.and, grow: 1 },
                  ],
                  rows: chains.map(({ id }) => [[{ text: names.chain(id), face: 'bold' }], tickCell(null), '', '']),
                },
              ],
            },
          ] satisfies readonly Block[])),
      {
        kind: 'together',
        blocks: [
          { kind: 'heading', level: 2, text: words.circumstances },
          {
            kind: 'fields',
            columns: 1,
            fields: [{ label: words.fields.running }, { label: words.fields.halted }, { label: words.fields.before }],
          },
          { kind: 'heading', level: 2, text: words.notes },
          { kind: 'lines', count: 3 },
        ],
      },
    ],
  });
}

const boxSize = 4;

/** An empty box to tick, with the mark beside it in grey. */
function tickCell(meaning: DisplayMeaning | null): FigureCell {
  const box: Shape = { kind: 'box', x: 0, y: 0.3, width: boxSize, height: boxSize, line: { width: 0.3 } };
  const mark = meaning === null ? [] : placeSign(displaySigns[meaning], boxSize + 1.4, 0.5, 3.6, inks.soft);
  const words = meaning === null ? '' : meaningWords[meaning].label;
  return { figure: { width: meaning === null ? boxSize : boxSize + 5, height: boxSize + 0.6, shapes: [box, ...mark], words } };
}
