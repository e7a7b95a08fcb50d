import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { serializeCabinet, serializeCase, serializeExercise, serializeResult, serializeTruth } from '../../engine/cabinet/index.ts';
import { type FileFormat, fileFormats, fileSchemas, type SchemaName } from '../../engine/schema/index.ts';
import { makeCabinet } from '../generators/cabinets.ts';
import { makeCase, makeTruth } from '../generators/cases.ts';
import { makeExerciseContent, makeResultContent } from '../generators/exercises.ts';
import { Random } from '../generators/random.ts';
import { type Json, mutateValue } from './mutations.ts';
import { publishedPath } from './publish.ts';

const write: { readonly [F in FileFormat]: (seed: number) => string } = {
  'linkwright-cabinet': (seed) => serializeCabinet(makeCabinet(seed)),
  'linkwright-case': (seed) => serializeCase(makeCase(seed, { units: 3 })),
  'linkwright-truth': (seed) => serializeTruth(makeTruth(seed)),
  'linkwright-exercise': (seed) => serializeExercise(makeExerciseContent(seed)),
  'linkwright-result': (seed) => serializeResult(makeResultContent(seed)),
};
const names: { readonly [F in FileFormat]: SchemaName } = {
  'linkwright-cabinet': 'cabinet',
  'linkwright-case': 'case',
  'linkwright-truth': 'truth',
  'linkwright-exercise': 'exercise',
  'linkwright-result': 'result',
};
const golden = (format: FileFormat) => readFileSync(new URL(`./golden/everything-1.${names[format]}.json`, import.meta.url), 'utf8');

describe('the published schemas, read by an independent validator', () => {
  it.each(fileFormats)('should take and refuse what the program takes and refuses: %s', (format) => {
    const published = JSON.parse(readFileSync(publishedPath(names[format]), 'utf8'));
    const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(published);
    const random = new Random(20_261_125);
    const count = { taken: 0, refused: 0 };
    const samples: Json[] = [golden(format), ...Array.from({ length: 25 }, (_, seed) => write[format](seed))].map((text) =>
      JSON.parse(text),
    );
    for (const sample of samples) {
      expect(validate(sample)).toBe(true);
      for (let i = 0; i < 120; i++) {
        const mutated = mutateValue(random, sample);
        const ours = fileSchemas[format].safeParse(mutated).success;
        if (validate(mutated) !== ours) expect({ ours, theirs: validate.errors, mutated }).toBe('equal');
        count[ours ? 'taken' : 'refused'] += 1;
      }
    }
    // Both answers must have been put to the test.
    expect(count.taken).toBeGreaterThan(100);
    expect(count.refused).toBeGreaterThan(500);
  });

  it('should count the length of a text as the program does, in signs and not in units of storage', () => {
    const published = JSON.parse(readFileSync(publishedPath('cabinet'), 'utf8'));
    const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(published);
    const file = (name: string) => ({ format: 'linkwright-cabinet', formatVersion: 1, content: { id: 'c', name } });
    const names = ['ü'.repeat(200), 'ü'.repeat(201), '𝄞'.repeat(200), '𝄞'.repeat(201), 'e\u0301'.repeat(150)];
    expect(names.map((name) => fileSchemas['linkwright-cabinet'].safeParse(file(name)).success)).toEqual([true, false, true, false, false]);
    expect(names.map((name) => validate(file(name)))).toEqual([true, false, true, false, false]);
  });
});
