import { type ChainId, jsonPointer, makeProblem, nameList, type Problem, type UnitId } from '../base/index.ts';
import type { LinkRecord } from '../schema/index.ts';
import { cableName, chainName, unitName } from './names.ts';
import { belongsOnChain, type Records } from './records.ts';

/** The port in which an upper plug sits: a chain port of the controller, or the `down` port of a unit. */
export type UpperPort = { readonly chain: ChainId } | { readonly unit: UnitId };

type Port = UpperPort | { readonly into: UnitId };

/** A link whose ends were looked up. `null`: that end hangs free, or sits where no chain can go on. */
export interface ResolvedLink {
  readonly record: LinkRecord;
  readonly upper: UpperPort | null;
  readonly lower: UnitId | null;
}

/** Looks up both ends of every link; names open ends, unknown ids, ends at units off the chain and at supplies, forks and merges. */
export function resolveLinks(records: Records): { links: readonly ResolvedLink[]; problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const links: ResolvedLink[] = [];
  const used = new PortUse();
  for (const [index, record] of (records.content.links ?? []).entries()) {
    const upper = resolveUpper(records, record, index, problems);
    const lower = resolveUnit(records, record, 'lower', record.lower?.unit, index, problems);
    links.push({ record, upper, lower });
    if (upper !== null) used.add(upper, record, index);
    if (lower !== null) used.add({ into: lower }, record, index);
  }
  problems.push(...used.problems(records));
  return { links, problems };
}

function resolveUpper(records: Records, link: LinkRecord, index: number, problems: Problem[]): UpperPort | null {
  if (link.upper === undefined || 'unit' in link.upper) {
    const unit = resolveUnit(records, link, 'upper', link.upper?.unit, index, problems);
    return unit === null ? null : { unit };
  }
  const chain = link.upper.chain as ChainId; // looked up in the next line
  if (records.chains.has(chain)) return { chain };
  problems.push(unknown(link, 'upper', chain, jsonPointer(['links', index, 'upper', 'chain'])));
  return null;
}

function resolveUnit(
  records: Records,
  link: LinkRecord,
  end: 'upper' | 'lower',
  unitId: string | undefined,
  index: number,
  problems: Problem[],
): UnitId | null {
  const where = jsonPointer(['links', index, end]);
  if (unitId === undefined) {
    problems.push(makeProblem('link-end-open', 'incomplete', { where, subjects: [link.id], facts: { link: cableName(link), end } }));
    return null;
  }
  const id = unitId as UnitId; // looked up in the next line
  const unit = records.units.get(id);
  if (unit === undefined) {
    problems.push(unknown(link, end, unitId, `${where}/unit`));
    return null;
  }
  if (belongsOnChain(unit)) return id;
  const code = unit.kind === 'supply' ? 'supply-on-chain' : 'unit-off-chain-linked';
  problems.push(
    makeProblem(code, 'error', { where, subjects: [unit.id, link.id], facts: { unit: unitName(unit), link: cableName(link) } }),
  );
  return null;
}

function unknown(link: LinkRecord, field: string, id: string, where: string): Problem {
  return makeProblem('reference-unknown', 'error', { where, subjects: [link.id], facts: { thing: cableName(link), field, id } });
}

/** Names every port in which more than one plug is said to sit. */
class PortUse {
  readonly #plugs = new Map<string, { port: Port; links: LinkRecord[]; second: number }>();

  add(port: Port, link: LinkRecord, index: number) {
    const key = 'chain' in port ? `chain/${port.chain}` : 'unit' in port ? `down/${port.unit}` : `up/${port.into}`;
    const entry = this.#plugs.get(key);
    if (entry === undefined) {
      this.#plugs.set(key, { port, links: [link], second: 0 });
    } else {
      if (entry.links.push(link) === 2) entry.second = index;
    }
  }

  problems(records: Records): readonly Problem[] {
    return [...this.#plugs.values()]
      .filter(({ links }) => links.length > 1)
      .map((entry) => crowded(records, entry.port, entry.links, entry.second));
  }
}

function crowded(records: Records, port: Port, links: readonly LinkRecord[], second: number): Problem {
  const where = jsonPointer(['links', second, 'into' in port ? 'lower' : 'upper']);
  const ids = links.map((link) => link.id);
  const facts = { links: nameList(links.map(cableName)), count: links.length };
  if ('chain' in port) {
    const chain = records.chains.get(port.chain);
    const at = { chain: chain === undefined ? port.chain : chainName(chain) };
    return makeProblem('chain-fork', 'error', { where, subjects: [port.chain, ...ids], facts: { ...at, ...facts } });
  }
  const id = 'unit' in port ? port.unit : port.into;
  const unit = records.units.get(id);
  return makeProblem('into' in port ? 'unit-merge' : 'unit-fork', 'error', {
    where,
    subjects: [id, ...ids],
    facts: { unit: unit === undefined ? id : unitName(unit), ...facts },
  });
}
