import { original } from 'immer';
import { sumsPageWords, wordFigureChange } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { changeFigures, type FigureChange } from '../../engine/sums/index.ts';
import type { AppState } from '../state/appState.ts';
import { documentCommand, viewCommand } from '../state/command.ts';
import { namesOf } from '../state/names.ts';
import { type EnteredFigure, writeFigure } from './enterFigure.ts';
import { changeKey, tryChange } from './sumsState.ts';

/*
 * Commands of the page of sums. Trying is of the sitting; taking over and writing down are steps of the document.
 */

type DraftOf = Parameters<Parameters<typeof documentCommand<never>>[0]['run']>[0];

export const sumsCommands = {
  'toggle-sums': viewCommand({
    label: 'toggleSums',
    shortcuts: ['M'],
    isEnabled: (state) => state.question === null && !state.inject.on,
    run: ({ sums }) => ({ sums: { ...sums, shown: !sums.shown }, entry: null }),
  }),

  'try-figure': viewCommand<{ readonly change: FigureChange }>({
    label: 'tryFigure',
    isEnabled: () => true,
    run: ({ sums }, { change }) => ({ sums: { ...sums, tried: tryChange(sums.tried, change) } }),
  }),

  'drop-tried': viewCommand<{ readonly change: FigureChange | 'all' }>({
    label: 'dropTried',
    isEnabled: (state) => state.sums.tried.length > 0,
    run: ({ sums }, { change }) => ({
      sums: { ...sums, tried: change === 'all' ? [] : sums.tried.filter((one) => changeKey(one) !== changeKey(change)) },
    }),
  }),

  'take-over-tried': documentCommand<{ readonly changes: readonly FigureChange[] }>({
    label: 'takeOverTried',
    isEnabled: (state) => state.sums.tried.length > 0,
    undo: 'step',
    name: (state, { changes }) =>
      sumsPageWords.tookOver(changes.map((change) => wordFigureChange(namesOf(state.checked.topology), change))),
    subject: ({ changes: [first] }) => (first !== undefined && 'id' in first ? first.id : null),
    run: (draft, { changes }) => changeDraft(draft, (content) => changeFigures(content, changes)),
  }),

  'write-figure': documentCommand<{ readonly entered: EnteredFigure; readonly value: number | string }>({
    label: 'writeFigure',
    isEnabled: (state: AppState) => !state.inject.on,
    undo: 'step',
    name: (state, { entered, value }) => sumsPageWords.wrote(namesOf(state.checked.topology), entered, value),
    subject: ({ entered }) => entered.of,
    run: (draft, { entered, value }) => changeDraft(draft, (content) => writeFigure(content, entered, value)),
  }),
} as const;

const lists = ['units', 'links', 'leads', 'types', 'fibres', 'chains'] as const;

/** Changes single records of the cabinet only, so that a step of the history stays small. */
function changeDraft(draft: DraftOf, change: (content: CabinetContent) => CabinetContent): void {
  const before = original(draft.cabinet) as CabinetContent | undefined; // a draft's original is what it was made of
  if (before === undefined) return;
  const after = change(before);
  if (after.ambientC !== before.ambientC && after.ambientC !== undefined) draft.cabinet.ambientC = after.ambientC;
  if (after.ageingReserveDb !== before.ageingReserveDb && after.ageingReserveDb !== undefined) {
    draft.cabinet.ageingReserveDb = after.ageingReserveDb;
  }
  if (after.axisLimits !== before.axisLimits && after.axisLimits !== undefined) {
    draft.cabinet.axisLimits = after.axisLimits as typeof draft.cabinet.axisLimits;
  }
  for (const list of lists) {
    const target: unknown[] | undefined = draft.cabinet[list];
    const records: readonly unknown[] = before[list] ?? [];
    if (target === undefined) continue;
    for (const [at, record] of (after[list] ?? []).entries()) {
      if (record !== records[at]) target[at] = record;
    }
  }
}
