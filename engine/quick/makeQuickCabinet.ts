import type {
  CabinetContent,
  ChainRecord,
  ControllerRecord,
  FeedbackRecord,
  LeadRecord,
  LinkRecord,
  TypeRecord,
  UnitRecord,
} from '../schema/index.ts';
import type { QuickPlan, QuickUnit } from './types.ts';

/*
 * Class letters of IEC 81346-2:2019 (from memory: TB converting electric energy, KE processing electric signals, WH guiding light,
 * WD guiding low-voltage electric energy, WG guiding electric signals).
 */
const letters = { drive: 'TB', signals: 'KE', light: 'WH', power: 'WD', feedback: 'WG' } as const;

/** Id of the type of equipment as found. */
const foundType = 'found';

/** The parts of a cabinet that a quick line settles. */
export interface QuickParts {
  readonly designationEdition: NonNullable<CabinetContent['designationEdition']>;
  readonly controller: ControllerRecord;
  readonly chains: ChainRecord[];
  readonly units: UnitRecord[];
  readonly links: LinkRecord[];
  readonly leads: LeadRecord[];
  readonly feedbacks: FeedbackRecord[];
  readonly types: TypeRecord[];
}

/** What a cabinet is made for when it was found at a halted machine, where nobody knows more than the line says. */
export interface AsFound {
  /** Name of the one type of equipment that all units are of. */
  readonly typeName: string;
}

/**
 * Whether a display keeps what it showed, and who else complains: of unknown equipment it is unknown, and taking the defaults for certain
 * would overrule what the controller reports. What it shows at a power-up keeps its default: left open, every pattern whose onset nobody
 * told would first be a wiring mistake.
 */
const unknownBehaviour = { lossScope: 'unknown', holds: 'unknown' } as const;

/**
 * Makes the cabinet of a plan. Rows and slots are those of the line. A supply that the line names feeds the units behind it in its
 * row; where a row names none, the first of all feeds it; where the line names none, one is assumed, at no known place.
 * Each unit has a lead of its own: so a dark unit does not speak of its neighbours, of whose wiring nothing is known. As found,
 * each drive and encoder interface has a feedback cable too, since hardly one stands without; else a short there, which also makes a unit
 * dark, would be no suspect, and its board be exchanged for nothing. `asFound` null: for a drawing, which says no more than the line.
 */
export function makeQuickCabinet(plan: QuickPlan, asFound: AsFound | null): QuickParts {
  const placed = plan.rows.flatMap(({ chain, units }, row) =>
    units.map((unit, slot) => ({ ...unit, chain, row: row + 1, slot: slot + 1 })),
  );
  const isEncoder = ({ kind }: QuickUnit) => kind === 'encoder-interface';
  const drives = placed.filter((unit) => unit.kind !== 'supply' && !isEncoder(unit));
  const supplies = placed.filter(({ kind }) => kind === 'supply');
  // The controller is the first thing that processes signals; encoder interfaces come after it.
  const ids = new Map([
    ...[...drives, ...supplies].map((unit, index) => [unit, `${letters.drive}${index + 1}`] as const),
    ...placed.filter(isEncoder).map((unit, index) => [unit, `${letters.signals}${index + 2}`] as const),
  ]);
  const idOf = (unit: (typeof placed)[number]) => ids.get(unit) ?? '';
  const assumed = supplies.length === 0 ? `${letters.drive}${drives.length + 1}` : null;

  const units = placed.map((unit): UnitRecord => {
    const { kind, onChain, row, slot } = unit;
    return {
      id: idOf(unit),
      kind,
      designation: `-${idOf(unit)}`,
      ...(kind !== 'supply' && !onChain ? { onChain: false } : {}),
      ...(kind !== 'supply' && asFound !== null ? { type: foundType } : {}),
      row,
      slot,
    };
  });
  if (assumed !== null) units.push({ id: assumed, kind: 'supply', designation: `-${assumed}` });

  const chains: ChainRecord[] = [];
  const links: LinkRecord[] = [];
  for (const { chain, row } of distinctChains(placed)) {
    const id = `chain${chain}`;
    chains.push({ id, number: chain });
    let upper: LinkRecord['upper'] = { chain: id };
    for (const unit of placed.filter((one) => one.row === row && one.onChain)) {
      const link = `${letters.light}${links.length + 1}`;
      links.push({ id: link, designation: `-${link}`, upper, lower: { unit: idOf(unit) } });
      upper = { unit: idOf(unit) };
    }
  }

  const feeding = (unit: (typeof placed)[number]): string => {
    const inRow = supplies.filter(({ row }) => row === unit.row);
    const before = inRow.filter(({ slot }) => slot < unit.slot);
    const supply = before[before.length - 1] ?? inRow[0] ?? supplies[0];
    return supply ? idOf(supply) : (assumed ?? '');
  };
  // Leads bear no designation: nobody could find an invented number on the machine, but "lead from -TB7 to -TB2" can be found.
  const leads = placed
    .filter(({ kind }) => kind !== 'supply')
    .map((unit, index): LeadRecord => ({ id: `${letters.power}${index + 1}`, from: { unit: feeding(unit) }, to: { unit: idOf(unit) } }));

  const feedbacks = (asFound === null ? [] : placed)
    .filter(({ kind }) => kind !== 'supply')
    .map((unit, index): FeedbackRecord => ({ id: `${letters.feedback}${index + 1}`, unit: idOf(unit) }));

  const controller = `${letters.signals}1`;
  return {
    designationEdition: '2019',
    controller: { id: controller, designation: `-${controller}` },
    chains,
    units,
    links,
    leads,
    feedbacks,
    types: asFound === null ? [] : [{ id: foundType, name: asFound.typeName, behaviour: unknownBehaviour }],
  };
}

function distinctChains(placed: readonly { readonly chain: number | null; readonly row: number }[]) {
  const rows = new Map<number, number>();
  for (const { chain, row } of placed) if (chain !== null) rows.set(row, chain);
  return [...rows].map(([row, chain]) => ({ row, chain }));
}
