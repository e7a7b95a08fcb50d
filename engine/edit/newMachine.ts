import type { CabinetContent } from '../schema/index.ts';

/** What a new machine is called. */
export interface NewMachine {
  readonly id: string;
  readonly name: string;
  readonly machineNumber?: string;
}

/**
 * Makes the cabinet of a new machine from a design: the same units, cables and leads with the same ids, so that the two can be
 * compared, without what belongs to one machine only: serial numbers, losses measured on it, its revision. It says on what it is
 * based; made from another machine, it is based on the same design as that one.
 */
export function newMachine(design: CabinetContent, { id, name, machineNumber }: NewMachine): CabinetContent {
  const { revision, machineNumber: _number, basedOn, extra: _extra, ...rest } = design;
  const fromMachine = basedOn !== undefined && design.machineNumber !== undefined;
  const controller = rest.controller === undefined ? {} : { controller: withoutSerial(rest.controller) };
  const machine: CabinetContent = {
    ...rest,
    id,
    name,
    ...(machineNumber === undefined || machineNumber.trim() === '' ? {} : { machineNumber: machineNumber.trim() }),
    basedOn: fromMachine ? basedOn : { design: design.id, ...(revision === undefined ? {} : { revision }) },
    ...controller,
  };
  for (const list of ['chains', 'leads', 'feedbacks', 'spares'] as const) clear(machine, list);
  if (machine.units !== undefined) {
    machine.units = machine.units.map((unit) => {
      const { board, ...others } = withoutSerial(unit);
      const kept = board === undefined ? {} : withoutSerial(board);
      return Object.keys(kept).length === 0 ? others : { ...others, board: kept };
    });
  }
  if (machine.links !== undefined) {
    machine.links = machine.links.map((link) => {
      const { measuredLossDb: _measured, ...others } = withoutSerial(link);
      return others;
    });
  }
  return machine;
}

function clear<L extends 'chains' | 'leads' | 'feedbacks' | 'spares'>(content: CabinetContent, list: L): void {
  const records: readonly { readonly serial?: string | undefined }[] | undefined = content[list];
  // Only an optional member is taken out of each record.
  if (records !== undefined) content[list] = records.map(withoutSerial) as CabinetContent[L];
}

function withoutSerial<R extends { readonly serial?: string | undefined }>(record: R): Omit<R, 'serial'> {
  const { serial: _serial, ...rest } = record;
  return rest;
}
