import { fail, makeProblem, type Result } from '../base/index.ts';
import { checkCabinet } from '../cabinet/index.ts';
import { type CabinetContent, type ExerciseContent, type ExerciseKind, exerciseKinds, type Fault, type SolvedBy } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { makeGame } from './game.ts';
import { type MadeExercise, makeExercise } from './makeExercise.ts';
import { isMendedByOneKind } from './oneKind.ts';
import { seenAtStart } from './outcomes.ts';
import { Draws, draw } from './random.ts';

/** Words of generated exercises, from the message catalogue. */
export interface KindText {
  readonly name: string;
  readonly task: string;
  readonly lesson: string;
}
export type KindTexts = { readonly [K in ExerciseKind]: KindText };

export interface GenerateWish {
  readonly cabinet: CabinetContent;
  readonly seed: number;
  readonly texts: KindTexts;
  /** Left out: any kind. */
  readonly kind?: ExerciseKind;
  /** Wanted level, 1 to 4. Left out: any. */
  readonly level?: number;
  /** Its place in a set, so that no two of a set have one id. */
  readonly number?: number;
}

/** What a kind hides and gives. */
interface Recipe {
  readonly faults: readonly Fault[];
  readonly onset: ExerciseContent['onset'];
  readonly displays: Shown;
  readonly solved: SolvedBy;
}

/** Which displays are given: all, those that complain, those that complain of a loss (a dark one would tell too much), those beside the reported break. */
type Shown = 'all' | 'none' | 'complaining' | 'losses' | 'beside';

const mostTries = 24;

/** Makes an exercise by chance from a seed. Equal wishes give equal exercises, but for the seal that is put on later. */
export function generateExercise(wish: GenerateWish): Result<MadeExercise> {
  const { cabinet } = checkCabinet(wish.cabinet);
  if (cabinet === null) return fail(makeProblem('exercise-cabinet-unsound', 'error', { where: '/cabinet' }));
  let anyMade = false;
  for (let attempt = 0; attempt < mostTries; attempt += 1) {
    const draws = new Draws(Math.floor(draw(wish.seed, attempt) * 2 ** 31));
    const kind = wish.kind ?? draws.pick(exerciseKinds) ?? 'neighbours';
    const made = tryOnce(wish, cabinet, kind, draws);
    if (made?.ok !== true) continue;
    anyMade = true;
    if (wish.level === undefined || made.value.exercise.figures?.level === wish.level) return made;
  }
  return anyMade || wish.kind === undefined
    ? fail(makeProblem('exercise-not-generated', 'error', { facts: { level: wish.level ?? 0, tries: mostTries } }))
    : fail(makeProblem('exercise-kind-not-possible', 'error', { facts: { kind: wish.kind } }));
}

/**
 * A set of exercises that differ in kind: each kind once before any comes twice. Kinds that the cabinet does not allow are left out.
 * `onTried` hears of each kind that was tried, and what came of it: null where it is left out.
 */
export function generateSet(
  wish: Omit<GenerateWish, 'kind'>,
  count: number,
  onTried: (kind: ExerciseKind, made: MadeExercise | null) => void = () => undefined,
): readonly MadeExercise[] {
  const order = new Draws(wish.seed).shuffled(exerciseKinds);
  const made: MadeExercise[] = [];
  const without = new Set<ExerciseKind>();
  for (let round = 0; made.length < count && without.size < order.length; round += 1) {
    for (const kind of order) {
      if (made.length >= count || without.has(kind)) continue;
      const seed = Math.floor(draw(wish.seed, round, exerciseKinds.indexOf(kind)) * 2 ** 31);
      const one = generateExercise({ ...wish, kind, seed, number: made.length + 1 });
      if (one.ok) made.push(one.value);
      else without.add(kind);
      onTried(kind, one.ok ? one.value : null);
    }
  }
  return made;
}

function tryOnce(wish: GenerateWish, cabinet: Cabinet, kind: ExerciseKind, draws: Draws): Result<MadeExercise> | null {
  const recipe = recipeOf(kind, cabinet, draws);
  if (recipe === null) return null;
  const { faults, onset, solved } = recipe;
  const known = knownDisplays(cabinet, recipe);
  const chain =
    cabinet.chains.find(({ units, links }) => faults.some((fault) => touches(fault, units, links)))?.id ?? cabinet.chains[0]?.id;
  const { name, task, lesson } = wish.texts[kind];
  const made = makeExercise({
    id: `g${wish.number ?? 1}-${kind}#`,
    name,
    kind,
    task,
    lesson,
    cabinet: wish.cabinet,
    onset,
    faults,
    seed: Math.floor(draws.next() * 2 ** 31),
    known: { displays: [...known], reports: chain === undefined ? [] : [chain] },
    solved,
  });
  return made.ok && isBrute(made.value, cabinet) ? null : made;
}

function isBrute({ exercise, answer }: MadeExercise, cabinet: Cabinet): boolean {
  return isMendedByOneKind(makeGame(exercise, cabinet), answer, exercise.figures?.bestMinutes ?? Number.POSITIVE_INFINITY);
}

