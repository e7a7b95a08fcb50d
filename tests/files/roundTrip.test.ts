import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  parseCabinetFile,
  parseCaseFile,
  parseTruthFile,
  serializeCabinet,
  serializeCase,
  serializeTruth,
} from '../../engine/cabinet/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { arbitraryCabinet, makeCabinet } from '../generators/cabinets.ts';
import { arbitraryCase, makeTruth } from '../generators/cases.ts';
import { Random } from '../generators/random.ts';

const runs = { numRuns: 200, seed: 20261125 };

/** The same content with the members of every object in another order; `extra` is left alone, its order is the user's. */
function reorderMembers<T>(random: Random, value: T): T {
  if (Array.isArray(value)) return value.map((item) => reorderMembers(random, item)) as T; // the same items
  if (typeof value !== 'object' || value === null) return value;
  const members = random
    .shuffled(Object.entries(value))
    .map(([key, member]) => [key, key === 'extra' ? member : reorderMembers(random, member)]);
  return Object.fromEntries(members) as T; // the same members
}

describe('opening what was written', () => {
  it('should give back the cabinet, and the same bytes again', () => {
    fc.assert(
      fc.property(arbitraryCabinet({ maxUnits: 20 }), (content) => {
        const text = serializeCabinet(content);
        const opened = parseCabinetFile(text);
        expect(opened).toEqual({ ok: true, value: content });
        expect(opened.ok && serializeCabinet(opened.value)).toBe(text);
        expect(parseCabinetFile(new TextEncoder().encode(text))).toEqual(opened);
      }),
      runs,
    );
  });

  it('should give back the case, and what was really wrong', () => {
    fc.assert(
      fc.property(arbitraryCase(), fc.nat(), (content, seed) => {
        const text = serializeCase(content);
        const opened = parseCaseFile(text);
        expect(opened).toEqual({ ok: true, value: content });
        expect(opened.ok && serializeCase(opened.value)).toBe(text);
        const truth = makeTruth(seed);
        expect(parseTruthFile(serializeTruth(truth))).toEqual({ ok: true, value: truth });
      }),
      runs,
    );
  });

  it('should write equal content as equal bytes, whatever the order of its members and of its lists of things', () => {
    fc.assert(
      fc.property(arbitraryCabinet(), fc.nat(), (content, seed) => {
        const random = new Random(seed);
        const shuffled: CabinetContent = {
          ...content,
          units: random.shuffled(content.units ?? []),
          links: random.shuffled(content.links ?? []),
          chains: random.shuffled(content.chains ?? []),
        };
        expect(serializeCabinet(reorderMembers(random, shuffled))).toBe(serializeCabinet(content));
      }),
      runs,
    );
  });

  it('should keep text of every kind', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 90 }), fc.jsonValue({ maxDepth: 4, noUnicodeString: false }), (text, value) => {
        const content: CabinetContent = { id: 'c', name: text, notes: text, extra: { value: JSON.parse(JSON.stringify(value)) } };
        const written = serializeCabinet(content);
        const opened = parseCabinetFile(written);
        // A key that reaches for a prototype is refused, and may turn up by chance.
        if (!opened.ok) return expect(opened.problems.map(({ code }) => code)).toEqual(['json-prototype-key']);
        expect(opened.value).toEqual(content);
        expect(serializeCabinet(opened.value)).toBe(written);
      }),
      runs,
    );
  });
});

describe('serializeCabinet', () => {
  it('should write two spaces, line feeds, and one at the end', () => {
    const text = serializeCabinet(makeCabinet(1));
    expect(text.startsWith('{\n  "format": "linkwright-cabinet",\n  "formatVersion": 1,\n  "appVersion": "')).toBe(true);
    expect(text.endsWith('\n}\n')).toBe(true);
    expect(text).not.toContain('\r');
  });

  it('should order things by id the way people count, and keep the order of axes', () => {
    const unit = (id: string) => ({ id, kind: 'servo-drive' as const, designation: `-${id}`, axes: [{ name: 'Z' }, { name: 'A' }] });
    const text = serializeCabinet({ id: 'c', name: 'n', units: ['u10', 'u2', 'u1', 'U1', 'u02'].map(unit) });
    const opened = parseCabinetFile(text);
    expect(opened.ok && opened.value.units?.map(({ id }) => id)).toEqual(['U1', 'u1', 'u02', 'u2', 'u10']);
    expect(opened.ok && opened.value.units?.[0]?.axes?.map(({ name }) => name)).toEqual(['Z', 'A']);
  });

  it('should leave out what is undefined, and change nothing in what it was given', () => {
    const content = { id: 'c', name: 'n', units: [], notes: undefined, links: [{ id: 'w2' }, { id: 'w1' }] };
    const before = structuredClone(content);
    expect(parseCabinetFile(serializeCabinet(content))).toEqual({
      ok: true,
      value: { id: 'c', name: 'n', units: [], links: [{ id: 'w1' }, { id: 'w2' }] },
    });
    expect(content).toEqual(before);
  });

  it('should still write what cannot be opened, so that nothing typed is lost', () => {
    const content = { id: 'c', name: 'x'.repeat(300), units: [{ id: 'not an id', kind: 'supply' as const, designation: '' }], more: 1 };
    const text = serializeCabinet(content);
    expect(JSON.parse(text).content).toEqual(content);
    const opened = parseCabinetFile(text);
    expect(opened.ok ? [] : opened.problems.map(({ where }) => where)).toEqual(['/more', '/name', '/units/0/id']);
  });
});
