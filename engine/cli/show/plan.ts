import type { Diagnosis } from '../../diagnosis/index.ts';
import {
  cautionsDefer,
  changeEffectWords,
  endReasonWords,
  endStateWords,
  headings,
  impossibleStatement,
  type Names,
  planTexts,
  startSentence,
  statements,
  stateNames,
  wordBefore,
  wordCaution,
  wordCautionDetail,
  wordCodesToLookUp,
  wordDisplaced,
  wordList,
  wordMethod,
  wordMinutes,
  wordProbability,
  wordRisk,
  wordStep,
  wordStepOutcome,
  wordUseless,
} from '../../messages/index.ts';
import type { Plan, PlannedStep } from '../../plan/index.ts';
import type { Evidence } from '../../schema/index.ts';
import { listCautions } from '../../steps/index.ts';
import type { Cabinet } from '../../topology/index.ts';
import { formatTable } from '../table.ts';
import { paragraph } from '../text.ts';

/** What is to be shown of a plan. */
export interface ShownPlan {
  readonly cabinet: Cabinet;
  readonly names: Names;
  readonly evidence: Evidence;
  readonly diagnosis: Diagnosis;
  readonly plan: Plan;
  readonly top: number;
  readonly withUseless: boolean;
  readonly columns: number;
}

/** Outcomes less likely than this are left out of the text. */
const rare = 0.005;

/** A plan for people: the steps, then the best of them in full with its cautions, then what is displaced and how the search stands. */
export function formatPlan(shown: ShownPlan): string {
  const { cabinet, names, evidence, diagnosis, plan, top, columns } = shown;
  const line = (text: string) => paragraph(text, columns);
  const lookUp = wordCodesToLookUp(names, evidence);
  const useful = plan.steps.filter(({ useless }) => useless === null);
  const section = (head: string, texts: readonly string[]) =>
    texts.length > 0 ? `\n${head}\n${texts.map((text) => paragraph(text, columns, '    ', '  ')).join('')}` : '';
  const [best] = useful;
  return [
    line(cabinet.content.name),
    diagnosis.impossible ? line(impossibleStatement) : '',
    lookUp ? line(`${lookUp.head} ${lookUp.why}`) : '',
    line(
      `${planTexts.machineIs(stateNames[plan.state], evidence.snapshots.at(-1)?.state !== undefined)} ${planTexts.end(endStateWords[plan.end.end].label)}`,
    ),
    plan.end.end === 'open'
      ? ''
      : section(
          endStateWords[plan.end.end].meaning,
          plan.end.because.map((code) => endReasonWords[code]),
        ),
    evidence.snapshots.at(-1)?.halted === undefined && diagnosis.nothingBroken > 0.1 ? line(statements.haltedNotSaid) : '',
    plan.exhausted ? line(planTexts.exhausted[plan.stopping]) : '',
    useful.length > 0 ? `\n${formatSteps(shown, useful.slice(0, top))}` : '',
    useful.length > top ? line(planTexts.moreSteps(useful.length - top)) : '',
    best && !plan.exhausted ? formatBest(shown, best) : '',
    shown.withUseless ? section(planTexts.useless, uselessLines(names, plan)) : '',
    section(
      planTexts.displaced,
      plan.displaced.map((one) => `${startSentence(wordDisplaced(names, one))}.`),
    ),
    section(headings.notes, [planTexts.costsMean, wordMethod(plan), planTexts.covered(wordProbability(plan.covered))]),
  ].join('');
}

function uselessLines(names: Names, plan: Plan): readonly string[] {
  return plan.steps.flatMap(({ step, useless }) =>
    useless === null ? [] : [`${startSentence(wordStep(names, step))}. ${wordUseless(names, step, useless)}`],
  );
}

function formatSteps({ names, columns }: ShownPlan, steps: readonly PlannedStep[]): string {
  return formatTable(
    [
      { head: planTexts.expected, align: 'right' },
      { head: planTexts.step, grow: true },
      { head: planTexts.itself, align: 'right' },
      { head: planTexts.mends, align: 'right' },
      { head: planTexts.tells, align: 'right' },
      { head: planTexts.state },
    ],
    steps.map(({ step, expectedCost, own, mends, information, stateNeeded }) => [
      wordMinutes(expectedCost),
      startSentence(wordStep(names, step)),
      wordMinutes(own.minutes + own.changes),
      mends > 0 ? wordProbability(mends) : '',
      planTexts.bits(information),
      stateNames[stateNeeded],
    ]),
    columns,
  );
}

/** The best step in full: changes of state, parts, risks, outcomes, cautions. */
function formatBest({ cabinet, names, evidence, columns }: ShownPlan, best: PlannedStep): string {
  const { step, changes, parts, risks, outcomes } = best;
  const listed = (texts: readonly string[]) => texts.map((text) => paragraph(text, columns, '    ', '  ')).join('');
  const changeLines = changes.map(({ from, to, minutes, effects }) =>
    planTexts.change(
      [`${stateNames[from]} → ${stateNames[to]}`, ...effects.map((effect) => changeEffectWords[effect])].join(', '),
      wordMinutes(minutes),
    ),
  );
  const partLines = parts.map(({ kind, partNumber, spare, fits, mustBeGot }) => planTexts.part(kind, partNumber, spare, fits, mustBeGot));
  const outcomeLines = outcomes
    .filter(({ probability }) => probability >= rare)
    .map(({ outcome, probability, costAfter, next }) =>
      planTexts.outcome(
        wordStepOutcome(names, step, outcome),
        wordProbability(probability),
        next !== null
          ? planTexts.onward(wordMinutes(costAfter), wordStep(names, next))
          : outcome === 'runs'
            ? costAfter < 1
              ? planTexts.onwardDone
              : planTexts.onwardWatch(wordMinutes(costAfter))
            : planTexts.onwardHelp(wordMinutes(costAfter)),
      ),
    );
  const cautions = listCautions(cabinet, evidence, step).map((caution) =>
    [wordCaution(caution).meaning, wordCautionDetail(names, caution)].filter(Boolean).join(' '),
  );
  return [
    `\n${paragraph(`${startSentence(wordStep(names, step))}`, columns)}`,
    listed([
      ...wordBefore(step),
      ...changeLines,
      ...partLines,
      ...(risks.length > 0 ? [`${startSentence(wordList(risks.map((risk) => wordRisk(names, risk))))}.`] : []),
    ]),
    `\n${planTexts.outcomes}\n${listed(outcomeLines)}`,
    `\n${headings.cautions}\n${listed([...cautions, cautionsDefer])}`,
  ].join('');
}
