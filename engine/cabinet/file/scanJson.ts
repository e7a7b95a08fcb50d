import { fail, jsonPointer, makeProblem, ok, type Problem, type Result } from '../../base/index.ts';
import { type ExpectedJson, endOfScalar, endOfString, isDamage, skipSpace } from './jsonTokens.ts';
import { maximumDepth, maximumValues } from './limits.ts';

/*
 * A reader of JSON (RFC 8259) that builds nothing. It goes before `JSON.parse`, and takes and refuses the same texts, for what that
 * cannot do: say where a text is damaged in the same way on every machine, bound depth and number of values, refuse doubled keys
 * (of which `JSON.parse` silently drops one), keys that reach for an object's prototype and half signs, and tell in which line a value stands.
 * It keeps its own stack, so that no nesting can exhaust the machine's.
 */

const forbiddenKeys: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

/** Where members of a text stand: JSON pointer to offset. */
export type Places = ReadonlyMap<string, number>;

/** Reads `text` through; answers where the `wanted` members stand (a member of an object at its key), by JSON pointer. */
export function scanJson(text: string, wanted: ReadonlySet<string> = new Set()): Result<Places> {
  const scanner = new Scanner(text, wanted);
  const problem = scanner.read();
  return problem === null ? ok(scanner.places) : fail(problem);
}

/** Line and column, both from 1, of an offset into a text. */
export function lineAndColumn(text: string, offset: number): { readonly line: number; readonly column: number } {
  let line = 1;
  let start = 0;
  for (let feed = text.indexOf('\n'); feed !== -1 && feed < offset; feed = text.indexOf('\n', start)) {
    line += 1;
    start = feed + 1;
  }
  return { line, column: offset - start + 1 };
}

/** The lines, from 1, of several offsets, in one pass over the text. */
export function linesAt(text: string, offsets: readonly number[]): ReadonlyMap<number, number> {
  const lines = new Map<number, number>();
  let line = 1;
  let feed = text.indexOf('\n');
  for (const offset of [...offsets].sort((a, b) => a - b)) {
    for (; feed !== -1 && feed < offset; feed = text.indexOf('\n', feed + 1)) line += 1;
    lines.set(offset, line);
  }
  return lines;
}

/** A list (without `keys`) or object that has begun and not ended. `slot` is the index or key of the member being read. */
type Open = { readonly keys: Set<string>; slot: string } | { readonly keys: null; slot: number };

class Scanner {
  readonly places = new Map<string, number>();
  readonly #text: string;
  readonly #wanted: ReadonlySet<string>;
  readonly #open: Open[] = [];
  #at = 0;
  #values = 0;

  constructor(text: string, wanted: ReadonlySet<string>) {
    this.#text = text;
    this.#wanted = wanted;
  }

