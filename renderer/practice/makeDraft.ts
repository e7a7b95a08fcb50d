import type { ExerciseWish, MadeExercise, ProposedStep } from '../../engine/exercise/index.ts';
import { type DraftProblem, exerciseKindTexts, paperWords, startSentence } from '../../engine/messages/index.ts';
import type {
  AllowedStep,
  CabinetContent,
  CircumstanceKind,
  ExerciseContent,
  ExerciseKind,
  Fault,
  Onset,
  SolvedBy,
} from '../../engine/schema/index.ts';
import { type Simulation, simulate } from '../../engine/simulation/index.ts';
import type { Cabinet, Topology } from '../../engine/topology/index.ts';
import { isWiringMistake } from '../inject/faultChoices.ts';

/*
 * An exercise that is being made: what the instructor has decided so far, and nothing that follows from it.
 */

/** More faults than this would leave more possibilities than anybody oversees. */
export const mostFaults = 2;

/** Which displays or reports are given: by what they show, or each by itself. */
export type Shown = 'complaining' | 'all' | 'none' | readonly string[];

/** What the instructor decided about one step; what is left out stays as proposed. */
export interface StepDecision {
  readonly allowed?: boolean;
  readonly minutes?: number;
  /** Null: as often as usual. */
  readonly most?: number | null;
  readonly spare?: string;
}

export interface DraftSpare {
  readonly id: string;
  readonly name: string;
  readonly partNumber?: string;
  readonly count: number;
}

export interface DraftHint {
  readonly id: number;
  readonly text: string;
  readonly minutes: number;
}

export interface MakeDraft {
  readonly id: string;
  /** Null: the cabinet that is open in the window; else the name of a sample. */
  readonly sample: string | null;
  readonly faults: readonly Fault[];
  readonly onset: Onset;
  readonly seed: number;
  readonly displays: Shown;
  readonly reports: Shown;
  readonly circumstances: readonly CircumstanceKind[];
  /** By the key of the step, so that a decision outlasts a new proposal. */
  readonly steps: Readonly<Record<string, StepDecision>>;
  /** Null: as the repair table of the cabinet says. */
  readonly times: { readonly [T in keyof ExerciseContent['times']]: number | null };
  readonly spares: readonly DraftSpare[];
  readonly limits: { readonly minutes: number | null; readonly steps: number | null };
  readonly hints: readonly DraftHint[];
  readonly solved: SolvedBy;
  readonly kind: ExerciseKind;
  /** The instructor chose the kind; else it follows from what is hidden. */
  readonly kindChosen: boolean;
  readonly name: string;
  readonly task: string;
  readonly story: string;
  readonly lesson: string;
}

/** A draft with the cabinet that it was made for; null: that was not known yet. */
export interface KeptDraft {
  readonly draft: MakeDraft;
  readonly cabinet: { readonly id: string; readonly name: string } | null;
}

/** An empty draft; its id says when it was begun. */
export function newDraft(now: Date, begun: Partial<MakeDraft> = {}): MakeDraft {
  const kind: ExerciseKind = 'neighbours';
  return {
    id: `made-${now.toISOString().replace(/\D/g, '')}`,
    sample: null,
    onset: 'while-running',
    seed: 1,
    displays: 'complaining',
    reports: 'complaining',
    circumstances: [],
    steps: {},
    times: { openMinutes: null, isolateMinutes: null, bootMinutes: null },
    spares: [],
    limits: { minutes: null, steps: null },
    hints: [],
    solved: 'place',
    kind,
    kindChosen: false,
    ...exerciseKindTexts[kind],
    story: '',
    ...begun,
    // When a fault is away is drawn from the seed; that it is gone now can only be said of a simulation.
    faults: (begun.faults ?? []).map(({ absentNow: _absent, ...fault }) => fault as Fault),
  };
}

/** What an empty draft may differ in without holding anything of somebody's own. */
const notOwn: readonly (keyof MakeDraft)[] = ['id', 'sample', 'kind', 'kindChosen'];

