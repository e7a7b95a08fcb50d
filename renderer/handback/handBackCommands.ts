import { handBackTexts } from '../../engine/messages/index.ts';
import { type NewPart, writeReplaced } from '../../engine/repair/index.ts';
import type { CaseContent, Intervention } from '../../engine/schema/index.ts';
import type { AppState } from '../state/appState.ts';
import { documentCommand, effectCommand, viewCommand } from '../state/command.ts';
import { hasObservations } from '../state/evidence.ts';
import type { ReportChoice } from '../state/sitting.ts';
import { writeCabinet } from '../state/writeCabinet.ts';
import { notHandedBack } from './handBackState.ts';

/*
 * Commands of handing a machine back: the checklist, the parts that were put in, the report.
 */

type Result = NonNullable<CaseContent['result']>;
/** The cause as somebody saw it; null: nobody did. */
export type NamedCause = Pick<Result, 'item' | 'mode'> | null;
export type ResultChange = Partial<Pick<Result, 'by' | 'note' | 'checked'>> & { readonly cause?: NamedCause };

const fieldOf = (change: ResultChange) => (['by', 'note', 'cause'] as const).find((field) => field in change) ?? 'checked';

export const handBackCommands = {
  'hand-back': viewCommand({
    label: 'handBack',
    shortcuts: ['H'],
    isEnabled: (state: AppState) =>
      state.workspace === 'find' && !state.inject.on && state.question === null && hasObservations(state.caseRecord),
    run: () => ({ handBack: { ...notHandedBack, shown: true }, entry: null }),
  }),

  'close-hand-back': viewCommand({
    label: 'closeHandBack',
    isEnabled: (state) => state.handBack.shown,
    run: () => ({ handBack: notHandedBack }),
  }),

  'write-result': documentCommand<{ readonly end: Result['end']; readonly change: ResultChange; readonly at: string }>({
    label: 'writeResult',
    isEnabled: () => true,
    undo: { mergeBy: ({ change }) => `result/${Object.keys(change).join()}` },
    name: (_state, { change }) => handBackTexts.result(handBackTexts.fields[fieldOf(change)]),
    run: ({ caseRecord }, { end, change, at }) => {
      const { by, note, checked, cause } = change;
      const { item, mode, ...before } = caseRecord.result ?? {};
      const named = cause === undefined ? { item, mode } : (cause ?? {});
      caseRecord.result = {
        ...before,
        end,
        at,
        ...(named.item === undefined ? {} : { item: named.item }),
        ...(named.mode === undefined ? {} : { mode: named.mode }),
        ...(by === undefined ? {} : { by }),
        ...(note === undefined ? {} : { note }),
        ...(checked === undefined ? {} : { checked: [...checked] }),
      };
    },
  }),

  'record-parts': documentCommand<{ readonly parts: readonly NewPart[] }>({
    label: 'recordParts',
    isEnabled: () => true,
    undo: 'step',
    name: (_state, { parts }) => handBackTexts.recorded(parts.length),
    subject: ({ parts: [first] }) => first?.owner.id ?? null,
    run: (draft, { parts }, before) => {
      writeCabinet(draft.cabinet, before.cabinet, writeReplaced(before.cabinet, parts));
      // The spare is out of the stock now; were it named further, it would be counted twice.
      for (const snapshot of draft.caseRecord.evidence.snapshots) {
        for (const act of snapshot.interventions ?? []) noteSerial(act, parts);
      }
    },
  }),

  'make-report': effectCommand<ReportChoice>({
    label: 'makeReport',
    isEnabled: (state) => state.handBack.shown && state.handBack.report.state !== 'making',
    run: ({ files }, choice) => files.saveReport(choice),
  }),

  'cancel-report': effectCommand({
    label: 'cancelReport',
    isEnabled: (state) => state.handBack.report.state === 'making',
    run: async ({ files }) => files.cancelReport(),
  }),
} as const;

function noteSerial(act: Intervention, parts: readonly NewPart[]): void {
  if (!act.do.startsWith('replace-')) return;
  const ids: readonly unknown[] = Object.values(act);
  const part = parts.find(({ owner }) => ids.includes(owner.id) || (act.do === 'replace-controller' && owner.kind === 'controller'));
  if (!part) return;
  const putIn = act as { spare?: string; serial?: string }; // acts that replace something bear these two
  delete putIn.spare;
  if (part.serial !== '') putIn.serial = part.serial;
}
