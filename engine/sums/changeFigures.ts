import type { CabinetContent, LeadRecord, LinkRecord, UnitRecord } from '../schema/index.ts';

/** Figures of the cabinet as a whole that a what-if can change. */
export const cabinetFigures = ['ambient', 'reserve'] as const;
/** Figures of one thing that a what-if can change, and of which things. */
export const thingFigures = {
  length: ['cable', 'lead'],
  couplers: ['cable'],
  'measured-outbound': ['cable'],
  'measured-return': ['cable'],
  'cross-section': ['lead'],
  'conductor-temperature': ['lead'],
  load: ['unit'],
  inrush: ['unit'],
  'minimum-voltage': ['unit'],
  'dc-power': ['unit'],
  capacitance: ['unit', 'supply'],
  'supply-voltage': ['supply'],
  'rated-current': ['supply'],
  'rated-inrush': ['supply'],
  'rated-dc-power': ['supply'],
  'discharge-resistor': ['supply'],
  'line-voltage': ['supply'],
} as const satisfies Readonly<Record<string, readonly ('cable' | 'lead' | 'unit' | 'supply')[]>>;
export type CabinetFigure = (typeof cabinetFigures)[number];
export type ThingFigure = keyof typeof thingFigures;

/** One figure that is tried: in the unit of its field in the file (m, mm², A, V, kW, µF, Ω, dB, °C). */
export type FigureChange =
  | { readonly figure: CabinetFigure; readonly value: number }
  | { readonly figure: ThingFigure; readonly id: string; readonly value: number };

/** The cabinet as it would be with some figures changed. What names nothing in it changes nothing. The content given is not touched. */
export function changeFigures(content: CabinetContent, changes: readonly FigureChange[]): CabinetContent {
  return changes.reduce(changeOne, content);
}

function changeOne(content: CabinetContent, change: FigureChange): CabinetContent {
  if (!('id' in change)) {
    return change.figure === 'ambient' ? { ...content, ambientC: change.value } : { ...content, ageingReserveDb: change.value };
  }
  const { id } = change;
  const at = <R extends { readonly id: string }>(records: R[] | undefined, edit: (record: R) => R): R[] | undefined =>
    records?.map((record) => (record.id === id ? edit(record) : record));
  const links = at(content.links, (record) => changeLink(record, change.figure, change.value));
  const leads = at(content.leads, (record) => changeLead(record, change.figure, change.value));
  const units = at(content.units, (record) => changeUnit(record, change.figure, change.value));
  return { ...content, ...(links && { links }), ...(leads && { leads }), ...(units && { units }) };
}

function changeLink(record: LinkRecord, figure: ThingFigure, value: number): LinkRecord {
  switch (figure) {
    case 'length':
      return { ...record, lengthM: value };
    case 'couplers':
      return { ...record, couplers: value };
    case 'measured-outbound':
      return { ...record, measuredLossDb: { ...record.measuredLossDb, outbound: value } };
    case 'measured-return':
      return { ...record, measuredLossDb: { ...record.measuredLossDb, return: value } };
    default:
      return record;
  }
}

function changeLead(record: LeadRecord, figure: ThingFigure, value: number): LeadRecord {
  switch (figure) {
    case 'length':
      return { ...record, lengthM: value };
    case 'cross-section':
      return { ...record, crossSectionMm2: value };
    case 'conductor-temperature':
      return { ...record, conductorTemperatureC: value };
    default:
      return record;
  }
}

function changeUnit(record: UnitRecord, figure: ThingFigure, value: number): UnitRecord {
  if (record.kind === 'supply') return changeSupply(record, figure, value);
  switch (figure) {
    case 'load':
      return { ...record, control24: { ...record.control24, loadA: value } };
    case 'inrush':
      return { ...record, control24: { ...record.control24, inrushA: value } };
    case 'minimum-voltage':
      return { ...record, control24: { ...record.control24, minimumV: value } };
    case 'dc-power':
      return { ...record, dcLinkKw: value };
    case 'capacitance':
      return { ...record, dcLinkCapacitanceUf: value };
    default:
      return record;
  }
}

function changeSupply(record: UnitRecord, figure: ThingFigure, value: number): UnitRecord {
  const ratings = record.supply ?? {};
  const control24 = (more: object): UnitRecord => ({ ...record, supply: { ...ratings, control24: { ...ratings.control24, ...more } } });
  const dcLink = (more: object): UnitRecord => ({ ...record, supply: { ...ratings, dcLink: { ...ratings.dcLink, ...more } } });
  switch (figure) {
    case 'supply-voltage':
      return control24({ nominalV: value });
    case 'rated-current':
      return control24({ ratedA: value });
    case 'rated-inrush':
      return control24({ inrushA: value });
    case 'rated-dc-power':
      return dcLink({ ratedKw: value });
    case 'capacitance':
      return dcLink({ capacitanceUf: value });
    case 'discharge-resistor':
      return dcLink({ dischargeOhm: value });
    case 'line-voltage':
      return dcLink({ lineVoltageV: value });
    default:
      return record;
  }
}
