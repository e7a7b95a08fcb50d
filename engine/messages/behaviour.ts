import { type Behaviour, type BehaviourParameter, behaviourValues } from '../schema/index.ts';
import type { Term } from './words.ts';

/** Wording of one behaviour parameter: its name as the beginning of a sentence that each value ends. */
export interface ParameterWords<P extends BehaviourParameter> {
  readonly label: string;
  readonly meaning: string;
  readonly values: { readonly [V in Behaviour[P]]: Term };
}

/** The behaviour parameters: label + value label read as a sentence ("a unit complains about … its own receivers only"). */
export const behaviourWords: { readonly [P in BehaviourParameter]: ParameterWords<P> } = {
  lossScope: {
    label: 'complains about',
    meaning: 'how far a unit looks before it complains of a loss',
    values: {
      neighbour: { label: 'its own receivers only', meaning: 'only the two units beside a break complain of it' },
      chain: { label: 'any break in that direction', meaning: 'every unit beyond a break complains of it' },
    },
  },
  onReceiveLoss: {
    label: 'a port that hears nothing',
    meaning: 'what a port sends once it no longer hears its neighbour',
    values: {
      mute: { label: 'stops sending', meaning: 'sends no valid telegrams on that port, so the neighbour hears nothing either' },
      keep: { label: 'goes on sending', meaning: 'goes on sending, so a neighbour whose own fibre is whole still hears it' },
    },
  },
  idleLight: {
    label: 'a port that sends no telegrams',
    meaning: 'whether light is seen at a port that sends nothing valid',
    values: {
      yes: { label: 'still gives light', meaning: 'light at the port does not prove that telegrams are sent' },
      no: { label: 'is dark', meaning: 'a dark port may be healthy, and only silent because it hears nothing' },
    },
  },
  complainsFrom: {
    label: 'a loss is shown',
    meaning: 'from which moment on a unit complains of a loss',
    values: {
      'link-up': { label: 'only once the whole chain was up', meaning: 'after a failed start the displays say nothing of losses' },
      'power-on': { label: 'from switching on', meaning: 'after a failed start the displays complain as well' },
    },
  },
  whenBoth: {
    label: 'when both directions are lost',
    meaning: 'what a unit shows when it hears neither neighbour',
    values: {
      both: { label: 'it shows both', meaning: 'the display tells that both directions are lost' },
      upstream: { label: 'it shows the upstream loss', meaning: 'the downstream loss is hidden behind the upstream loss' },
      downstream: { label: 'it shows the downstream loss', meaning: 'the upstream loss is hidden behind the downstream loss' },
    },
  },
  holds: {
    label: 'after the trip',
    meaning: 'whether a display keeps what it showed when the machine stopped',
    values: {
      'until-reset': {
        label: 'it keeps showing the loss',
        meaning: 'the loss stays shown until power-off or reset, also when light has come back',
      },
      live: { label: 'it follows the light', meaning: 'the loss goes away by itself when light comes back' },
    },
  },
  shortEffect: {
    label: 'a shorted feedback cable',
    meaning: 'what a short in an encoder’s or scale’s cable does to the unit',
    values: {
      dark: { label: 'puts the unit out', meaning: 'the unit is dark and silent' },
      code: { label: 'makes it show a code, and silent', meaning: 'the unit shows a code of its own and sends nothing on the chain' },
      'code-linked': { label: 'makes it show a code', meaning: 'the unit shows a code of its own and stays on the chain' },
    },
  },
};

/** Wording of a parameter whose value nobody knows. */
export const unknownBehaviourWords: Term = {
  label: 'not known',
  meaning: 'the diagnosis weighs every possible value alike and shows what the evidence favours',
};

/** One value of one parameter as a sentence: "a port that hears nothing stops sending". */
export function wordBehaviourValue<P extends BehaviourParameter>(parameter: P, value: Behaviour[P]): string {
  const words: ParameterWords<P> = behaviourWords[parameter];
  return `${words.label} ${words.values[value].label}`;
}

/** The label of one value, from plain text: answers undefined when the parameter has no such value. */
export function findValueWords(parameter: BehaviourParameter, value: string): Term | undefined {
  const known: readonly string[] = behaviourValues[parameter];
  if (!known.includes(value)) return undefined;
  const values: Readonly<Record<string, Term>> = behaviourWords[parameter].values;
  return values[value];
}
