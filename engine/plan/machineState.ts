import type { Evidence, MachineState } from '../schema/index.ts';
import { stateNeeded } from '../steps/index.ts';

/** The state in which the machine was left: as written, else open where something in the cabinet was looked at, else closed. */
export function machineStateOf({ snapshots }: Evidence): MachineState {
  const last = snapshots[snapshots.length - 1];
  if (last?.state !== undefined) {
    return last.state;
  }
  const states = (last?.looks ?? []).map((look) => stateNeeded({ do: 'look', look }));
  if (states[states.length - 1] === 'isolated') {
    return 'isolated';
  }
  return (last?.displays ?? []).length + states.length > 0 ? 'open' : 'closed';
}
