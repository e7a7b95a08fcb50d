import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Problem } from '../../engine/base/index.ts';
import { checkCabinet, parseCabinetFile, serializeCabinet } from '../../engine/cabinet/index.ts';
import { applyFix, fixOf, removeThings, sharedFeeds } from '../../engine/edit/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { type Json, mutateValue } from '../files/mutations.ts';
import { arbitraryCabinet } from '../generators/cabinets.ts';
import { Random } from '../generators/random.ts';
import { chains, done, find, refused, row, small } from './small.ts';

const problemOf = (content: CabinetContent, code: Problem['code']) => {
  const found = checkCabinet(content).problems.find((problem) => problem.code === code);
  if (found === undefined) throw new Error(`no ${code}`);
  return found;
};
/** The cabinet with the first problem of a code mended, and what the fix is called. */
const mend = (content: CabinetContent, code: Problem['code']) => {
  const problem = problemOf(content, code);
  const { cabinet } = done(applyFix(content, problem));
  expect(checkCabinet(cabinet).problems.filter((one) => one.code === code && one.where === problem.where)).toEqual([]);
  return { cabinet, fix: fixOf(content, problem) };
};

describe('fixes', () => {
  it('should feed a unit from the supply of its neighbours', () => {
    const supplies = [...(small.units ?? []), { id: 'q', kind: 'supply', designation: '-TB7' } as const];
    const leads = small.leads?.map((lead) => (lead.to?.unit === 'd' ? { ...lead, from: { unit: 'q' } } : lead));
    const { cabinet, fix } = mend({ ...small, units: supplies, leads: leads?.filter(({ to }) => to?.unit !== 'c') }, 'unit-not-fed');
    expect(cabinet.leads?.at(-1)).toMatchObject({ from: { unit: 'p' }, to: { unit: 'c' } });
    expect(fix).toEqual({ name: 'feed-from', facts: { thing: '-KE2', to: '-TB9' } });
  });

  it('should feed all units from the one supply where no lead is written down, and not choose between two', () => {
    const bare = { ...small, leads: [] };
    const { cabinet, fix } = mend(bare, 'feeds-not-documented');
    expect(cabinet.leads?.map(({ from, to }) => `${from?.unit} ${to?.unit}`)).toEqual(['p a', 'p b', 'p c', 'p d', 'p e']);
    expect(fix).toEqual({ name: 'feed-all-from', facts: { to: '-TB9' } });
    const two: CabinetContent = { ...bare, units: [...(small.units ?? []), { id: 'q', kind: 'supply', designation: '-TB7' }] };
    expect(fixOf(two, problemOf(two, 'feeds-not-documented'))).toBeNull();
  });

  it('should gather unfed units under the supply that would feed each of them', () => {
    const some = { ...small, leads: small.leads?.filter(({ to }) => to?.unit === 'a') };
    const gathered = sharedFeeds(some, checkCabinet(some).problems);
    expect(gathered).toEqual([{ supply: 'p', from: '-TB9', units: ['b', 'c', 'd', 'e'] }]);
    const one = { ...small, leads: small.leads?.filter(({ to }) => to?.unit !== 'c') };
    expect(sharedFeeds(one, checkCabinet(one).problems)).toEqual([]);
  });

  it('should give the later of two things of one designation the next free one', () => {
    const units = small.units?.map((unit) => (unit.id === 'd' ? { ...unit, designation: '-TB1' } : unit));
    const { cabinet, fix } = mend({ ...small, units }, 'designation-doubled');
    expect(find(cabinet, 'units', 'a')?.designation).toBe('-TB1');
    expect(find(cabinet, 'units', 'd')?.designation).toBe('-TB10');
    expect(fix?.facts.to).toBe('-TB10');
  });

  it('should hang a loose run on the only chain, and not guess among several', () => {
    const one = { ...small, chains: small.chains?.slice(0, 1), units: small.units?.filter(({ id }) => id !== 'd'), leads: [] };
    const loose = { ...one, links: small.links?.filter(({ id }) => id !== 'w2' && id !== 'w4') };
    expect(chains(mend(loose, 'unit-orphan').cabinet)[0]).toBe('w1 a w4 b w3 c');
    const several = { ...small, links: small.links?.filter(({ id }) => id !== 'w2') };
    expect(fixOf(several, problemOf(several, 'unit-orphan'))).toBeNull();
    expect(refused(applyFix(several, problemOf(several, 'unit-orphan')))).toBe('edit-no-fix');
  });

  it('should pull the plugs that are too many, and keep the cables', () => {
    const links = small.links?.map((link) => (link.id === 'w4' ? { ...link, upper: { chain: 'ch1' } } : link));
    const { cabinet } = mend({ ...small, links }, 'chain-fork');
    expect(find(cabinet, 'links', 'w4')).toEqual({ id: 'w4', designation: '-WH4', lower: { unit: 'd' } });
  });

  it('should move the second of two things in one slot to the end of the row', () => {
    const units = small.units?.map((unit) => (unit.id === 'b' ? { ...unit, slot: 1 } : unit));
    expect(row(mend({ ...small, units }, 'place-doubled').cabinet, 1)).toBe('1 a, 3 c, 4 b');
  });

  it('should forget what a reference names and is not there', () => {
    const units = small.units?.map((unit) => (unit.id === 'a' ? { ...unit, type: 'gone' } : unit));
    expect(find(mend({ ...small, units }, 'reference-unknown').cabinet, 'units', 'a')).not.toHaveProperty('type');
    const links = small.links?.map((link) => (link.id === 'w1' ? { ...link, upper: { chain: 'gone' } } : link));
    expect(find(mend({ ...small, links }, 'reference-unknown').cabinet, 'links', 'w1')).not.toHaveProperty('upper');
  });

  it('should take out the whole row of the repair table that is about nothing, as removing its part does', () => {
    const acts = [
      { act: 'replace-lead', minutes: 7 },
      { act: 'replace-board', subject: 'gone', minutes: 9 },
      { act: 'replace-fuse', subject: 'a', minutes: 2 },
    ] as const;
    const kept = mend({ ...small, repair: { acts: [...acts] } }, 'reference-unknown').cabinet;
    expect(kept.repair?.acts).toEqual([acts[0], acts[2]]);
    const removed = removeThings(kept, ['a']);
    expect(removed.ok && removed.value.cabinet.repair?.acts).toEqual([acts[0]]);
  });

  it('should turn a lead round that leads into its supply', () => {
    const leads = small.leads?.map((lead) => (lead.id === 'l1' ? { ...lead, from: { unit: 'a' }, to: { unit: 'p' } } : lead));
    expect(find(mend({ ...small, leads }, 'lead-into-supply').cabinet, 'leads', 'l1')).toMatchObject({
      from: { unit: 'p' },
      to: { unit: 'a' },
    });
  });

  it('should put figures the right way round, and codes of one name together', () => {
    const units = small.units?.map((unit) => (unit.id === 'a' ? { ...unit, control24: { minimumV: 28, maximumV: 20 } } : unit));
    expect(find(mend({ ...small, units }, 'figures-crossed').cabinet, 'units', 'a')?.control24).toEqual({ minimumV: 20, maximumV: 28 });
    const codes = [
      { code: '7', meanings: ['dark' as const] },
      { code: '7 ', meanings: ['quiet' as const, 'dark' as const] },
    ];
    const legends = [{ id: 'x', name: 'QE', codes }];
    expect(mend({ ...small, legends }, 'legend-code-doubled').cabinet.legends?.[0]?.codes).toEqual([
      { code: '7', meanings: ['dark', 'quiet'] },
    ]);
  });

  it('should mend what it says it mends, whatever is wrong with the cabinet', () => {
    const used = new Set<string>();
    const property = fc.property(arbitraryCabinet(), fc.nat(), fc.integer({ min: 1, max: 5 }), (sound, seed, times) => {
      const random = new Random(seed);
      let value = JSON.parse(JSON.stringify(sound)) as Json;
      for (let i = 0; i < times; i += 1) {
        const next = mutateValue(random, value);
        const read = parseCabinetFile(JSON.stringify({ format: 'linkwright-cabinet', formatVersion: 1, content: next }));
        if (read.ok) value = next;
      }
      const content = value as unknown as CabinetContent;
      for (const problem of checkCabinet(content).problems) {
        const fix = fixOf(content, problem);
        if (fix === null) continue;
        used.add(fix.name);
        const { cabinet } = done(applyFix(content, problem));
        const left = (list: CabinetContent) => checkCabinet(list).problems.filter(({ code }) => code === problem.code).length;
        expect(left(cabinet), `${fix.name} for ${problem.code}`).toBeLessThan(left(content));
        expect(parseCabinetFile(serializeCabinet(cabinet)).ok, fix.name).toBe(true);
      }
    });
    fc.assert(property, { seed: 41, numRuns: 250 });
    expect(used.size).toBeGreaterThan(3);
  });
});
