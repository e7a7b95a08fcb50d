import type { ChainId, LinkId, TypeId, UnitId } from '../base/index.ts';
import type { CabinetContent, Direction, LinkRecord, TypeRecord } from '../schema/index.ts';
import type { ChainTopology, Topology } from '../topology/index.ts';
import { type CableLoss, findCableLoss } from './cableLoss.ts';
import { overloadMargin, sensitivityMargin, temperatureEffect } from './formulas.ts';
import { findLengthLimits } from './lengthLimits.ts';
import { assumed, computed, documented, type FigureCode, type MissingFigure, type SumTerm, unknown } from './terms.ts';
import type { FibreBudget } from './types.ts';
import { celsius, type Db, type Dbm, db, dbm, dbPerKelvin, given, lossDb } from './units.ts';

/** For this temperature data sheets give launch powers. */
export const referenceTemperature = celsius(25);

type Optics = NonNullable<TypeRecord['optics']>;

/** What stands at an end of a link: a unit, or the controller's port of the chain. */
interface Port {
  readonly unit: UnitId | null;
  readonly of: string;
  readonly optics: Optics | undefined;
}

/** Margin of a fibre of which too little is known, dB (domain section 8); said wherever it is used. */
export const marginWithoutData = db(3);

/** The budget of both fibres of every link, chain by chain, outbound before return. */
export function computeBudgets(topology: Topology): readonly FibreBudget[] {
  return topology.chains.flatMap((chain) =>
    chain.links.flatMap((_, at) => (['outbound', 'return'] as const).flatMap((direction) => computeBudget(topology, chain, at, direction))),
  );
}

/**
 * The budget of one fibre; `at` is the number of its link on the chain from 0. Launch power, sensitivity and losses are those of the
 * data sheets written in the types, the chain and the fibre; a loss found with a meter takes the place of the computed one.
 */
export function computeBudget(topology: Topology, chain: ChainTopology, at: number, direction: Direction): readonly FibreBudget[] {
  const link = chain.links[at];
  const lower = chain.units[at];
  const record = link === undefined ? undefined : topology.links.get(link);
  if (link === undefined || lower === undefined || record === undefined) return [];
  const upperPort = findPort(topology, chain, at === 0 ? null : (chain.units[at - 1] ?? null));
  const lowerPort = findPort(topology, chain, lower);
  const [sender, receiver] = direction === 'outbound' ? [upperPort, lowerPort] : [lowerPort, upperPort];
  const fibre = topology.content.fibres?.find(({ id }) => id === record.fibre);
  const loss = findCableLoss(record, fibre, direction);
  const reserve = findReserve(topology.content);
  const missing: MissingFigure[] = loss.missing.map((figure) => ({ figure, of: link }));
  if (reserve.status === 'assumed') missing.push({ figure: 'ageing-reserve', of: null });
  const note = (figure: FigureCode, of: string) => void missing.push({ figure, of });

  const margin = findMargin(topology.content, sender, receiver, loss, reserve, note);
  const length = findLengthLimits(record, fibre, findDataRate(chain, upperPort, lowerPort));
  missing.push(...length.missing.map((figure) => ({ figure, of: link })));
  return [
    {
      link,
      chain: chain.id,
      index: at + 1,
      direction,
      transmitter: sender.unit,
      receiver: receiver.unit,
      margin,
      overloadMargin: findOverloadMargin(topology.content, sender, receiver, loss, note),
      loss: loss.most,
      reserve,
      toleratedDb: db((margin.value ?? marginWithoutData) + (reserve.value ?? 0)),
      limits: length.limits,
      tightBends: findTightBends(record, fibre?.minimumBendMm),
      missing,
    },
  ];
}

/**
 * Loss, dB, that a fault may add to one fibre before telegrams fail: margin and ageing reserve. `link` must be on a chain; else the
 * margin without data is taken.
 */
export function findToleratedLoss(topology: Topology, link: LinkId, direction: Direction): Db {
  for (const chain of topology.chains) {
    const at = chain.links.indexOf(link);
    const [budget] = at < 0 ? [] : computeBudget(topology, chain, at, direction);
    if (budget !== undefined) return budget.toleratedDb;
  }
  return marginWithoutData;
}

function findPort(topology: Topology, chain: ChainTopology, unit: UnitId | null): Port {
  if (unit === null) return { unit, of: chain.id, optics: chain.record.optics };
  const type = topology.units.get(unit)?.type;
  return { unit, of: unit, optics: type === undefined ? undefined : topology.types.get(type as TypeId)?.optics }; // this is the look-up
}

