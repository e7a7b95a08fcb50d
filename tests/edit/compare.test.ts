import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Change,
  changeKinds,
  compareCabinets,
  insertUnits,
  moveInChain,
  moveToPlace,
  newMachine,
  removeThings,
  replugEnd,
  setFields,
} from '../../engine/edit/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { buildTopology } from '../../engine/topology/index.ts';
import { arbitraryCabinet } from '../generators/cabinets.ts';
import { Random } from '../generators/random.ts';
import { relabelCabinet, scramble } from '../generators/relabel.ts';
import { arbitraryEdits, doEdit } from './randomEdits.ts';
import { done, small } from './small.ts';

const changes = (a: CabinetContent, b: CabinetContent) => compareCabinets(a, b).changes;
/** A change as a text: "moved-in-chain a 1/1 1/3". */
const told = (change: Change): string => {
  const place = (value: unknown) => (typeof value === 'object' && value !== null ? Object.values(value).join('/') : String(value));
  const rest = 'was' in change ? [place(change.was), place(change.is)] : [];
  const what = 'path' in change ? change.path : 'end' in change ? change.end : 'part' in change ? change.part : '';
  return [change.kind, change.of.before ?? change.of.after, what, ...rest].filter((part) => part !== '').join(' ');
};
const compared = (a: CabinetContent, b: CabinetContent) => changes(a, b).map(told);

