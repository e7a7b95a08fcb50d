import { writeFileSync } from 'node:fs';
import { serializeExercise } from '../../engine/cabinet/index.ts';
import { readyPassphrase, sealAnswer } from '../../engine/sealing/index.ts';
import { readyExercises } from './exercises.ts';

/** Writes the ready exercises anew. A seal is different each time, so that a test compares what is in it instead of the bytes. */
for (const { file, make } of readyExercises) {
  const { exercise, answer } = make();
  const sealed = await sealAnswer(answer, readyPassphrase);
  writeFileSync(new URL(`../../sample-cabinets/${file}`, import.meta.url), serializeExercise({ ...exercise, sealed }));
}
