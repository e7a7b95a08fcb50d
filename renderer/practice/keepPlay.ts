import { writeKeptPlay } from '../../engine/exercise/index.ts';
import type { FileAccess } from '../files/access.ts';
import { keepPlaysWith, type PracticeState, practiceStore } from './practiceStore.ts';

/**
 * Keeps a play after each move, as documents are kept: the exercise sealed as it came, and the moves. Writes never overlap, and the
 * newest state is written last. `onFailure` hears when a play could not be kept.
 */
export function keepPlay(access: Pick<FileAccess, 'keepRecovery' | 'dropRecovery'>, onFailure: () => void): void {
  let last: Promise<unknown> = Promise.resolve();
  const inTurn = (work: () => Promise<unknown>) => {
    last = last.then(work).catch(onFailure);
  };
  const keep = async (keptAs: string, text: string) => {
    const kept = await access.keepRecovery(keptAs, { case: null, cabinet: null }, text);
    if (!kept.ok) onFailure();
  };
  keepPlaysWith({
    keep: ({ keptAs, kept }) => inTurn(() => keep(keptAs, writeKeptPlay(kept))),
    drop: (keptAs) => inTurn(() => access.dropRecovery(keptAs)),
  });
  practiceStore.subscribe((now, before) => {
    const isNew = now.moves !== before.moves || now.phase !== before.phase || now.keptAs !== before.keptAs;
    const text = isNew ? textOf(now) : null;
    const { keptAs } = now;
    if (text === null || keptAs === null) return;
    inTurn(async () => {
      // It may have been left while this waited for its turn.
      if (practiceStore.getState().keptAs === keptAs) await keep(keptAs, text);
    });
  });
}

function textOf({ phase, exercise, moves, startedAt, endedAt, asksPassphrase }: PracticeState): string | null {
  if (exercise === null || (phase !== 'playing' && phase !== 'ended')) return null;
  return writeKeptPlay({ exercise, moves: [...moves], startedAt, ...(phase === 'ended' ? { endedAt } : {}), asksPassphrase });
}
