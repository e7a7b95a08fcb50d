import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { fail, makeProblem, ok, type Result } from '../base/index.ts';
import type { TableKind } from './columns.ts';
import type { RawTable } from './importTypes.ts';
import { isObject } from './makeTable.ts';
import { scanMarkup } from './scanMarkup.ts';
import { apartNodes } from './writeGraphml.ts';

/** The tables that a graph holds: nodes as units, edges as cables unless they say that they are leads or feedback cables. */
export type GraphTables = Readonly<Record<TableKind, RawTable>>;

/**
 * Reads a GraphML file. Refused: what `scanMarkup` refuses, what is no XML, what is no graph. Nothing outside of the file is ever looked
 * at.
 */
export function readGraphml(text: string): Result<GraphTables> {
  const scanned = scanMarkup(text);
  if (!scanned.ok) return scanned;
  const valid = XMLValidator.validate(text);
  if (valid !== true) {
    return fail(makeProblem('graph-damaged', 'refused', { facts: { line: valid.err.line, column: valid.err.col } }));
  }
  const parsed = parse(text);
  if (parsed === undefined) return fail(makeProblem('graph-damaged', 'refused', { facts: { line: 1, column: 1 } }));
  const root = isObject(parsed) ? parsed['graphml'] : undefined;
  const [graph] = isObject(root) ? listOf(root['graph']) : [];
  if (!isObject(root) || graph === undefined) return fail(makeProblem('graph-missing', 'refused'));
  return ok(tablesOf(root, graph));
}

/** The text as objects; undefined where the parser refuses what its own validator let pass, which it does not place. */
function parse(text: string): unknown {
  const parser = new XMLParser({
    ignoreAttributes: false,
    parseTagValue: false,
    parseAttributeValue: false,
    trimValues: false,
    removeNSPrefix: true,
    htmlEntities: true,
  });
  try {
    return parser.parse(text);
  } catch {
    return undefined;
  }
}

type Node = Readonly<Record<string, unknown>>;

const listOf = (value: unknown): readonly Node[] =>
  (Array.isArray(value) ? value : [value]).map((one) => (one === '' ? {} : one)).filter(isObject);
const textOf = (value: unknown): string => (isObject(value) ? textOf(value['#text'] ?? '') : String(value ?? ''));

function tablesOf(root: Node, graph: Node): GraphTables {
  const names = new Map(listOf(root['key']).map((key) => [textOf(key['@_id']), textOf(key['@_attr.name']) || textOf(key['@_id'])]));
  const dataOf = (element: Node): ReadonlyMap<string, string> =>
    new Map(
      [element['data']].flat().flatMap((one): readonly (readonly [string, string])[] => {
        if (!isObject(one)) return [];
        const key = textOf(one['@_key']);
        return [[names.get(key) ?? key, textOf(one)]];
      }),
    );
  const nodes = listOf(graph['node']).map((node) => withEnds(dataOf(node), { id: textOf(node['@_id']) }));
  const units = nodes.filter((node) => !isApart(node));
  const apart = new Set(nodes.filter(isApart).map((node) => node.get('id') ?? ''));
  const edges = listOf(graph['edge']).map((edge) => {
    const known = dataOf(edge);
    const end = (name: string) => (apart.has(textOf(edge[name])) ? '' : textOf(edge[name]));
    return { kind: edgeKind(known), known, id: textOf(edge['@_id']), source: end('@_source'), target: end('@_target') };
  });
  const tableOfKind = (kind: EdgeKind) =>
    tableOf(
      edges
        .filter((edge) => edge.kind === kind)
        .map(({ known, id, source, target }) => {
          const [from, to] = endKeys[kind];
          return withEnds(known, { id, [from]: source, ...(to === null ? {} : { [to]: target }) });
        }),
    );
  return { units: tableOf(units), cables: tableOfKind('cables'), leads: tableOfKind('leads'), feedbacks: tableOfKind('feedbacks') };
}

type EdgeKind = Exclude<TableKind, 'units'>;

/** The columns of the two ends of an edge. A feedback cable ends at an encoder, which is no record. */
const endKeys = { cables: ['upper', 'lower'], leads: ['from', 'to'], feedbacks: ['unit', null] } as const satisfies Readonly<
  Record<EdgeKind, readonly [string, string | null]>
>;

function edgeKind(known: ReadonlyMap<string, string>): EdgeKind {
  const list = known.get('list');
  return list === 'leads' || list === 'feedbacks' ? list : 'cables';
}

/** The controller, open ends and encoders are no units. */
const isApart = (node: ReadonlyMap<string, string>): boolean => apartNodes.some((one) => one === node.get('list'));

/** What the data say themselves wins over what the graph's structure says. */
function withEnds(data: ReadonlyMap<string, string>, structure: Readonly<Record<string, string>>): ReadonlyMap<string, string> {
  const all = new Map(Object.entries(structure).filter(([, value]) => value !== ''));
  for (const [key, value] of data) all.set(key, value);
  return all;
}

function tableOf(elements: readonly ReadonlyMap<string, string>[]): RawTable {
  const heads = [...new Set(elements.flatMap((element) => [...element.keys()]))].filter((head) => head !== 'list');
  return {
    heads,
    rows: elements.map((element) => heads.map((head) => element.get(head) ?? '')),
    // A graph has no lines of its own: elements are counted.
    lines: elements.map((_, index) => index + 1),
  };
}
