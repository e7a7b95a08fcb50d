import { createStore } from 'zustand/vanilla';
import type { MadeExercise } from '../../engine/exercise/index.ts';
import { exerciseKindTexts } from '../../engine/messages/index.ts';
import type { CabinetContent, ExerciseContent, ExerciseKind } from '../../engine/schema/index.ts';
import { openMaker } from './makerClient.ts';

/** What was generated; its answer is forgotten here once it is saved under its seal. */
export interface GeneratedExercise extends Omit<MadeExercise, 'answer'> {
  readonly answer: MadeExercise['answer'] | null;
}

export interface GenerateState {
  readonly seed: number;
  readonly count: number;
  /** Null: any. */
  readonly level: number | null;
  readonly working: boolean;
  /** What was asked for, once something was. */
  readonly asked: { readonly count: number; readonly level: number | null } | null;
  readonly made: readonly GeneratedExercise[];
  /** Kinds that this cabinet does not allow, or not at the wanted level. */
  readonly without: readonly ExerciseKind[];
  /** Ids of exercises that were saved. */
  readonly saved: readonly string[];
  readonly sealing: boolean;
}

export const generateStore = createStore<GenerateState>(() => ({
  // By chance: a trainee who guesses it could generate the same set, and look its answers up.
  seed: (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) % 2 ** 31,
  count: 10,
  level: null,
  working: false,
  asked: null,
  made: [],
  without: [],
  saved: [],
  sealing: false,
}));

const client = openMaker();

export function changeGenerate(change: Partial<Pick<GenerateState, 'seed' | 'count' | 'level'>>): void {
  generateStore.setState(change);
}

/** Generates a set; what is ready is shown while the rest is made. */
export function generate(cabinet: CabinetContent): void {
  const { seed, count, level } = generateStore.getState();
  generateStore.setState({ working: true, asked: { count, level }, made: [], without: [], saved: [] });
  client.ask(
    { kind: 'generate', count, wish: { cabinet, seed, texts: exerciseKindTexts, ...(level === null ? {} : { level }) } },
    (reply) => {
      if (reply.kind === 'generated') generateStore.setState({ working: false });
      if (reply.kind !== 'tried') return;
      const { exerciseKind, made } = reply;
      generateStore.setState((before) =>
        made === null ? { without: [...before.without, exerciseKind] } : { made: [...before.made, made] },
      );
    },
  );
}

/** Gives up the rest; what was made stays. */
export function stopGenerating(): void {
  client.stop();
  generateStore.setState({ working: false });
}

/** Seals some of the made exercises, one after another, and hands each over. */
export async function sealGenerated(
  wanted: readonly GeneratedExercise[],
  passphrase: string,
  onSealed: (exercise: ExerciseContent) => Promise<void>,
): Promise<void> {
  generateStore.setState({ sealing: true });
  for (const { exercise, answer } of wanted) {
    if (answer === null) continue;
    const sealed = await new Promise<ExerciseContent | null>((resolve) =>
      client.ask({ kind: 'seal', exercise, answer, passphrase }, (reply) => resolve(reply.kind === 'sealed' ? reply.exercise : null)),
    );
    if (sealed !== null) await onSealed(sealed);
  }
  generateStore.setState({ sealing: false });
}

export function markSaved(id: string): void {
  generateStore.setState(({ saved, made }) => ({
    saved: [...saved.filter((one) => one !== id), id],
    made: made.map((one) => (one.exercise.id === id ? { ...one, answer: null } : one)),
  }));
}
