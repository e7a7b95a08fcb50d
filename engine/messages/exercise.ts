import type { KindText, PlayEnd, RefusedMove } from '../exercise/index.ts';
import type { ExerciseKind, Fault, SolvedBy, UnsafeKind } from '../schema/index.ts';
import type { PassphraseStrength } from '../sealing/index.ts';
import type { Topology } from '../topology/index.ts';
import { wordItem } from './faults.ts';
import type { Names } from './names.ts';
import { wordCount, wordList } from './numbers.ts';
import type { Term } from './words.ts';

/** What each kind of exercise is called, asks, and teaches. */
export const exerciseKindTexts: { readonly [K in ExerciseKind]: KindText } = {
  counting: {
    name: 'Counting and ordinals',
    task: 'The machine has stopped. The control names the break by chain and ordinals; find the place in the cabinet.',
    lesson: 'Drives and encoder interfaces are counted apart: turn the ordinal into a position before you open anything.',
  },
  neighbours: {
    name: 'Two neighbours',
    task: 'The machine has stopped. Two neighbours complain about each other; find out what lies at fault between them.',
    lesson: 'Two units that complain about each other are usually healthy: what lies between them is the suspect, the cable first.',
  },
  'quiet-unit': {
    name: 'The quiet unit in the middle',
    task: 'The machine has stopped. Read what the displays say, and what they do not say.',
    lesson: 'A lit unit without complaint, between two that complain, is itself the suspect.',
  },
  'first-hop': {
    name: 'The first hop',
    task: 'The machine has stopped. The break lies before the first unit: the cable, the unit, or the controller’s side.',
    lesson: 'On the first hop light decides: no light at the controller’s own port speaks against the controller, light there clears it.',
  },
  'one-fibre': {
    name: 'One fibre of two',
    task: 'The machine has stopped. Both neighbours complain, yet one fibre may be whole.',
    lesson: 'A port that hears nothing falls silent, so one broken fibre looks like two. The light at the plugs tells them apart.',
  },
  power: {
    name: 'Power instead of light',
    task: 'The machine has stopped. Is it the light at all?',
    lesson: 'A dark display is a question of power first: measure the 24 V before you touch a fibre.',
  },
  'do-not-switch-off': {
    name: 'Do not switch off first',
    task: 'The machine has stopped and is still switched on. Somebody wants to switch it off and on.',
    lesson: 'The displays hold what happened until power goes. Read them first; after a restart they say nothing of the chain.',
  },
  'two-faults': {
    name: 'Two faults',
    task: 'The machine has stopped, and what is seen does not fit any single fault. Two things are wrong; mend both.',
    lesson: 'Where one fault does not explain everything, look for a second before you doubt your eyes. Mending one may uncover the other.',
  },
  intermittent: {
    name: 'It comes and goes',
    task: 'The machine stops now and then. What is wrong may be away when you look.',
    lesson: 'A machine that runs again is not mended. What the displays held at the trip speaks; light that is there now clears nothing.',
  },
  place: {
    name: 'It stays where it was',
    task: 'The machine has stopped. A part can be exchanged, and the fault may stay; mend the machine.',
    lesson: 'What stays after the swap does not travel with the part: it belongs to the place or the route.',
  },
};

export const solvedWords: { readonly [S in SolvedBy]: Term } = {
  item: { label: 'name the part', meaning: 'the very part or place at fault must be named' },
  place: { label: 'name the place', meaning: 'a cable with its plugs and route, or a unit with all that is in it, must be named' },
  mended: { label: 'mend the machine', meaning: 'the machine must be mended and handed over' },
};

export const unsafeWords: { readonly [U in UnsafeKind]: Term } = {
  'live-work': {
    label: 'Live work without the caution',
    meaning: 'the cabinet was opened live, or reached into without lock-out, all feeds and discharge',
  },
  'unequal-boards': { label: 'Unequal boards', meaning: 'boards were exchanged that do not have equal, known part numbers' },
  'lost-reference': {
    label: 'Reference position lost unawares',
    meaning: 'the act may lose the machine’s reference position, and nobody said so beforehand',
  },
};

export const playEndWords: { readonly [P in PlayEnd]: Term } = {
  solved: { label: 'Right', meaning: 'the exercise is solved' },
  wrong: { label: 'Not right', meaning: 'what was named, or handed over, is not it' },
  'given-up': { label: 'Given up', meaning: 'the answer was asked for' },
  'out-of-time': { label: 'Out of time', meaning: 'the minutes that were allowed are used up' },
  'out-of-steps': { label: 'Out of steps', meaning: 'the steps that were allowed are used up' },
};

export const refusedWords: { readonly [R in RefusedMove['why']]: string } = {
  'unknown-step': 'This exercise does not allow that step.',
  seen: 'Seen already. Nothing has changed since.',
  'used-up': 'Done already, as often as allowed.',
  'no-spare': 'No spare is left.',
  'no-hint': 'There are no more hints.',
  ended: 'The exercise has ended.',
  'unknown-answer': 'That is not among the possible answers.',
  'not-asked': 'That is not what this exercise asks for.',
};

/** What the seal protects against, and what not. */
export const sealSays =
  'The answer is sealed in the open age format with the passphrase. That keeps it from being read by accident, and from anybody without the passphrase; it does not keep it from somebody who has the passphrase or guesses a weak one.';

/** Why a passphrase seals nothing, and what would: "5 characters: a program that guesses finds it within 12 days. …" */
export function wordWeakPassphrase({ characters, seconds }: PassphraseStrength): string {
  const why =
    seconds === 0
      ? 'This one everybody tries first.'
      : `${wordCount(characters, 'character')}: a program that guesses finds it within ${wordSpan(seconds)}, sooner if it is a word.`;
  return `${why} Trainees have the file, and may guess as long as they like. Take three words that do not belong together.`;
}

function wordSpan(seconds: number): string {
  if (seconds < 60) return 'a minute';
  if (seconds < 3_600) return wordCount(Math.ceil(seconds / 60), 'minute');
  if (seconds < 86_400) return wordCount(Math.ceil(seconds / 3_600), 'hour');
  return wordCount(Math.ceil(seconds / 86_400), 'day');
}

/** An answer key in words: "cable -WH3 with its plugs and route", "unit -TB2", "the board of -TB2 and cable -WH3". */
export function wordAnswerKey(names: Names, topology: Topology, key: string): string {
  return wordList(key.split(' + ').map((part) => wordOnePart(names, topology, part)));
}

function wordOnePart(names: Names, topology: Topology, part: string): string {
  const [kind = '', id = '', end] = part.split('/');
  if (kind === 'link') return `${names.link(id)} with plugs and route`;
  if (kind === 'unit')
    return [...topology.units.values()].find((unit) => unit.id === id)?.kind === 'supply'
      ? `supply ${names.unit(id)}`
      : `unit ${names.unit(id)}`;
  return wordItem(names, faultLike(kind, id, end));
}

/** An item key as a fault of that item; only its reference is worded. */
function faultLike(kind: string, id: string, end: string | undefined): Fault {
  const at = { link: id, unit: id, chain: id, lead: id, feedback: id, ...(end === undefined ? {} : { end }) };
  return { item: kind, mode: '', ...at } as unknown as Fault; // keys are made from faults, so kind and reference fit
}
