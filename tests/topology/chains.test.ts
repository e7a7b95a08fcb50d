import { describe, expect, it } from 'vitest';
import type { ChainId, Problem, UnitId } from '../../engine/base/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { buildTopology, findByOrdinal, findByPosition } from '../../engine/topology/index.ts';
import { line } from './small.ts';

const chain = (id: string) => id as ChainId; // ids of the cabinets below
const unit = (id: string) => id as UnitId;

const codes = (content: CabinetContent) => buildTopology(content).problems.map(({ code }) => code);
const find = (content: CabinetContent, code: string): Problem => {
  const found = buildTopology(content).problems.filter((problem) => problem.code === code);
  expect(found).toHaveLength(1);
  return found[0] as Problem; // there is one, by the line above
};

describe('buildTopology, a chain that is whole', () => {
  it('should follow the links, whatever the order of the lists', () => {
    const content = line(5);
    const shuffled = { ...content, links: [...(content.links ?? [])].reverse(), units: [...(content.units ?? [])].reverse() };
    for (const { topology, problems } of [buildTopology(content), buildTopology(shuffled)]) {
      expect(problems).toEqual([]);
      expect(topology.chains.map(({ units, links }) => ({ units, links }))).toEqual([
        { units: ['u1', 'u2', 'u3', 'u4', 'u5'], links: ['w1', 'w2', 'w3', 'w4', 'w5'] },
      ]);
    }
  });

  it('should count drives and encoder interfaces each for themselves, and anew on each chain', () => {
    const content = line(3, ['servo-drive', 'spindle-drive', 'encoder-interface']);
    const second: CabinetContent = {
      ...content,
      chains: [...(content.chains ?? []), { id: 'ch2', number: 2 }],
      units: [
        ...(content.units ?? []),
        { id: 'e1', kind: 'encoder-interface', designation: '-E1' },
        { id: 'd1', kind: 'servo-drive', designation: '-D1' },
        { id: 'e2', kind: 'encoder-interface', designation: '-E2' },
        { id: 'off', kind: 'servo-drive', designation: '-D9', onChain: false },
      ],
      links: [
        ...(content.links ?? []),
        { id: 'x1', upper: { chain: 'ch2' }, lower: { unit: 'e1' } },
        { id: 'x2', upper: { unit: 'e1' }, lower: { unit: 'd1' } },
        { id: 'x3', upper: { unit: 'd1' }, lower: { unit: 'e2' } },
      ],
      leads: [
        ...(content.leads ?? []),
        ...['e1', 'd1', 'e2', 'off'].map((to) => ({ id: `l-${to}`, from: { unit: 'ps' }, to: { unit: to } })),
      ],
    };
    const { topology, problems } = buildTopology(second);
    expect(problems).toEqual([]);
    expect([...topology.placeOf]).toEqual([
      ['u1', { chain: 'ch1', position: 1, group: 'drive', ordinal: 1 }],
      ['u2', { chain: 'ch1', position: 2, group: 'drive', ordinal: 2 }],
      ['u3', { chain: 'ch1', position: 3, group: 'encoder-interface', ordinal: 1 }],
      ['e1', { chain: 'ch2', position: 1, group: 'encoder-interface', ordinal: 1 }],
      ['d1', { chain: 'ch2', position: 2, group: 'drive', ordinal: 1 }],
      ['e2', { chain: 'ch2', position: 3, group: 'encoder-interface', ordinal: 2 }],
    ]);
    expect(topology.offChain).toEqual(['off']);
    expect(topology.supplies).toEqual(['ps']);
    expect(findByOrdinal(topology, chain('ch1'), 'encoder-interface', 1)).toBe('u3');
    expect(findByOrdinal(topology, chain('ch2'), 'encoder-interface', 2)).toBe('e2');
    expect(findByOrdinal(topology, chain('ch2'), 'drive', 2)).toBeUndefined();
    expect(findByPosition(topology, chain('ch2'), 2)).toBe('d1');
    expect(findByPosition(topology, chain('ch2'), 0)).toBeUndefined();
    expect(findByPosition(topology, chain('ch3'), 1)).toBeUndefined();
  });

  it('should list chains by number, then id', () => {
    const content: CabinetContent = {
      id: 'c',
      name: 'c',
      chains: [
        { id: 'a', number: 3 },
        { id: 'z', number: 1 },
        { id: 'b', number: 2 },
      ],
    };
    expect(buildTopology(content).topology.chains.map(({ id }) => id)).toEqual(['z', 'b', 'a']);
  });

  it('should follow a chain of 5,000 units', () => {
    const { topology, problems } = buildTopology(line(5_000));
    expect(problems).toEqual([]);
    expect(topology.placeOf.get(unit('u5000'))?.position).toBe(5_000);
  });
});

