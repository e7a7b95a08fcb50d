import { fail, makeProblem, ok, type Problem, type ProblemCode } from '../base/index.ts';
import type { CabinetContent } from '../schema/index.ts';
import { buildTopology, cableName, chainName, unitName } from '../topology/index.ts';
import { addController, giveChainNumber } from './addThings.ts';
import { forgetPointer, mergeCodes, pullOthers, swapFigures } from './fixValues.ts';
import { feedUnits, joinPorts, reconnectLead } from './join.ts';
import { moveToPlace } from './moveUnits.ts';
import { endOfRow } from './places.ts';
import { removeThings } from './removeThings.ts';
import { renumberOne } from './renumber.ts';
import { type FieldEdit, setFields } from './setFields.ts';
import type { EditResult } from './types.ts';
import { Work } from './work.ts';

/** What mends a problem. */
const fixNames = [
  'feed-from',
  'feed-all-from',
  'number-next',
  'take-out',
  'take-out-chain',
  'add-controller',
  'move-to-end',
  'hang-at-end',
  'number-chain',
  'pull-others',
  'turn-lead',
  'forget-reference',
  'swap-figures',
  'merge-codes',
  'clear-field',
  'drop-line',
] as const;
export type FixName = (typeof fixNames)[number];

/** A fix for one problem, with the names that its words need. */
export interface Fix {
  readonly name: FixName;
  readonly facts: { readonly thing?: string; readonly to?: string };
}

interface Plan extends Fix {
  readonly edit: () => EditResult;
}

type Planner = (content: CabinetContent, problem: Problem) => Plan | null;

/** The fix of a problem that `checkCabinet` found in this cabinet; null where only a person can tell what is meant. */
export function fixOf(content: CabinetContent, problem: Problem): Fix | null {
  const plan = planners[problem.code]?.(content, problem) ?? null;
  return plan === null ? null : { name: plan.name, facts: plan.facts };
}

/** Mends a problem: one edit. Refused when there is no fix, or it cannot be done any more. */
export function applyFix(content: CabinetContent, problem: Problem): EditResult {
  const plan = planners[problem.code]?.(content, problem);
  return plan ? plan.edit() : fail(makeProblem('edit-no-fix', 'refused', { subjects: problem.subjects }));
}

const feed: Planner = (content, problem) => {
  // A unit that is fed by one without feed is mended there.
  const id = problem.code === 'feed-without-supply' ? problem.subjects[1] : problem.subjects[0];
  const unit = content.units?.find((one) => one.id === id);
  const supply = unit && nearestSupply(content, unit.id);
  if (!unit || !supply) return null;
  return {
    name: 'feed-from',
    facts: { thing: unitName(unit), to: unitName(supply) },
    edit: () => feedUnits(content, { unit: supply.id }, [unit.id], 'each'),
  };
};

/** Every unit by a lead of its own from the one supply; which of several feeds what, only a person can tell. */
const feedAll: Planner = (content, { subjects }) => {
  const [supply, ...others] = (content.units ?? []).filter(({ kind }) => kind === 'supply');
  if (supply === undefined || others.length > 0) return null;
  return {
    name: 'feed-all-from',
    facts: { to: unitName(supply) },
    edit: () => feedUnits(content, { unit: supply.id }, subjects, 'each'),
  };
};

/** Units that nothing feeds, and the supply that mends each of them. */
export interface SharedFeed {
  readonly supply: string;
  /** Designation of the supply. */
  readonly from: string;
  readonly units: readonly string[];
}

/** What feeds several unfed units at once: one for each supply that would mend two or more of these problems. */
export function sharedFeeds(content: CabinetContent, problems: readonly Problem[]): readonly SharedFeed[] {
  const bySupply = new Map<string, SharedFeed>();
  for (const { code, subjects } of problems) {
    const [unit] = subjects;
    const supply = code === 'unit-not-fed' && unit !== undefined ? nearestSupply(content, unit) : undefined;
    if (!supply || unit === undefined) continue;
    const before = bySupply.get(supply.id)?.units ?? [];
    bySupply.set(supply.id, { supply: supply.id, from: unitName(supply), units: [...before, unit] });
  }
  return [...bySupply.values()].filter(({ units }) => units.length > 1);
}

/** The supply that feeds the nearest unit of the chain, or the first one. */
function nearestSupply(content: CabinetContent, unit: string) {
  const { topology } = buildTopology(content);
  const supplies = new Map((content.units ?? []).filter(({ kind }) => kind === 'supply').map((supply) => [supply.id, supply]));
  const chain: readonly string[] = topology.chains.find(({ units }) => units.some((one) => one === unit))?.units ?? [];
  const at = chain.indexOf(unit);
  const near = [...chain].sort((a, b) => Math.abs(chain.indexOf(a) - at) - Math.abs(chain.indexOf(b) - at));
  const feeding = near.flatMap((one) => topology.feeds.flatMap(({ from, to }) => (to === one ? (supplies.get(from) ?? []) : [])));
  return feeding[0] ?? [...supplies.values()][0];
}

/** The last one that bears a doubled designation gets the next free one; so does what has none. */
const number: Planner = (content, problem) => {
  const id = problem.subjects.at(-1);
  if (id === undefined) return null;
  const designation = renumberOne(content, id);
  if (!designation.ok) return null;
  return { name: 'number-next', facts: { to: designation.value.designation }, edit: () => ok(designation.value.edited) };
};