describe('compareCabinets', () => {
  it('should find no differences between a cabinet and itself, or a copy of it in another order', () => {
    const property = fc.property(arbitraryCabinet(), (content) => {
      const turned = { ...content, units: [...(content.units ?? [])].reverse(), links: [...(content.links ?? [])].reverse() };
      expect(changes(content, content)).toEqual([]);
      expect(changes(content, structuredClone(turned))).toEqual([]);
    });
    fc.assert(property, { seed: 51, numRuns: 100 });
  });

  it('should tell an insertion with the plugs and slots that it moved, and nothing else', () => {
    const { cabinet } = done(insertUnits(small, { units: [{ kind: 'servo-drive' }], at: { onLink: 'w2' } }));
    expect(compared(small, cabinet)).toEqual(['added u1', 'added w5', 'shifted b 1/2 1/3', 'shifted c 1/3 1/4', 'replugged w2 lower b u1']);
  });

  it('should tell the one unit that moved, not those that gave way', () => {
    expect(compared(small, done(moveInChain(small, ['a'], { endOf: 'ch1' })).cabinet).filter((line) => line.startsWith('moved'))).toEqual([
      'moved-in-chain a ch1/1 ch1/3',
    ]);
    expect(compared(small, done(moveToPlace(small, ['a'], { row: 1, slot: 4 })).cabinet)).toEqual([
      'moved-in-row a 1/1 1/3',
      'shifted b 1/2 1/1',
      'shifted c 1/3 1/2',
    ]);
    expect(compared(small, done(moveInChain(small, ['c'], { endOf: 'ch2' })).cabinet)[0]).toBe('moved-in-chain c ch1/3 ch2/2');
  });

  it('should tell re-plugged ends, leads and fields', () => {
    expect(compared(small, done(replugEnd(small, 'w3', 'upper', { unit: 'd', side: 'down' })).cabinet)).toEqual([
      'moved-in-chain c ch1/3 ch2/2',
      'replugged w3 upper b d',
    ]);
    const leads = small.leads?.map((lead) => (lead.id === 'l2' ? { ...lead, from: { unit: 'p' } } : lead));
    expect(compared(small, { ...small, leads })).toEqual(['reconnected l2 from a p']);
    const edits = [
      { of: { in: 'units', id: 'a' }, path: ['control24', 'loadA'], value: 2 },
      { of: { in: 'cabinet' }, path: ['name'], value: 'Press 4' },
      { of: { in: 'controller' }, path: ['model'], value: 'QN' },
    ] as const;
    expect(compared(small, done(setFields(small, edits)).cabinet)).toEqual([
      'changed cab name Press 3 Press 4',
      'changed nc model undefined QN',
      'changed a control24.loadA undefined 2',
    ]);
  });

  it('should know a board by its serial number wherever it sits', () => {
    const withBoards = (serials: readonly (string | undefined)[]): CabinetContent => ({
      ...small,
      units: small.units?.map((unit, index) => {
        const serial = serials[index];
        return serial === undefined ? unit : { ...unit, board: { serial } };
      }),
    });
    const start = withBoards(['S1', 'S2', 'S3']);
    expect(compared(start, withBoards(['S2', 'S1', 'S3']))).toEqual(['exchanged a board b a', 'exchanged b board a b']);
    // A new board in the place of one that sits elsewhere now.
    expect(compared(start, withBoards(['S9', 'S1', 'S3']))).toEqual([
      'exchanged b board a b',
      'changed a board.serial S1 S9',
      'changed b board.serial S2 S1',
    ]);
    expect(compared(start, withBoards(['S9', 'S2', 'S3']))).toEqual(['changed a board.serial S1 S9']);
  });

  it('should match by designation, and then by place, where ids tell nothing', () => {
    const property = fc.property(arbitraryCabinet({ details: false }), (content) => {
      const named: CabinetContent = {
        ...content,
        units: content.units?.map((unit, index) => ({ ...unit, designation: `-T${index}`, row: 1, slot: index })),
        links: content.links?.map((link, index) => ({ ...link, designation: `-WH${index}` })),
        leads: content.leads?.map((lead, index) => ({ ...lead, designation: `-WD${index}` })),
        feedbacks: content.feedbacks?.map((cable, index) => ({ ...cable, designation: `-WG${index}` })),
      };
      const other = relabelCabinet(named, scramble(named));
      expect(changes(named, other).filter(({ kind, of }) => !(kind === 'changed' && of.list === 'cabinet'))).toEqual([]);
      // Another designation, and the same kind in the same slot: it was renamed.
      const renamed = { ...other, units: other.units?.map((unit, index) => (index === 0 ? { ...unit, designation: '-T99' } : unit)) };
      expect(compared(named, renamed).filter((line) => !line.includes(named.id))).toEqual([
        expect.stringMatching(/^changed \S+ designation -T\d+ -T99$/),
      ]);
    });
    fc.assert(property, { seed: 52, numRuns: 60 });
  });

  it('should be the same the other way round, with before and after exchanged', () => {
    const mirrored = (change: Change): unknown => {
      const { kind, of, ...rest } = change;
      const turned = kind === 'added' ? 'removed' : kind === 'removed' ? 'added' : kind;
      const sides = 'was' in change ? { ...rest, was: change.is, is: change.was } : rest;
      return { kind: turned, of: { list: of.list, before: of.after, after: of.before }, ...sides };
    };
    const sorted = (list: readonly unknown[]) =>
      list
        .map((one) =>
          JSON.stringify(
            one,
            Object.keys(one as object)
              .sort()
              .concat(['list', 'before', 'after', 'chain', 'unit', 'position', 'row', 'slot', 'output']),
          ),
        )
        .sort();
    const property = fc.property(arbitraryCabinet(), arbitraryEdits(6), (start, list) => {
      let content = start;
      for (const edit of list) {
        const answer = doEdit(content, edit);
        if (answer?.ok) content = answer.value.cabinet;
      }
      expect(sorted(changes(content, start))).toEqual(sorted(changes(start, content).map(mirrored)));
    });
    fc.assert(property, { seed: 53, numRuns: 150 });
  });

  it('should find something wherever two cabinets differ', () => {
    const property = fc.property(arbitraryCabinet(), arbitraryEdits(3), (start, list) => {
      let content = start;
      for (const edit of list) {
        const answer = doEdit(content, edit);
        if (answer?.ok) content = answer.value.cabinet;
      }
      const lists = ['units', 'links', 'leads', 'feedbacks', 'chains'] as const;
      const plain = (cabinet: CabinetContent) =>
        JSON.stringify(lists.map((name) => [...(cabinet[name] ?? [])].map((record) => JSON.stringify(record)).sort()));
      expect(changes(start, content).length > 0).toBe(plain(start) !== plain(content));
    });
    fc.assert(property, { seed: 54, numRuns: 150 });
  });

  it('should report exactly the edits that were made', () => {
    // Edits of disjoint things, so that what must be reported can be said without looking at the answer.
    const property = fc.property(arbitraryCabinet({ units: 8 }), fc.nat(), (start, seed) => {
      const random = new Random(seed);
      const units = random.shuffled((start.units ?? []).map(({ id }) => id));
      const expected: string[] = [];
      let content = start;
      for (const [index, id] of units.slice(0, 4).entries()) {
        const before = content.units?.find((unit) => unit.id === id);
        const value = `new ${index}`;
        const path = random.pick(['model', 'partNumber', 'notes'] as const);
        content = done(setFields(content, [{ of: { in: 'units', id }, path: [path], value }])).cabinet;
        expected.push(`changed ${id} ${path} ${before?.[path]} ${value}`);
      }
      for (const feedback of random.shuffled(start.feedbacks ?? []).slice(0, 2)) {
        content = done(removeThings(content, [feedback.id])).cabinet;
        expected.push(`removed ${feedback.id}`);
      }
      for (const lead of random.shuffled(start.leads ?? []).slice(0, 2)) {
        content = done(removeThings(content, [lead.id])).cabinet;
        expected.push(`removed ${lead.id}`);
      }
      expect(compared(start, content).sort()).toEqual(expected.sort());
    });
    fc.assert(property, { seed: 55, numRuns: 100 });
  });

  it('should move as few units as can be, judged by trying every set', () => {
    const property = fc.property(fc.integer({ min: 2, max: 7 }), fc.nat(), (count, seed) => {
      const start = chainOf(Array.from({ length: count }, (_, index) => `u${index}`));
      const order = new Random(seed).shuffled(Array.from({ length: count }, (_, index) => `u${index}`));
      const moved = changes(start, chainOf(order)).filter(({ kind }) => kind === 'moved-in-chain');
      expect(moved.length).toBe(fewestMoves(order));
      const staying = order.filter((id) => !moved.some(({ of }) => of.before === id));
      expect(staying).toEqual([...staying].sort());
    });
    fc.assert(property, { seed: 56, numRuns: 60 });
  });

  it('should order its answer by kind', () => {
    const { cabinet } = done(insertUnits(small, { units: [{ kind: 'servo-drive' }], at: { onLink: 'w2' } }));
    const kinds = changes({ ...small, name: 'x' }, cabinet).map(({ kind }) => changeKinds.indexOf(kind));
    expect(kinds).toEqual([...kinds].sort((a, b) => a - b));
  });
});

