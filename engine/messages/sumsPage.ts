import type { FigureChange, FigureCode } from '../sums/index.ts';
import type { Names } from './names.ts';
import { startSentence, wordCount } from './numbers.ts';
import { wordDuration } from './quantities.ts';
import { figureWords, triedWords } from './sums.ts';

/*
 * What the page of sums says besides the words of the sums themselves.
 */

/** Labels of the commands of the page of sums. */
export const sumsCommandLabels = {
  toggleSums: 'Sums: light, axes, 24 V, DC link',
  tryFigure: 'Try a figure',
  dropTried: 'Put a tried figure back',
  takeOverTried: 'Take the tried figures over',
  writeFigure: 'Write a figure down',
} as const;

export const sumsPageWords = {
  title: 'Sums',
  region: 'Sums',
  back: 'Back to the cabinet',
  parts: { light: 'Light', feed: '24 V', supplies: 'Supplies', dcLink: 'DC link', axes: 'Axes' },
  partsLabel: 'Parts of the page',

  /** The first line. */
  allFits: 'Nothing is over its limit.',
  fitsSoFar: 'Nothing known is over its limit.',
  findings: (count: number) => `${wordCount(count, 'sum')} ${count === 1 ? 'does' : 'do'} not come out.`,
  open: (count: number) => `${wordCount(count, 'figure')} ${count === 1 ? 'is' : 'are'} not written down.`,
  tightest: 'Tightest',
  leastLight: (cable: string, way: string, margin: string) => `light ${margin} on ${cable}, ${way}`,
  leastVolts: (unit: string, spare: string) => `24 V ${spare} to spare at ${unit}`,
  dcShare: (supply: string, share: string) => `DC link of ${supply} ${share} used`,
  whatIfOn: 'With tried figures. The document is as it was.',

  lightHint:
    'Each picture is the window of the receiver: at its left limit the light is too weak, at its right limit too strong. The bar is the light that may arrive.',
  outboundReturn: 'outbound: thick, above · return: two thin lines, below',
  reserveHatch: 'hatched: ageing reserve',
  tooWeak: 'too weak',
  tooStrong: 'too strong',
  measuredLoss: 'Loss measured with a light meter',
  measuredHint: 'takes the place of the computed one',
  lightPicture: (cable: string) => `Light on ${cable}`,
  scaleOf: (volts: string) => `${volts} V`,
  from: 'from',
  drop: 'Drop',
  failsFirst: 'fails first',
  over: 'too much',
  againstRating: 'Against the rating',
  classFits: (name: string, limit: number, fits: boolean) => `${name}, ${limit}: ${fits ? 'would fit' : 'would not fit'}`,
  noClass: 'no control cycle',
  noSupply: 'No 24 V supply with leads is documented.',
  noUnits: 'No unit is documented.',
  noDcLink: 'No DC link is documented.',
  noAxes: 'No chain is documented.',
  curve: (time: string) => `Voltage of the DC link after switching off: 60 V after ${time}`,
  usedHead: 'Used',

  /** The waiting time in a line of cautions. Without data it is never a number. */
  waitShort: (seconds: number | null) =>
    seconds === null
      ? 'Wait for the DC link: time not known, see the machine’s manual. Then measure'
      : `Wait for the DC link: ${wordDuration(seconds)} to 60 V by its figures, at least as the manual says. Then measure`,

  /** Expanding a number. */
  explain: (what: string) => `${what}: show how it comes about`,
  terms: (what: string) => `How it comes about: ${what}`,
  source: (source: string) => `from: ${source}`,
  was: (value: string) => `was ${value}`,

  /** What-if. */
  whatIf: 'What if',
  whatIfHint:
    'Type another value: everything answers at once, and nothing is written down. Every figure in an opened number can be tried too.',
  nothingTried: 'Nothing is tried.',
  tried: 'tried',
  tryLabel: (what: string) => `Try: ${what}`,
  anotherFigure: 'Another figure',
  figure: 'Figure',
  ofThing: 'Of',
  newValue: 'New value',
  chooseFigure: 'choose',
  putBack: (what: string) => `Put back: ${what}`,
  putAllBack: 'Put all back',
  takeOver: 'Take over',
  takeOverHint: 'writes them into the cabinet, as one step that can be undone',
  tookOver: (figures: readonly string[]) =>
    figures.length === 1 ? `figure taken over: ${figures[0]}` : `${wordCount(figures.length, 'figure')} taken over: ${figures.join('; ')}`,
  takenOver: (count: number) => `${wordCount(count, 'figure')} taken over into the cabinet.`,
  atDocument: (value: string) => `now ${value}`,
  notWritten: 'not written down',

  /** Problems. */
  problems: 'Problems',
  noProblems: 'Nothing wrong was found.',
  moreProblems: (count: number) => `and ${count} more`,
  onlyTried: 'only with the tried figures',
  goneWhenTried: 'gone with the tried figures',
  show: 'Show',

  /** Figures that are missing. */
  missing: 'Not written down',
  allWritten: 'Every figure that the sums need is written down.',
  missingHint: 'Without them a sum stays open, or takes the least that is known. Enter them here, from data sheets and manuals.',
  write: 'Write down',
  writeLabel: (figure: string, owner: string) => `${startSentence(figure)}, ${owner}`,
  moreMissing: (count: number) => `Show ${count} more`,
  fewerMissing: 'Show fewer',
  ofType: (name: string, units: string) => `type ${name} (${units})`,
  andMore: (count: number) => `${count} more`,
  ofTypeless: (unit: string) => `${unit}, which has no type yet: one is made`,
  ofFibre: (name: string) => `fibre ${name}`,
  ofFibreless: (cable: string) => `${cable}, which has no fibre yet: one is made`,
  ofCabinet: 'the cabinet',
  atFibreOnly: 'Enter a length for this data rate in the entry of the fibre.',
  newType: (unit: string) => `Type of ${unit}`,
  newFibre: 'Fibre',
  choose: 'choose',
  conductorClasses: {
    'class-1-2': 'solid or stranded (class 1 or 2)',
    'class-5': 'flexible (class 5)',
    'class-5-tinned': 'flexible, tinned (class 5)',
  },
  wrote: (names: Names, { figure, of }: { readonly figure: FigureCode; readonly of: string | null }, value: number | string) =>
    `${figureWords[figure]}${of === null ? '' : ` of ${names.thing(of)}`}: ${value}`,
  notAName: (most: number) => `A name is needed, of at most ${most} characters, like standard.`,
  wrongNumber: {
    amount: 'A number of zero or more is needed.',
    positive: 'A number above zero is needed.',
    whole: 'A whole number from 0 to 100 is needed.',
    temperature: 'A temperature above −273 °C is needed.',
    level: 'A number is needed, like −13.6.',
  },
} as const;

