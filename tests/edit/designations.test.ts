import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Designations, splitDesignation } from '../../engine/edit/designations.ts';
import { Work } from '../../engine/edit/work.ts';

/** The same by looking through everything each time. */
function plainNext(all: readonly string[], stem: string): string {
  const numbers = all.map(splitDesignation).flatMap((split) => (split?.stem === stem ? [split.number] : []));
  return `${stem}${1 + Math.max(0, ...numbers)}`;
}

function plainCommonStem(all: readonly string[], letters: string): string | null {
  const stems = [...new Set(all)].flatMap((one) => splitDesignation(one)?.stem ?? []).filter((stem) => stem.endsWith(letters));
  const own = stems.filter((stem) => !/[A-Za-z]/.test(stem.slice(0, -letters.length).slice(-1)));
  const count = (stem: string) => own.filter((one) => one === stem).length;
  return [...own].sort((a, b) => count(b) - count(a) || (a < b ? -1 : 1))[0] ?? null;
}

const text = fc
  .tuple(fc.constantFrom('-TA', '=A1-TA', '+K2-TA', '-XTA', '-WH', 'TA', ''), fc.constantFrom('', '0', '1', '2', '7', '07', '12', ' 3 '))
  .map((parts) => parts.join('').trim());

describe('designations as they come and go', () => {
  it('should be numbered on as looking through all of them says', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.boolean(), text), { maxLength: 40 }), (moves) => {
        const index = new Designations();
        const all: string[] = [];
        for (const [isThere, name] of moves) {
          const at = all.indexOf(name);
          if (isThere) {
            index.add(` ${name}`);
            if (name !== '') all.push(name);
          } else if (at >= 0) {
            index.remove(name);
            all.splice(at, 1);
          }
          expect(index.has(name)).toBe(all.includes(name));
          for (const stem of ['-TA', '=A1-TA', '-XTA', '']) expect(index.next(stem)).toBe(plainNext(all, stem));
          expect(index.commonStem('TA')).toBe(plainCommonStem(all, 'TA'));
        }
      }),
      { seed: 20261126 },
    );
  });

  it('should follow the records of a cabinet while it is edited; ids should count on from the greatest that was ever there', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.constantFrom('put', 'drop', 'make'), fc.nat(12), text), { maxLength: 30 }), (moves) => {
        const work = new Work({ id: 'c', name: 'C', controller: { id: 'k', designation: '-TA5' }, units: [] });
        work.freshId('u');
        let greatest = 1;
        for (const [does, number, designation] of moves) {
          const id = does === 'make' ? work.freshId('u') : `u${number}`;
          if (does === 'make') expect(id).toBe(`u${greatest + 1}`);
          if (does === 'drop') work.drop('units', id);
          else {
            work.put('units', { id, kind: 'servo-drive', designation });
            greatest = Math.max(greatest, Number(id.slice(1)));
          }
          const all = ['-TA5', ...work.all('units').map((one) => one.designation)].filter((one) => one !== '');
          expect(work.designations('units').next('-TA')).toBe(plainNext(all, '-TA'));
        }
      }),
      { seed: 20261126 },
    );
  });
});
