import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeNames } from '../../engine/messages/index.ts';
import { simulate } from '../../engine/simulation/index.ts';
import { hopOfCell, isStopped, lightRows, listHops, listLight, nextStop, settledUnits } from '../../renderer/inject/lightWay.ts';
import { sayStep } from '../../renderer/inject/sayings.ts';
import { rawCodesIn } from '../messages/rawCodes.ts';
import { injections, seeded } from './samplesOfFaults.ts';

const onsets = ['while-running', 'at-power-up'] as const;

describe('the way of the light', () => {
  it('should go out over every link, back over every link, settle every unit once, and end with the report', () => {
    fc.assert(
      fc.property(injections, fc.constantFrom(...onsets), ({ cabinet, faults }, onset) => {
        const simulation = simulate({ cabinet, faults, onset });
        for (const { id, units, links } of cabinet.chains) {
          const hops = listHops(simulation.trip, id, simulation.reports.get(id));
          const n = units.length;
          expect(hops).toHaveLength(n === 0 ? 0 : 2 * n + 2);
          const linksOf = (kind: string) => hops.flatMap((hop) => (hop.kind === kind && 'link' in hop ? [hop.link] : []));
          expect(linksOf('outbound')).toEqual(links);
          expect(linksOf('return')).toEqual([...links].reverse());
          expect([...settledUnits(hops, hops.length - 1)].sort()).toEqual([...units].sort());
          // A unit is settled when both its sides are known: not before.
          units.forEach((unit, index) => {
            const at = hops.findIndex((hop) => 'settles' in hop && hop.settles === unit);
            expect(at).toBe(2 * n - (index + 1));
          });
        }
      }),
      seeded,
    );
  });

  it('should stop first, going out or back, where the report has its gap', () => {
    fc.assert(
      fc.property(injections, fc.constantFrom(...onsets), ({ cabinet, faults }, onset) => {
        const simulation = simulate({ cabinet, faults, onset });
        for (const { id, links } of cabinet.chains) {
          const report = simulation.reports.get(id);
          const hops = listHops(simulation.trip, id, report);
          const stopped = hops.flatMap((hop) =>
            hop.kind !== 'start' && hop.kind !== 'report' && isStopped(hop) ? [links.indexOf(hop.link) + 1] : [],
          );
          expect(report?.gap).toBe(stopped.length === 0 ? 'none' : Math.min(...stopped));
          const stop = nextStop(hops, null);
          expect(stop === null).toBe(report?.gap === 'none');
        }
      }),
      seeded,
    );
  });

  it('should give a table in which nobody hears what nobody sends, and every cell has its hop', () => {
    fc.assert(
      fc.property(injections, ({ cabinet, faults }) => {
        const { now, reports } = simulate({ cabinet, faults, onset: 'while-running' });
        for (const { id, units } of cabinet.chains) {
          const light = listLight(now, id);
          const hops = listHops(now, id, reports.get(id));
          light.forEach((column, position) => {
            const below = light[position + 1];
            if (below && below.hearsUp === 'light') expect(column.sendsDown).toBe('light');
            if (below && column.hearsDown === 'light') expect(below.sendsUp).toBe('light');
            for (const row of lightRows) {
              if (column[row] === 'none') continue;
              const hop = hops[hopOfCell(row, position, units.length)];
              // The controller's own sending is told where the way begins.
              if (row === 'sendsDown' && position === 0) expect(hop?.kind).toBe('start');
              else expect(hop?.kind).toBe(row === 'hearsUp' || row === 'sendsDown' ? 'outbound' : 'return');
              if (hop && 'to' in hop) expect(row.startsWith('hears') ? hop.to : hop.from).toBe(column.unit);
            }
          });
        }
      }),
      seeded,
    );
  });

  it('should say every hop in plain words, and name who hears or why not', () => {
    fc.assert(
      fc.property(injections, ({ cabinet, faults }) => {
        const names = makeNames(cabinet);
        const { trip, reports } = simulate({ cabinet, faults, onset: 'while-running' });
        for (const { id } of cabinet.chains) {
          for (const moment of ['trip', 'now'] as const) {
            for (const hop of listHops(trip, id, reports.get(id))) {
              const words = sayStep(names, hop, moment);
              expect(words).toMatch(/^\S.*\.$/);
              expect(words).not.toMatch(/ {2}|\.\.|undefined|null/);
              expect(rawCodesIn(words), words).toEqual([]);
              if ('to' in hop && hop.fibre.hears) expect(words).toContain(hop.to === null ? names.controller() : names.unit(hop.to));
            }
          }
        }
      }),
      { ...seeded, numRuns: 150 },
    );
  });
});
