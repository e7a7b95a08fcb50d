import type { Diagnosis } from '../../diagnosis/index.ts';
import {
  impossibleStatement,
  type Names,
  replayTexts,
  startSentence,
  wordItem,
  wordProbability,
  wordReplayStep,
} from '../../messages/index.ts';
import type { ReplayStep } from '../../plan/index.ts';
import type { Cabinet } from '../../topology/index.ts';
import { formatTable } from '../table.ts';
import { paragraph } from '../text.ts';

/** A step of a case with the diagnosis after it. */
export interface ReplayedStep {
  readonly step: ReplayStep;
  readonly diagnosis: Diagnosis;
}

export interface ShownReplay {
  readonly cabinet: Cabinet;
  readonly names: Names;
  readonly steps: readonly ReplayedStep[];
  readonly top: number;
  readonly columns: number;
}

/** A replay for people: each step with the suspects after it, and how each moved since the step before. */
export function formatReplay({ cabinet, names, steps, top, columns }: ShownReplay): string {
  const parts = steps.map(({ step, diagnosis }, index) => {
    const head = paragraph(`${index + 1}. ${startSentence(wordReplayStep(names, step))}`, columns, '   ', '');
    const before = new Map(steps[index - 1]?.diagnosis.items.map(({ item, probability }) => [item.key, probability]));
    const rows = diagnosis.items
      .slice(0, top)
      .map(({ item, probability }) => [
        wordProbability(probability),
        wordItem(names, item.fault),
        index === 0 ? '' : wordProbability(before.get(item.key) ?? 0),
      ]);
    const none = diagnosis.impossible ? impossibleStatement : replayTexts.nothingSuspected;
    const table = formatTable(
      [
        { head: replayTexts.likely, align: 'right' },
        { head: replayTexts.suspects, grow: true },
        { head: replayTexts.before, align: 'right' },
      ],
      rows,
      columns - 3,
    );
    return `\n${head}${rows.length === 0 ? paragraph(none, columns, '   ') : table.replace(/^(?=.)/gm, '   ')}`;
  });
  return `${paragraph(cabinet.content.name, columns)}${parts.join('')}`;
}
