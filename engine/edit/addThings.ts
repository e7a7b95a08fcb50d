import { fail, makeProblem, ok } from '../base/index.ts';
import type { CabinetContent } from '../schema/index.ts';
import { unitName } from '../topology/index.ts';
import { nextDesignation } from './designation.ts';
import type { EditResult, NewFeedback } from './types.ts';
import { unknownThing, Work } from './work.ts';

const limits = { chains: 200, feedbacks: 20_000 } as const;
const highestChain = 999;

/** Adds a chain: a port of the controller with the next free number. The first one brings the controller, where there is none. */
export function addChain(content: CabinetContent): EditResult {
  const work = new Work(content);
  const numbers = work.all('chains').map(({ number }) => number);
  if (numbers.length >= limits.chains) {
    return fail(makeProblem('edit-too-many', 'refused', { facts: { list: 'chains', maximum: limits.chains } }));
  }
  work.put('chains', { id: work.freshId('chain'), number: nextNumber(numbers) });
  needController(work);
  return ok(work.finish());
}

/** Describes the controller, where there is none. */
export function addController(content: CabinetContent): EditResult {
  const work = new Work(content);
  needController(work);
  return ok(work.finish());
}

/** Makes a controller with the next designation, where there is none. */
export function needController(work: Work): void {
  if (work.rest.controller !== undefined) return;
  const id = work.freshId('nc');
  work.setRest({ controller: { id, designation: nextDesignation(work, 'controller') } }, id);
}

/** Gives a chain the next free number. */
export function giveChainNumber(content: CabinetContent, id: string): EditResult {
  const work = new Work(content);
  const chain = work.get('chains', id);
  if (chain === undefined) return fail(unknownThing(id));
  work.put('chains', { ...chain, number: nextNumber(work.all('chains').map(({ number }) => number)) });
  return ok(work.finish());
}

/** Adds a feedback cable to a drive or an encoder interface. */
export function addFeedback(content: CabinetContent, feedback: NewFeedback): EditResult {
  const work = new Work(content);
  const unit = work.get('units', feedback.unit);
  if (unit === undefined) return fail(unknownThing(feedback.unit));
  if (unit.kind === 'supply') {
    return fail(makeProblem('edit-feedback-on-supply', 'refused', { subjects: [unit.id], facts: { unit: unitName(unit) } }));
  }
  if (work.all('feedbacks').length >= limits.feedbacks) {
    return fail(makeProblem('edit-too-many', 'refused', { facts: { list: 'feedbacks', maximum: limits.feedbacks } }));
  }
  const designation = feedback.designation?.trim() || nextDesignation(work, 'feedback');
  work.put('feedbacks', { ...feedback, id: work.freshId('g'), designation });
  return ok(work.finish());
}

/** Above the highest, unless that is the last number there is. */
function nextNumber(numbers: readonly number[]): number {
  const highest = Math.max(0, ...numbers);
  return highest < highestChain ? highest + 1 : firstFree(numbers);
}

function firstFree(numbers: readonly number[]): number {
  const taken = new Set(numbers);
  let number = 1;
  while (taken.has(number)) number += 1;
  return number;
}