/** The units whose displays are given. */
function knownDisplays(cabinet: Cabinet, { faults, onset, displays }: Recipe): readonly string[] {
  const { displays: shown, reports } = seenAtStart(cabinet, onset, faults);
  const all = [...shown.values()];
  const unitsOf = (wanted: (meaning: string) => boolean) => all.filter(({ meaning }) => wanted(meaning)).map(({ unit }) => unit);
  switch (displays) {
    case 'all':
      return unitsOf(() => true);
    case 'none':
      return [];
    case 'complaining':
      return unitsOf((meaning) => meaning !== 'quiet');
    case 'losses':
      return unitsOf((meaning) => meaning !== 'quiet' && meaning !== 'dark');
    case 'beside':
      return [...reports.values()].flatMap(({ chain, gap }) => {
        if (gap === 'none') return [];
        const { units = [] } = cabinet.chains.find(({ id }) => id === chain) ?? {};
        return units.slice(Math.max(0, gap - 2), gap);
      });
  }
}

function touches(fault: Fault, units: readonly string[], links: readonly string[]): boolean {
  return ('unit' in fault && units.includes(fault.unit)) || ('link' in fault && links.includes(fault.link));
}

function recipeOf(kind: ExerciseKind, cabinet: Cabinet, draws: Draws): Recipe | null {
  const chains = cabinet.chains.filter(({ units }) => units.length > 1);
  const chain = draws.pick(chains.filter(({ units }) => units.length > 2)) ?? draws.pick(chains);
  if (chain === undefined) return null;
  const link = draws.pick(chain.links.slice(1)) ?? chain.links[0];
  const unit = draws.pick(chain.units);
  const middle = draws.pick(chain.units.slice(1, -1)) ?? unit;
  const end = draws.next() < 0.5 ? 'upper' : 'lower';
  if (link === undefined || unit === undefined || middle === undefined) return null;
  // How exactly it must be named, and how much is known beforehand, makes most of the difference in difficulty.
  const solved = draws.pick<SolvedBy>(['place', 'item']) ?? 'place';
  const one = (fault: Fault | undefined, ...shown: readonly Shown[]): Recipe | null =>
    fault === undefined ? null : { faults: [fault], onset: 'while-running', displays: draws.pick(shown) ?? 'complaining', solved };
  switch (kind) {
    case 'counting':
      return one(draws.pick<Fault>([cut(link), { item: 'board', unit: middle, mode: 'up-port' }]), 'none');
    case 'neighbours':
      return one(
        draws.pick<Fault>([cut(link), { item: 'plug', link, end, mode: 'loose' }, { item: 'plug', link, end, mode: 'fouled' }]),
        'all',
        'complaining',
      );
    case 'quiet-unit':
      return one({ item: 'board', unit: middle, mode: 'dead-lit' }, 'none', 'complaining');
    case 'first-hop':
      return one(firstHop(chain, draws), 'all', 'complaining', 'none');
    case 'one-fibre':
      return named('item', one({ item: 'cable', link, mode: draws.next() < 0.5 ? 'outbound-cut' : 'return-cut' }, 'all', 'complaining'));
    case 'power':
      return named('item', one(powerFault(cabinet, unit, draws), 'none', 'losses'));
    case 'do-not-switch-off':
      return one(
        draws.pick<Fault>([
          { item: 'board', unit: middle, mode: 'down-rx' },
          { item: 'board', unit: middle, mode: 'up-tx' },
        ]),
        'none',
      );
    case 'two-faults': {
      // Of different kinds: two cables would be mended by whoever exchanges cables without a look.
      const at = chain.links.indexOf(link);
      const away = chain.units.filter((_, index) => index < at - 1 || index > at);
      const other = draws.pick(away);
      const first = one(draws.pick<Fault>([cut(link), { item: 'plug', link, end, mode: 'loose' }]), 'all', 'beside', 'losses');
      const power = other === undefined ? undefined : powerFault(cabinet, other, draws);
      const second = other === undefined ? undefined : draws.pick([boardFault(other, draws), power]);
      return first === null || second === undefined ? null : { ...first, faults: [...first.faults, second], solved: 'mended' };
    }
    case 'intermittent':
      return named('mended', one({ item: 'plug', link, end, mode: 'loose', presence: 'intermittent' }, 'all', 'complaining'));
    case 'place':
      return named('mended', one({ item: 'route', link, mode: 'kinked' }, 'all', 'complaining'));
  }
}

function named(solved: SolvedBy, recipe: Recipe | null): Recipe | null {
  return recipe === null ? null : { ...recipe, solved };
}

function cut(link: string): Fault {
  return { item: 'cable', link, mode: 'cut' };
}

function firstHop({ id, links, units }: Cabinet['chains'][number], draws: Draws): Fault | undefined {
  const [link] = links;
  const [unit] = units;
  if (link === undefined || unit === undefined) return undefined;
  return draws.pick<Fault>([
    { item: 'controller-port', chain: id, mode: 'dead' },
    cut(link),
    { item: 'board', unit, mode: 'up-rx' },
    { item: 'board', unit, mode: 'up-tx' },
  ]);
}

function boardFault(unit: string, draws: Draws): Fault {
  const mode = draws.pick(['up-rx', 'down-tx', 'up-port', 'down-port', 'dead-lit'] as const) ?? 'up-port';
  return { item: 'board', unit, mode };
}

/** A fuse, a lead, or a supply: never one that leaves the whole cabinet dark, which tells itself. */
function powerFault(cabinet: Cabinet, unit: string, draws: Draws): Fault | undefined {
  const lead = draws.pick(cabinet.feeds.filter(({ to }) => to === unit));
  return draws.pick<Fault>([
    { item: 'fuse', unit, mode: 'open' },
    { item: 'place', unit, mode: 'contact-bad' },
    ...(lead === undefined ? [] : [{ item: 'lead', lead: lead.lead, mode: 'open' } as const]),
  ]);
}
