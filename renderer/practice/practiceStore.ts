import { createStore } from 'zustand/vanilla';
import { compareNatural, type Problem } from '../../engine/base/index.ts';
import { parseExerciseFile } from '../../engine/cabinet/index.ts';
import { type Debrief, type Game, openExercise, type Play, startPlay } from '../../engine/exercise/index.ts';
import type { ExerciseContent, ExerciseMove } from '../../engine/schema/index.ts';
import type { PracticeQuestion, PracticeReply } from './protocol.ts';

/*
 * The sitting of Practice. It changes nothing of the document, so none of it is a command of the document or a step of undo; it stays
 * while the window shows another workspace.
 */

const texts = import.meta.glob<string>('../../sample-cabinets/*.exercise.json', { query: '?raw', import: 'default' });

export interface PracticeState {
  readonly ready: readonly ExerciseContent[];
  readonly exercise: ExerciseContent | null;
  readonly game: Game | null;
  readonly phase: 'list' | 'opening' | 'closed' | 'playing' | 'ended';
  readonly problems: readonly Problem[];
  readonly moves: readonly ExerciseMove[];
  readonly play: Play | null;
  readonly debrief: Debrief | null;
  readonly startedAt: number;
  readonly endedAt: number;
}

const nothing: PracticeState = {
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
};

export const practiceStore = createStore<PracticeState>(() => nothing);

let worker: Worker | null = null;

function ask(question: PracticeQuestion): void {
  if (worker === null) {
    worker = new Worker(new URL('../worker/practice.worker.ts', import.meta.url), { type: 'module', name: 'practice' });
    worker.addEventListener('message', ({ data }: MessageEvent<PracticeReply>) => take(data));
  }
  worker.postMessage(question);
}

function take(reply: PracticeReply): void {
  const { game } = practiceStore.getState();
  if (reply.kind === 'closed') practiceStore.setState({ phase: 'closed', problems: reply.problems });
  else if (reply.kind === 'played') {
    const ended = reply.debrief !== null;
    practiceStore.setState({ play: reply.play, debrief: reply.debrief, ...(ended ? { phase: 'ended', endedAt: Date.now() } : {}) });
  } else if (game !== null) {
    practiceStore.setState({ phase: 'playing', play: startPlay(game), startedAt: Date.now() });
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

/** Opens an exercise; the seal of a ready one needs no passphrase. */
export function startExercise(exercise: ExerciseContent, passphrase: string | null = null): void {
  const { game, problems } = openExercise(exercise);
  const { ready } = practiceStore.getState();
  practiceStore.setState({ ...nothing, ready, exercise, game, phase: game === null ? 'closed' : 'opening', problems });
  if (game !== null) ask({ kind: 'open', exercise, passphrase });
}

/** Opens a file of one's own. */
export async function openExerciseFile(file: File): Promise<void> {
  const parsed = parseExerciseFile(new Uint8Array(await file.arrayBuffer()));
  if (parsed.ok) startExercise(parsed.value);
  else practiceStore.setState({ ...nothing, ready: practiceStore.getState().ready, phase: 'closed', problems: parsed.problems });
}

export function makeMove(move: ExerciseMove): void {
  const moves = [...practiceStore.getState().moves, move];
  practiceStore.setState({ moves });
  ask({ kind: 'play', moves });
}

/** Whether there is a ready exercise after the one that has just ended. */
export function mayGoOn(): boolean {
  const { phase } = practiceStore.getState();
  return phase === 'ended' && followingReady() !== null;
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

export function leaveExercise(): void {
  practiceStore.setState({ ...nothing, ready: practiceStore.getState().ready });
}
