import { fail, makeProblem, ok, type Problem } from '../base/index.ts';
import type { CabinetContent, LegendRecord } from '../schema/index.ts';
import type { EditResult } from './types.ts';
import { Work } from './work.ts';

/*
 * Fixes of single values, by the place to which a problem points.
 */

const noFix = (problem: Problem): EditResult => fail(makeProblem('edit-no-fix', 'refused', { subjects: problem.subjects }));

type Step = string | number;

/** The path of a JSON pointer; list places are numbers. */
function stepsOf(pointer: string): readonly Step[] {
  return pointer
    .split('/')
    .slice(1)
    .map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~'))
    .map((part) => (/^[0-9]+$/.test(part) ? Number(part) : part));
}

/** Leaves out the reference that leads nowhere: the end of a cable, the name of a type. A feedback cable of no unit goes altogether. */
export function forgetPointer(content: CabinetContent, problem: Problem): EditResult {
  const work = new Work(content);
  const steps = stepsOf(problem.where);
  const [list, index, ...rest] = steps;
  if (list === 'defaultLegend' || list === 'cabinetPhotos' || list === 'controller') {
    const next = without(content, steps) as CabinetContent;
    work.setRest({ [list]: next[list] } as Partial<CabinetContent>, problem.subjects[0] ?? content.id);
    return ok(work.finish());
  }
  if (list === 'repair') {
    // A row of the repair table without its part would hold for all parts: the whole row goes.
    const next = without(content, steps.slice(0, 3)) as CabinetContent;
    work.setRest({ repair: next.repair }, content.id);
    return ok(work.finish());
  }
  if (typeof index !== 'number') return noFix(problem);
  if (list === 'feedbacks') {
    const feedback = content.feedbacks?.[index];
    if (feedback !== undefined) work.drop('feedbacks', feedback.id);
    return ok(work.finish());
  }
  if (list !== 'units' && list !== 'links' && list !== 'leads' && list !== 'types') return noFix(problem);
  const record = content[list]?.[index];
  if (record === undefined) return noFix(problem);
  // An end without its unit is no end: the whole of it goes. A lead without its output still comes from the supply.
  const first = rest[0];
  const path = (first === 'upper' || first === 'lower' || first === 'from' || first === 'to') && rest[1] !== 'output' ? [first] : rest;
  // Only optional members are left out, so it stays a record of its list.
  work.put(list, without(record, path) as typeof record & { id: string });
  return ok(work.finish());
}

/** The value without the member at a path; a list without the entry. */
function without(value: unknown, [step, ...rest]: readonly Step[]): unknown {
  if (step === undefined || typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) {
    return rest.length === 0
      ? value.filter((_entry, at) => at !== step)
      : value.map((entry, at) => (at === step ? without(entry, rest) : entry));
  }
  const members = value as Readonly<Record<string, unknown>>;
  if (rest.length > 0) return { ...members, [step]: without(members[step], rest) };
  return Object.fromEntries(Object.entries(members).filter(([key]) => key !== step));
}

/** Exchanges the two figures of a pair that stand the wrong way round. */
export function swapFigures(content: CabinetContent, problem: Problem): EditResult {
  const [list, index, group, field] = stepsOf(problem.where);
  const pairs: Readonly<Record<string, string>> = {
    launchPowerMinDbm: 'launchPowerMaxDbm',
    sensitivityDbm: 'overloadDbm',
    minimumV: 'maximumV',
  };
  const other = pairs[String(field)];
  if ((list !== 'units' && list !== 'chains' && list !== 'types') || typeof index !== 'number' || other === undefined)
    return noFix(problem);
  const work = new Work(content);
  const record = content[list]?.[index];
  if (record === undefined) return noFix(problem);
  const figures = (record as Readonly<Record<string, unknown>>)[String(group)] as Readonly<Record<string, unknown>>; // the check looked there
  const swapped = { ...figures, [String(field)]: figures[other], [other]: figures[String(field)] };
  work.put(list, { ...record, [String(group)]: swapped } as typeof record & { id: string });
  return ok(work.finish());
}

/** Makes one entry of all that have the same code, with the meanings of all. */
export function mergeCodes(content: CabinetContent, problem: Problem): EditResult {
  const work = new Work(content);
  const legend = work.get('legends', problem.subjects[0] ?? '');
  if (legend === undefined) return noFix(problem);
  const code = String(problem.facts['code'] ?? '');
  type Row = LegendRecord['codes'][number];
  const rows: Row[] = [];
  for (const row of legend.codes) {
    const at = rows.findIndex((one) => one.code.trim() === row.code.trim());
    const first = rows[at];
    if (first === undefined || row.code.trim() !== code) rows.push(row);
    else rows[at] = { ...first, meanings: [...new Set([...first.meanings, ...row.meanings])] };
  }
  work.put('legends', { ...legend, codes: rows });
  return ok(work.finish());
}

/** Pulls all plugs out of a port but the first one that sits there. */
export function pullOthers(content: CabinetContent, problem: Problem): EditResult {
  const work = new Work(content);
  const [owner, , ...others] = problem.subjects;
  for (const id of others) {
    const link = work.get('links', id);
    if (link === undefined) continue;
    const { upper, lower, ...rest } = link;
    const pulled =
      problem.code === 'unit-merge' ? lower?.unit === owner : upper !== undefined && Object.values(upper).includes(owner ?? '');
    if (!pulled) continue;
    if (problem.code === 'unit-merge') work.put('links', { ...rest, ...(upper === undefined ? {} : { upper }) });
    else work.put('links', { ...rest, ...(lower === undefined ? {} : { lower }) });
  }
  return ok(work.finish());
}
