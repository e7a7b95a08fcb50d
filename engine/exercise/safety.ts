import type { UnsafeKind } from '../schema/index.ts';
import { listCautions, type StepCaution, stateNeeded } from '../steps/index.ts';
import type { Game, GameStep, Stand } from './game.ts';

/** What a trainee can say to heed; those of a step that switches off, and those of one that opens the live cabinet. */
export type CautionCode = StepCaution['code'];

/** The cautions that concern a step as things stand, what was noted so far left aside: the trainee must think of them himself. */
export function cautionsOf({ cabinet }: Game, step: GameStep): readonly CautionCode[] {
  return [...new Set(listCautions(cabinet, { snapshots: [{}] }, step.step).map(({ code }) => code))];
}

/** Whether a step needs a change of the machine's state that has its cautions: nothing is asked where the door is open already. */
export function asksCautions(stand: Stand, step: GameStep): boolean {
  const state = stateNeeded(step.step);
  return state === 'isolated' || (state === 'open' && stand.door === 'closed');
}

/**
 * What was unsafe about a step, apart from its cost (pass or fail): live work without the caution (the live cabinet opened, or reached
 * into without lock-out, all feeds and discharge); boards exchanged that are not equal; a reference position lost unawares.
 */
export function findUnsafe(game: Game, stand: Stand, step: GameStep, heeded: readonly string[]): readonly UnsafeKind[] {
  const unsafe: UnsafeKind[] = [];
  const concern = cautionsOf(game, step);
  const forgets = (code: CautionCode) => concern.includes(code) && !heeded.includes(code);
  const live: readonly CautionCode[] = stateNeeded(step.step) === 'isolated' ? ['all-feeds', 'lock-out', 'dc-link'] : ['live-cabinet'];
  if (asksCautions(stand, step) && live.some(forgets)) unsafe.push('live-work');
  if (isUnequal(game, step)) unsafe.push('unequal-boards');
  if (forgets('reference-position')) unsafe.push('lost-reference');
  return unsafe;
}

/** The cautions that were asked for at a step and not said, whether or not that was unsafe enough to fail. */
export function findForgotten(game: Game, stand: Stand, step: GameStep, heeded: readonly string[]): readonly CautionCode[] {
  return asksCautions(stand, step) ? cautionsOf(game, step).filter((code) => !heeded.includes(code)) : [];
}

/** Boards may only take each other's place with equal, known part numbers. */
function isUnequal({ cabinet, exercise }: Game, { step, spare }: GameStep): boolean {
  if (step.do !== 'act') return false;
  const part = (unit: string) => cabinet.content.units?.find(({ id }) => id === unit)?.board?.partNumber ?? '';
  return step.acts.some((act) => {
    if (act.do === 'exchange-boards') return part(act.unit) === '' || part(act.unit) !== part(act.other);
    if (act.do !== 'replace-board' || spare === undefined) return false;
    const fitting = exercise.spares?.find(({ id }) => id === spare)?.partNumber ?? '';
    return fitting === '' || fitting !== part(act.unit);
  });
}
