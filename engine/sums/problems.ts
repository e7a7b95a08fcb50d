import { compareProblems, jsonPointer, makeProblem, type Problem } from '../base/index.ts';
import { cableName, chainName, type Topology, unitName } from '../topology/index.ts';
import { listAxisLimits, mostAxesOnWire } from './axes.ts';
import type { DcLinkSums, FeedSums, FibreBudget, SupplyLoad } from './types.ts';

/** What the sums find wrong, for the list of problems. Too many axes on a chain is found by `checkCabinet`. */
export function listSumProblems(
  topology: Topology,
  optical: readonly FibreBudget[],
  feed: FeedSums,
  dcLinks: readonly DcLinkSums[],
): readonly Problem[] {
  return [
    ...opticalProblems(topology, optical),
    ...wireProblems(topology),
    ...feedProblems(topology, feed),
    ...dcLinkProblems(topology, dcLinks),
  ].sort(compareProblems);
}

/** The place of a thing in the content. */
function whereIs(topology: Topology, list: 'links' | 'units', id: string, ...rest: readonly string[]): string {
  const records: readonly { readonly id: string }[] = topology.content[list] ?? [];
  const at = records.findIndex((record) => record.id === id);
  return at < 0 ? '' : jsonPointer([list, at, ...rest]);
}

function opticalProblems(topology: Topology, budgets: readonly FibreBudget[]): readonly Problem[] {
  const problems: Problem[] = [];
  const told = new Set<string>();
  for (const { link, direction, margin, overloadMargin, limits, tightBends } of budgets) {
    const record = topology.links.get(link);
    const name = record === undefined ? link : cableName(record);
    const about = (...field: readonly string[]) => ({ where: whereIs(topology, 'links', link, ...field), subjects: [link] });
    if (margin.status === 'computed' && margin.value !== null && margin.value < 0) {
      problems.push(
        makeProblem('link-without-margin', 'warning', { ...about(), facts: { link: name, direction, shortDb: -margin.value } }),
      );
    }
    if (overloadMargin.value !== null && overloadMargin.value < 0) {
      problems.push(
        makeProblem('link-overloaded', 'warning', { ...about(), facts: { link: name, direction, overDb: -overloadMargin.value } }),
      );
    }
    // Length and bends are those of the cable: once for its two fibres.
    if (told.has(link)) continue;
    told.add(link);
    for (const { rule, length, limit, exceeded } of limits) {
      if (!exceeded || length.value === null || limit.value === null) continue;
      const facts = { link: name, lengthM: length.value, limitM: limit.value };
      problems.push(makeProblem(rule === 'fibre' ? 'link-too-long' : 'link-too-long-for-rate', 'warning', { ...about('lengthM'), facts }));
    }
    const [tightest] = [...tightBends].sort((a, b) => a.radiusMm - b.radiusMm);
    if (tightest !== undefined) {
      problems.push(makeProblem('bend-too-tight', 'warning', { ...about('bends'), facts: { link: name, ...tightest } }));
    }
  }
  return problems;
}

/** Limits of the user's table that the wire cannot carry. */
function wireProblems(topology: Topology): readonly Problem[] {
  const rows = listAxisLimits(topology);
  return topology.chains.flatMap((chain): readonly Problem[] => {
    const cycleClass = chain.record.cycleClass?.trim();
    const row = rows.find((one) => one.cycleClass === cycleClass);
    const most = row === undefined ? null : mostAxesOnWire(chain, row);
    if (row === undefined || most === null || row.maximumAxes <= most) return [];
    const index = (topology.content.axisLimits ?? []).findIndex(
      (one) => one.cycleClass.trim() === row.cycleClass && one.maximumAxes === row.maximumAxes,
    );
    const facts = { cycleClass: row.cycleClass, limit: row.maximumAxes, most, chain: chainName(chain.record) };
    return [
      makeProblem('axis-limit-beyond-wire', 'warning', {
        where: jsonPointer(['axisLimits', index, 'maximumAxes']),
        subjects: [chain.id],
        facts,
      }),
    ];
  });
}

function feedProblems(topology: Topology, feed: FeedSums): readonly Problem[] {
  const problems: Problem[] = feed.supplies.flatMap((supply) => supplyProblems(topology, supply));
  for (const { unit, verdict, voltage, minimum, maximum } of feed.units) {
    const name = nameOf(topology, unit);
    const about = { where: whereIs(topology, 'units', unit, 'control24'), subjects: [unit] };
    if (verdict === 'too-low' && voltage.value !== null && minimum.value !== null) {
      problems.push(
        makeProblem('voltage-too-low', 'warning', { ...about, facts: { unit: name, volts: voltage.value, minimumV: minimum.value } }),
      );
    } else if (verdict === 'too-high' && voltage.value !== null && maximum.value !== null) {
      problems.push(
        makeProblem('voltage-too-high', 'warning', { ...about, facts: { unit: name, volts: voltage.value, maximumV: maximum.value } }),
      );
    }
  }
  return problems;
}

function supplyProblems(topology: Topology, { supply, steady, inrush, outputs, backFed }: SupplyLoad): readonly Problem[] {
  const name = nameOf(topology, supply);
  const about = { where: whereIs(topology, 'units', supply, 'supply'), subjects: [supply] };
  const problems: Problem[] = [];
  if (steady.over) {
    const facts = { supply: name, loadA: steady.load.value ?? 0, ratedA: steady.rated.value ?? 0 };
    problems.push(makeProblem('supply-overloaded', 'warning', { ...about, facts }));
  }
  if (inrush.over) {
    const facts = { supply: name, inrushA: inrush.load.value ?? 0, ratedA: inrush.rated.value ?? 0 };
    problems.push(makeProblem('supply-inrush-too-high', 'warning', { ...about, facts }));
  }
  for (const output of outputs) {
    if (!output.over) continue;
    const facts = { supply: name, output: output.name, loadA: output.load.value ?? 0, ratedA: output.rated.value ?? 0 };
    problems.push(makeProblem('supply-output-overloaded', 'warning', { ...about, facts }));
  }
  if (backFed) problems.push(makeProblem('supply-back-fed', 'warning', { ...about, facts: { supply: name } }));
  return problems;
}

function dcLinkProblems(topology: Topology, links: readonly DcLinkSums[]): readonly Problem[] {
  return links.flatMap(({ supply, over, power, rated }) => {
    if (!over) return [];
    const facts = { supply: nameOf(topology, supply), loadKw: power.value ?? 0, ratedKw: rated.value ?? 0 };
    return [
      makeProblem('dc-link-overloaded', 'warning', {
        where: whereIs(topology, 'units', supply, 'supply', 'dcLink'),
        subjects: [supply],
        facts,
      }),
    ];
  });
}

function nameOf(topology: Topology, unit: SupplyLoad['supply']): string {
  const record = topology.units.get(unit);
  return record === undefined ? unit : unitName(record);
}
