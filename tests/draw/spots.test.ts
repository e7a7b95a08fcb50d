import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { buildTopology, type Topology } from '../../engine/topology/index.ts';
import { narrowMetrics } from '../../renderer/canvas/geometry.ts';
import { type Placement, placeCabinet } from '../../renderer/canvas/placement.ts';
import type { PlacementOptions } from '../../renderer/canvas/placementOptions.ts';
import { alongChain, changeChosen } from '../../renderer/draw/chosen.ts';
import { previewDrop, tryDrop } from '../../renderer/draw/preview.ts';
import { findDropTarget, placeOneStep, spotBesideChosen, spotOneStep } from '../../renderer/draw/spots.ts';
import { plainContent } from '../bench/cabinets.ts';
import { arbitraryCabinet } from '../generators/cabinets.ts';

const seeded = { seed: 20261126, numRuns: 60 };
const options: PlacementOptions = {
  metrics: narrowMetrics,
  detail: 'full',
  columns: 6,
  unitsPerRow: null,
  folded: new Set(),
  stripZoom: 0.3,
  stripGap: 46,
};

const content = plainContent(2, 5);
const checked = checkCabinet(content);
const { topology } = checked;

/** The middle of the gap before a unit. */
function gapBefore(placement: Placement, unit: string) {
  const box = [...placement.units].find(([id]) => id === unit)?.[1];
  if (!box) throw new Error('it is not placed');
  return { x: box.x - narrowMetrics.gap / 2, y: box.y + box.port };
}

describe('findDropTarget', () => {
  const placement = placeCabinet(topology, options);

  it('should find the cable under a point, the units beside it, and the place that opens', () => {
    for (const { id, units, links } of topology.chains) {
      units.forEach((unit, index) => {
        const at = gapBefore(placement, unit);
        const target = findDropTarget({ topology, placement, arrangement: 'chain', at, kinds: ['servo-drive'], beside: false });
        expect(target.spot).toEqual({ chain: id, position: index + 1 });
        expect(target.link).toBe(links[index]);
        expect(target.mates).toEqual(units.slice(Math.max(0, index - 1), index + 1));
        expect(target.opening?.column).toBe(index);
      });
    }
  });

  it('should put supplies, and what shall stand beside, on no chain; and begin a chain below all rows', () => {
    const at = gapBefore(placement, topology.chains[0]?.units[1] ?? '');
    const common = { topology, placement, arrangement: 'chain', at } as const;
    expect(findDropTarget({ ...common, kinds: ['supply'], beside: false }).spot).toBe('apart');
    expect(findDropTarget({ ...common, kinds: ['servo-drive'], beside: true }).spot).toBe('apart');
    const below = { x: at.x, y: placement.height + 400 };
    expect(findDropTarget({ ...common, at: below, kinds: ['servo-drive'], beside: false }).spot).toBe('new-chain');
    expect(findDropTarget({ ...common, at: below, kinds: ['servo-drive'], beside: false, comesOff: true }).spot).toBe('apart');
  });

  it('should say in words what a drop does, and the drop should do that', () => {
    fc.assert(
      fc.property(arbitraryCabinet({ maxUnits: 14 }), fc.nat(1500), fc.nat(700), fc.boolean(), (cabinet, x, y, mounting) => {
        const state = { cabinet, checked: checkCabinet(cabinet) };
        const arrangement = mounting ? 'mounting' : 'chain';
        const drawn = placeCabinet(state.checked.topology, { ...options, arrangement });
        const request = { topology: state.checked.topology, placement: drawn, arrangement, at: { x, y }, beside: false } as const;
        const target = findDropTarget({ ...request, kinds: ['servo-drive'] });
        const carried = { kind: 'new', unit: 'servo-drive' } as const;
        const answer = tryDrop(state, carried, target);
        const preview = previewDrop(state, carried, target);
        expect(preview.refusal === null).toBe(answer.ok);
        if (!answer.ok) return;
        expect(preview.title).toContain('servo drive');
        expect(answer.value.cabinet.units?.length).toBe((cabinet.units?.length ?? 0) + 1);
        const made = buildTopology(answer.value.cabinet).topology;
        // Everything else keeps its order.
        const without = made.chains.map(({ units }) => units.filter((unit) => state.checked.topology.units.has(unit)));
        expect(without.filter((units) => units.length > 0)).toEqual(
          state.checked.topology.chains.map(({ units }) => units).filter((units) => units.length > 0),
        );
      }),
      seeded,
    );
  });
});

