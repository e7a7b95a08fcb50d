import { debrief, generateSet, makeExercise, openExercise, proposeExercise } from '../../engine/exercise/index.ts';
import { openBytes, sealAnswer, sealText } from '../../engine/sealing/index.ts';
import { allowedOf, decideSteps } from '../practice/makeDraft.ts';
import type { MakerQuestion, MakerReply } from '../practice/makerProtocol.ts';

/** Works out one question about making exercises. */
export async function answerMaker(question: MakerQuestion, reply: (reply: MakerReply) => void): Promise<void> {
  if (question.kind === 'make') {
    reply(make(question, reply));
  } else if (question.kind === 'generate') {
    const { wish, count } = question;
    generateSet(wish, count, (exerciseKind, made) => reply({ kind: 'tried', exerciseKind, made }));
    reply({ kind: 'generated' });
  } else if (question.kind === 'lock') {
    reply({ kind: 'locked', locked: await sealText(question.text, question.passphrase) });
  } else if (question.kind === 'unlock') {
    const opened = await openBytes(question.locked, question.passphrase);
    reply({ kind: 'unlocked', text: opened.ok ? new TextDecoder().decode(opened.value) : null });
  } else {
    const { exercise, answer, passphrase } = question;
    reply({ kind: 'sealed', exercise: { ...exercise, sealed: await sealAnswer(answer, passphrase) } });
  }
}

function make({ wish, decisions, spares }: Extract<MakerQuestion, { kind: 'make' }>, reply: (reply: MakerReply) => void): MakerReply {
  const proposed = proposeExercise(wish);
  if (!proposed.ok) return { kind: 'refused', problems: proposed.problems };
  reply({ kind: 'proposed', proposal: proposed.value });
  const { possible, steps } = proposed.value;
  const decided = { ...wish, possible: [...possible], steps: allowedOf(decideSteps(steps, decisions), spares) };
  const made = makeExercise(decided, (share) => reply({ kind: 'progress', share }));
  if (!made.ok) return { kind: 'refused', problems: made.problems };
  const { game } = openExercise(made.value.exercise);
  const looked = game === null ? null : debrief(game, made.value.answer, [{ do: 'give-up' }]);
  return { kind: 'made', made: made.value, plan: looked?.plan ?? [] };
}
