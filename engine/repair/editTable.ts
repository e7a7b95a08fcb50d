import type { ActKind, CabinetContent, MachineState } from '../schema/index.ts';
import type { ChanceName, ChangePart, WeightName } from './types.ts';

/** One figure of the repair table as the user wants it; null: the usual one again. */
export type TableEdit =
  /** `subject`: the unit, link, lead, chain or feedback cable for which alone it holds; left out, for all. */
  | {
      readonly of: 'act';
      readonly act: ActKind;
      readonly subject?: string;
      readonly field: 'minutes' | 'partMinutes';
      readonly value: number | null;
    }
  /** Where the figures of an act come from; only where it has some of its own. */
  | { readonly of: 'act-source'; readonly act: ActKind; readonly subject?: string; readonly value: string | null }
  /** All figures of an act the usual ones again. */
  | { readonly of: 'act-usual'; readonly act: ActKind; readonly subject?: string }
  | { readonly of: 'state'; readonly act: ActKind; readonly value: MachineState | null }
  | { readonly of: 'change'; readonly part: ChangePart; readonly value: number | null }
  | { readonly of: 'weight'; readonly name: WeightName; readonly value: number | null }
  | { readonly of: 'chance'; readonly name: ChanceName; readonly value: number | null };

type Repair = NonNullable<CabinetContent['repair']>;
type Times = NonNullable<CabinetContent['times']>;

const timeOf: { readonly [P in ChangePart]: keyof Times | null } = {
  open: 'openMinutes',
  close: null,
  lockOut: null,
  discharge: 'dischargeMinutes',
  boot: 'bootMinutes',
  referencing: 'referencingMinutes',
};

/** Whether a cabinet can have a figure of its own for this part of a change. */
export const isOwnChange = (part: ChangePart): boolean => timeOf[part] !== null;

/** The cabinet with one figure of its repair table changed. The cabinet given is not touched. */
export function editTable(content: CabinetContent, edit: TableEdit): CabinetContent {
  const { repair, times, ...rest } = content;
  switch (edit.of) {
    case 'act':
      return withRepair(content, { ...repair, acts: editActs(repair?.acts, edit, { [edit.field]: edit.value }) });
    case 'act-source':
      return withRepair(content, { ...repair, acts: editActs(repair?.acts, edit, { source: edit.value }) });
    case 'act-usual':
      return withRepair(content, { ...repair, acts: (repair?.acts ?? []).filter((row) => !isRowOf(row, edit)) });
    case 'state':
      return withRepair(content, { ...repair, acts: editActs(repair?.acts, edit, { state: edit.value }) });
    case 'weight':
      return withRepair(content, { ...repair, weights: set(repair?.weights, edit.name, edit.value) });
    case 'chance':
      return withRepair(content, { ...repair, chances: set(repair?.chances, edit.name, edit.value) });
    case 'change': {
      const name = timeOf[edit.part];
      const changed = name === null ? times : set(times, name, edit.value);
      return { ...rest, ...(repair === undefined ? {} : { repair }), ...(isEmpty(changed) ? {} : { times: changed }) };
    }
  }
}

/** A row of the table by its act and, where it holds for one thing alone, that. */
interface RowKey {
  readonly act: ActKind;
  readonly subject?: string | undefined;
}

const isRowOf = (row: RowKey, key: RowKey): boolean => row.act === key.act && row.subject === key.subject;

function editActs(acts: Repair['acts'], key: RowKey, change: Readonly<Record<string, unknown>>): NonNullable<Repair['acts']> {
  const { act, subject } = key;
  const own = (acts ?? []).find((row) => isRowOf(row, key)) ?? { act, ...(subject === undefined ? {} : { subject }) };
  const [[name = '', value] = []] = Object.entries(change);
  const edited = set(own, name as keyof typeof own, value as never); // the callers name fields of a row
  const others = (acts ?? []).filter((row) => !isRowOf(row, key));
  const says = edited.minutes !== undefined || edited.partMinutes !== undefined || edited.state !== undefined;
  return says ? [...others, edited] : others;
}

function set<T extends object, K extends keyof T>(record: T | undefined, name: K, value: T[K] | null): T {
  const { [name]: _before, ...others } = record ?? ({} as T);
  // Everything but the one field is as it was.
  return (value === null ? others : { ...others, [name]: value }) as T;
}

const isEmpty = (record: object | undefined): boolean => record === undefined || Object.keys(record).length === 0;

function withRepair({ repair: _before, ...rest }: CabinetContent, { acts, weights, chances }: Repair): CabinetContent {
  const repair = {
    ...(acts === undefined || acts.length === 0 ? {} : { acts }),
    ...(weights === undefined || isEmpty(weights) ? {} : { weights }),
    ...(chances === undefined || isEmpty(chances) ? {} : { chances }),
  };
  return isEmpty(repair) ? rest : { ...rest, repair };
}