/** A figure that can be tried, and its unit: "length", "m". */
export function wordTriedFigure(figure: FigureChange['figure']): { readonly label: string; readonly unit: string } {
  const { label, unit } = triedWords[figure];
  return { label, unit: unit === '1' ? '' : unit };
}

/** Units in which missing figures are entered; empty for one that is chosen, or counted. */
export const figureUnits: { readonly [F in FigureCode]: string } = {
  'launch-power': 'dBm',
  sensitivity: 'dBm',
  'greatest-launch-power': 'dBm',
  'overload-power': 'dBm',
  'cable-length': 'm',
  attenuation: 'dB/m',
  'coupler-loss': 'dB',
  'bend-loss': 'dB',
  'ageing-reserve': 'dB',
  'data-rate': 'MBd',
  'length-limit-at-rate': 'm',
  'cycle-class': '',
  'axis-limit': '',
  load: 'A',
  inrush: 'A',
  'minimum-voltage': 'V',
  'supply-voltage': 'V',
  'rated-current': 'A',
  'rated-inrush': 'A',
  'lead-length': 'm',
  'cross-section': 'mm²',
  'conductor-class': '',
  'dc-power': 'kW',
  'rated-dc-power': 'kW',
  capacitance: 'µF',
  'discharge-resistor': 'Ω',
  'line-voltage': 'V',
  'dc-link-supply': '',
};
