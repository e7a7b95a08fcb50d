import type { ChainId, LinkId } from '../../base/index.ts';
import { type Names, wordDisplayReason, wordReport, wordReportReason } from '../../messages/index.ts';
import { type DisplayMeaning, directions, type Fault, type Intervention, linkEnds, type Onset } from '../../schema/index.ts';
import {
  type DisplayTerm,
  type FibreState,
  isNoLightNormal,
  type Look,
  type LookOutcome,
  type MomentState,
  predictLook,
  type ReportPrediction,
  type Simulation,
  type SimulationInput,
} from '../../simulation/index.ts';
import type { Cabinet } from '../../topology/index.ts';
import { type JsonUnit, jsonUnit, unitsInOrder } from './units.ts';

/** What was simulated, as the JSON interface gives it back. */
export interface JsonSimulationInput {
  readonly faults: readonly Fault[];
  readonly onset: Onset;
  readonly halted: boolean;
  readonly beforeTrip: readonly Intervention[];
  readonly sinceTrip: readonly Intervention[];
}

/** One display now. `because` holds the terms that decided, `reason` says the same in words. */
export interface JsonDisplay extends JsonUnit {
  readonly meaning: DisplayMeaning;
  readonly because: readonly DisplayTerm[];
  readonly reason: string;
}

/** The report of one chain. `between` names the two units of the gap; the controller is null. */
export interface JsonReport {
  readonly chain: string;
  readonly number: number;
  readonly gap: number | 'none';
  readonly between: readonly [string | null, string] | null;
  readonly speaks: boolean;
  readonly length: number;
  readonly because: ReportPrediction['because'];
  readonly text: string;
  readonly reason: string;
}

/** What a look at light shows now. `noLightIsNormal`: a healthy link shows no light there either. */
export type JsonLook = Look & { readonly outcome: LookOutcome | null; readonly noLightIsNormal: boolean };

/** One moment in full: every unit and every link. */
export interface JsonMoment {
  readonly chains: readonly object[];
  readonly units: readonly object[];
  readonly links: readonly object[];
}

/** The answer of a simulation. `looks` and `moments` stand there only when they were asked for. */
export interface JsonSimulation {
  readonly displays: readonly JsonDisplay[];
  readonly reports: readonly JsonReport[];
  readonly looks?: readonly JsonLook[];
  readonly moments?: { readonly trip: JsonMoment; readonly now: JsonMoment };
}

/** The displays and reports of a simulation, units in chain order. */
export function jsonSimulation(cabinet: Cabinet, names: Names, simulation: Simulation): JsonSimulation {
  const displays = unitsInOrder(cabinet).flatMap((unit) => {
    const display = simulation.displays.get(unit);
    if (!display) return [];
    return [{ ...jsonUnit(cabinet, unit), meaning: display.meaning, because: display.because, reason: wordDisplayReason(names, display) }];
  });
  const reports = cabinet.chains.flatMap(({ id }) => {
    const report = simulation.reports.get(id);
    return report ? [jsonReport(cabinet, names, id, report, simulation.trip)] : [];
  });
  return { displays, reports };
}

function jsonReport(cabinet: Cabinet, names: Names, chain: ChainId, report: ReportPrediction, trip: MomentState): JsonReport {
  const units = trip.chains.find(({ id }) => id === chain)?.units ?? [];
  const farther = report.gap === 'none' ? undefined : units[report.gap - 1];
  return {
    chain,
    number: cabinet.chainById.get(chain)?.record.number ?? 0,
    gap: report.gap,
    between: farther === undefined || report.gap === 'none' ? null : [units[report.gap - 2] ?? null, farther],
    speaks: report.speaks,
    length: report.length,
    because: report.because,
    text: wordReport(names, report),
    reason: wordReportReason(names, report),
  };
}

/** Both moments in full, for a program that wants to follow the light. */
export function jsonMoments(simulation: Simulation): NonNullable<JsonSimulation['moments']> {
  return { trip: jsonMoment(simulation.trip), now: jsonMoment(simulation.now) };
}

/** Field by field: what else the simulation keeps is no part of the interface. */
function jsonMoment(moment: MomentState): JsonMoment {
  const fibre = ({ direction, raw, hears, causes }: FibreState) => ({ direction, raw, hears, causes });
  return {
    chains: moment.chains.map(({ id, units, links }) => ({ id, units, links })),
    units: [...moment.units.values()].map(({ unit, powered, alive, causes, hearsUp, hearsDown, lostUp, lostDown }) => {
      return { unit, powered, alive, causes, hearsUp, hearsDown, lostUp, lostDown };
    }),
    links: [...moment.links.values()].map((state) => {
      return { link: state.link, chain: state.chain, index: state.index, outbound: fibre(state.outbound), return: fibre(state.return) };
    }),
  };
}

/** What one look shows now. */
export function jsonLook(look: Look, input: SimulationInput): JsonLook {
  return { ...look, outcome: predictLook(look, input), noLightIsNormal: isNoLightNormal(look, input) };
}

/** Every look for light at a link: both plugs, both ports, a lamp through both fibres. */
export function looksAtLink(link: LinkId): readonly Look[] {
  return [
    ...linkEnds.map((end): Look => ({ look: 'light-at-plug', link, end })),
    ...linkEnds.map((end): Look => ({ look: 'light-at-port', link, end })),
    ...directions.map((fibre): Look => ({ look: 'lamp', link, fibre })),
  ];
}
