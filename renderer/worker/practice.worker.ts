import type { Problem } from '../../engine/base/index.ts';
import { debriefPaper, exerciseAnswer, exerciseSheet, type MadeDocument } from '../../engine/documents/index.ts';
import { checkAnswer, debrief, type Game, openExercise, Planner, play } from '../../engine/exercise/index.ts';
import { paperWords } from '../../engine/messages/index.ts';
import { writeHtml } from '../../engine/paper/index.ts';
import type { AnswerContent } from '../../engine/schema/index.ts';
import { openSeal, readyPassphrase } from '../../engine/sealing/index.ts';
import type { PaperForm, PracticeQuestion, PracticeReply } from '../practice/protocol.ts';

/** The exercise that is played, with its answer: it lives here, and nowhere in the page. */
let current: { readonly run: number; readonly game: Game; readonly answer: AnswerContent; readonly planner: Planner } | null = null;

const reply = (message: PracticeReply) => self.postMessage(message);

type Question<K extends PracticeQuestion['kind']> = Extract<PracticeQuestion, { kind: K }>;

async function open({ run, exercise, passphrase }: Question<'open'>): Promise<void> {
  current = null;
  const { game, problems } = openExercise(exercise);
  if (game === null) return reply({ kind: 'closed', run, problems });
  const seal = await openSeal(exercise.sealed, passphrase ?? readyPassphrase);
  if (!seal.ok) return reply({ kind: 'closed', run, problems: seal.problems });
  const planner = new Planner(game);
  const found = checkAnswer(game, seal.value, planner);
  if (found.length > 0) return reply({ kind: 'closed', run, problems: found });
  current = { run, game, answer: seal.value, planner };
  reply({ kind: 'opened', run });
}

/** The paper that is asked for, or why there is none. */
async function makePaper(question: Question<'sheet' | 'answer-sheet' | 'debrief-paper'>): Promise<MadeDocument | readonly Problem[]> {
  const { date } = question.form;
  if (question.kind === 'debrief-paper') {
    const looked = current && debrief(current.game, current.answer, question.moves, current.planner);
    return current === null || looked === null ? [] : debriefPaper({ game: current.game, date, size: 'a4' }, looked, question.code);
  }
  const { game, problems } = openExercise(question.exercise);
  if (game === null) return problems;
  const source = { game, date, size: 'a4' } as const;
  if (question.kind === 'sheet') return exerciseSheet(source);
  const seal = await openSeal(question.exercise.sealed, question.passphrase);
  if (!seal.ok) return seal.problems;
  const found = checkAnswer(game, seal.value);
  return found.length > 0 ? found : exerciseAnswer(source, seal.value);
}

async function writePaper({ paper, pages, title }: MadeDocument, { as, madeAt }: PaperForm): Promise<Uint8Array | null> {
  const { language } = paperWords;
  if (as === 'html') return paper === null ? null : new TextEncoder().encode(writeHtml(paper, { language }));
  // Large, and not needed before somebody prints.
  const { writePdf } = await import('../../engine/pdf/index.ts');
  return (await writePdf([{ title, pages }], { title, language, madeAt: new Date(madeAt) }))?.bytes ?? null;
}

self.addEventListener('message', ({ data }: MessageEvent<PracticeQuestion>) => {
  if (data.kind === 'open') {
    void open(data);
  } else if (data.kind !== 'play') {
    void makePaper(data).then(async (made) =>
      'pages' in made
        ? reply({ kind: 'paper', bytes: await writePaper(made, data.form), problems: [] })
        : reply({ kind: 'paper', bytes: null, problems: made }),
    );
  } else if (current !== null) {
    const { run, game, answer, planner } = current;
    // Something else was opened meanwhile.
    if (run !== data.run) return;
    reply({ kind: 'played', run, play: play(game, answer, data.moves), debrief: debrief(game, answer, data.moves, planner) });
  }
});
