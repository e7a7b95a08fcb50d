import { distance } from 'fastest-levenshtein';
import type { UnitKind } from '../schema/index.ts';

/** The letter of each kind: one that its name has and no other's begins with. */
export const kindLetters: { readonly [K in UnitKind]: string } = {
  'servo-drive': 's',
  'spindle-drive': 'p',
  'encoder-interface': 'e',
  supply: 'u',
};

/** Words for a kind, in the singular. */
const kindNames: { readonly [K in UnitKind]: readonly string[] } = {
  'servo-drive': ['servo', 'drive', 'axis'],
  'spindle-drive': ['spindle'],
  'encoder-interface': ['encoder', 'interface'],
  supply: ['supply', 'power'],
};

/** German words for a kind, as they stand in lists. */
const germanNames: ReadonlyMap<string, UnitKind> = new Map([
  ...['servoantrieb', 'achsantrieb', 'antrieb', 'achse'].map((name) => [name, 'servo-drive'] as const),
  ...['spindelantrieb', 'spindel'].map((name) => [name, 'spindle-drive'] as const),
  ...['geber', 'geberanschluss'].map((name) => [name, 'encoder-interface'] as const),
  ...['netzteil', 'stromversorgung', 'versorgung'].map((name) => [name, 'supply'] as const),
]);

/** Words that may follow a kind and add nothing: "servo drive", "encoder interface", "power supply". */
const tails: { readonly [K in UnitKind]: readonly string[] } = {
  'servo-drive': ['drive', 'module', 'unit'],
  'spindle-drive': ['drive', 'module', 'unit'],
  'encoder-interface': ['interface', 'module', 'unit'],
  supply: ['supply', 'module', 'unit'],
};

// Object.entries is typed by string; the keys are those of the table.
const kinds = Object.entries(kindNames) as readonly (readonly [UnitKind, readonly string[]])[];
const kindByLetter = new Map((Object.entries(kindLetters) as readonly [UnitKind, string][]).map(([kind, letter]) => [letter, kind]));
const leastPrefix = 3;

const singular = (word: string) => {
  if (word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  if (word === 'axes') return 'axis';
  return word.length > leastPrefix && word.endsWith('s') && word !== 'axis' ? word.slice(0, -1) : word;
};

/** The kinds that a word stands for: one for a name or its beginning, one for each letter of "sspe". Null when it stands for none. */
export function readKinds(word: string): readonly UnitKind[] | null {
  const wanted = singular(word);
  const named = kinds.find(([, names]) => names.includes(wanted));
  if (named) return [named[0]];
  const begun = kinds.filter(([, names]) => names.some((name) => name.startsWith(wanted)));
  const [only] = begun.length === 1 && wanted.length >= leastPrefix ? begun : [];
  // "supp" begins a name; "sup" is three units.
  if (only && wanted.length > leastPrefix) return [only[0]];
  const letters = [...word].map((letter) => kindByLetter.get(letter));
  const spelt = letters.filter((kind) => kind !== undefined);
  if (spelt.length === word.length && word.length > 0) return spelt;
  return only ? [only[0]] : null;
}

/** The one kind that a phrase names, such as "Servo drive", "spindle" or "s"; null when it names none, or several, or a model such as "S1". */
export function readKind(phrase: string): UnitKind | null {
  if (/\p{N}/u.test(phrase)) return null;
  const [first = '', ...rest] = phrase.toLowerCase().match(/\p{L}+/gu) ?? [];
  const german = germanNames.get(first);
  const found = german === undefined ? readKinds(first) : [german];
  const [kind] = found ?? [];
  if (kind === undefined || found?.length !== 1) return null;
  return rest.every((word) => isTail(kind, word)) ? kind : null;
}

/** Whether a word after a kind only completes its name. */
export function isTail(kind: UnitKind, word: string): boolean {
  return tails[kind].includes(singular(word));
}

/** The known word that a mistyped one is most like; empty when none is. Two letters in five may differ. */
export function nearestKindWord(word: string): string {
  if (word.length > 20) return '';
  const names = [...kinds.flatMap(([, list]) => list), 'chain', 'off'];
  const ranked = names
    .map((name) => ({ name, away: distance(singular(word), name) }))
    .filter(({ name, away }) => away <= Math.max(1, Math.floor(name.length * 0.4)))
    .sort((a, b) => a.away - b.away);
  return ranked[0]?.name ?? '';
}
