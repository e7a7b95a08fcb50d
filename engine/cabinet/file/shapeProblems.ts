import type { z } from 'zod';
import { jsonPointer, makeProblem, type Problem } from '../../base/index.ts';
import { textForms } from '../../schema/index.ts';
import { maximumProblems } from './limits.ts';
import { contentPointer, linesAt, scanJson } from './scanJson.ts';

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

/** A shape problem before its line is known. */
interface Found {
  readonly path: Path;
  readonly make: (facts: { readonly field: string; readonly line: number }, where: string) => Problem;
}

/**
 * Turns what the schema found into problems: the field as a path (`units[3].kind`), the line of the text in which it stands, and a
 * JSON pointer into the content. At most `maximumProblems`; a last one counts the rest.
 *
 * @param content what was validated
 * @param base path of the content inside the file
 */
export function shapeProblems(issues: readonly Issue[], content: unknown, text: string, base: Path = ['content']): readonly Problem[] {
  const found = issues.flatMap((issue) => explain(issue, content, []));
  const kept = found.slice(0, maximumProblems);
  const lines = linesOf(
    text,
    kept.map(({ path }) => [...base, ...path]),
  );
  const problems = kept.map(({ path, make }) => {
    const pointer = jsonPointer([...base, ...path]);
    return make({ field: fieldName(path), line: lines.get(pointer) ?? 0 }, contentPointer(pointer));
  });
  const rest = found.length - kept.length;
  return rest > 0 ? [...problems, makeProblem('more-problems', 'refused', { facts: { count: rest } })] : problems;
}

function explain(issue: Issue, content: unknown, before: Path): readonly Found[] {
  const path = [...before, ...issue.path];
  const refused = (make: Found['make'], at: Path = path): readonly Found[] => [{ path: at, make }];
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys
        .slice(0, maximumProblems + 1)
        .flatMap((key) => refused((facts, where) => makeProblem('field-unknown', 'refused', { where, facts }), [...path, key]));
    case 'invalid_type': {
      const value = valueAt(content, path);
      if (value === undefined) return refused((facts, where) => makeProblem('field-missing', 'refused', { where, facts }));
      return refused((facts, where) =>
        makeProblem('field-wrong-type', 'refused', {
          where,
          facts: { ...facts, expected: typeNames[issue.expected] ?? issue.expected, found: typeOf(value) },
        }),
      );
    }
    case 'invalid_value': {
      if (valueAt(content, path) === undefined) return refused((facts, where) => makeProblem('field-missing', 'refused', { where, facts }));
      const allowed = issue.values.map(String).join(', ');
      return refused((facts, where) => makeProblem('field-not-allowed', 'refused', { where, facts: { ...facts, allowed } }));
    }
    case 'too_big': {
      const code = issue.origin === 'string' ? 'text-too-long' : issue.origin === 'array' ? 'list-too-long' : 'field-too-large';
      return refused((facts, where) => makeProblem(code, 'refused', { where, facts: { ...facts, maximum: Number(issue.maximum) } }));
    }
    case 'too_small': {
      const code = issue.origin === 'string' ? 'text-too-short' : issue.origin === 'array' ? 'list-too-short' : 'field-too-small';
      return refused((facts, where) => makeProblem(code, 'refused', { where, facts: { ...facts, minimum: Number(issue.minimum) } }));
    }
    case 'invalid_format':
      return refused((facts, where) =>
        makeProblem('field-bad-form', 'refused', { where, facts: { ...facts, form: formName(issue.pattern) } }),
      );
    case 'invalid_union':
      return explainUnion(issue, content, path);
    default:
      return refused((facts, where) => makeProblem('field-invalid', 'refused', { where, facts }));
  }
}

/** Of a choice of shapes: the words that name the shapes, or the problems of the shape that comes nearest. */
function explainUnion(issue: Extract<Issue, { code: 'invalid_union' }>, content: unknown, path: Path): readonly Found[] {
  if ('options' in issue && Array.isArray(issue.options)) {
    const allowed = issue.options.map(String).join(', ');
    const code = valueAt(content, path) === undefined ? 'field-missing' : 'field-not-allowed';
    return [
      {
        path,
        make: (facts, where) =>
          code === 'field-missing'
            ? makeProblem(code, 'refused', { where, facts })
            : makeProblem(code, 'refused', { where, facts: { ...facts, allowed } }),
      },
    ];
  }
  const nearest = [...issue.errors].sort((a, b) => a.length - b.length)[0];
  return (nearest ?? []).flatMap((inner) => explain(inner, content, path));
}

/** The name of a form of texts, by its pattern. */
function formName(pattern: string | undefined): string {
  return Object.entries(textForms).find(([, form]) => String(form) === pattern)?.[0] ?? 'other';
}

const typeNames: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'number',
  int: 'whole-number',
  boolean: 'true-or-false',
  array: 'list',
  object: 'object',
  record: 'object',
  null: 'nothing',
};

function typeOf(value: unknown): string {
  if (value === null) return 'nothing';
  if (Array.isArray(value)) return 'list';
  if (typeof value === 'number' && !Number.isFinite(value)) return 'number-too-large';
  return typeNames[typeof value] ?? typeof value;
}

function valueAt(content: unknown, path: Path): unknown {
  let value = content;
  for (const part of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, part)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[part]; // an object that has this member, by the line above
  }
  return value;
}

function fieldName(path: Path): string {
  return path
    .map((part, index) => (typeof part === 'number' ? `[${part}]` : `${index === 0 ? '' : '.'}${String(part).slice(0, 80)}`))
    .join('');
}

/** The line of each member; of one that is missing, the line of what it should stand in. */
function linesOf(text: string, paths: readonly Path[]): ReadonlyMap<string, number> {
  const pointers = paths.map((path) => path.map((_, index) => jsonPointer(path.slice(0, path.length - index))));
  const scanned = scanJson(text, new Set(pointers.flat()));
  const places = scanned.ok ? scanned.value : new Map<string, number>();
  const offsets = new Map<string, number>();
  for (const [pointer, ...around] of pointers) {
    const offset = [pointer, ...around].map((candidate) => places.get(candidate ?? '')).find((place) => place !== undefined);
    if (pointer !== undefined && offset !== undefined) offsets.set(pointer, offset);
  }
  const lines = linesAt(text, [...offsets.values()]);
  return new Map([...offsets].map(([pointer, offset]) => [pointer, lines.get(offset) ?? 0]));
}
