import type { Problem } from '../../engine/base/index.ts';
import { parseExerciseFile } from '../../engine/cabinet/index.ts';
import { fileWords, practiceWords } from '../../engine/messages/index.ts';
import { takeChosen } from '../practice/classStore.ts';
import { isPlayed, startExercise } from '../practice/practiceStore.ts';
import type { TakenFile } from './access.ts';
import type { Desk } from './desk.ts';

/** Opens an exercise to be played, or a result in the table of a class, where a file turned out to be one. Answers whether it was. */
export function openPracticeFile(
  { bench, access }: Desk,
  file: Omit<TakenFile, 'handle'> & { readonly handle: string | null },
  problems: readonly Problem[],
): boolean {
  const format = problems.find(({ code }) => code === 'format-other-kind')?.facts['format'];
  if (format === 'linkwright-result') {
    bench.dispatch('practice-class');
    const ref = { ...file, handle: file.handle ?? '' };
    takeChosen({ files: [ref], problems: [], leftOut: 0 }, access.deleteResult !== undefined && file.handle !== null);
    bench.announce(practiceWords.resultTaken(file.name));
    return true;
  }
  if (format !== 'linkwright-exercise') return false;
  const parsed = parseExerciseFile(file.content);
  if (!parsed.ok) {
    bench.refuse({ deed: 'open', name: file.name, problems: parsed.problems });
    return true;
  }
  bench.dispatch('practice-exercises', { goesOn: true });
  // A play is not thrown away by a file that is dropped onto it.
  if (isPlayed()) bench.announce(practiceWords.playGoesOn(file.name));
  else {
    startExercise(parsed.value);
    bench.announce(fileWords.openedExercise(file.name));
  }
  return true;
}
