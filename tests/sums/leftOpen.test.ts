import { describe, expect, it } from 'vitest';
import { computeSums, countedWhenOpen } from '../../engine/sums/index.ts';
import { buildTopology } from '../../engine/topology/index.ts';
import { leftOpen } from '../../renderer/edit/leftOpen.ts';
import { plainContent } from '../bench/cabinets.ts';

const open = plainContent(1, 3);

describe('what counts where a field is left open', () => {
  it('should be what the sums count with: to write it down changes no figure', () => {
    const figures = (content: typeof open) =>
      JSON.stringify(computeSums(buildTopology(content).topology), (key, value) =>
        ['status', 'basis', 'of', 'from', 'source', 'missing'].includes(key) ? undefined : value,
      );
    const reserve = countedWhenOpen(open, 'ageingReserveDb')?.value;
    expect(figures({ ...open, ...(reserve === undefined ? {} : { ageingReserveDb: reserve }) })).toBe(figures(open));
    const temperature = countedWhenOpen(open, 'conductorTemperatureC')?.value ?? Number.NaN;
    expect(temperature).toBe(20);
    expect(figures({ ...open, leads: (open.leads ?? []).map((lead) => ({ ...lead, conductorTemperatureC: temperature })) })).toBe(
      figures(open),
    );
    expect(countedWhenOpen({ ...open, ambientC: 40 }, 'conductorTemperatureC')).toEqual({ value: 40, basis: 'ambient-of-cabinet' });
    expect(countedWhenOpen(open, 'model')).toBeNull();
  });

  it('should say its value and where that comes from', () => {
    expect(leftOpen(open, 'times.bootMinutes')).toEqual({ value: '4', why: 'Left open: an assumed figure; the cabinet’s own is better.' });
    expect(leftOpen(open, 'ageingReserveDb')).toEqual({ value: '0', why: 'Left open: none is written down, so none is counted.' });
    expect(leftOpen(open, 'lengthM')).toBeNull();
  });
});
