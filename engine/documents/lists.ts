import { paperKindWords, paperWords, startSentence, tableKindWords, tableWords, wordNumber } from '../messages/index.ts';
import type { Block, Paper, RichText, TableColumn } from '../paper/index.ts';
import { type CellValue, type ColumnKey, makeTable, type Table, type TableKind } from '../tables/index.ts';
import type { Topology } from '../topology/index.ts';
import { type DocumentSource, makePaper } from './source.ts';

const numbers: ReadonlySet<ColumnKey> = new Set<ColumnKey>([
  'lengthM',
  'crossSectionMm2',
  'couplers',
  'row',
  'slot',
  'fuseRatedA',
  'position',
]);
const growing: ReadonlySet<ColumnKey> = new Set<ColumnKey>(['notes', 'route', 'model', 'axes']);

/** Every unit with where it stands, part numbers and serials of itself and its board. */
export function unitList(source: DocumentSource): Paper {
  const { topology } = source;
  const columns: readonly ColumnKey[] = [
    'designation',
    'kind',
    'chain',
    'ordinal',
    'row',
    'slot',
    'model',
    'axes',
    'partNumber',
    'revision',
    'serial',
    'boardPartNumber',
    'boardRevision',
    'boardSerial',
    'fuse',
  ];
  const { controller } = topology.content;
  const head: readonly Block[] =
    controller === undefined
      ? []
      : [
          {
            kind: 'fields',
            columns: 5,
            // What is not known of it leaves no dash.
            fields: [
              { label: paperWords.controller, value: controller.designation || paperWords.none },
              ...(['model', 'partNumber', 'revision', 'serial'] as const).flatMap((key) =>
                controller[key]?.trim() ? [{ label: tableWords.heads[key], value: controller[key] }] : [],
              ),
            ],
          },
        ];
  return makePaper(source, {
    id: 'unit-list',
    title: startSentence(paperKindWords.units.label),
    isLandscape: true,
    blocks: [...head, ...listBlock(topology, 'units', columns), ...spares(topology)],
  });
}

/** Optical cables and feedback cables with both ends and what stands on their labels. */
export function cableSchedule(source: DocumentSource): Paper {
  const { topology } = source;
  const metres = (topology.content.links ?? []).reduce((sum, { lengthM }) => sum + (lengthM ?? 0), 0);
  return makePaper(source, {
    id: 'cable-schedule',
    title: startSentence(paperKindWords.cables.label),
    isLandscape: true,
    blocks: [
      { kind: 'heading', level: 2, text: paperWords.opticalCables },
      ...listBlock(topology, 'cables', [
        'designation',
        'upper',
        'labelUpper',
        'lower',
        'labelLower',
        'lengthM',
        'fibre',
        'route',
        'partNumber',
        'revision',
        'serial',
      ]),
      ...(metres > 0 ? [{ kind: 'paragraph', text: paperWords.total(wordNumber(metres)), size: 9 } as const] : []),
      { kind: 'heading', level: 2, text: paperWords.feedbackCables },
      ...listBlock(topology, 'feedbacks', ['designation', 'unit', 'axis', 'positionKept', 'partNumber', 'revision', 'serial', 'notes']),
    ],
  });
}

/** The 24 V leads. */
export function leadList(source: DocumentSource): Paper {
  return makePaper(source, {
    id: 'lead-list',
    title: startSentence(paperKindWords.leads.label),
    isLandscape: true,
    blocks: [
      ...listBlock(source.topology, 'leads', [
        'designation',
        'from',
        'output',
        'to',
        'fuse',
        'lengthM',
        'crossSectionMm2',
        'conductorClass',
        'partNumber',
        'revision',
        'serial',
        'notes',
      ]),
    ],
  });
}

/** A table of some of the columns; those in which nothing stands are left out, but for the first. */
function listBlock(topology: Topology, kind: TableKind, wanted: readonly ColumnKey[]): readonly Block[] {
  const table = makeTable(topology, kind, tableWords);
  if (table.rows.length === 0) return [{ kind: 'paragraph', text: paperWords.nothingListed }];
  const shown = wanted.filter((key, index) => index === 0 || valuesOf(table, key).some((value) => value !== null && value !== ''));
  const columns = shown.map(
    (key): TableColumn => ({
      head: tableWords.heads[key],
      ...(numbers.has(key) ? { align: 'right' } : {}),
      // Few and short columns are spread over the sheet; long texts get most of what is left.
      grow: growing.has(key) ? 4 : 1,
    }),
  );
  const indices = shown.map((key) => table.columns.indexOf(key));
  const rows = table.rows.map((row) => indices.map((index, at) => writeCell(row[index] ?? null, shown[at])));
  return [{ kind: 'table', words: tableKindWords[kind], columns, rows }];
}

const valuesOf = (table: Table, key: ColumnKey): readonly CellValue[] => {
  const index = table.columns.indexOf(key);
  return table.rows.map((row) => row[index] ?? null);
};

function writeCell(value: CellValue, key: ColumnKey | undefined): RichText {
  const text = value === null ? '' : typeof value === 'number' ? wordNumber(value, 3) : value;
  return key === 'designation' ? [{ text, face: 'bold' }] : text;
}

function spares({ content }: Topology): readonly Block[] {
  const list = content.spares ?? [];
  if (list.length === 0) return [];
  const { kind, count, designation, fits } = paperWords.spareHeads;
  return [
    { kind: 'heading', level: 2, text: paperWords.spares },
    {
      kind: 'table',
      words: paperWords.spares,
      columns: [
        { head: kind },
        { head: designation },
        { head: tableWords.heads.partNumber },
        { head: tableWords.heads.revision },
        { head: tableWords.heads.serial },
        { head: count, align: 'right' },
        { head: fits },
        { head: tableWords.heads.lengthM, align: 'right' },
        { head: tableWords.heads.notes, grow: 1 },
      ],
      rows: list.map((spare) => [
        paperWords.spareKinds[spare.kind],
        spare.designation ?? '',
        spare.partNumber ?? '',
        spare.revision ?? '',
        spare.serial ?? '',
        spare.count === undefined ? '' : String(spare.count),
        spare.fits === undefined ? '' : paperWords.fits[spare.fits],
        spare.lengthM === undefined ? '' : wordNumber(spare.lengthM, 3),
        spare.notes ?? '',
      ]),
    },
  ];
}