const takeOut: Planner = (content, problem) => {
  const id = problem.subjects[0];
  const thing = [...(content.links ?? []), ...(content.leads ?? [])].find((one) => one.id === id);
  if (thing === undefined) return null;
  return { name: 'take-out', facts: { thing: cableName(thing) }, edit: () => removeThings(content, [thing.id]) };
};

const takeOutChain: Planner = (content, problem) => {
  const chain = content.chains?.find(({ id }) => id === problem.subjects[0]);
  if (chain === undefined) return null;
  return { name: 'take-out-chain', facts: { thing: chainName(chain) }, edit: () => removeThings(content, [chain.id]) };
};

const moveToEnd: Planner = (content, problem) => {
  const id = [...problem.subjects].reverse().find((one) => content.units?.some((unit) => unit.id === one));
  const unit = content.units?.find((one) => one.id === id);
  if (unit?.row === undefined) return null;
  const { row } = unit;
  const slot = endOfRow(new Work(content), row);
  return {
    name: 'move-to-end',
    facts: { thing: unitName(unit), to: String(row) },
    edit: () => moveToPlace(content, [unit.id], { row, slot }),
  };
};

/** A loose run hangs on the only chain, behind its last unit. */
const hang: Planner = (content, problem) => {
  const { chains } = buildTopology(content).topology;
  const [chain, ...others] = chains;
  const head = content.units?.find(({ id }) => id === problem.subjects[0]);
  if (chain === undefined || others.length > 0 || head === undefined) return null;
  const last = chain.units.at(-1);
  const upper = last === undefined ? { chain: chain.id } : ({ unit: last, side: 'down' } as const);
  const answer = joinPorts(content, upper, { unit: head.id, side: 'up' });
  return answer.ok ? { name: 'hang-at-end', facts: { thing: unitName(head), to: chainName(chain.record) }, edit: () => answer } : null;
};

const numberChain: Planner = (content, problem) => {
  const chain = content.chains?.find(({ id }) => id === problem.subjects.at(-1));
  if (chain === undefined) return null;
  return { name: 'number-chain', facts: { thing: chainName(chain) }, edit: () => giveChainNumber(content, chain.id) };
};

const pull: Planner = (content, problem) => {
  const [, first] = problem.subjects;
  const kept = content.links?.find(({ id }) => id === first);
  if (kept === undefined) return null;
  return { name: 'pull-others', facts: { thing: cableName(kept) }, edit: () => pullOthers(content, problem) };
};

const turnLead: Planner = (content, problem) => {
  const lead = content.leads?.find(({ id }) => id === problem.subjects[0]);
  const fed = content.units?.find(({ id }) => id === lead?.from?.unit);
  if (lead?.to === undefined || fed === undefined || fed.kind === 'supply') return null;
  const supply = lead.to.unit;
  return {
    name: 'turn-lead',
    facts: { thing: cableName(lead) },
    edit: () => reconnectLead(content, lead.id, { from: { unit: supply }, to: fed.id }),
  };
};

const forget: Planner = (content, problem) => ({
  name: 'forget-reference',
  facts: {},
  edit: () => forgetPointer(content, problem),
});

const clearField =
  (path: string): Planner =>
  (content, problem) => {
    const id = problem.subjects[0];
    const unit = content.units?.find((one) => one.id === id);
    if (unit === undefined) return null;
    const edit: FieldEdit = { of: { in: 'units', id: unit.id }, path: [path], value: null };
    return { name: 'clear-field', facts: { thing: unitName(unit), to: path }, edit: () => setFields(content, [edit]) };
  };

/** Takes the line of a table out to which the problem points. */
const dropLine: Planner = (content, problem) => {
  const [, table = '', index = ''] = problem.where.split('/');
  if (table !== 'rows' && table !== 'rates' && table !== 'axisLimits') return null;
  const lines: readonly unknown[] = content[table] ?? [];
  const value = lines.filter((_line, at) => at !== Number(index));
  return {
    name: 'drop-line',
    facts: {},
    edit: () => setFields(content, [{ of: { in: 'cabinet' }, path: [table], value: value.length === 0 ? null : value }]),
  };
};

const planners: { readonly [C in ProblemCode]?: Planner } = {
  'unit-not-fed': feed,
  'feed-without-supply': feed,
  'feeds-not-documented': feedAll,
  'designation-doubled': number,
  'designation-missing': number,
  'link-end-open': takeOut,
  'lead-end-open': takeOut,
  'chain-empty': takeOutChain,
  'controller-missing': (content) => ({ name: 'add-controller', facts: {}, edit: () => addController(content) }),
  'place-doubled': moveToEnd,
  'unit-orphan': hang,
  'chain-number-doubled': numberChain,
  'chain-fork': pull,
  'unit-fork': pull,
  'unit-merge': pull,
  'lead-into-supply': turnLead,
  'reference-unknown': forget,
  'figures-crossed': (content, problem) => ({
    name: 'swap-figures',
    facts: { thing: String(problem.facts['thing'] ?? '') },
    edit: () => swapFigures(content, problem),
  }),
  'legend-code-doubled': (content, problem) => ({
    name: 'merge-codes',
    facts: { thing: String(problem.facts['code'] ?? '') },
    edit: () => mergeCodes(content, problem),
  }),
  'axes-on-supply': clearField('axes'),
  'supply-ratings-on-unit': clearField('supply'),
  'supply-marked-on-chain': clearField('onChain'),
  'encoder-interface-off-chain': clearField('onChain'),
  'row-doubled': dropLine,
  'rate-mode-unknown': dropLine,
};
