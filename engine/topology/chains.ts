import { type ChainId, compareNatural, jsonPointer, type LinkId, makeProblem, nameList, type Problem, type UnitId } from '../base/index.ts';
import type { ChainRecord, LinkRecord, OrdinalGroup, UnitKind } from '../schema/index.ts';
import { cycles } from './components.ts';
import type { ResolvedLink } from './links.ts';
import { chainName, unitName } from './names.ts';
import { belongsOnChain, type Records } from './records.ts';
import type { ChainPlace, ChainTopology } from './types.ts';

/** A way on from a port: the link, and the unit at its lower end. */
interface Step {
  readonly link: LinkRecord;
  readonly unit: UnitId;
}

/** The chains that the links make, and the units that none of them reaches. */
export interface Chains {
  readonly chains: readonly ChainTopology[];
  readonly placeOf: ReadonlyMap<UnitId, ChainPlace>;
  readonly orphans: readonly UnitId[];
  readonly problems: readonly Problem[];
}

/**
 * Follows the links from each chain port outwards. Where two links leave one port (a named problem) the one with the first id is
 * followed; a unit is placed once. What is left over is grouped into loops and loose runs.
 */
export function followChains(records: Records, links: readonly ResolvedLink[]): Chains {
  const { fromChain, fromUnit } = stepsOf(links);
  const placeOf = new Map<UnitId, ChainPlace>();
  const chains = inOrder(records.chains).map((record) => {
    const first = fromChain.get(record.id as ChainId) ?? []; // the id of a record of the chains list is a chain id
    return follow(record, first, fromUnit, records, placeOf);
  });
  const orphans = [...records.units.values()]
    .filter((unit) => belongsOnChain(unit) && !placeOf.has(unit.id as UnitId))
    .map((unit) => unit.id as UnitId); // ids of unit records
  orphans.sort(compareNatural);
  const problems = [
    ...numberProblems(records),
    ...chains.filter((chain) => chain.units.length === 0).map((chain) => emptyChain(records, chain.record)),
    ...looseEnds(records, links, fromUnit, orphans),
  ];
  return { chains, placeOf, orphans, problems };
}

function stepsOf(links: readonly ResolvedLink[]) {
  const fromChain = new Map<ChainId, Step[]>();
  const fromUnit = new Map<UnitId, Step[]>();
  for (const { record, upper, lower } of [...links].sort((a, b) => compareNatural(a.record.id, b.record.id))) {
    if (upper === null || lower === null) continue;
    if ('chain' in upper) append(fromChain, upper.chain, { link: record, unit: lower });
    else append(fromUnit, upper.unit, { link: record, unit: lower });
  }
  return { fromChain, fromUnit };
}

function follow(
  record: ChainRecord,
  first: readonly Step[],
  fromUnit: ReadonlyMap<UnitId, readonly Step[]>,
  records: Records,
  placeOf: Map<UnitId, ChainPlace>,
): ChainTopology {
  const id = record.id as ChainId; // record of the chains list
  const units: UnitId[] = [];
  const links: LinkId[] = [];
  const counted: Record<OrdinalGroup, number> = { drive: 0, 'encoder-interface': 0 };
  let steps = first;
  for (;;) {
    const step = steps.find((candidate) => !placeOf.has(candidate.unit));
    const unit = step && records.units.get(step.unit);
    if (step === undefined || unit === undefined) return { id, record, units, links };
    const group = groupOf(unit.kind);
    counted[group] += 1;
    units.push(step.unit);
    links.push(step.link.id as LinkId); // record of the links list
    placeOf.set(step.unit, { chain: id, position: units.length, group, ordinal: counted[group] });
    steps = fromUnit.get(step.unit) ?? [];
  }
}

/** The group in which a unit of a chain is counted. */
function groupOf(kind: UnitKind): OrdinalGroup {
  return kind === 'encoder-interface' ? 'encoder-interface' : 'drive';
}

function inOrder(chains: ReadonlyMap<ChainId, ChainRecord>): readonly ChainRecord[] {
  return [...chains.values()].sort((a, b) => a.number - b.number || compareNatural(a.id, b.id));
}

function numberProblems(records: Records): readonly Problem[] {
  const byNumber = new Map<number, { chain: ChainRecord; index: number }[]>();
  for (const [index, chain] of (records.content.chains ?? []).entries()) {
    if (records.chains.get(chain.id as ChainId) === chain) append(byNumber, chain.number, { chain, index }); // record of the chains list
  }
  return [...byNumber.entries()]
    .filter(([, same]) => same.length > 1)
    .map(([number, same]) =>
      makeProblem('chain-number-doubled', 'error', {
        where: jsonPointer(['chains', same[1]?.index ?? 0, 'number']),
        subjects: same.map(({ chain }) => chain.id),
        facts: { number, chains: nameList(same.map(({ chain }) => chain.name?.trim() || chain.id)), count: same.length },
      }),
    );
}

function emptyChain(records: Records, chain: ChainRecord): Problem {
  const where = jsonPointer(['chains', (records.content.chains ?? []).indexOf(chain)]);
  return makeProblem('chain-empty', 'incomplete', { where, subjects: [chain.id], facts: { chain: chainName(chain) } });
}

/** Names loops, and the runs of units that hang on no chain: one problem for each, all its units as subjects. */
function looseEnds(
  records: Records,
  links: readonly ResolvedLink[],
  fromUnit: ReadonlyMap<UnitId, readonly Step[]>,
  orphans: readonly UnitId[],
): readonly Problem[] {
  const next = (unit: UnitId) => (fromUnit.get(unit) ?? []).map((step) => step.unit);
  const all = [...records.units.keys()].sort(compareNatural);
  const loops = cycles(all, next);
  const done = new Set(loops.flat());
  const problems = loops.map((members) => {
    const inside = new Set(members);
    const closing = links.filter(
      ({ upper, lower }) => upper !== null && 'unit' in upper && inside.has(upper.unit) && lower !== null && inside.has(lower),
    );
    const ids = closing.map(({ record }) => record.id);
    return loop(records, members, ids);
  });
  const loose = new Set(orphans);
  const reached = new Set(orphans.flatMap(next));
  // A run begins at a unit that nothing leads to; behind a loop, at the first unit by id.
  for (const start of [...orphans.filter((unit) => !reached.has(unit)), ...orphans]) {
    const run: UnitId[] = [];
    for (let unit: UnitId | undefined = start; unit !== undefined && loose.has(unit) && !done.has(unit); unit = next(unit)[0]) {
      done.add(unit);
      run.push(unit);
    }
    if (run.length > 0) problems.push(looseRun(records, run));
  }
  return problems;
}

function loop(records: Records, members: readonly UnitId[], links: readonly string[]): Problem {
  const { where, names } = describe(records, members);
  return makeProblem('chain-loop', 'error', {
    where,
    subjects: [...members, ...links],
    facts: { units: nameList(names), count: names.length },
  });
}

function looseRun(records: Records, run: readonly UnitId[]): Problem {
  const { where, names } = describe(records, run);
  return makeProblem('unit-orphan', 'error', {
    where,
    subjects: run,
    facts: { unit: names[0] ?? '', units: nameList(names), count: names.length },
  });
}

function describe(records: Records, ids: readonly UnitId[]) {
  const units = ids.map((id) => records.units.get(id)).filter((unit) => unit !== undefined);
  const first = units[0];
  const where = jsonPointer(['units', first === undefined ? 0 : (records.content.units ?? []).indexOf(first)]);
  return { where, names: units.map(unitName) };
}

function append<K, V>(map: Map<K, V[]>, key: K, value: V) {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}
