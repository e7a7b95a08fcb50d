import type { Evidence, Fault } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { Workshop } from './worlds.ts';

/** Tells of a fault whether everything that was done has mended it, by what the simulation says of the acts. */
export function mendedBy(cabinet: Cabinet, { snapshots }: Evidence): (fault: Fault) => boolean {
  const workshop = new Workshop(
    cabinet,
    snapshots.flatMap(({ interventions }) => interventions ?? []),
  );
  return (fault) => !workshop.isThere(fault);
}
