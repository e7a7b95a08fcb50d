import { fail, makeProblem, ok, type Result } from '../base/index.ts';

/** Deeper than any graph needs that holds no graphs in its nodes. */
const maximumDepth = 16;
const maximumElements = 200_000;

/** What ends each kind of markup that is not looked into. */
const closings = [
  ['<!--', '-->'],
  ['<![CDATA[', ']]>'],
  ['<?', '?>'],
] as const;

/** A tag whose attributes have their values in quotation marks; in these `>` may stand, `<` may not (XML 1.0, 2.3 and 3.1). */
const tagShape = /<(\/?)([^\s<>"'/!?]+)[^<>"']*(?:(?:"[^"<]*"|'[^'<]*')[^<>"']*)*>/y;

/** Names that a parser cannot give to the members of an object. */
const reservedNames: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

/**
 * Looks once through a text before it is parsed, from one piece of markup to the next, so that what hides in a comment for one reader
 * hides in it for all. Refused: a document type (which could bring entities), elements too deep in one another or too many, names that
 * no graph has, markup that never ends. The time taken grows with the length of the text, whatever stands in it.
 */
export function scanMarkup(text: string): Result<null> {
  let depth = 0;
  let elements = 0;
  let at = text.indexOf('<');
  while (at >= 0) {
    const opaque = closings.find(([open]) => text.startsWith(open, at));
    if (opaque === undefined && text.startsWith('<!', at)) return fail(makeProblem('graph-document-type', 'refused'));
    const end = opaque === undefined ? findTag(text, at) : findAfter(text, opaque[1], at + opaque[0].length);
    if (end === null) return fail(makeProblem('graph-damaged', 'refused', { facts: placeOf(text, at) }));
    if (opaque === undefined) {
      const isOpening = text[at + 1] !== '/';
      const isWhole = text[end - 2] === '/';
      if (!isOpening) depth -= 1;
      else {
        elements += 1;
        if (depth + 1 > maximumDepth) return fail(makeProblem('graph-too-deep', 'refused', { facts: { limit: maximumDepth } }));
        if (!isWhole) depth += 1;
      }
      if (elements > maximumElements) return fail(makeProblem('graph-too-many', 'refused', { facts: { limit: maximumElements } }));
    }
    at = text.indexOf('<', end);
  }
  return ok(null);
}

/** Where the tag that begins here ends; null when it does not, or has a name that cannot be. */
function findTag(text: string, at: number): number | null {
  tagShape.lastIndex = at;
  const [, , name = ''] = tagShape.exec(text) ?? [];
  const local = name.slice(name.indexOf(':') + 1);
  return name === '' || reservedNames.has(local) ? null : tagShape.lastIndex;
}

function findAfter(text: string, closing: string, from: number): number | null {
  const found = text.indexOf(closing, from);
  return found < 0 ? null : found + closing.length;
}

function placeOf(text: string, at: number): { readonly line: number; readonly column: number } {
  const lines = text.slice(0, at).split('\n');
  return { line: lines.length, column: (lines.at(-1)?.length ?? 0) + 1 };
}
