import { lookOutcomes } from '../diagnosis/index.ts';
import { displayMeanings, supplyMeanings } from '../schema/index.ts';
import type { Game, GameStep } from './game.ts';

/** Everything that a step could show, whatever is wrong: what a trainee may predict. */
export function thinkableOutcomes({ cabinet }: Pick<Game, 'cabinet'>, { step }: Pick<GameStep, 'step'>): readonly string[] {
  switch (step.do) {
    case 'read-display':
      return cabinet.units.get(step.unit)?.kind === 'supply' ? supplyMeanings : displayMeanings;
    case 'read-report':
      return [...(cabinet.chainById.get(step.chain)?.units ?? []).map((_, index) => String(index + 1)), 'none'];
    case 'look':
      return lookOutcomes(step.look);
    default:
      return ['runs', 'halts'];
  }
}
