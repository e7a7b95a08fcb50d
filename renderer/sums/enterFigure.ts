import { sumsPageWords } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { changeFigures, type FigureChange, type FigureCode, type MissingFigure } from '../../engine/sums/index.ts';
import type { NumberKind } from './readNumber.ts';

/** A figure that somebody writes down: one that a sum said is missing. */
export type EnteredFigure = MissingFigure;

type Optics = NonNullable<NonNullable<CabinetContent['types']>[number]['optics']>;
type OpticsField = 'launchPowerMinDbm' | 'launchPowerMaxDbm' | 'sensitivityDbm' | 'overloadDbm';

const opticsFields: Partial<Record<FigureCode, OpticsField>> = {
  'launch-power': 'launchPowerMinDbm',
  'greatest-launch-power': 'launchPowerMaxDbm',
  sensitivity: 'sensitivityDbm',
  'overload-power': 'overloadDbm',
};

const fibreFields = { attenuation: 'attenuationDbPerM', 'coupler-loss': 'couplerDb', 'bend-loss': 'quarterBendDb' } as const;

/** Missing figures that a what-if can change too. */
const changeOf: Partial<Record<FigureCode, Exclude<FigureChange['figure'], 'ambient' | 'reserve'>>> = {
  'cable-length': 'length',
  load: 'load',
  inrush: 'inrush',
  'minimum-voltage': 'minimum-voltage',
  'supply-voltage': 'supply-voltage',
  'rated-current': 'rated-current',
  'rated-inrush': 'rated-inrush',
  'lead-length': 'length',
  'cross-section': 'cross-section',
  'dc-power': 'dc-power',
  'rated-dc-power': 'rated-dc-power',
  capacitance: 'capacitance',
  'discharge-resistor': 'discharge-resistor',
  'line-voltage': 'line-voltage',
};

/** What kind of entry a figure takes: a number of some kind, one of a list, or a line of text; null where it has its place elsewhere. */
export type EntryKind = NumberKind | 'text' | null;

export function entryKindOf(figure: FigureCode): EntryKind {
  if (figure in opticsFields) return 'level';
  if (figure === 'cross-section' || figure === 'discharge-resistor' || figure === 'line-voltage' || figure === 'data-rate')
    return 'positive';
  if (figure === 'axis-limit') return 'whole';
  if (figure === 'cycle-class' || figure === 'conductor-class' || figure === 'dc-link-supply') return 'text';
  return figure === 'length-limit-at-rate' ? null : 'amount';
}

type Edit<R> = (record: R) => R;

const edited = <R extends { readonly id: string }>(records: readonly R[] | undefined, id: string | undefined, edit: Edit<R>): R[] =>
  (records ?? []).map((record) => (record.id === id ? edit(record) : record));

/** The cabinet with one missing figure written in its place. What names nothing in it changes nothing. */
export function writeFigure(content: CabinetContent, { figure, of }: EnteredFigure, value: number | string): CabinetContent {
  if (typeof value === 'string') return of === null ? content : writeChoice(content, figure, of, value);
  if (figure === 'ageing-reserve') return { ...content, ageingReserveDb: value };
  if (of === null) return content;
  const change = changeOf[figure];
  if (change !== undefined) return changeFigures(content, [{ figure: change, id: of, value }]);
  const field = opticsFields[figure];
  if (field !== undefined) return writeOptics(content, of, (optics) => ({ ...optics, [field]: value }));
  if (figure === 'attenuation' || figure === 'coupler-loss' || figure === 'bend-loss')
    return writeFibre(content, of, fibreFields[figure], value);
  if (figure === 'axis-limit') {
    const cycleClass = content.chains?.find(({ id }) => id === of)?.cycleClass;
    return cycleClass === undefined
      ? content
      : { ...content, axisLimits: [...(content.axisLimits ?? []), { cycleClass, maximumAxes: value }] };
  }
  if (figure === 'data-rate') {
    const chain = chainOfLink(content, of);
    return {
      ...content,
      chains: edited(content.chains, chain, (record) => ({ ...record, optics: { ...record.optics, dataRateMbd: value } })),
    };
  }
  return content;
}

function writeChoice(content: CabinetContent, figure: FigureCode, of: string, value: string): CabinetContent {
  if (figure === 'cycle-class') return { ...content, chains: edited(content.chains, of, (record) => ({ ...record, cycleClass: value })) };
  if (figure === 'dc-link-supply')
    return { ...content, units: edited(content.units, of, (record) => ({ ...record, dcLinkSupply: value })) };
  const conductorClass = (['class-1-2', 'class-5', 'class-5-tinned'] as const).find((one) => one === value);
  if (figure !== 'conductor-class' || conductorClass === undefined) return content;
  return { ...content, leads: edited(content.leads, of, (record) => ({ ...record, conductorClass })) };
}

/** Optics stand with the chain's port, or with the type of a unit; a unit without one gets a type of its own. */
function writeOptics(content: CabinetContent, of: string, edit: (optics: Optics | undefined) => Optics): CabinetContent {
  if (content.chains?.some(({ id }) => id === of)) {
    return { ...content, chains: edited(content.chains, of, (record) => ({ ...record, optics: edit(record.optics) })) };
  }
  const unit = content.units?.find(({ id }) => id === of);
  if (unit === undefined) return content;
  const type = content.types?.find(({ id }) => id === unit.type);
  if (type !== undefined) {
    return { ...content, types: edited(content.types, type.id, (record) => ({ ...record, optics: edit(record.optics) })) };
  }
  const id = freeId(content.types, 'type');
  const made = { id, name: sumsPageWords.newType(unit.designation || unit.id), optics: edit(undefined) };
  return { ...content, types: [...(content.types ?? []), made], units: edited(content.units, of, (record) => ({ ...record, type: id })) };
}

/** Losses stand with the fibre; a cable without one gets one. */
function writeFibre(
  content: CabinetContent,
  of: string,
  field: (typeof fibreFields)[keyof typeof fibreFields],
  value: number,
): CabinetContent {
  const link = content.links?.find((one) => one.id === of);
  if (link === undefined) return content;
  if (content.fibres?.some(({ id }) => id === link.fibre)) {
    return { ...content, fibres: edited(content.fibres, link.fibre, (record) => ({ ...record, [field]: value })) };
  }
  const id = freeId(content.fibres, 'fibre');
  const made = { id, name: sumsPageWords.newFibre, [field]: value };
  return {
    ...content,
    fibres: [...(content.fibres ?? []), made],
    links: edited(content.links, of, (record) => ({ ...record, fibre: id })),
  };
}

/** The chain on which a link hangs, by going up from unit to unit; a loop ends the walk. */
export function chainOfLink(content: CabinetContent, link: string): string | undefined {
  const seen = new Set<string>();
  let record = content.links?.find(({ id }) => id === link);
  while (record?.upper !== undefined && !seen.has(record.id)) {
    if ('chain' in record.upper) return record.upper.chain;
    seen.add(record.id);
    const { unit } = record.upper;
    record = content.links?.find(({ lower }) => lower?.unit === unit);
  }
  return undefined;
}

function freeId(records: readonly { readonly id: string }[] | undefined, stem: string): string {
  const taken = new Set((records ?? []).map(({ id }) => id));
  let number = taken.size + 1;
  while (taken.has(`${stem}-${number}`)) number += 1;
  return `${stem}-${number}`;
}
