import type { ProblemCode, ProblemFacts } from '../base/index.ts';

/** A problem in words: what it is, why it matters, what to do. Whole sentences, but for the title, which ends without a stop. */
export interface ProblemWords {
  readonly title: string;
  readonly explanation: string;
  readonly whatToDo: string;
}

/** Words for some of the problem codes; each may use the facts of its own code only. */
export type WordsFor<C extends ProblemCode> = { readonly [K in C]: (facts: ProblemFacts<K>) => ProblemWords };

/** A text from the file, in quotation marks. */
export function quote(text: string | number): string {
  return `“${text}”`;
}

/** Names that a problem lists; `count` tells how many there are, of which the list holds ten at most. */
export function named(list: string | number, count: string | number): string {
  const more = Number(count) - 10;
  return more > 0 ? `${list} and ${more} more` : String(list);
}

/** Where in a text: "line 3, column 7". */
export function atLine(facts: { readonly line: string | number; readonly column: string | number }): string {
  return `line ${facts.line}, column ${facts.column}`;
}
