import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { UnitId } from '../../engine/base/index.ts';
import { buildTopology, type Topology } from '../../engine/topology/index.ts';
import { fitCabinet } from '../../renderer/canvas/fit.ts';
import { detailAt, narrowMetrics, wideMetrics } from '../../renderer/canvas/geometry.ts';
import { type Box, type Placement, placeCabinet } from '../../renderer/canvas/placement.ts';
import { plainContent } from '../bench/cabinets.ts';
import { arbitraryCabinet, makeCabinet } from '../generators/cabinets.ts';
import { soundSamples, unsoundSamples } from '../samples/index.ts';

const seeded = { seed: 20261125, numRuns: 120 };
const rooms = [
  { width: 900, height: 305 },
  { width: 1036, height: 440 },
  { width: 1500, height: 600 },
];
const everySample = [...soundSamples.map(({ content }) => content), ...Object.values(unsoundSamples)];

function overlaps(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** What must hold of every drawing, however it is fitted. */
function assertSound(topology: Topology, placement: Placement): void {
  expect([...placement.units.keys()].sort()).toEqual([...topology.units.keys()].sort());
  const boxes = [...placement.units.values(), ...(placement.controller ? [placement.controller] : [])];
  boxes.forEach((box, index) => {
    for (const other of boxes.slice(index + 1)) expect(overlaps(box, other)).toBe(false);
    expect(box.x + box.width).toBeLessThanOrEqual(placement.width + 1e-6);
    expect(box.y + box.height).toBeLessThanOrEqual(placement.height + 1e-6);
  });
  for (const { units } of topology.chains) {
    units.slice(1).forEach((unit, index) => {
      const before = placement.units.get(units[index] ?? unit);
      const at = placement.units.get(unit);
      // Along the chain: to the right in the same row, or at the beginning of the next.
      expect(at && before && (at.row === before.row ? at.x > before.x : at.row === before.row + 1 && at.column === 0)).toBe(true);
    });
  }
}

describe('placeCabinet', () => {
  it('should put every unit somewhere, none over another, chains from left to right', () => {
    fc.assert(
      fc.property(
        arbitraryCabinet({ maxUnits: 40 }),
        fc.constantFrom(...rooms),
        fc.boolean(),
        fc.boolean(),
        (content, room, wrap, narrow) => {
          const { topology } = buildTopology(content);
          const foldable = new Set<string>(topology.chains.slice(1).map(({ id }) => id));
          const { options, detail } = fitCabinet({ topology, room, wrap, foldable, metrics: narrow ? narrowMetrics : wideMetrics });
          assertSound(topology, placeCabinet(topology, { ...options, detail }));
        },
      ),
      seeded,
    );
  });

  it('should give one row to each chain unless it is told to go on in the next', () => {
    const { topology } = buildTopology(makeCabinet(7, { chains: 1, units: 30, offChain: 0 }));
    const base = { metrics: wideMetrics, detail: 'full', columns: 5, folded: new Set<string>(), stripZoom: 0.3, stripGap: 46 } as const;
    const rowsOf = (unitsPerRow: number | null) =>
      placeCabinet(topology, { ...base, unitsPerRow }).rows.filter(({ chain }) => chain !== null).length;
    expect(rowsOf(null)).toBe(1);
    expect(rowsOf(10)).toBe(3);
  });

  it('should draw what is not sound as well', () => {
    for (const content of everySample) {
      const { topology } = buildTopology(content);
      const room = { width: 1036, height: 440 };
      const { options, detail } = fitCabinet({ topology, room, wrap: false, foldable: new Set(), metrics: wideMetrics });
      expect(placeCabinet(topology, { ...options, detail }).units.size).toBe(topology.units.size);
    }
  });
});

describe('fitCabinet', () => {
  it('should show all of a cabinet in full or in the middle detail, or let a strip run over the side', () => {
    fc.assert(
      fc.property(arbitraryCabinet({ maxUnits: 40 }), fc.constantFrom(...rooms), (content, room) => {
        const { topology } = buildTopology(content);
        const { options, detail, zoom } = fitCabinet({ topology, room, wrap: false, foldable: new Set(), metrics: narrowMetrics });
        const drawn = placeCabinet(topology, { ...options, detail });
        expect(detailAt(zoom)).toBe(detail);
        if (detail !== 'strip') expect(drawn.width * zoom).toBeLessThanOrEqual(room.width + 0.5);
        if (detail !== 'strip') expect(drawn.height * zoom).toBeLessThanOrEqual(room.height + 0.5);
        // A mark of the strip keeps 24 px, so its slot must have them.
        expect((narrowMetrics.module + narrowMetrics.gap) * zoom).toBeGreaterThanOrEqual(24);
      }),
      seeded,
    );
  });

  it('should let a long chain go on in the next row of the strip, so that all of sixty units are seen at once', () => {
    const { topology } = buildTopology(makeCabinet(7, { chains: 1, units: 60, offChain: 0, supplies: 1 }));
    for (const room of rooms) {
      const { options, detail, zoom } = fitCabinet({ topology, room, wrap: false, foldable: new Set(), metrics: narrowMetrics });
      const drawn = placeCabinet(topology, { ...options, detail });
      assertSound(topology, drawn);
      expect(drawn.width * zoom).toBeLessThanOrEqual(room.width + 0.5);
      expect(drawn.height * zoom).toBeLessThanOrEqual(room.height + 0.5);
    }
  });

  it('should draw the nine units of the first sample in full at every size of window', () => {
    const { topology } = buildTopology(soundSamples.find(({ name }) => name === 'two-chains')?.content ?? makeCabinet(1));
    const foldable = new Set<string>(topology.chains.slice(1).map(({ id }) => id));
    for (const room of rooms) {
      const fit = fitCabinet({ topology, room, wrap: false, foldable, metrics: room.width < 1000 ? narrowMetrics : wideMetrics });
      expect(fit.detail).toBe('full');
      expect(fit.zoom).toBeGreaterThanOrEqual(0.95);
    }
  });
});

describe('fitCabinet where there is room', () => {
  const room = { width: 1400, height: 900 };
  const common = { room, wrap: true, foldable: new Set<string>(), metrics: wideMetrics };

  it('should draw a short chain larger, but no designation larger than the answer', () => {
    const { topology } = buildTopology(plainContent(1, 3));
    expect(fitCabinet({ topology, ...common })).toMatchObject({ detail: 'full', zoom: 1.6 });
  });

  it('should put a supply below the chain where all becomes clearly larger so', () => {
    const { topology } = buildTopology(plainContent(1, 6));
    const { zoom, options } = fitCabinet({ topology, ...common });
    const drawn = placeCabinet(topology, { ...options, detail: 'full' });
    assertSound(topology, drawn);
    expect(drawn.units.get('s1' as UnitId)?.row).toBe(1);
    expect(drawn.rows[0]?.used).toBe(6);
    expect(zoom).toBeGreaterThan(1.15);
    expect(drawn.width * zoom).toBeLessThanOrEqual(room.width + 0.5);
  });

  it('should put a supply beside the rows of a chain that goes on, where a row of its own would make all smaller', () => {
    const { topology } = buildTopology(plainContent(3, 14));
    const { detail, options } = fitCabinet({ topology, ...common, room: { width: 848, height: 592 }, goDown: true });
    expect(placeCabinet(topology, { ...options, detail }).units.get('s1' as UnitId)?.row).toBe(0);
  });
});

describe('fitCabinet that may go downwards', () => {
  it('should keep any cabinet readable, in rows no wider than the room', () => {
    for (const units of [3, 12, 60, 200]) {
      const { topology } = buildTopology(makeCabinet(7, { chains: 1, units, offChain: 0 }));
      for (const room of rooms) {
        const { zoom, detail, options } = fitCabinet({
          topology,
          room,
          wrap: true,
          goDown: true,
          foldable: new Set(),
          metrics: narrowMetrics,
        });
        expect(detail).not.toBe('strip');
        expect(zoom).toBeGreaterThanOrEqual(0.4);
        const placement = placeCabinet(topology, { ...options, detail });
        assertSound(topology, placement);
        expect(placement.width * zoom).toBeLessThanOrEqual(room.width + 1);
      }
    }
  });
});
