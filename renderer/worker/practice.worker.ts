import { checkAnswer, debrief, type Game, openExercise, Planner, play } from '../../engine/exercise/index.ts';
import type { AnswerContent } from '../../engine/schema/index.ts';
import { openSeal, readyPassphrase } from '../../engine/sealing/index.ts';
import type { PracticeQuestion, PracticeReply } from '../practice/protocol.ts';

/** The exercise that is played, with its answer: it lives here, and nowhere in the page. */
let current: { readonly game: Game; readonly answer: AnswerContent; readonly planner: Planner } | null = null;

const reply = (message: PracticeReply) => self.postMessage(message);

async function open({ exercise, passphrase }: Extract<PracticeQuestion, { kind: 'open' }>): Promise<void> {
  current = null;
  const { game, problems } = openExercise(exercise);
  if (game === null) return reply({ kind: 'closed', problems });
  const seal = await openSeal(exercise.sealed, passphrase ?? readyPassphrase);
  if (!seal.ok) return reply({ kind: 'closed', problems: seal.problems });
  const planner = new Planner(game);
  const found = checkAnswer(game, seal.value, planner);
  if (found.length > 0) return reply({ kind: 'closed', problems: found });
  current = { game, answer: seal.value, planner };
  reply({ kind: 'opened' });
}

self.addEventListener('message', ({ data }: MessageEvent<PracticeQuestion>) => {
  if (data.kind === 'open') {
    void open(data);
  } else if (current !== null) {
    const { game, answer, planner } = current;
    reply({ kind: 'played', play: play(game, answer, data.moves), debrief: debrief(game, answer, data.moves, planner) });
  }
});
