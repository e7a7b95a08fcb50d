import { entryWords, meaningSetWords, meaningWords, windowTexts } from '../../engine/messages/index.ts';
import { type DisplayMeaning, displayMeanings, supplyMeanings, type UnitKind } from '../../engine/schema/index.ts';
import { type MarkName, markOf } from '../marks/DisplayMark.tsx';

/** One answer to "what does it show", with the digit that gives it. */
export interface EntryChoice {
  readonly key: string;
  /** Empty: nobody has looked. */
  readonly meanings: readonly DisplayMeaning[];
  readonly mark: MarkName;
  readonly words: string;
}

const single = (meaning: DisplayMeaning): EntryChoice => ({
  key: String(displayMeanings.indexOf(meaning) + 1),
  meanings: [meaning],
  mark: meaning,
  words: meaningWords[meaning].label,
});

const set = (key: string, meanings: readonly DisplayMeaning[], words: string): EntryChoice => ({
  key,
  meanings,
  mark: markOf(meanings),
  words,
});

const notLookedAt: EntryChoice = { key: '0', meanings: [], mark: 'not-looked-at', words: windowTexts.entry.notLookedAt };

const unitChoices: readonly EntryChoice[] = [
  ...displayMeanings.map(single),
  set(
    '7',
    displayMeanings.filter((meaning) => meaning !== 'dark'),
    meaningSetWords.lit.label,
  ),
  set('8', ['upstream-loss', 'downstream-loss', 'both-losses'], meaningSetWords.complains.label),
  notLookedAt,
];

const supplyChoices: readonly EntryChoice[] = [
  ...supplyMeanings.map(single),
  set(
    '7',
    supplyMeanings.filter((meaning) => meaning !== 'dark'),
    meaningSetWords.lit.label,
  ),
  notLookedAt,
];

const skip: EntryChoice = { ...notLookedAt, words: entryWords.walk.skip };

/**
 * The answers for a kind of unit. A digit means the same everywhere, so a supply has none for the losses. On a walk the last one only
 * goes on: what was entered before stays.
 */
export function entryChoices(kind: UnitKind, walking = false): readonly EntryChoice[] {
  const choices = kind === 'supply' ? supplyChoices : unitChoices;
  return walking ? choices.map((choice) => (choice === notLookedAt ? skip : choice)) : choices;
}
