import type { Circumstance, CircumstanceKind } from '../schema/index.ts';
import type { Names } from './names.ts';
import { wordList } from './numbers.ts';
import type { Term } from './words.ts';

/** What a user ticks because it makes some faults likelier, and which. */
export const circumstanceWords: { readonly [K in CircumstanceKind]: Term } = {
  'transport-or-crash': { label: 'after transport or a crash', meaning: 'plugs and bad contacts become likelier' },
  'work-at-door': { label: 'work at the door', meaning: 'kinked cables and plugs near the door become likelier' },
  'recent-exchange': { label: 'something was exchanged lately', meaning: 'everything that was touched becomes likelier' },
  'oil-or-coolant': { label: 'oil or coolant', meaning: 'fouled plugs become likelier' },
  heat: { label: 'heat', meaning: 'boards become likelier' },
  storm: { label: 'a thunderstorm', meaning: 'boards and supplies become likelier' },
  'not-reworked': {
    label: 'nothing was rewired',
    meaning: 'mistakes in the wiring are ruled out, because nobody wired anything since the machine last ran',
  },
};

/** A circumstance with what it concerns: "work at the door (-TB2 and cable -WH3)". */
export function wordCircumstance(names: Names, circumstance: Circumstance): string {
  const subjects = (circumstance.subjects ?? []).map((id) => names.thing(id));
  return `${circumstanceWords[circumstance.kind].label}${subjects.length > 0 ? ` (${wordList(subjects)})` : ''}`;
}
