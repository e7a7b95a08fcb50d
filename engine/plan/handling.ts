import type { ChainId, LinkId, UnitId } from '../base/index.ts';
import { type Diagnosis, diagnose, displayLogFactors, lookLogFactors, lookOutcomes, reportLogFactors } from '../diagnosis/index.ts';
import { partFor, type RepairTable } from '../repair/index.ts';
import { displayMeanings, type Evidence, type Fault, type Intervention, type LinkEnd, linkEnds } from '../schema/index.ts';
import { arrange, otherEnd, outcomeAt } from '../simulation/index.ts';
import { isWhole, makeSetting } from '../steps/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { Displacement, World } from './worlds.ts';

/*
 * What the search itself may have done (domain section 7): a plug that was touched sits loose or is fouled, the plugs of a unit are
 * crossed, a part that was put in is bad. Such a world is a hypothesis from before the act together with acts as they really came out:
 * one more plug pulled, one more fault from then on, or an exchange that changed nothing. It is weighed by all that was seen, against
 * the hypotheses of the diagnosis.
 */

/** Hypotheses from before an act that are taken further. */
const mostBases = 12;
/** So many of the latest snapshots with acts are looked at. */
const mostSnapshots = 2;
/** A world less probable than this is left out. */
const negligible = 1e-3;

/** What one act may have come out as, with its probability. */
interface Mishap {
  readonly evidence: Evidence;
  readonly chance: number;
  readonly displacement: Displacement | null;
  /** A fault that is there from the act on. */
  readonly added: Fault | null;
}

/** Worlds in which the search went wrong; their probabilities are shares of the whole. Empty while the machine runs. */
export function findHandlingWorlds(cabinet: Cabinet, evidence: Evidence, diagnosis: Diagnosis, table: RepairTable): readonly World[] {
  const { snapshots } = evidence;
  const acted = snapshots.flatMap(({ interventions }, index) => ((interventions ?? []).length > 0 ? [index] : [])).slice(-mostSnapshots);
  if (acted.length === 0 || snapshots[snapshots.length - 1]?.halted === false) {
    return [];
  }
  const found: { readonly world: World; readonly mass: number }[] = [];
  for (const index of acted) {
    const before = { ...evidence, snapshots: snapshots.slice(0, index) };
    const bases = diagnosisBefore(cabinet, before)
      .hypotheses.filter(({ faults }) => faults.length > 0 && faults.every(({ fault }) => fault.presence === 'steady'))
      .slice(0, mostBases);
    for (const mishap of listMishaps(cabinet, evidence, index, table)) {
      const likelihoodOf = likelihoodUnder(cabinet, mishap.evidence, mishap.added, index);
      for (const base of bases) {
        const faults = base.faults.map(({ fault }) => fault);
        const mass = base.priorOdds * mishap.chance * likelihoodOf(faults);
        if (mass > 0) {
          const { evidence: cameOut, displacement, added } = mishap;
          const all = added === null ? faults : [...faults, added];
          found.push({ mass, world: { faults: all, probability: 0, evidence: cameOut, displacement } });
        }
      }
    }
  }
  const total = totalMass(cabinet, evidence, diagnosis) + found.reduce((sum, { mass }) => sum + mass, 0);
  return total === 0
    ? []
    : found.map(({ world, mass }) => ({ ...world, probability: mass / total })).filter(({ probability }) => probability > negligible);
}

/** Prior odds times likelihood of all that the diagnosis weighed, on the scale of `likelihoodUnder`. */
function totalMass(cabinet: Cabinet, evidence: Evidence, { hypotheses }: Diagnosis): number {
  const best = hypotheses.find(({ faults }) => faults.length > 0 && faults.every(({ fault }) => fault.presence === 'steady'));
  if (best === undefined || best.probability === 0) {
    return 0;
  }
  return (best.priorOdds * likelihoodUnder(cabinet, evidence)(best.faults.map(({ fault }) => fault))) / best.probability;
}

