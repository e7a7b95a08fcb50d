import { readyPassphrase } from './sealing.ts';

/** Seconds that one guess at a seal takes on a usual computer: scrypt at the work factor of `sealAnswer`, roughly. */
const secondsPerGuess = 0.2;
/** What outlasts this is taken: a course, with room. */
const longEnough = 365 * 86_400;
/** What everybody tries first; that of the ready exercises stands in the help. */
const known: readonly string[] = [readyPassphrase, 'linkwright', 'password', 'passphrase', 'exercise', 'practice', 'instructor'];

/** How long a passphrase would stand against a program that guesses. */
export interface PassphraseStrength {
  readonly characters: number;
  /** Seconds of guessing on one computer until it is found, in the mean, had its characters been drawn by chance; 0: known to all. */
  readonly seconds: number;
  readonly isEnough: boolean;
}

/**
 * An upper bound: the characters are counted as if drawn by chance from the kinds of characters that occur, without those that repeat
 * the one before or follow it in the alphabet. Words and names are found sooner.
 */
export function weighPassphrase(passphrase: string): PassphraseStrength {
  const codes = [...passphrase].map((sign) => sign.codePointAt(0) ?? 0);
  const fresh = codes.filter((code, index) => index === 0 || Math.abs(code - (codes[index - 1] ?? 0)) > 1);
  const kinds: readonly (readonly [RegExp, number])[] = [
    [/[a-z]/, 26],
    [/[A-Z]/, 26],
    [/\d/, 10],
    [/[^a-zA-Z\d]/, 33],
  ];
  const alphabet = kinds.reduce((sum, [kind, size]) => sum + (kind.test(passphrase) ? size : 0), 0);
  const seconds = known.includes(passphrase.trim().toLowerCase()) ? 0 : (alphabet ** fresh.length / 2) * secondsPerGuess;
  return { characters: codes.length, seconds, isEnough: seconds >= longEnough };
}