describe('placeCabinet in mounting order', () => {
  it('should put every unit into its row, from the left by its slot, none over another, with room for the cables between', () => {
    fc.assert(
      fc.property(arbitraryCabinet({ maxUnits: 30 }), (cabinet) => {
        const cut: Topology = buildTopology(cabinet).topology;
        const placement = placeCabinet(cut, { ...options, arrangement: 'mounting' });
        expect([...placement.units.keys()].sort()).toEqual([...cut.units.keys()].sort());
        const all = [...placement.units];
        for (const [id, box] of all) {
          for (const [other, second] of all) {
            if (id === other || box.row !== second.row) continue;
            const [a, b] = [cut.units.get(id), cut.units.get(other)];
            if (a?.slot !== undefined && b?.slot !== undefined && a.row !== undefined && a.row === b.row && a.slot < b.slot) {
              expect(box.x).toBeLessThan(second.x);
            }
            expect(Math.abs(box.x - second.x)).toBeGreaterThanOrEqual(narrowMetrics.module);
          }
        }
        placement.rows.slice(1).forEach((row, index) => {
          const above = placement.rows[index];
          expect(above && row.y >= above.y + above.height + 20).toBe(true);
        });
        expect(placement.chains.size).toBe(cut.chains.length);
        const ports = [...placement.chains.values()].map(({ portY }) => portY);
        expect(new Set(ports).size).toBe(ports.length);
      }),
      seeded,
    );
  });
});

describe('spots by key', () => {
  const [chain] = topology.chains;
  const [a = '', b = '', c = ''] = chain?.units ?? [];

  it('should put a new unit into the chosen cable, behind the chosen unit, at the end of the chosen or the last chain', () => {
    expect(spotBesideChosen(topology, [chain?.links[1] ?? ''], 'servo-drive')).toEqual({ onLink: chain?.links[1] });
    expect(spotBesideChosen(topology, [a], 'encoder-interface')).toEqual({ afterUnit: a });
    expect(spotBesideChosen(topology, [chain?.id ?? ''], 'spindle-drive')).toEqual({ endOf: chain?.id });
    expect(spotBesideChosen(topology, [], 'servo-drive')).toEqual({ endOf: topology.chains[1]?.id });
    expect(spotBesideChosen(topology, [a], 'supply')).toBe('apart');
    expect(spotBesideChosen(buildTopology({ id: 'c', name: 'c' }).topology, [], 'servo-drive')).toBe('new-chain');
  });

  it('should move one step along the chain and stop at its ends', () => {
    expect(spotOneStep(topology, [a], -1)).toBeNull();
    expect(spotOneStep(topology, [a], 1)).toEqual({ afterUnit: b });
    expect(spotOneStep(topology, [a, b], 1)).toEqual({ afterUnit: c });
    expect(spotOneStep(topology, [b], -1)).toEqual({ beforeUnit: a });
    expect(spotOneStep(topology, [...topology.supplies], 1)).toBeNull();
  });

  it('should move one slot along the row', () => {
    const placed = {
      id: 'c',
      name: 'c',
      units: [1, 2, 4].map((slot) => ({ id: `u${slot}`, kind: 'supply' as const, designation: '', row: 2, slot })),
    };
    const rows = buildTopology(placed).topology;
    expect(placeOneStep(rows, ['u2'], 'left')).toEqual({ row: 2, slot: 1 });
    expect(placeOneStep(rows, ['u2'], 'right')).toEqual({ row: 2, slot: 5 });
    expect(placeOneStep(rows, ['u1'], 'left')).toBeNull();
    expect(placeOneStep(rows, ['u1'], 'down')).toEqual({ row: 3, slot: 1 });
  });
});

describe('what is chosen', () => {
  const [chain] = topology.chains;
  const units: readonly string[] = chain?.units ?? [];

  it('should be replaced, added to and toggled, the last one first to act on', () => {
    expect(changeChosen(['a', 'b'], ['c'], 'only')).toEqual(['c']);
    expect(changeChosen(['a', 'b'], ['a'], 'add')).toEqual(['b', 'a']);
    expect(changeChosen(['a', 'b'], ['a'], 'toggle')).toEqual(['b']);
    expect(changeChosen(['a', 'b'], ['a', 'c'], 'toggle')).toEqual(['b', 'a', 'c']);
  });

  it('should grow along the chain, towards the controller and away from it, with what it began at', () => {
    const at = 2;
    const begun = [units[at] ?? ''];
    expect(alongChain(topology, begun, 'all')).toEqual(units);
    expect(alongChain(topology, begun, 'upstream')).toEqual(units.slice(0, at + 1));
    expect(alongChain(topology, begun, 'downstream')).toEqual(units.slice(at));
    const cable = [chain?.links[at] ?? ''];
    expect(alongChain(topology, cable, 'upstream')).toEqual(units.slice(0, at));
    expect(alongChain(topology, cable, 'downstream')).toEqual(units.slice(at));
    expect(alongChain(topology, [...topology.supplies], 'all')).toEqual([]);
  });
});
