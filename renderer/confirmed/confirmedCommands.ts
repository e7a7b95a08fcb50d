import { withStrength } from '../../engine/experience/index.ts';
import { confirmedWords } from '../../engine/messages/index.ts';
import type { SharpenedRates } from '../../engine/schema/index.ts';
import type { AppState } from '../state/appState.ts';
import { documentCommand, effectCommand, viewCommand } from '../state/command.ts';

/*
 * Commands on the collection of confirmed cases. On which rates a case stands is a step of the document, so it can be undone and is saved.
 */

const unlessSimulating = (state: AppState) => !state.inject.on;

export const confirmedCommands = {
  'confirmed-cases': viewCommand({
    label: 'confirmedCases',
    keywords: confirmedWords.keywords,
    isEnabled: (state: AppState) => state.question === null && unlessSimulating(state),
    run: ({ confirmed, handBack }) => ({
      confirmed: { ...confirmed, shown: true, removed: null, trouble: [] },
      handBack: { ...handBack, shown: false },
      entry: null,
    }),
  }),

  'close-confirmed': viewCommand({
    label: 'closeConfirmed',
    isEnabled: ({ confirmed }) => confirmed.shown,
    run: ({ confirmed }) => ({ confirmed: { ...confirmed, shown: false, removed: null, trouble: [] } }),
  }),

  'keep-case': effectCommand({
    label: 'keepCase',
    shortcuts: ['K'],
    keysIn: 'find',
    isEnabled: (state) => state.handBack.shown && state.confirmed.state === 'read',
    run: ({ files }) => files.keepCase(),
  }),

  'remove-kept': effectCommand<{ readonly key: string }>({
    label: 'removeKept',
    isEnabled: ({ confirmed }) => confirmed.shown,
    run: ({ files }, { key }) => files.removeKept(key),
  }),

  'put-back-kept': effectCommand({
    label: 'putBackKept',
    isEnabled: ({ confirmed }) => confirmed.removed !== null,
    run: ({ files }) => files.putBackKept(),
  }),

  /** Null: back to the assumed rates. */
  'use-rates': documentCommand<{ readonly rates: SharpenedRates | null }>({
    label: 'useRates',
    isEnabled: unlessSimulating,
    undo: 'step',
    name: (_state, { rates }) => (rates === null ? confirmedWords.stepAssumed : confirmedWords.stepSharpened(rates.cases)),
    run: ({ caseRecord }, { rates }) => {
      if (rates === null) delete caseRecord.evidence.rates;
      else caseRecord.evidence.rates = { ...rates, factors: rates.factors.map((one) => ({ ...one })) };
    },
  }),

  'toggle-take-confirmed': viewCommand({
    label: 'toggleTakeConfirmed',
    isEnabled: ({ confirmed }) => confirmed.shown,
    run: ({ takeConfirmed }) => ({ takeConfirmed: !takeConfirmed }),
  }),

  'set-strength': viewCommand<{ readonly strength: number }>({
    label: 'setStrength',
    isEnabled: ({ confirmed }) => confirmed.shown,
    run: ({ confirmed }, { strength }) => ({
      confirmedStrength: strength,
      confirmed: { ...confirmed, experience: confirmed.experience && withStrength(confirmed.experience, strength) },
    }),
  }),
} as const;