function listMishaps(cabinet: Cabinet, evidence: Evidence, index: number, table: RepairTable): readonly Mishap[] {
  const acts = evidence.snapshots[index]?.interventions ?? [];
  const earlier = evidence.snapshots.slice(0, index).flatMap(({ interventions }) => interventions ?? []);
  const withActs = (interventions: readonly Intervention[]): Evidence => ({
    ...evidence,
    snapshots: evidence.snapshots.map((snapshot, at) => (at === index ? { ...snapshot, interventions: [...interventions] } : snapshot)),
  });
  return acts.flatMap((act, at): readonly Mishap[] => {
    const source = partFor(cabinet, table, act);
    const instead = (...others: readonly Intervention[]) => withActs([...acts.slice(0, at), ...others, ...acts.slice(at + 1)]);
    const bad: readonly Mishap[] =
      source === null ? [] : [{ evidence: instead(), chance: 1 - source.works, displacement: null, added: null }];
    const { cableOn } = arrange(cabinet, [...earlier, ...acts.slice(0, at + 1)]);
    const plugs = touchedPlugs(cabinet, act);
    const left = plugs.flatMap(({ link, end }): readonly Omit<Mishap, 'chance'>[] => {
      const lie = cableOn.get(link);
      // What was cleaned and is fouled all the same was not cleaned. The plugs of a cable that the cabinet does not know cannot be named.
      const fouled = act.do === 'clean-plug' ? instead({ ...act, do: 'reseat-plug' }) : evidence;
      return [
        { evidence: instead(act, { do: 'unplug', link, end }), displacement: { link, end }, added: null },
        ...(lie === undefined || lie.cable === null
          ? []
          : [{ evidence: fouled, displacement: null, added: steadyPlug(lie.cable, lie.turned ? otherEnd(end) : end) }]),
      ];
    });
    const crossed = unitsUnplugged(act).map(
      (unit): Omit<Mishap, 'chance'> => ({
        evidence: act.do === 'uncross-plugs' ? instead() : evidence,
        displacement: null,
        added: { item: 'wiring', unit, mode: 'crossed', presence: 'steady' },
      }),
    );
    const all = [...left, ...crossed];
    return [...bad, ...all.map((one) => ({ ...one, chance: table.chances.handlingFault.value / all.length }))];
  });
}

function steadyPlug(link: LinkId, end: LinkEnd): Fault {
  return { item: 'plug', link, end, mode: 'fouled', presence: 'steady' };
}

/** Units of which an act pulls all optical plugs, so that they may be exchanged when they are plugged in again. */
function unitsUnplugged(act: Intervention): readonly string[] {
  switch (act.do) {
    case 'replace-board':
    case 'replace-unit':
    case 'put-back-unit':
    case 'uncross-plugs':
    case 'unbridge-unit':
      return [act.unit];
    case 'exchange-boards':
      return [act.unit, act.other];
    default:
      return [];
  }
}

/** The plugs that an act pulls and plugs in again. */
export function touchedPlugs(cabinet: Cabinet, act: Intervention): readonly { readonly link: LinkId; readonly end: LinkEnd }[] {
  const both = (link: string) => linkEnds.map((end) => ({ link: link as LinkId, end })); // ids in files are plain strings
  switch (act.do) {
    case 'reseat-plug':
    case 'clean-plug':
    case 'plug-in':
      return [{ link: act.link as LinkId, end: act.end }];
    case 'replace-cable':
    case 'turn-cable':
      return both(act.link);
    case 'exchange-cables':
      return [...both(act.link), ...both(act.other)];
    case 'replace-controller-port': {
      const [first] = cabinet.chainById.get(act.chain as ChainId)?.links ?? [];
      return first === undefined ? [] : [{ link: first, end: 'upper' }];
    }
    case 'bridge-unit':
      return both(act.cable);
    default:
      return unitsUnplugged(act).flatMap((unit) => unitPlugs(cabinet, unit));
  }
}