function findReserve(content: CabinetContent): SumTerm<Db> {
  const reserve = given(lossDb, content.ageingReserveDb);
  return reserve === null ? assumed('ageing-reserve', db(0), 'reserve-not-given') : documented('ageing-reserve', reserve, null);
}

function findMargin(
  content: CabinetContent,
  sender: Port,
  receiver: Port,
  loss: CableLoss,
  reserve: SumTerm<Db>,
  note: (figure: FigureCode, of: string) => void,
): SumTerm<Db> {
  const launch = findLaunch(content, sender, 'launch-power-least', sender.optics?.launchPowerMinDbm);
  const sensitivityFigure = given(dbm, receiver.optics?.sensitivityDbm);
  const sensitivity = documented('sensitivity', sensitivityFigure, receiver.of, receiver.optics?.source);
  if (launch.power === null) note('launch-power', sender.of);
  if (sensitivityFigure === null) note('sensitivity', receiver.of);
  const from = [...launch.terms, sensitivity, loss.most, reserve];
  if (launch.power === null || sensitivityFigure === null || loss.most.value === null) {
    return assumed('sensitivity-margin', marginWithoutData, 'margin-without-data', { from });
  }
  const value = sensitivityMargin(launch.power, [loss.most.value, reserve.value ?? db(0)], sensitivityFigure);
  return computed('sensitivity-margin', value, 'power-budget', from);
}

function findOverloadMargin(
  content: CabinetContent,
  sender: Port,
  receiver: Port,
  loss: CableLoss,
  note: (figure: FigureCode, of: string) => void,
): SumTerm<Db> {
  const launch = findLaunch(content, sender, 'launch-power-most', sender.optics?.launchPowerMaxDbm);
  const overloadFigure = given(dbm, receiver.optics?.overloadDbm);
  const overload = documented('overload-power', overloadFigure, receiver.of, receiver.optics?.source);
  if (launch.power === null) note('greatest-launch-power', sender.of);
  if (overloadFigure === null) note('overload-power', receiver.of);
  const from = [...launch.terms, overload, loss.least];
  if (launch.power === null || overloadFigure === null) return unknown('overload-margin', null, from);
  return computed('overload-margin', overloadMargin(launch.power, loss.least.value ?? db(0), overloadFigure), 'overload-budget', from);
}

/** A launch power as the data sheet gives it, and at the cabinet's temperature where the sheet gives a coefficient. */
function findLaunch(
  content: CabinetContent,
  { optics, of }: Port,
  code: 'launch-power-least' | 'launch-power-most',
  figure: number | undefined,
): { readonly power: Dbm | null; readonly terms: readonly SumTerm[] } {
  const power = given(dbm, figure);
  const launch = documented(code, power, of, optics?.source);
  const coefficient = given(dbPerKelvin, optics?.temperatureDbPerK);
  if (power === null || coefficient === null) return { power, terms: [launch] };
  const ambient = given(celsius, content.ambientC);
  const temperature =
    ambient === null
      ? assumed('ambient-temperature', referenceTemperature, 'reference-temperature')
      : documented('ambient-temperature', ambient, null);
  const effect = temperatureEffect(coefficient, temperature.value ?? referenceTemperature);
  const terms = [documented('temperature-coefficient', coefficient, of, optics?.source), temperature];
  return { power: dbm(power + effect), terms: [launch, computed('temperature-effect', effect, 'temperature-coefficient', terms, { of })] };
}

/** The data rate of a link: that of the chain's port, else the higher one of its two ends. */
function findDataRate(
  chain: ChainTopology,
  one: Port,
  other: Port,
): { readonly figure: number | undefined; readonly of: ChainId; readonly source?: string } {
  const source = chain.record.optics?.source;
  const ofChain = chain.record.optics?.dataRateMbd;
  if (ofChain !== undefined) return { figure: ofChain, of: chain.id, ...(source === undefined ? {} : { source }) };
  const rates = [one, other].flatMap(({ optics }) => (optics?.dataRateMbd === undefined ? [] : [optics.dataRateMbd]));
  return { figure: rates.length === 0 ? undefined : Math.max(...rates), of: chain.id };
}

function findTightBends(record: LinkRecord, minimumMm: number | undefined): FibreBudget['tightBends'] {
  if (minimumMm === undefined) return [];
  return (record.bends ?? []).flatMap(({ radiusMm }) => (radiusMm < minimumMm ? [{ radiusMm, minimumMm }] : []));
}
