import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseCabinetFile, serializeCabinet } from '../../engine/cabinet/index.ts';
import { wordProblem } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { publishedPath } from '../files/publish.ts';
import { arbitraryCabinet } from '../generators/cabinets.ts';
import { brokenBy } from './brokenBy.ts';
import { arbitraryEdits, doEdit } from './randomEdits.ts';

const seed = 6;

/** The published schema, read by an independent validator. */
const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(JSON.parse(readFileSync(publishedPath('cabinet'), 'utf8')));

describe('edits one after another', () => {
  it('should leave a cabinet that its file takes, in which every reference leads somewhere', () => {
    fc.assert(
      fc.property(arbitraryCabinet(), arbitraryEdits(12), (start, list) => {
        let content = start;
        for (const edit of list) {
          const before = JSON.stringify(content);
          const answer = doEdit(content, edit);
          expect(JSON.stringify(content), `${edit.name} touched what it was given`).toBe(before);
          if (answer === null) continue;
          if (!answer.ok) {
            expect(answer.problems.length, edit.name).toBeGreaterThan(0);
            for (const problem of answer.problems) expect(wordProblem(problem).title).not.toMatch(/undefined/);
            continue;
          }
          content = answer.value.cabinet;
          expect(brokenBy(content), edit.name).toEqual([]);
        }
        const text = serializeCabinet(content);
        expect(validate(JSON.parse(text)), JSON.stringify(validate.errors)).toBe(true);
        const read = parseCabinetFile(text);
        expect(read.ok, JSON.stringify(read).slice(0, 500)).toBe(true);
      }),
      { seed, numRuns: 300 },
    );
  });

  it('should name exactly what is new, changed and gone', () => {
    const lists = ['chains', 'units', 'links', 'leads', 'feedbacks', 'spares', 'types', 'legends', 'fibres', 'photos'] as const;
    const records = (content: CabinetContent) =>
      new Map<string, string>([
        ...lists.flatMap((list) => (content[list] ?? []).map((record) => [record.id, JSON.stringify(record)] as const)),
        ...(content.controller ? [[content.controller.id, JSON.stringify(content.controller)] as const] : []),
      ]);
    fc.assert(
      fc.property(arbitraryCabinet(), arbitraryEdits(6), (start, list) => {
        let content = start;
        for (const edit of list) {
          const answer = doEdit(content, edit);
          if (!answer?.ok) continue;
          const before = records(content);
          const after = records(answer.value.cabinet);
          const added = [...after.keys()].filter((id) => !before.has(id));
          const removed = [...before.keys()].filter((id) => !after.has(id));
          const changed = [...after].filter(([id, text]) => before.has(id) && before.get(id) !== text).map(([id]) => id);
          expect([...answer.value.added].sort(), edit.name).toEqual(added.sort());
          expect([...answer.value.removed].sort(), edit.name).toEqual(removed.sort());
          expect([...answer.value.changed].sort(), edit.name).toEqual(expect.arrayContaining(changed.sort()));
          content = answer.value.cabinet;
        }
      }),
      { seed, numRuns: 200 },
    );
  });
});
