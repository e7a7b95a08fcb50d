import type { UnitId } from '../base/index.ts';
import type { ChainTopology, Topology } from '../topology/index.ts';
import { axesOnWire, shareOfCycle } from './formulas.ts';
import { assumed, computed, documented, type MissingFigure, type SumTerm, unknown } from './terms.ts';
import type { ChainAxes } from './types.ts';
import { bytes, type Count, count, difference, given, megabauds, microseconds, type Percent } from './units.ts';

/** The table of axis limits with each class once; of a class named twice the lower limit counts. */
export interface AxisLimit {
  readonly cycleClass: string;
  readonly maximumAxes: number;
  readonly cycleUs: number | undefined;
  readonly bytesPerAxis: number | undefined;
  readonly source: string | undefined;
}

/** The user's table of axis limits, in its order. No limits are built in. */
export function listAxisLimits({ content }: Topology): readonly AxisLimit[] {
  const limits = new Map<string, AxisLimit>();
  for (const { cycleClass, maximumAxes, cycleUs, bytesPerAxis, source } of content.axisLimits ?? []) {
    const name = cycleClass.trim();
    const before = limits.get(name);
    if (before !== undefined && before.maximumAxes <= maximumAxes) continue;
    limits.set(name, { cycleClass: name, maximumAxes, cycleUs, bytesPerAxis, source });
  }
  return [...limits.values()];
}

/** Axes on a chain. A drive whose axes are not documented counts as one; `assumedDrives` tells how many such there are. */
export function countAxes(topology: Topology, chain: ChainTopology): { readonly axes: number; readonly assumedDrives: number } {
  const drives = chain.units.filter((unit) => topology.placeOf.get(unit)?.group === 'drive');
  const documentedAxes = (unit: UnitId) => topology.units.get(unit)?.axes?.length ?? 0;
  const assumedDrives = drives.filter((unit) => documentedAxes(unit) === 0).length;
  return { axes: drives.reduce((sum, unit) => sum + documentedAxes(unit), assumedDrives), assumedDrives };
}

/** Axes of every chain against the limit of its control-cycle class. */
export function computeAxes(topology: Topology): readonly ChainAxes[] {
  const limits = listAxisLimits(topology);
  return topology.chains.map((chain) => chainAxes(topology, chain, limits));
}

function chainAxes(topology: Topology, chain: ChainTopology, limits: readonly AxisLimit[]): ChainAxes {
  const { axes, assumedDrives } = countAxes(topology, chain);
  const cycleClass = chain.record.cycleClass?.trim() || null;
  const row = limits.find((limit) => limit.cycleClass === cycleClass);
  const missing: MissingFigure[] = [];
  if (cycleClass === null) missing.push({ figure: 'cycle-class', of: chain.id });
  else if (row === undefined) missing.push({ figure: 'axis-limit', of: chain.id });
  const perDrive = chain.units.flatMap((unit): readonly SumTerm[] => {
    if (topology.placeOf.get(unit)?.group !== 'drive') return [];
    const own = topology.units.get(unit)?.axes?.length ?? 0;
    return [own === 0 ? assumed('axes', count(1), 'one-axis-each', { of: unit }) : documented('axes', count(own), unit)];
  });
  const axesTerm = computed('axes', count(axes), 'counted-axes', perDrive, { of: chain.id });
  const limit: SumTerm<Count> =
    row === undefined ? unknown('axis-limit', chain.id) : documented('axis-limit', count(row.maximumAxes), chain.id, row.source);
  return {
    chain: chain.id,
    cycleClass,
    axes: axesTerm,
    limit,
    left:
      row === undefined
        ? unknown('axes-left', chain.id, [limit, axesTerm])
        : computed('axes-left', difference(row.maximumAxes - axes), 'limit-less-axes', [limit, axesTerm], { of: chain.id }),
    assumedDrives,
    wireShare: row === undefined ? null : wireShare(chain, row, axesTerm),
    classes: limits.map((one) => ({ cycleClass: one.cycleClass, maximumAxes: one.maximumAxes, fits: axes <= one.maximumAxes })),
    missing,
  };
}

function wireShare(chain: ChainTopology, row: AxisLimit, axes: SumTerm<Count>): SumTerm<Percent> | null {
  const cycle = given(microseconds, row.cycleUs);
  const perAxis = given(bytes, row.bytesPerAxis);
  const rate = given(megabauds, chain.record.optics?.dataRateMbd);
  if (cycle === null || perAxis === null || rate === null || axes.value === null) return null;
  const from = [
    axes,
    documented('bytes-per-axis', perAxis, chain.id, row.source),
    documented('data-rate', rate, chain.id, chain.record.optics?.source),
    documented('cycle-time', cycle, chain.id, row.source),
  ];
  return computed('wire-share', shareOfCycle(axes.value, perAxis, rate, cycle), 'axes-on-the-wire', from, { of: chain.id });
}

/** The greatest number of axes whose bytes fit on the wire of a chain at its own class; null where that cannot be told. */
export function mostAxesOnWire(chain: ChainTopology, row: AxisLimit): number | null {
  const cycle = given(microseconds, row.cycleUs);
  const perAxis = given(bytes, row.bytesPerAxis);
  const rate = given(megabauds, chain.record.optics?.dataRateMbd);
  return cycle === null || perAxis === null || rate === null || perAxis === 0 ? null : axesOnWire(perAxis, rate, cycle);
}
