import type { Fault, Snapshot } from '../schema/index.ts';

/** Chance that an intermittent fault is there at a moment after the first trip (q of domain section 4). */
export const presentChance = 0.5;

/** The same while what the fault sits on is moved or warmed (domain section 7; assumed). */
export const provokedChance = 0.9;

/** Whether a restart brings a fault out: it sits on what is moved or warmed. Waiting brings nothing out. */
export function isProvoked(provoked: Snapshot['provoked'], fault: Fault): boolean {
  return (
    provoked !== undefined && provoked.how !== 'wait' && Object.values(fault).some((part) => provoked.subjects?.includes(String(part)))
  );
}