describe('buildTopology, what does not hang together', () => {
  it('should name a loop, with its units and cables', () => {
    const content = line(4);
    const looped = { ...content, links: [...(content.links ?? []), { id: 'back', upper: { unit: 'u4' }, lower: { unit: 'u2' } }] };
    expect(find(looped, 'chain-loop')).toMatchObject({
      severity: 'error',
      subjects: ['u2', 'u3', 'u4', 'w3', 'w4', 'back'],
      facts: { count: 3, units: '-T2, -T3, -T4' },
    });
    // The plug that leads back sits in a port that is taken.
    expect(find(looped, 'unit-merge')).toMatchObject({ where: '/links/4/lower', subjects: ['u2', 'w2', 'back'] });
    expect(buildTopology(looped).topology.chains[0]?.units).toEqual(['u1', 'u2', 'u3', 'u4']);
  });

  it('should name a loop that no chain reaches, and what hangs behind it', () => {
    const content = line(5);
    const links = (content.links ?? []).map((link) => (link.id === 'w1' ? { ...link, upper: { unit: 'u3' } } : link));
    const looped = { ...content, links };
    expect(find(looped, 'chain-loop').subjects).toEqual(['u1', 'u2', 'u3', 'w1', 'w2', 'w3']);
    expect(find(looped, 'unit-fork').subjects).toEqual(['u3', 'w1', 'w4']);
    expect(find(looped, 'unit-orphan').subjects).toEqual(['u4', 'u5']);
    expect(buildTopology(looped).topology.orphans).toEqual(['u1', 'u2', 'u3', 'u4', 'u5']);
  });

  it('should name a unit that is linked to itself', () => {
    const content = line(1);
    const looped = { ...content, links: [{ id: 'w1', upper: { unit: 'u1' }, lower: { unit: 'u1' } }] };
    expect(find(looped, 'chain-loop').subjects).toEqual(['u1', 'w1']);
  });

  it('should name two cables in one port, at the controller, below and above a unit', () => {
    const content = line(3);
    const more = (link: NonNullable<CabinetContent['links']>[number]) => ({ ...content, links: [...(content.links ?? []), link] });
    expect(find(more({ id: 'y', upper: { chain: 'ch1' }, lower: { unit: 'u3' } }), 'chain-fork')).toMatchObject({
      where: '/links/3/upper',
      subjects: ['ch1', 'w1', 'y'],
      facts: { chain: '1', links: '-WH1, y', count: 2 },
    });
    expect(find(more({ id: 'y', upper: { unit: 'u1' } }), 'unit-fork')).toMatchObject({ subjects: ['u1', 'w2', 'y'] });
    expect(find(more({ id: 'y', lower: { unit: 'u1' } }), 'unit-merge')).toMatchObject({ subjects: ['u1', 'w1', 'y'] });
  });

  it('should follow the first cable by id where a chain forks, and call the other branch an orphan', () => {
    const content = line(3);
    const forked = {
      ...content,
      links: [{ id: 'w9', upper: { chain: 'ch1' }, lower: { unit: 'u3' } }, ...(content.links ?? []).slice(0, 2)],
    };
    expect(buildTopology(forked).topology.chains[0]?.units).toEqual(['u1', 'u2']);
    expect(find(forked, 'unit-orphan')).toMatchObject({ subjects: ['u3'] });
  });

  it('should name the run that a missing cable leaves behind once, with all its units', () => {
    const content = line(5);
    const broken = { ...content, links: (content.links ?? []).filter(({ id }) => id !== 'w3') };
    expect(find(broken, 'unit-orphan')).toMatchObject({
      severity: 'error',
      subjects: ['u3', 'u4', 'u5'],
      facts: { unit: '-T3', units: '-T3, -T4, -T5', count: 3 },
    });
    expect(buildTopology(broken).topology.orphans).toEqual(['u3', 'u4', 'u5']);
  });

  it('should name open ends of cables, and unknown ids', () => {
    const content = line(2);
    const open = { ...content, links: [...(content.links ?? []), { id: 'free', upper: { unit: 'u2' } }, { id: 'lies' }] };
    expect(buildTopology(open).problems.map(({ code, where, severity }) => [code, where, severity])).toEqual([
      ['link-end-open', '/links/2/lower', 'incomplete'],
      ['link-end-open', '/links/3/lower', 'incomplete'],
      ['link-end-open', '/links/3/upper', 'incomplete'],
    ]);
    const dangling = { ...content, links: [...(content.links ?? []), { id: 'q', upper: { chain: 'nine' }, lower: { unit: 'nobody' } }] };
    expect(buildTopology(dangling).problems.map(({ where, facts }) => [where, facts['id']])).toEqual([
      ['/links/2/lower/unit', 'nobody'],
      ['/links/2/upper/chain', 'nine'],
    ]);
  });

  it('should name chains with one number, and chains with no unit', () => {
    const content = line(1);
    const doubled = { ...content, chains: [...(content.chains ?? []), { id: 'ch9', number: 1, name: 'left' }] };
    expect(find(doubled, 'chain-number-doubled')).toMatchObject({ where: '/chains/1/number', subjects: ['ch1', 'ch9'], severity: 'error' });
    expect(find(doubled, 'chain-empty')).toMatchObject({ where: '/chains/1', facts: { chain: '1 (left)' }, severity: 'incomplete' });
  });

  it('should name units that do not belong on a chain and have a cable', () => {
    const content = line(2);
    const units = content.units ?? [];
    const off = { ...content, units: units.map((entry) => (entry.id === 'u2' ? { ...entry, onChain: false } : entry)) };
    expect(find(off, 'unit-off-chain-linked')).toMatchObject({ severity: 'error', subjects: ['u2', 'w2'] });
    const links = [...(content.links ?? []), { id: 'w3', upper: { unit: 'u2' }, lower: { unit: 'ps' } }];
    expect(find({ ...content, links }, 'supply-on-chain')).toMatchObject({ severity: 'error', subjects: ['ps', 'w3'] });
    expect(codes({ ...content, units: units.map((entry) => (entry.id === 'ps' ? { ...entry, onChain: true } : entry)) })).toEqual([
      'supply-marked-on-chain',
    ]);
  });

  it('should name feedback cables and types that lead nowhere', () => {
    const content = line(1);
    const lost: CabinetContent = {
      ...content,
      units: (content.units ?? []).map((entry) => (entry.id === 'u1' ? { ...entry, type: 'gone' } : entry)),
      feedbacks: [
        { id: 'g1', unit: 'u7' },
        { id: 'g2', unit: 'ps' },
        { id: 'g3', unit: 'u1' },
      ],
    };
    const { topology, problems } = buildTopology(lost);
    expect(problems.map(({ code, where, severity }) => [code, where, severity])).toEqual([
      ['reference-unknown', '/feedbacks/0/unit', 'error'],
      ['feedback-on-supply', '/feedbacks/1/unit', 'error'],
      ['reference-unknown', '/units/1/type', 'error'],
    ]);
    expect([...topology.feedbacksOf]).toEqual([['u1', ['g3']]]);
  });
});
