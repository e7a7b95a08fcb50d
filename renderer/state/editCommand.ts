import type { Draft } from 'immer';
import type { Edited, EditResult } from '../../engine/edit/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import type { AppState, DocumentState } from './appState.ts';
import { type DocumentCommand, documentCommand } from './command.ts';
import { keepEvidence } from './keepEvidence.ts';
import { writeCabinet } from './writeCabinet.ts';

interface EditCommand<A> extends Omit<DocumentCommand<A>, 'kind' | 'undo' | 'refusal' | 'run' | 'isEnabled'> {
  /** What the engine makes of the cabinet, or why not. */
  readonly edit: (cabinet: CabinetContent, args: A) => EditResult;
  /** Besides the document being one that can be edited. */
  readonly isEnabled?: (state: AppState) => boolean;
  readonly undo?: DocumentCommand<A>['undo'];
}

/** Whether the cabinet can be changed now: not while a fault is tried out on it. */
export const canEdit = (state: AppState): boolean => !state.inject.on;

/**
 * A command that changes the cabinet by a function of `engine/edit`: one undo step. When the engine refuses, nothing changes and the
 * dispatcher tells why. What was seen of things that the edit takes out goes with them, in the same step.
 */
export function editCommand<A>({ edit, isEnabled, undo, ...rest }: EditCommand<A>): DocumentCommand<A> {
  // The dispatcher asks for a refusal first and runs then: the edit is worked out once for both.
  let last: { readonly cabinet: CabinetContent; readonly args: A; readonly answer: EditResult } | null = null;
  const answerFor = (cabinet: CabinetContent, args: A): EditResult => {
    if (last?.cabinet !== cabinet || last.args !== args) last = { cabinet, args, answer: edit(cabinet, args) };
    return last.answer;
  };
  return documentCommand<A>({
    ...rest,
    isEnabled: (state) => canEdit(state) && (isEnabled?.(state) ?? true),
    undo: undo ?? 'step',
    refusal: ({ cabinet }, args) => {
      const answer = answerFor(cabinet, args);
      return answer.ok ? [] : answer.problems;
    },
    run: (draft, args, before) => {
      const answer = answerFor(before.cabinet, args);
      if (answer.ok) writeEdit(draft, before, answer.value);
      last = null;
    },
  });
}

function writeEdit(draft: Draft<DocumentState>, before: DocumentState, { cabinet }: Edited): void {
  writeCabinet(draft.cabinet, before.cabinet, cabinet);
  keepEvidence(draft.caseRecord, before.cabinet, cabinet);
}
