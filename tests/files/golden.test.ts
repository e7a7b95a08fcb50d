import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  checkCabinet,
  parseCabinetFile,
  parseCaseFile,
  parseExerciseFile,
  parseResultFile,
  parseTruthFile,
  serializeCabinet,
  serializeCase,
  serializeExercise,
  serializeResult,
  serializeTruth,
} from '../../engine/cabinet/index.ts';
import { formatVersions, makeJsonSchema, type SchemaName } from '../../engine/schema/index.ts';

/*
 * One file of each format and version that uses every field there is. They are never edited: a file of an old version must go on
 * opening, and one of the present version must be written again byte for byte.
 */

const folder = new URL('./golden/', import.meta.url);
const read = (name: string) => readFileSync(new URL(name, folder));

const kinds = [
  { format: 'linkwright-cabinet', ending: 'cabinet', reopen: (source: Uint8Array) => rewrite(parseCabinetFile(source), serializeCabinet) },
  { format: 'linkwright-case', ending: 'case', reopen: (source: Uint8Array) => rewrite(parseCaseFile(source), serializeCase) },
  { format: 'linkwright-truth', ending: 'truth', reopen: (source: Uint8Array) => rewrite(parseTruthFile(source), serializeTruth) },
  {
    format: 'linkwright-exercise',
    ending: 'exercise',
    reopen: (source: Uint8Array) => rewrite(parseExerciseFile(source), serializeExercise),
  },
  { format: 'linkwright-result', ending: 'result', reopen: (source: Uint8Array) => rewrite(parseResultFile(source), serializeResult) },
] as const;

function rewrite<T>(result: { ok: true; value: T } | { ok: false; problems: readonly unknown[] }, write: (value: T) => string): string {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return write(result.value);
}

describe('the golden files', () => {
  it('should be one for each format and version', () => {
    const expected = kinds.flatMap(({ format, ending }) =>
      Array.from({ length: formatVersions[format] }, (_, index) => `everything-${index + 1}.${ending}.json`),
    );
    expect(readdirSync(folder).sort()).toEqual(expected.sort());
  });

  it.each(kinds)('should be written again byte for byte: $ending', ({ format, ending, reopen }) => {
    const source = read(`everything-${formatVersions[format]}.${ending}.json`);
    // The version of the program is for information only, and moves on.
    const writer = /"appVersion": "[^"]*"/;
    const written = reopen(source).replace(writer, writer.exec(source.toString())?.[0] ?? '');
    expect(Buffer.from(written).equals(source)).toBe(true);
  });

  it.each(kinds)('should use every field and every variant there is: $ending', ({ format, ending }) => {
    const used = new Set<string>();
    noteUse(JSON.parse(read(`everything-${formatVersions[format]}.${ending}.json`).toString()), '', used);
    expect([...allUses(ending)].filter((use) => !used.has(use))).toEqual([]);
  });

  it('should hold a cabinet that is sound and complete', () => {
    const opened = parseCabinetFile(read('everything-1.cabinet.json'));
    expect(opened.ok && checkCabinet(opened.value).problems).toEqual([]);
  });
});

interface Schema {
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly const?: unknown;
}

/** Every field of a format by its path (`.units[].kind`), and every fixed word (`.looks[].look=lamp`). */
function allUses(name: SchemaName): ReadonlySet<string> {
  const uses = new Set<string>();
  const walk = (schema: Schema, path: string) => {
    if (schema.const !== undefined) uses.add(`${path}=${String(schema.const)}`);
    for (const [key, member] of Object.entries(schema.properties ?? {})) {
      uses.add(`${path}.${key}`);
      walk(member, `${path}.${key}`);
    }
    if (schema.items !== undefined) walk(schema.items, `${path}[]`);
    for (const option of [...(schema.anyOf ?? []), ...(schema.oneOf ?? [])]) walk(option, path);
  };
  walk(makeJsonSchema(name) as Schema, ''); // our own schema, of the part of JSON Schema named above
  return uses;
}

function noteUse(value: unknown, path: string, used: Set<string>) {
  if (Array.isArray(value)) {
    for (const item of value) noteUse(item, `${path}[]`, used);
  } else if (typeof value === 'object' && value !== null) {
    for (const [key, member] of Object.entries(value)) {
      used.add(`${path}.${key}`);
      noteUse(member, `${path}.${key}`, used);
    }
  } else {
    used.add(`${path}=${String(value)}`);
  }
}
