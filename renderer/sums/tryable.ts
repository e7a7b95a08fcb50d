import { type FigureChange, type SumTerm, type ThingFigure, thingFigures } from '../../engine/sums/index.ts';
import type { Topology } from '../../engine/topology/index.ts';

/** What kind of thing bears an id, in the words of the figures that can be tried. */
export type TriedThing = 'cable' | 'lead' | 'unit' | 'supply';

export function thingOf({ links, leads, units }: Topology, id: string): TriedThing | null {
  // Ids come from terms; one that does not occur is simply not found.
  const has = (map: ReadonlyMap<string, unknown>) => map.has(id);
  if (has(links)) return 'cable';
  if (has(leads)) return 'lead';
  if (!has(units)) return null;
  return (units as ReadonlyMap<string, { readonly kind: string }>).get(id)?.kind === 'supply' ? 'supply' : 'unit';
}

/** Which figure of the file stands behind a term. */
const figures: Partial<Record<SumTerm['code'], ThingFigure>> = {
  'cable-length': 'length',
  couplers: 'couplers',
  'lead-length': 'length',
  'cross-section': 'cross-section',
  'conductor-temperature': 'conductor-temperature',
  load: 'load',
  inrush: 'inrush',
  'minimum-voltage': 'minimum-voltage',
  'supply-voltage': 'supply-voltage',
  'rated-current': 'rated-current',
  'rated-inrush': 'rated-inrush',
  'dc-power': 'dc-power',
  'rated-dc-power': 'rated-dc-power',
  capacitance: 'capacitance',
  'discharge-resistor': 'discharge-resistor',
  'line-voltage': 'line-voltage',
};

/** The figure of the file that a term is, without its value; null for one that is worked out, or cannot be tried. */
export type TriedFigure = FigureChange extends infer C ? (C extends unknown ? Omit<C, 'value'> : never) : never;

export function triedFigureOf(topology: Topology, { code, of, status, from }: SumTerm): TriedFigure | null {
  if (status === 'computed' || from.length > 0) return null;
  if (code === 'ambient-temperature') return { figure: 'ambient' };
  if (code === 'ageing-reserve') return { figure: 'reserve' };
  const figure = figures[code];
  const thing = of === null ? null : thingOf(topology, of);
  if (figure === undefined || of === null || thing === null) return null;
  const things: readonly TriedThing[] = thingFigures[figure];
  return things.includes(thing) ? { figure, id: of } : null;
}

/** The same figure with a value. */
export function withValue(figure: TriedFigure, value: number): FigureChange {
  return 'id' in figure ? { figure: figure.figure, id: figure.id, value } : { figure: figure.figure, value };
}

/** The value of a figure as the cabinet's file has it; undefined where it is not written down. */
export function writtenValue({ content, units, links, leads }: Topology, figure: TriedFigure): number | undefined {
  if (!('id' in figure)) return figure.figure === 'ambient' ? content.ambientC : content.ageingReserveDb;
  const find = <R>(map: ReadonlyMap<string, R>): R | undefined => map.get(figure.id);
  const [link, lead, unit] = [find(links), find(leads), find(units)];
  const supply = unit?.supply;
  switch (figure.figure) {
    case 'length':
      return link?.lengthM ?? lead?.lengthM;
    case 'couplers':
      return link?.couplers;
    case 'measured-outbound':
      return link?.measuredLossDb?.outbound;
    case 'measured-return':
      return link?.measuredLossDb?.return;
    case 'cross-section':
      return lead?.crossSectionMm2;
    case 'conductor-temperature':
      return lead?.conductorTemperatureC;
    case 'load':
      return unit?.control24?.loadA;
    case 'inrush':
      return unit?.control24?.inrushA;
    case 'minimum-voltage':
      return unit?.control24?.minimumV;
    case 'dc-power':
      return unit?.dcLinkKw;
    case 'capacitance':
      return unit?.kind === 'supply' ? supply?.dcLink?.capacitanceUf : unit?.dcLinkCapacitanceUf;
    case 'supply-voltage':
      return supply?.control24?.nominalV;
    case 'rated-current':
      return supply?.control24?.ratedA;
    case 'rated-inrush':
      return supply?.control24?.inrushA;
    case 'rated-dc-power':
      return supply?.dcLink?.ratedKw;
    case 'discharge-resistor':
      return supply?.dcLink?.dischargeOhm;
    case 'line-voltage':
      return supply?.dcLink?.lineVoltageV;
  }
}
