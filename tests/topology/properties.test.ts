import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { buildTopology, findByOrdinal, findByPosition } from '../../engine/topology/index.ts';
import { arbitraryCabinet, makeCabinet } from '../generators/cabinets.ts';
import { Random } from '../generators/random.ts';
import { relabelCabinet, scramble } from '../generators/relabel.ts';

const runs = { numRuns: 200, seed: 20261125 };

/** The cabinet with a few plugs and leads put elsewhere, pulled, or doubled: whatever a person may draw. */
function disturb(content: CabinetContent, seed: number): CabinetContent {
  const random = new Random(seed);
  const anyUnit = () => random.pick(content.units ?? []).id;
  const anyChain = () => random.pick(content.chains ?? []).id;
  const upper = () => random.pick([{ unit: anyUnit() }, { chain: anyChain() }, { chain: 'nowhere' }]);
  return {
    ...content,
    links: [
      ...(content.links ?? []).map((link) => {
        if (!random.chance(0.2)) return link;
        const { upper: _upper, lower: _lower, ...rest } = link;
        return { ...rest, ...random.maybe(0.8, () => ({ upper: upper() })), ...random.maybe(0.8, () => ({ lower: { unit: anyUnit() } })) };
      }),
      ...(random.chance(0.3) ? [{ id: 'extra1', upper: upper(), lower: { unit: anyUnit() } }] : []),
    ],
    leads: (content.leads ?? []).map((lead) => (random.chance(0.2) ? { ...lead, from: { unit: anyUnit() } } : lead)),
  };
}

describe('buildTopology on generated cabinets', () => {
  it('should find nothing wrong with one that is sound by construction', () => {
    fc.assert(
      fc.property(arbitraryCabinet({ maxUnits: 40 }), (content) => {
        const { problems, cabinet } = checkCabinet(content);
        expect(problems).toEqual([]);
        expect(cabinet).not.toBeNull();
      }),
      runs,
    );
  });

  it('should give every unit one place: on a chain, off it, a supply, or an orphan', () => {
    fc.assert(
      fc.property(arbitraryCabinet(), fc.nat(), (content, seed) => {
        const { topology } = buildTopology(disturb(content, seed));
        const all = [...topology.placeOf.keys(), ...topology.offChain, ...topology.supplies, ...topology.orphans];
        expect([...all].sort()).toEqual([...topology.units.keys()].sort());
        for (const chain of topology.chains) {
          expect(chain.links).toHaveLength(chain.units.length);
          for (const [index, unit] of chain.units.entries()) {
            // Each step goes over a cable that really joins the two, in the right direction.
            const link = topology.links.get(chain.links[index] ?? ('' as never)); // the empty id is not found
            expect(link?.upper).toEqual(index === 0 ? { chain: chain.id } : { unit: chain.units[index - 1] });
            expect(link?.lower).toEqual({ unit });
          }
        }
      }),
      runs,
    );
  });

  it('should count both ways alike', () => {
    fc.assert(
      fc.property(arbitraryCabinet({ maxUnits: 30 }), (content) => {
        const { topology } = buildTopology(content);
        for (const [unit, place] of topology.placeOf) {
          expect(findByPosition(topology, place.chain, place.position)).toBe(unit);
          expect(findByOrdinal(topology, place.chain, place.group, place.ordinal)).toBe(unit);
          const before = topology.chainById.get(place.chain)?.units.slice(0, place.position) ?? [];
          expect(before.filter((other) => topology.placeOf.get(other)?.group === place.group)).toHaveLength(place.ordinal);
        }
      }),
      runs,
    );
  });

  it('should relabel its answer when ids are relabelled, and not mind the order of lists', () => {
    fc.assert(
      fc.property(arbitraryCabinet(), fc.nat(), (content, seed) => {
        const rename = scramble(content);
        const random = new Random(seed);
        const other = relabelCabinet(content, rename);
        const shuffled = { ...other, units: random.shuffled(other.units ?? []), links: random.shuffled(other.links ?? []) };
        const before = buildTopology(content).topology;
        const after = buildTopology(shuffled).topology;
        expect(after.chains.map(({ id, units, links }) => ({ id, units, links }))).toEqual(
          before.chains.map(({ id, units, links }) => ({ id: rename(id), units: units.map(rename), links: links.map(rename) })),
        );
        expect(new Set(after.offChain)).toEqual(new Set(before.offChain.map(rename)));
        expect(new Set(after.supplies)).toEqual(new Set(before.supplies.map(rename)));
        expect(new Set(after.feeds.map(({ lead, from, to }) => `${lead} ${from} ${to}`))).toEqual(
          new Set(before.feeds.map(({ lead, from, to }) => `${rename(lead)} ${rename(from)} ${rename(to)}`)),
        );
      }),
      runs,
    );
  });

  it('should name the same problems whatever the order of the lists', () => {
    fc.assert(
      fc.property(arbitraryCabinet(), fc.nat(), (content, seed) => {
        const disturbed = disturb(content, seed);
        const random = new Random(seed);
        const shuffled = { ...disturbed, units: random.shuffled(disturbed.units ?? []), links: random.shuffled(disturbed.links ?? []) };
        const key = (found: CabinetContent) =>
          buildTopology(found)
            .problems.map(({ code, subjects }) => `${code} ${[...subjects].sort().join()}`)
            .sort();
        expect(key(shuffled)).toEqual(key(disturbed));
      }),
      runs,
    );
  });

  it('should call a cabinet fit to be simulated only if every chain unit is on a chain, once', () => {
    fc.assert(
      fc.property(arbitraryCabinet(), fc.nat(), (content, seed) => {
        const { cabinet, topology, problems } = checkCabinet(disturb(content, seed));
        expect(cabinet === null).toBe(problems.some(({ severity }) => severity === 'error'));
        if (cabinet !== null) expect(topology.orphans).toEqual([]);
      }),
      runs,
    );
  });
});

describe('makeCabinet', () => {
  it('should give the same cabinet for the same seed, and the size that was asked for', () => {
    expect(makeCabinet(7, { units: 30, chains: 3 })).toEqual(makeCabinet(7, { units: 30, chains: 3 }));
    const { topology } = buildTopology(makeCabinet(8, { units: 300, chains: 10, offChain: 2, supplies: 4 }));
    expect([topology.placeOf.size, topology.chains.length, topology.offChain.length, topology.supplies.length]).toEqual([300, 10, 2, 4]);
  });
});
