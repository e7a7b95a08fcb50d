import { createStore } from 'zustand/vanilla';
import { compareNatural, type Problem } from '../../engine/base/index.ts';
import { parseExerciseFile } from '../../engine/cabinet/index.ts';
import { type Debrief, type Game, type KeptPlay, openExercise, type Play, startPlay } from '../../engine/exercise/index.ts';
import type { ExerciseContent, ExerciseMove } from '../../engine/schema/index.ts';
import type { PaperForm, PracticeQuestion, PracticeReply } from './protocol.ts';

/*
 * The sitting of Practice. It changes nothing of the document, so none of it is a command of the document or a step of undo; it stays
 * while the window shows another workspace.
 */

const texts = import.meta.glob<string>('../../sample-cabinets/*.exercise.json', { query: '?raw', import: 'default' });

/** A play that was left in the middle, and goes on when somebody takes it up. */
export interface LeftPlay {
  readonly keptAs: string;
  readonly kept: KeptPlay;
}

export interface PracticeState {
  /** The latest first. */
  readonly left: readonly LeftPlay[];
  readonly ready: readonly ExerciseContent[];
  readonly exercise: ExerciseContent | null;
  readonly game: Game | null;
  readonly phase: 'list' | 'opening' | 'closed' | 'playing' | 'ended' | 'printing';
  readonly problems: readonly Problem[];
  readonly moves: readonly ExerciseMove[];
  readonly play: Play | null;
  readonly debrief: Debrief | null;
  readonly startedAt: number;
  readonly endedAt: number;
  /** Under what a play is kept against a crash; null: none is played. */
  readonly keptAs: string | null;
  /** Whether a passphrase was typed to open it. */
  readonly asksPassphrase: boolean;
  /** What was typed as the code of its result, and what of that was saved. */
  readonly code: string;
  readonly savedCode: string;
  /** What is to be done once it is said that a result is not to be saved. */
  readonly leaving: (() => void) | null;
  /** A play of an earlier run that waits for its seal to open. */
  readonly resumed: KeptPlay | null;
}

const nothing: PracticeState = {
  left: [],
  ready: [],
  exercise: null,
  game: null,
  phase: 'list',
  problems: [],
  moves: [],
  play: null,
  debrief: null,
  startedAt: 0,
  endedAt: 0,
  keptAs: null,
  asksPassphrase: false,
  code: '',
  savedCode: '',
  leaving: null,
  resumed: null,
};

export const practiceStore = createStore<PracticeState>(() => nothing);

let worker: Worker | null = null;
let run = 0;
const papersAsked: ((reply: Extract<PracticeReply, { kind: 'paper' }>) => void)[] = [];

function ask(question: PracticeQuestion): void {
  if (worker === null) {
    worker = new Worker(new URL('../worker/practice.worker.ts', import.meta.url), { type: 'module', name: 'practice' });
    worker.addEventListener('message', ({ data }: MessageEvent<PracticeReply>) => take(data));
  }
  worker.postMessage(question);
}

function take(reply: PracticeReply): void {
  if (reply.kind === 'paper') {
    papersAsked.shift()?.(reply);
    return;
  }
  const { game, resumed } = practiceStore.getState();
  // Another exercise was opened meanwhile, or none is played any more.
  if (reply.run !== run || game === null) return;
  if (reply.kind === 'closed') practiceStore.setState({ phase: 'closed', problems: reply.problems });
  else if (reply.kind === 'played') {
    const ended = reply.debrief !== null;
    const { endedAt } = practiceStore.getState();
    practiceStore.setState({
      play: reply.play,
      debrief: reply.debrief,
      ...(ended ? { phase: 'ended', endedAt: endedAt || Date.now() } : {}),
    });
  } else {
    const moves = resumed?.moves ?? [];
    practiceStore.setState({
      phase: 'playing',
      play: startPlay(game),
      moves,
      startedAt: resumed?.startedAt ?? Date.now(),
      endedAt: resumed?.endedAt ?? 0,
      resumed: null,
    });
    if (moves.length > 0) ask({ kind: 'play', run, moves });
  }
}

/** Reads the ready exercises, once. */
export async function loadReady(): Promise<void> {
  if (practiceStore.getState().ready.length > 0) return;
  const loaded = await Promise.all(Object.values(texts).map((load) => load()));
  const ready = loaded.flatMap((text) => {
    const parsed = parseExerciseFile(text);
    return parsed.ok ? [parsed.value] : [];
  });
  practiceStore.setState({ ready: ready.sort((a, b) => compareNatural(a.id, b.id)) });
}

/** Opens an exercise; the seal of a ready one needs no passphrase. A play that goes on is left, and waits in the list. */
export function startExercise(exercise: ExerciseContent, passphrase: string | null = null): void {
  const { keptAs, resumed } = practiceStore.getState();
  // The passphrase of a play that goes on: it stays the same play.
  if (resumed !== null && keptAs !== null && resumed.exercise.id === exercise.id) open(exercise, passphrase, keptAs, resumed);
  else {
    setAside();
    open(exercise, passphrase, crypto.randomUUID(), null);
  }
}

