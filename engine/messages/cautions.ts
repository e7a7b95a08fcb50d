import type { Term } from './words.ts';

/**
 * Cautions, shown at changes of machine state and at acts, where they concern. Short on purpose: the machine's manual, local codes
 * and licensed persons come first, and the list never claims to be complete.
 */
export const cautionWords = {
  'note-first': {
    label: 'Note all displays first',
    meaning: 'Note or photograph every display and the report before you switch off: switching off erases them.',
  },
  'live-cabinet': {
    label: 'Live cabinet',
    meaning: 'Behind the open door there are dangerous voltages. Only persons licensed for it work there.',
  },
  'all-feeds': { label: 'All feeds', meaning: 'Switch off every feed of the cabinet: there may be more than one.' },
  'dc-link': { label: 'DC link', meaning: 'After switching off the DC link stays charged. Wait as the manual says, then measure.' },
  'lock-out': { label: 'Lock out', meaning: 'Lock the main switch and tag it before you reach in.' },
  'hanging-axes': { label: 'Hanging axes', meaning: 'An axis that hangs may drop when its drive is off. Prop it first.' },
  'axes-may-start': {
    label: 'Axes may start',
    meaning: 'Axes may start with the machine. Keep their drives disabled while hands are in it, and stand clear of them.',
  },
  'reference-position': {
    label: 'Reference position',
    meaning: 'Pulling this plug, or taking this unit out, may lose the machine’s reference position.',
  },
  'fibre-light': { label: 'Light from fibres', meaning: 'Never look into a fibre end or an optical port.' },
  esd: { label: 'Static charge', meaning: 'Discharge yourself before you touch a board.' },
  'safety-check': { label: 'Safety check', meaning: 'After an exchange the safety functions must be tested as the manual says.' },
} as const satisfies Readonly<Record<string, Term>>;
export type CautionCode = keyof typeof cautionWords;

/** Stands under every list of cautions. */
export const cautionsDefer = 'The machine’s manual, local codes and licensed persons come first. This is not a complete list.';