function unitPlugs(cabinet: Cabinet, unit: string): readonly { readonly link: LinkId; readonly end: LinkEnd }[] {
  const place = cabinet.placeOf.get(unit as UnitId);
  const links = place === undefined ? [] : (cabinet.chainById.get(place.chain)?.links ?? []);
  const [above, below] = place === undefined ? [] : [links[place.position - 1], links[place.position]];
  return [
    ...(above === undefined ? [] : [{ link: above, end: 'lower' as const }]),
    ...(below === undefined ? [] : [{ link: below, end: 'upper' as const }]),
  ];
}

/** Likelihood of everything that was seen, of steady faults and documented behaviour (domain section 6); `added` is there from a snapshot on. */
function likelihoodUnder(cabinet: Cabinet, evidence: Evidence, added: Fault | null = null, from = 0): (faults: readonly Fault[]) => number {
  const settings = evidence.snapshots.map((_, index) =>
    makeSetting(cabinet, { ...evidence, snapshots: evidence.snapshots.slice(0, index + 1) }),
  );
  return (before) => {
    const after = added === null ? before : [...before, added];
    const read = new Set<string>();
    let log = 0;
    const add = (thing: string, factor: number | undefined) => {
      // The same reading of the same thing under the same prediction says nothing new.
      if (!read.has(thing)) {
        read.add(thing);
        log += factor ?? 0;
      }
    };
    for (const [index, snapshot] of evidence.snapshots.entries()) {
      const [view] = settings[index]?.viewsOf(index < from ? before : after) ?? [];
      if (view === undefined) {
        continue;
      }
      const { displays, reports, trip } = view.simulation();
      // A control that does not start with fewer units halts while one is bridged, whatever the chains are like.
      const haltsAnyway = snapshot.halted === true && [...reports.values()].some(({ speaks }) => !speaks);
      if (snapshot.halted !== undefined && !haltsAnyway && snapshot.halted === isWhole(trip)) {
        return 0;
      }
      for (const { unit, meanings } of snapshot.displays ?? []) {
        const meaning = displays.get(unit as UnitId)?.meaning;
        if (meaning !== undefined) {
          const isSupply = cabinet.units.get(unit as UnitId)?.kind === 'supply';
          add(`${unit} ${meaning} ${meanings.join()}`, displayLogFactors(meanings, isSupply)[displayMeanings.indexOf(meaning)]);
        }
      }
      for (const { chain, gaps } of snapshot.reports ?? []) {
        const report = reports.get(chain as ChainId);
        if (report?.speaks === true && report.length > 0) {
          add(`${chain} ${report.gap} ${gaps.join()}`, reportLogFactors(gaps, report.length)[report.gap === 'none' ? 0 : report.gap]);
        }
      }
      for (const look of snapshot.looks ?? []) {
        const outcomes = lookOutcomes(look);
        const predicted = outcomeAt(look, view.moments.now);
        if (predicted !== null) {
          const { outcomes: seen, note: _note, photo: _photo, at: _at, ...what } = look;
          add(`${JSON.stringify(what)} ${predicted} ${seen.join()}`, lookLogFactors<string>(seen, outcomes)[outcomes.indexOf(predicted)]);
        }
      }
    }
    return Math.exp(log);
  };
}

const kept = new WeakMap<Cabinet, Map<string, Diagnosis>>();
/** A case goes on step by step, so the diagnoses of the last steps are those from before the last acts. */
const mostKept = 8;

/** Keeps what was diagnosed, for the questions that follow the next act. */
export function keepDiagnosis(cabinet: Cabinet, evidence: Evidence, diagnosis: Diagnosis): void {
  const known = kept.get(cabinet) ?? new Map<string, Diagnosis>();
  kept.set(cabinet, known);
  const key = JSON.stringify(evidence);
  known.delete(key);
  known.set(key, diagnosis);
  const [oldest] = known.keys();
  if (known.size > mostKept && oldest !== undefined) {
    known.delete(oldest);
  }
}

function diagnosisBefore(cabinet: Cabinet, before: Evidence): Diagnosis {
  const diagnosis = kept.get(cabinet)?.get(JSON.stringify(before)) ?? diagnose(cabinet, before);
  keepDiagnosis(cabinet, before, diagnosis);
  return diagnosis;
}