  read(): Problem | null {
    this.#at = skipSpace(this.#text, 0);
    if (this.#at === this.#text.length) return makeProblem('file-empty', 'refused');
    for (;;) {
      const begun = this.#beginValue();
      if (begun instanceof Object) return begun;
      if (begun === 'opened') continue;
      const ended = this.#endValue();
      if (ended !== 'next') return ended;
    }
  }

  /** Reads a text, number or word to its end, and an empty list or object too; of others only the opening and the first key. */
  #beginValue(): Problem | 'opened' | 'whole' {
    this.#values += 1;
    if (this.#values > maximumValues) return makeProblem('json-too-many-values', 'refused', { facts: { limit: maximumValues } });
    const first = this.#text[this.#at];
    if (first !== '{' && first !== '[') {
      const end = endOfScalar(this.#text, this.#at);
      if (isDamage(end)) return this.#damaged(end.at, end.expected);
      if (first === '"' && holdsHalfSign(this.#text.slice(this.#at, end))) {
        const where = contentPointer(this.#pointer());
        return makeProblem('json-half-sign', 'refused', { where, facts: lineAndColumn(this.#text, this.#at) });
      }
      this.#at = skipSpace(this.#text, end);
      return 'whole';
    }
    if (this.#open.length === maximumDepth) {
      return makeProblem('json-too-deep', 'refused', { facts: { ...lineAndColumn(this.#text, this.#at), limit: maximumDepth } });
    }
    this.#at = skipSpace(this.#text, this.#at + 1);
    if (this.#text[this.#at] === (first === '{' ? '}' : ']')) {
      this.#at = skipSpace(this.#text, this.#at + 1);
      return 'whole';
    }
    if (first === '{') {
      const object = { keys: new Set<string>(), slot: '' };
      this.#open.push(object);
      return this.#readKey(object, 'key-or-end') ?? 'opened';
    }
    this.#open.push({ keys: null, slot: 0 });
    this.#note();
    return 'opened';
  }

  /** Reads what follows a value: the next member's beginning, or the ends of what the value stands in. */
  #endValue(): Problem | 'next' | null {
    for (;;) {
      const inside = this.#open.at(-1);
      if (inside === undefined) return this.#at === this.#text.length ? null : this.#damaged(this.#at, 'nothing-more');
      const next = this.#text[this.#at];
      if (next === ',') {
        this.#at = skipSpace(this.#text, this.#at + 1);
        if (inside.keys !== null) return this.#readKey(inside, 'key') ?? 'next';
        inside.slot += 1;
        this.#note();
        return 'next';
      }
      if (next !== (inside.keys === null ? ']' : '}')) {
        return this.#damaged(this.#at, inside.keys === null ? 'comma-or-end-of-list' : 'comma-or-end-of-object');
      }
      this.#open.pop();
      this.#at = skipSpace(this.#text, this.#at + 1);
    }
  }

  #readKey(object: { readonly keys: Set<string>; slot: string }, expected: ExpectedJson): Problem | null {
    const start = this.#at;
    if (this.#text[start] !== '"') return this.#damaged(start, expected);
    const end = endOfString(this.#text, start);
    if (isDamage(end)) return this.#damaged(end.at, end.expected);
    const raw = this.#text.slice(start + 1, end - 1);
    const key = raw.includes('\\') ? String(JSON.parse(`"${raw}"`)) : raw;
    object.slot = key;
    const doubled = object.keys.has(key);
    if (doubled || forbiddenKeys.has(key)) {
      const where = contentPointer(this.#pointer());
      const facts = { key: key.slice(0, 80), ...lineAndColumn(this.#text, start) };
      return makeProblem(doubled ? 'json-duplicate-key' : 'json-prototype-key', 'refused', { where, facts });
    }
    object.keys.add(key);
    this.#note();
    this.#at = skipSpace(this.#text, end);
    if (this.#text[this.#at] !== ':') return this.#damaged(this.#at, 'colon');
    this.#at = skipSpace(this.#text, this.#at + 1);
    return null;
  }

  /** Keeps the place of the member that begins here, if it was asked for. */
  #note() {
    if (this.#wanted.size === 0) return;
    const pointer = this.#pointer();
    if (this.#wanted.has(pointer)) this.places.set(pointer, this.#at);
  }

  #pointer(): string {
    return jsonPointer(this.#open.map(({ slot }) => slot));
  }

  #damaged(at: number, expected: ExpectedJson): Problem {
    const found = this.#text.slice(at, at + 1);
    return makeProblem('json-damaged', 'refused', { facts: { ...lineAndColumn(this.#text, at), found, expected } });
  }
}

/** A surrogate, as it stands or escaped; in texts it is rare. */
const anySurrogate = /[\ud800-\udfff]|\\u[dD][89a-fA-F]/;
/** With the flag `u` a pair is one sign, so that this finds only one that stands alone. */
const loneSurrogate = /\p{Surrogate}/u;

/** Whether a text, in its quotation marks, holds one half of a pair of surrogates: as UTF-8 it could not be written. */
function holdsHalfSign(quoted: string): boolean {
  return anySurrogate.test(quoted) && loneSurrogate.test(String(JSON.parse(quoted)));
}

/** Turns a pointer into the file into one into its content; what stands outside the content has the empty pointer. */
export function contentPointer(pointer: string): string {
  return pointer.startsWith('/content/') ? pointer.slice('/content'.length) : '';
}