/** Whether a draft holds anything of somebody's own. */
export function isOwn(draft: MakeDraft): boolean {
  const empty: MakeDraft = { ...newDraft(new Date(0)), ...exerciseKindTexts[draft.kind] };
  const fields = Object.keys(empty) as (keyof MakeDraft)[]; // an empty draft has exactly the fields of one
  return (
    draft.kindChosen || fields.some((field) => !notOwn.includes(field) && JSON.stringify(draft[field]) !== JSON.stringify(empty[field]))
  );
}

/** The draft with another kind; words that are still those of the old kind change with it. */
export function withKind(draft: MakeDraft, kind: ExerciseKind): MakeDraft {
  const before = exerciseKindTexts[draft.kind];
  const after = exerciseKindTexts[kind];
  const word = (field: 'name' | 'task' | 'lesson') => (draft[field] === before[field] || draft[field] === '' ? after[field] : draft[field]);
  return { ...draft, kind, name: word('name'), task: word('task'), lesson: word('lesson') };
}

/** What hidden faults teach most plainly. */
export function kindFor(topology: Topology, faults: readonly Fault[]): ExerciseKind {
  const [first] = faults;
  if (first === undefined) return 'neighbours';
  if (faults.length > 1) return 'two-faults';
  if (first.presence === 'intermittent') return 'intermittent';
  switch (first.item) {
    case 'route':
      return 'place';
    case 'fuse':
    case 'place':
    case 'lead':
    case 'supply':
      return 'power';
    case 'controller':
    case 'controller-port':
      return 'first-hop';
    case 'board':
      return first.mode === 'dead-lit' ? 'quiet-unit' : 'neighbours';
    case 'cable':
      if (first.mode.startsWith('outbound-') || first.mode.startsWith('return-')) return 'one-fibre';
      return topology.chains.some(({ links }) => links[0] === first.link) ? 'first-hop' : 'neighbours';
    default:
      return 'neighbours';
  }
}

/** The spares that stand beside the cabinet, added to those that the draft has; one of the same name is not added twice. */
export function withSparesOf(spares: readonly DraftSpare[], content: CabinetContent): readonly DraftSpare[] {
  const added = [...spares];
  for (const { kind, designation, partNumber, count } of content.spares ?? []) {
    const name = `${designation ?? startSentence(paperWords.spareKinds[kind])} ${partNumber ?? ''}`.trim();
    if (count === 0 || added.some((one) => one.name === name)) continue;
    added.push({ id: freeSpareId(added), name, ...(partNumber === undefined ? {} : { partNumber }), count: Math.min(100, count ?? 1) });
  }
  return added;
}

/** An id that no spare of the draft has. */
export function freeSpareId(spares: readonly DraftSpare[]): string {
  return `p${spares.reduce((greatest, { id }) => Math.max(greatest, Number(id.slice(1)) || 0), 0) + 1}`;
}

/** What the cabinet shows at the start; null while nothing is wrong. */
export function shownAtStart(cabinet: Cabinet, { faults, onset }: Pick<MakeDraft, 'faults' | 'onset'>): Simulation | null {
  // At the first trip everything is there, also what comes and goes.
  return faults.length === 0 ? null : simulate({ cabinet, faults, onset });
}

/** The ids of the displays and reports that are given. */
export function knownOf(draft: MakeDraft, shown: Simulation): ExerciseWish['known'] {
  const { displays, reports } = shown;
  const choose = (wanted: Shown, complains: (id: string) => boolean, all: readonly string[]) =>
    typeof wanted === 'string' ? all.filter((id) => wanted === 'all' || (wanted === 'complaining' && complains(id))) : wanted;
  const meanings = new Map<string, string>([...displays.values()].map(({ unit, meaning }) => [unit, meaning]));
  const gaps = new Map<string, number | 'none'>([...reports.values()].map(({ chain, gap }) => [chain, gap]));
  return {
    displays: choose(draft.displays, (unit) => meanings.get(unit) !== 'quiet', [...meanings.keys()]),
    reports: choose(draft.reports, (chain) => gaps.get(chain) !== 'none', [...gaps.keys()]),
    circumstances: draft.circumstances.map((kind) => ({ kind })),
  };
}

