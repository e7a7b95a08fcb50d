import { XMLBuilder } from 'fast-xml-parser';
import type { Topology } from '../topology/index.ts';
import { columnsOf, listOfKind, type TableKind } from './columns.ts';
import { makeTable, type TableWords } from './makeTable.ts';

/** What nodes are that are no unit: the controller, the open end of a cable or lead, the encoder at the end of a feedback cable. */
export const apartNodes = ['controller', 'open-end', 'encoder'] as const;
type ApartNode = (typeof apartNodes)[number];

/** Ids of such nodes; no record has a colon in its id. */
const apartId = (node: ApartNode, of = ''): string => `${node}:${of}`;

interface Element {
  readonly [name: string]: unknown;
}

/**
 * Units as nodes; optical cables, 24 V leads and feedback cables as edges, with every column of their tables as data (GraphML 1.0, Brandes
 * et al. 2002). Edges run the way the light runs outwards, the way the power runs, and from a unit to the encoder that it reads.
 */
export function writeGraphml(topology: Topology, words: TableWords): string {
  const nodes = elements(topology, 'units', words, (record) => ({ '@_id': record.id }));
  const cables = elements(topology, 'cables', words, (record) => ends(record, endNode(record['upper']), endNode(record['lower'])));
  const leads = elements(topology, 'leads', words, (record) => ends(record, endNode(record['from']), endNode(record['to'])));
  const feedbacks = elements(topology, 'feedbacks', words, (record) => ends(record, String(record['unit']), apartId('encoder', record.id)));
  const edges = [...cables, ...leads, ...feedbacks];
  const used = new Set(edges.flatMap((edge) => [String(edge['@_source']), String(edge['@_target'])]));
  const extra = [...used].flatMap((id) => {
    const node = apartNodes.find((one) => id.startsWith(`${one}:`));
    return node === undefined ? [] : [{ '@_id': id, data: [data('node', 'list', node)] }];
  });
  const keys = [...keysOf('node', ['units']), ...keysOf('edge', ['cables', 'leads', 'feedbacks'])];
  const document = {
    '?xml': { '@_version': '1.0', '@_encoding': 'UTF-8' },
    graphml: {
      '@_xmlns': 'http://graphml.graphdrawing.org/xmlns',
      key: keys,
      graph: { '@_id': topology.content.id, '@_edgedefault': 'directed', node: [...extra, ...nodes], edge: edges },
    },
  };
  return new XMLBuilder({ ignoreAttributes: false, format: true, indentBy: ' ', suppressEmptyNode: true }).build(document);
}

function keysOf(owner: 'node' | 'edge', kinds: readonly TableKind[]): readonly Element[] {
  const names = new Set(['list', ...kinds.flatMap((kind) => columnsOf(kind).map(({ key }) => key as string))]);
  return [...names].map((name) => ({ '@_id': `${owner}.${name}`, '@_for': owner, '@_attr.name': name, '@_attr.type': 'string' }));
}

const data = (owner: 'node' | 'edge', name: string, value: string): Element => ({ '@_key': `${owner}.${name}`, '#text': value });

function elements(
  topology: Topology,
  kind: TableKind,
  words: TableWords,
  head: (record: Readonly<Record<string, unknown>> & { readonly id: string }) => Element,
): readonly Element[] {
  const owner = kind === 'units' ? 'node' : 'edge';
  const table = makeTable(topology, kind, words);
  const records = new Map((topology.content[listOfKind[kind]] ?? []).map((record) => [record.id, record]));
  const idColumn = table.columns.indexOf('id');
  return table.rows.flatMap((row) => {
    const record = records.get(String(row[idColumn]));
    if (record === undefined) return [];
    const cells = table.columns.flatMap((key, index) => {
      const value = row[index];
      return value === null || value === undefined || key === 'id' ? [] : [data(owner, key, cleanXml(String(value)))];
    });
    return [{ ...head(record), data: [data(owner, 'list', kind), ...cells] }];
  });
}

const ends = (record: { readonly id: string }, source: string, target: string): Element => ({
  '@_id': record.id,
  '@_source': source,
  '@_target': target,
});

function endNode(end: unknown): string {
  if (typeof end !== 'object' || end === null) return apartId('open-end');
  return 'unit' in end ? String(end.unit) : apartId('controller');
}

/** XML 1.0 cannot hold most control signs. */
function cleanXml(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must go.
  return text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '');
}