function chainOf(units: readonly string[]): CabinetContent {
  return {
    id: 'c',
    name: 'c',
    chains: [{ id: 'ch', number: 1 }],
    units: [...units].sort().map((id) => ({ id, kind: 'servo-drive', designation: `-${id}` })),
    links: units.map((unit, index) => {
      const above = units[index - 1];
      return { id: `w${index}`, upper: above === undefined ? { chain: 'ch' } : { unit: above }, lower: { unit } };
    }),
  };
}

/** The fewest units outside a sorted subsequence, by looking at every subset. */
function fewestMoves(order: readonly string[]): number {
  let best = order.length;
  for (let set = 0; set < 1 << order.length; set += 1) {
    const kept = order.filter((_id, index) => ((set >> index) & 1) === 1);
    if (kept.every((id, index) => index === 0 || (kept[index - 1] ?? '') < id)) best = Math.min(best, order.length - kept.length);
  }
  return best;
}

describe('newMachine', () => {
  const design: CabinetContent = {
    ...small,
    revision: 'C',
    links: small.links?.map((link) => ({ ...link, serial: 'L', measuredLossDb: { outbound: 1 } })),
  };
  it('should keep everything but what belongs to one machine, and say on what it is based', () => {
    const machine = newMachine(design, { id: 'm7', name: 'Press 7', machineNumber: ' QG-7 ' });
    expect(machine).toMatchObject({ id: 'm7', name: 'Press 7', machineNumber: 'QG-7', basedOn: { design: 'cab', revision: 'C' } });
    expect(JSON.stringify(machine)).not.toMatch(/serial|measuredLossDb/);
    expect(machine).not.toHaveProperty('revision');
    const differing = changes(design, machine).filter(({ of }) => of.list !== 'cabinet');
    expect(new Set(differing.map((change) => ('path' in change ? change.path : change.kind)))).toEqual(
      new Set(['serial', 'board.serial', 'measuredLossDb.outbound']),
    );
    expect(buildTopology(machine).topology.chains.map(({ units }) => units)).toEqual(
      buildTopology(design).topology.chains.map(({ units }) => units),
    );
  });

  it('should be based on the same design as the machine from which it is made', () => {
    const first = newMachine(design, { id: 'm7', name: 'Press 7', machineNumber: 'QG-7' });
    expect(newMachine(first, { id: 'm8', name: 'Press 8' }).basedOn).toEqual({ design: 'cab', revision: 'C' });
  });
});
