import type { UnitId } from '../../engine/base/index.ts';
import { checkCabinet, documentedBehaviour } from '../../engine/cabinet/index.ts';
import { type Diagnosis, diagnose, listFaultSpace } from '../../engine/diagnosis/index.ts';
import { buildDecision } from '../../engine/plan/buildDecision.ts';
import { Rules, type Situation } from '../../engine/plan/decision.ts';
import { stepOf } from '../../engine/plan/drafts.ts';
import { findHandlingWorlds, keepDiagnosis } from '../../engine/plan/handling.ts';
import { evidenceAfter } from '../../engine/plan/index.ts';
import { repairTable } from '../../engine/repair/index.ts';
import { type Behaviour, behaviourValues, type Evidence, type Fault } from '../../engine/schema/index.ts';
import { simulate } from '../../engine/simulation/index.ts';
import { isWhole } from '../../engine/steps/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { makeCabinet } from '../generators/cabinets.ts';
import { Random } from '../generators/random.ts';
import { RealMachine, type World } from '../plan/realMachine.ts';
import { planned, type Strategy } from './strategies.ts';

/*
 * Repairs of generated cabinets as they would really go: the simulation is nature, and nature is not what the planner reckons with. Every
 * strategy sees the same diagnosis of what was seen so far; it differs in what it does next.
 */

/** How nature is wrong (issue 5, point 4). */
const wrong = { ratesOff: 3, misreading: 0.04, wrongBehaviour: 0.1, intermittent: 0.05 } as const;
/** After so many steps, or calls, somebody else is called. */
const mostSteps = 12;
const mostComebacks = 2;

interface Drawn {
  readonly cabinet: Cabinet;
  readonly faults: readonly Fault[];
  readonly world: World;
}

/** A cabinet of 4 to 6 units, what is broken in it, and how it behaves; `isWrong`: nature as above, else as the planner reckons. */
export function drawRepair(seed: number, isWrong: boolean): Drawn {
  const random = new Random(seed);
  const content = makeCabinet(seed, {
    units: random.whole(4, 8),
    chains: random.whole(1, 2),
    supplies: 1,
    offChain: 0,
    behaviours: 'default',
  });
  const { cabinet } = checkCabinet({ ...content, links: (content.links ?? []).map((link) => ({ ...link, partNumber: 'POF-1' })) });
  if (cabinet === null) throw new Error(`generated cabinet ${seed} is not sound`);
  const { elements, faults } = listFaultSpace(cabinet, { circumstances: [], daysSinceWhole: 7, withWiringMistakes: false });
  const off = () => (isWrong ? (random.chance(0.5) ? wrong.ratesOff : 1 / wrong.ratesOff) : 1);
  const steady = elements.flatMap(({ modes }, element) =>
    modes.flatMap(({ odds }, mode) => {
      const fault = faults[element]?.[mode];
      return fault === undefined || fault.presence !== 'steady' ? [] : [{ fault, weight: odds * off() }];
    }),
  );
  const presence = random.chance(isWrong ? wrong.intermittent : 0) ? 'intermittent' : 'steady';
  const world: World = {
    misreading: isWrong ? wrong.misreading : 0.02,
    badPart: 0.01,
    looseAfterAct: 0.01,
    ...(isWrong && random.chance(wrong.wrongBehaviour) ? { behaviourOf: otherBehaviour(cabinet, random) } : {}),
  };
  for (;;) {
    const fault = { ...pickByWeight(steady, random).fault, presence } as Fault;
    if (!isWhole(simulate({ cabinet, faults: [fault], onset: 'while-running' }).trip)) return { cabinet, faults: [fault], world };
  }
}

/** One parameter of every unit is not what is documented. */
function otherBehaviour(cabinet: Cabinet, random: Random): (unit: UnitId) => Behaviour {
  const parameter = random.pick(['lossScope', 'onReceiveLoss', 'complainsFrom', 'whenBoth', 'holds'] as const);
  const value = random.pick<string>(behaviourValues[parameter].slice(1));
  return (unit) => ({ ...documentedBehaviour(cabinet, unit), [parameter]: value });
}

function pickByWeight<T extends { readonly weight: number }>(list: readonly T[], random: Random): T {
  let rest = random.next() * list.reduce((sum, { weight }) => sum + weight, 0);
  for (const one of list) {
    rest -= one.weight;
    if (rest < 0) return one;
  }
  const [first] = list;
  if (first === undefined) throw new Error('nothing can break');
  return first;
}

/** Diagnoses that several strategies ask for alike. */
export class Diagnoses {
  private readonly known = new Map<string, Diagnosis>();

  constructor(private readonly cabinet: Cabinet) {}

  of(evidence: Evidence): Diagnosis {
    const key = JSON.stringify(evidence);
    const diagnosis = this.known.get(key) ?? diagnose(this.cabinet, evidence);
    this.known.set(key, diagnosis);
    return diagnosis;
  }
}

/**
 * What a repair costs to its end, in minutes or worth so many. Who only acts goes through the acts as they stood after the first diagnosis;
 * who looks asks anew after every step, as the window does.
 */
export function payFor({ cabinet, faults, world }: Drawn, make: (rules: Rules) => Strategy, diagnoses: Diagnoses, luck: Random): number {
  const table = repairTable(cabinet.content);
  const machine = new RealMachine(cabinet, faults, luck, world);
  const { outsideHelp, comeback } = table.weights;
  let evidence = machine.firstLook();
  let standing = standAfter(cabinet, evidence, diagnoses);
  let hasLooked = false;
  let paid = 0;
  let comebacks = 0;
  for (let steps = 0; steps < mostSteps; steps += 1) {
    const { built, rules, at } = standing;
    const option = make(rules)(at);
    if (option !== null) {
      paid += option.cost;
      hasLooked ||= option.kind !== 'act';
      const step = stepOf(built, option);
      const outcome = machine.take(
        step,
        option.outcomes.flatMap(({ name }) => name.split(' ')),
      );
      evidence = evidenceAfter(evidence, step, outcome);
      const after = option.outcomes.find(({ name }) => name === outcome)?.after;
      const goesOn = make !== planned && !hasLooked && after !== undefined;
      standing = goesOn ? { built, rules, at: after } : standAfter(cabinet, evidence, diagnoses);
    } else if (!machine.halted && machine.isMended) {
      return paid;
    } else if (machine.halted || comebacks >= mostComebacks) {
      return paid + outsideHelp.value;
    } else {
      comebacks += 1;
      paid += comeback.value;
      evidence = { ...evidence, snapshots: [...evidence.snapshots, machine.comeBack()] };
      standing = standAfter(cabinet, evidence, diagnoses);
    }
  }
  return paid + outsideHelp.value;
}

function standAfter(cabinet: Cabinet, evidence: Evidence, diagnoses: Diagnoses) {
  const table = repairTable(cabinet.content);
  const diagnosis = diagnoses.of(evidence);
  keepDiagnosis(cabinet, evidence, diagnosis);
  const built = buildDecision(cabinet, evidence, diagnosis, table, findHandlingWorlds(cabinet, evidence, diagnosis, table));
  const rules = new Rules(built.decision);
  const at: Situation = { ...rules.begin(), seen: built.seen };
  return { built, rules, at };
}