/** Goes on with a play that was left, or that an earlier run of the program kept. */
export function resumePlay(keptAs: string, { left: _left, ...kept }: KeptPlay): void {
  setAside();
  practiceStore.setState(({ left }) => ({ left: left.filter((one) => one.keptAs !== keptAs) }));
  if (!kept.asksPassphrase) {
    open(kept.exercise, null, keptAs, kept);
    return;
  }
  const { game, problems } = openExercise(kept.exercise);
  practiceStore.setState({ ...idle(), exercise: kept.exercise, game, phase: 'closed', problems, keptAs, resumed: kept });
}

/** Plays of an earlier run that nobody goes on with now. */
export function takeLeft(plays: readonly LeftPlay[]): void {
  practiceStore.setState(({ left }) => ({ left: [...left, ...plays] }));
}

/** Gives up a play of the list, for good. */
export function forgetLeft(keptAs: string): void {
  keeping?.drop(keptAs);
  practiceStore.setState(({ left }) => ({ left: left.filter((one) => one.keptAs !== keptAs) }));
}

function open(exercise: ExerciseContent, passphrase: string | null, keptAs: string, resumed: KeptPlay | null): void {
  const { game, problems } = openExercise(exercise);
  run += 1;
  const phase = game === null ? 'closed' : 'opening';
  practiceStore.setState({ ...idle(), exercise, game, phase, problems, keptAs, resumed, asksPassphrase: passphrase !== null });
  if (game !== null) ask({ kind: 'open', run, exercise, passphrase });
}

/** No exercise is open. */
function idle(): PracticeState {
  const { ready, left } = practiceStore.getState();
  return { ...nothing, ready, left };
}

/** Leaves what is played: one in the middle waits in the list, one that has ended is over. */
function setAside(): void {
  const { phase, keptAs, resumed, exercise, moves, startedAt, asksPassphrase, left } = practiceStore.getState();
  if (keptAs === null || exercise === null) return;
  const goesOn = phase === 'playing' && moves.length > 0;
  const kept = resumed ?? (goesOn ? { exercise, moves: [...moves], startedAt, asksPassphrase } : null);
  if (kept === null) {
    keeping?.drop(keptAs);
    return;
  }
  const one = { keptAs, kept: { ...kept, left: true } };
  keeping?.keep(one);
  practiceStore.setState({ left: [one, ...left] });
}

/** Whether a play goes on, or has ended and is looked back on. */
export function isPlayed(): boolean {
  const { phase, resumed } = practiceStore.getState();
  return phase === 'opening' || phase === 'playing' || phase === 'ended' || resumed !== null;
}

export function makeMove(move: ExerciseMove): void {
  const moves = [...practiceStore.getState().moves, move];
  practiceStore.setState({ moves });
  ask({ kind: 'play', run, moves });
}

/** What keeps a play against a crash; null as long as there is nothing that keeps. */
let keeping: { readonly keep: (play: LeftPlay) => void; readonly drop: (keptAs: string) => void } | null = null;

export function keepPlaysWith(keeper: typeof keeping): void {
  keeping = keeper;
}

/** Chooses an exercise to be printed. */
export function choosePrint(exercise: ExerciseContent): void {
  practiceStore.setState({ ...idle(), exercise, phase: 'printing' });
}

/** A paper as the bytes of its file, or why there is none. */
export function makePaper(
  wanted:
    | { readonly kind: 'sheet'; readonly exercise: ExerciseContent }
    | { readonly kind: 'answer-sheet'; readonly exercise: ExerciseContent; readonly passphrase: string }
    | { readonly kind: 'debrief-paper'; readonly moves: readonly ExerciseMove[]; readonly code: string },
  as: PaperForm['as'],
  now: Date,
): Promise<{ readonly bytes: Uint8Array | null; readonly problems: readonly Problem[] }> {
  return new Promise((resolve) => {
    papersAsked.push(resolve);
    ask({ ...wanted, form: { as, date: now.toISOString().slice(0, 10), madeAt: now.getTime() } });
  });
}

/** Whether there is a ready exercise after the one that has just ended. */
export function mayGoOn(): boolean {
  const { phase } = practiceStore.getState();
  return phase === 'ended' && followingReady() !== null;
}

/** Does what leaves a debrief, at once, or once it is said that its result is not to be saved: who typed a code means to save. */
export function leaveDebrief(deed: () => void): void {
  const { phase, code, savedCode } = practiceStore.getState();
  if (phase === 'ended' && code.trim() !== savedCode) practiceStore.setState({ leaving: deed });
  else deed();
}

/** Goes on with the ready exercise after the one that has ended; the first after one of one's own. */
export function nextExercise(): void {
  const next = followingReady();
  if (next !== null) startExercise(next);
}

function followingReady(): ExerciseContent | null {
  const { ready, exercise } = practiceStore.getState();
  return ready[ready.findIndex(({ id }) => id === exercise?.id) + 1] ?? null;
}

/** Back to the list. A play in the middle waits there. */
export function leaveExercise(): void {
  setAside();
  run += 1;
  practiceStore.setState(idle());
}

/** Gives a play up that waits for its passphrase. */
export function forgetResumed(): void {
  practiceStore.setState({ resumed: null });
  leaveExercise();
}
