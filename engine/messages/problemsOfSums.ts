import { ownWord } from './ownWord.ts';
import { type ProblemWords, quote, type WordsFor } from './problemWords.ts';
import { wordNumber } from './quantities.ts';
import { directionWords } from './words.ts';

/** Codes of problems that the sums find. */
type SumCode =
  | 'link-without-margin'
  | 'link-overloaded'
  | 'link-too-long'
  | 'link-too-long-for-rate'
  | 'bend-too-tight'
  | 'axis-limit-beyond-wire'
  | 'supply-overloaded'
  | 'supply-output-overloaded'
  | 'supply-inrush-too-high'
  | 'supply-back-fed'
  | 'voltage-too-low'
  | 'voltage-too-high'
  | 'dc-link-overloaded';

type Figure = number | string;

const way = (direction: Figure) => ownWord(directionWords, direction)?.label ?? String(direction);

const over = (what: string, load: Figure, rated: Figure, unit: string): ProblemWords => ({
  title: `${what} is asked for more than it is rated for`,
  explanation: `The loads come to ${wordNumber(load)} ${unit}, the rating is ${wordNumber(rated)} ${unit}.`,
  whatToDo: 'Move loads to another supply, fit a stronger one, or correct the figures from the data sheets.',
});

export const sumProblemWords: WordsFor<SumCode> = {
  'link-without-margin': ({ link, direction, shortDb }) => ({
    title: `Too little light on cable ${link}, ${way(direction)}`,
    explanation: `After all losses and the ageing reserve the receiver gets ${wordNumber(shortDb)} dB less than it needs.`,
    whatToDo: 'Shorten the cable, take a better fibre, take out couplers and bends, or measure the loss and write it down.',
  }),
  'link-overloaded': ({ link, direction, overDb }) => ({
    title: `Too much light on cable ${link}, ${way(direction)}`,
    explanation: `The strongest transmitter of its type gives ${wordNumber(overDb)} dB more than the receiver can take. It may then hear nothing valid.`,
    whatToDo: 'See the data sheets of both ends: a weaker setting of the transmitter, or a longer cable.',
  }),
  'link-too-long': ({ link, lengthM, limitM }) => ({
    title: `Cable ${link} is longer than its fibre allows`,
    explanation: `It is ${wordNumber(lengthM)} m long, and ${wordNumber(limitM)} m are allowed, whatever the light that is left.`,
    whatToDo: 'Shorten the cable, take a fibre that allows the length, or correct the figures.',
  }),
  'link-too-long-for-rate': ({ link, lengthM, limitM }) => ({
    title: `Cable ${link} is too long for the data rate`,
    explanation: `It is ${wordNumber(lengthM)} m long. At this data rate ${wordNumber(limitM)} m are allowed: beyond that pulses run into each other, however bright they are.`,
    whatToDo: 'Shorten the cable, take a fibre for this rate, or correct the figures.',
  }),
  'bend-too-tight': ({ link, radiusMm, minimumMm }) => ({
    title: `Cable ${link} is bent too tightly`,
    explanation: `One bend has a radius of ${wordNumber(radiusMm)} mm, and the fibre allows ${wordNumber(minimumMm)} mm. It loses more light than the budget counts, and ages faster.`,
    whatToDo: 'Lay it in a wider bend.',
  }),
  'axis-limit-beyond-wire': ({ cycleClass, limit, most, chain }) => ({
    title: `The axis limit of ${quote(cycleClass)} is more than the wire can carry`,
    explanation: `The table allows ${limit} axes. By cycle, bytes for each axis and data rate of chain ${chain}, ${most} fit at the very most.`,
    whatToDo: 'Compare limit, cycle and bytes with the controller’s manual.',
  }),
  'supply-overloaded': ({ supply, loadA, ratedA }) => over(`The 24 V of supply ${supply}`, loadA, ratedA, 'A'),
  'supply-output-overloaded': ({ supply, output, loadA, ratedA }) => over(`Output ${output} of supply ${supply}`, loadA, ratedA, 'A'),
  'supply-inrush-too-high': ({ supply, inrushA, ratedA }) => ({
    title: `Supply ${supply} may not come up when everything is switched on at once`,
    explanation: `The units draw up to ${wordNumber(inrushA)} A at switching on, the supply gives ${wordNumber(ratedA)} A for a moment.`,
    whatToDo: 'Switch on in groups, fit a stronger supply, or correct the figures from the data sheets.',
  }),
  'supply-back-fed': ({ supply }) => ({
    title: `Supply ${supply} gives nothing, because another one is set higher`,
    explanation: 'Both feed the same units, and the one with the higher voltage carries them alone. When it fails, the voltage drops.',
    whatToDo: 'Set both to the same voltage as their manuals say, or feed the units from one of them.',
  }),
  'voltage-too-low': ({ unit, volts, minimumV }) => ({
    title: `${unit} gets too little voltage`,
    explanation: `${wordNumber(volts)} V are left at its terminals, and it needs ${wordNumber(minimumV)} V. It is taken as not powered.`,
    whatToDo: 'Feed it by a shorter or thicker lead, or by one of its own from the supply.',
  }),
  'voltage-too-high': ({ unit, volts, maximumV }) => ({
    title: `${unit} gets too much voltage`,
    explanation: `${wordNumber(volts)} V reach its terminals, and it stands ${wordNumber(maximumV)} V.`,
    whatToDo: 'See how the supply is set, and compare the limit with the data sheet.',
  }),
  'dc-link-overloaded': ({ supply, loadKw, ratedKw }) => over(`The DC link of supply ${supply}`, loadKw, ratedKw, 'kW'),
};
