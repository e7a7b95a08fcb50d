import { assertNever } from '../base/index.ts';
import type { comparisonOutcomes, LookObservation, lampOutcomes, plugLightOutcomes, voltageOutcomes } from '../schema/index.ts';
import type { Look } from '../simulation/index.ts';
import type { Names } from './names.ts';
import { wordList } from './numbers.ts';
import { directionWords, endWords, type Term } from './words.ts';

export type LookKind = LookObservation['look'];
type Outcomes = {
  'light-at-plug': (typeof plugLightOutcomes)[number];
  'light-at-port': 'none' | 'bright';
  lamp: (typeof lampOutcomes)[number];
  voltage: (typeof voltageOutcomes)[number];
  'compare-plugs': (typeof comparisonOutcomes)[number];
  'compare-fibres': (typeof comparisonOutcomes)[number];
};

/** The looks besides displays and report, with the words for their outcomes. */
export const lookWords: {
  readonly [K in LookKind]: Term & { readonly short: string; readonly outcomes: { readonly [O in Outcomes[K]]: Term } };
} = {
  'light-at-plug': {
    label: 'light at the plug',
    short: 'light at the plug',
    meaning: 'what arrives at a pulled plug from the far end; look at the glow on paper, never into the fibre',
    outcomes: {
      none: { label: 'none', meaning: 'no light arrives' },
      weak: { label: 'weak', meaning: 'light arrives, visibly weaker than at a good link' },
      bright: { label: 'bright', meaning: 'light arrives as at a good link' },
      'wrong-hole': { label: 'in the wrong hole', meaning: 'light arrives in the hole of the other fibre' },
    },
  },
  'light-at-port': {
    label: 'light at the port',
    short: 'light at the port',
    meaning: 'what the unit’s own transmitter gives with the plug pulled; never look into the port',
    outcomes: {
      none: { label: 'none', meaning: 'the port gives no light' },
      bright: { label: 'bright', meaning: 'the port gives light' },
    },
  },
  lamp: {
    label: 'lamp through the cable',
    short: 'lamp through it',
    meaning: 'what a lamp held at one end shows at the other end of a removed cable',
    outcomes: {
      none: { label: 'none', meaning: 'nothing comes through' },
      weak: { label: 'weak', meaning: 'little comes through' },
      clear: { label: 'clear', meaning: 'the light comes through clearly' },
    },
  },
  voltage: {
    label: '24 V at the unit',
    short: '24 V',
    meaning: 'the control voltage at the unit’s own terminals',
    outcomes: {
      steady: { label: 'steady', meaning: 'within its limits, also under load' },
      sags: { label: 'sags', meaning: 'there, but below the least voltage' },
      absent: { label: 'absent', meaning: 'no voltage' },
    },
  },
  'compare-plugs': {
    label: 'plugs compared with the photo or drawing',
    short: 'plugs',
    meaning: 'whether each optical plug of the unit sits in the port where it belongs',
    outcomes: {
      same: { label: 'same', meaning: 'as on the photo or drawing' },
      differs: { label: 'differs', meaning: 'not as on the photo or drawing' },
    },
  },
  'compare-fibres': {
    label: 'fibres compared with the photo or drawing',
    short: 'fibres',
    meaning: 'whether both fibres of the cable sit in the right hole of each plug',
    outcomes: {
      same: { label: 'same', meaning: 'as on the photo or drawing' },
      differs: { label: 'differs', meaning: 'not as on the photo or drawing' },
    },
  },
};

/** What was looked at: "light at the upper plug of cable -WH3". */
export function wordLook(names: Names, look: Look): string {
  switch (look.look) {
    case 'light-at-plug':
      return `light at the ${endWords[look.end].label} of ${names.link(look.link)}`;
    case 'light-at-port':
      return `light at the port of the ${endWords[look.end].label} of ${names.link(look.link)}`;
    case 'lamp':
      return `lamp through ${names.link(look.link)}, ${directionWords[look.fibre].label} fibre`;
    case 'voltage':
      return `24 V at ${names.unit(look.unit)}`;
    case 'compare-plugs':
      return `plugs of ${names.unit(look.unit)} compared with the photo or drawing`;
    case 'compare-fibres':
      return `fibres of ${names.link(look.link)} compared with the photo or drawing`;
    default:
      return assertNever(look);
  }
}

/** The same where the cable or unit is named beside it: "light at the upper plug". */
export function wordLookHere(look: Look): string {
  switch (look.look) {
    case 'light-at-plug':
      return `light at the ${endWords[look.end].label}`;
    case 'light-at-port':
      return `light at the port of the ${endWords[look.end].label}`;
    case 'lamp':
      return `lamp, ${directionWords[look.fibre].label} fibre`;
    case 'voltage':
      return '24 V';
    case 'compare-plugs':
      return 'plugs compared';
    case 'compare-fibres':
      return 'fibres compared';
    default:
      return assertNever(look);
  }
}

/** Which of the looks of its kind: "upper plug", "outbound"; where there is only one, what is done. */
export function wordLookPlace(look: Look): string {
  switch (look.look) {
    case 'light-at-plug':
    case 'light-at-port':
      return endWords[look.end].label;
    case 'lamp':
      return directionWords[look.fibre].label;
    case 'voltage':
      return 'measured';
    case 'compare-plugs':
    case 'compare-fibres':
      return 'compared';
    default:
      return assertNever(look);
  }
}

/** A look with what it showed: "light at the upper plug of cable -WH3: none or weak"; without an outcome it was not looked at. */
export function wordFound(names: Names, look: Look, outcomes: readonly string[]): string {
  return `${wordLook(names, look)}: ${outcomes.length === 0 ? 'not looked at' : wordOutcomes(look.look, outcomes)}`;
}

/** The outcomes that fit what was seen: "none or weak". An outcome that this look does not have is left out. */
export function wordOutcomes(kind: LookKind, outcomes: readonly string[]): string {
  const words: Readonly<Record<string, Term>> = lookWords[kind].outcomes;
  return wordList(
    outcomes.flatMap((outcome) => (Object.hasOwn(words, outcome) ? [words[outcome]?.label ?? ''] : [])),
    'or',
  );
}

/** Said beside a look for light that a healthy link would answer alike. */
export const healthyLooksDark = 'A healthy link shows no light here either: once the plug is pulled, a port that hears nothing is dark.';