/** What is missing before anything can be worked out. */
export function missingOf(draft: MakeDraft, cabinet: Cabinet | null): readonly DraftProblem[] {
  return [
    ...(cabinet === null ? ['cabinet-unsound' as const] : []),
    ...(draft.faults.length === 0 ? ['no-fault' as const] : []),
    ...(draft.faults.length > mostFaults ? ['too-many-faults' as const] : []),
    ...(draft.onset === 'while-running' && draft.faults.some(isWiringMistake) ? ['mistake-while-running' as const] : []),
    ...(draft.name.trim() === '' ? ['no-title' as const] : []),
    ...(draft.spares.some(({ name }) => name.trim() === '') ? ['spare-unnamed' as const] : []),
    ...(draft.hints.some(({ text }) => text.trim() === '') ? ['hint-empty' as const] : []),
  ];
}

/** What is asked of the engine, without the steps. */
export function wishOf(draft: MakeDraft, content: CabinetContent, shown: Simulation, times: ExerciseContent['times']): ExerciseWish {
  const { minutes, steps } = draft.limits;
  const limits = { ...(minutes === null ? {} : { minutes }), ...(steps === null ? {} : { steps }) };
  const { openMinutes, isolateMinutes, bootMinutes } = draft.times;
  return {
    id: draft.id,
    name: draft.name.trim(),
    kind: draft.kind,
    task: draft.task.trim(),
    cabinet: content,
    onset: draft.onset,
    faults: draft.faults,
    seed: draft.seed,
    known: knownOf(draft, shown),
    solved: draft.solved,
    times: {
      openMinutes: openMinutes ?? times.openMinutes,
      isolateMinutes: isolateMinutes ?? times.isolateMinutes,
      bootMinutes: bootMinutes ?? times.bootMinutes,
    },
    ...(draft.spares.length === 0 ? {} : { spares: draft.spares.map((spare) => ({ ...spare, name: spare.name.trim() })) }),
    ...(Object.keys(limits).length === 0 ? {} : { limits }),
    ...(draft.hints.length === 0 ? {} : { hints: draft.hints.map(({ text, minutes: price }) => ({ text: text.trim(), minutes: price })) }),
    ...(draft.story.trim() === '' ? {} : { story: draft.story.trim() }),
    ...(draft.lesson.trim() === '' ? {} : { lesson: draft.lesson.trim() }),
  };
}

/** A step as it stands: proposed, and decided over. */
export interface DecidedStep extends ProposedStep {
  readonly most: number | null;
  readonly spare: string | null;
}

/** Proposed steps with what was decided about them. */
export function decideSteps(proposed: readonly ProposedStep[], decisions: MakeDraft['steps']): readonly DecidedStep[] {
  return proposed.map((one) => {
    const decision = decisions[one.key];
    return {
      ...one,
      allowed: decision?.allowed ?? one.allowed,
      minutes: decision?.minutes ?? one.minutes,
      most: decision?.most ?? null,
      spare: decision?.spare ?? null,
    };
  });
}

/** The steps of the exercise: those that are allowed, numbered. A spare that is no longer there is not asked for. */
export function allowedOf(steps: readonly DecidedStep[], spares: readonly DraftSpare[]): AllowedStep[] {
  return steps
    .filter(({ allowed }) => allowed)
    .map(({ step, minutes, most, spare }, index) => ({
      id: `s${index + 1}`,
      step,
      minutes,
      ...(most === null ? {} : { most }),
      ...(spare === null || !spares.some(({ id }) => id === spare) ? {} : { spare }),
    }));
}

/** A made or generated exercise as a draft, to go on from; its cabinet is that of the window. */
export function draftOf({ exercise, answer }: MadeExercise): Partial<MakeDraft> & Pick<MakeDraft, 'id'> {
  return {
    id: exercise.id,
    faults: answer.faults,
    onset: exercise.onset,
    seed: answer.seed,
    displays: (exercise.given.displays ?? []).map(({ unit }) => unit),
    reports: (exercise.given.reports ?? []).map(({ chain }) => chain),
    circumstances: (exercise.given.circumstances ?? []).map(({ kind }) => kind),
    solved: exercise.solved,
    kind: exercise.kind,
    kindChosen: true,
    name: exercise.name,
    task: exercise.task,
    story: answer.story ?? '',
    lesson: answer.lesson ?? '',
  };
}
