import type { MachineState } from '../schema/index.ts';
import type { ChangePart, RepairTable } from './types.ts';

/** What a change of the machine's state brings with it (domain section 7). */
export type ChangeEffect = 'opens-live-cabinet' | 'erases-displays' | 'restarts';

/** A change of the machine's state: paid once, with its effects. */
export interface StateChange {
  readonly from: MachineState;
  readonly to: MachineState;
  readonly minutes: number;
  readonly effects: readonly ChangeEffect[];
}

/** What a change is made of: doors, lock and discharge, boot. Going to `isolated` the doors stay as they are; they are open afterwards. */
const parts: { readonly [F in MachineState]: { readonly [T in MachineState]: readonly ChangePart[] } } = {
  closed: { closed: [], open: ['open'], isolated: ['lockOut', 'discharge', 'open'] },
  open: { closed: ['close'], open: [], isolated: ['lockOut', 'discharge'] },
  isolated: { closed: ['close', 'boot'], open: ['boot'], isolated: [] },
};

const effects: { readonly [F in MachineState]: { readonly [T in MachineState]: readonly ChangeEffect[] } } = {
  closed: { closed: [], open: ['opens-live-cabinet'], isolated: ['erases-displays'] },
  open: { closed: [], open: [], isolated: ['erases-displays'] },
  isolated: { closed: ['restarts'], open: ['restarts', 'opens-live-cabinet'], isolated: [] },
};

/** Minutes of a change; 0 where nothing changes. */
export function changeCost(table: RepairTable, from: MachineState, to: MachineState): number {
  return parts[from][to].reduce((sum, part) => sum + table.changes[part].value, 0);
}

/** A change with its minutes and effects; null where nothing changes. */
export function stateChange(table: RepairTable, from: MachineState, to: MachineState): StateChange | null {
  return from === to ? null : { from, to, minutes: changeCost(table, from, to), effects: effects[from][to] };
}
