import type {
  FigureChange,
  FigureCode,
  MissingFigure,
  SumTerm,
  TermBasis,
  TermCode,
  TermStatus,
  TermUnit,
  UnitVoltage,
} from '../sums/index.ts';
import type { Names } from './names.ts';
import { startSentence } from './numbers.ts';
import { wordDuration, wordQuantity, wordTermValue } from './quantities.ts';
import type { Term } from './words.ts';

/** Every quantity of a sum. */
export const termWords: { readonly [C in TermCode]: string } = {
  'ambient-temperature': 'temperature in the cabinet',
  'launch-power-least': 'launch power, at least',
  'launch-power-most': 'launch power, at most',
  'temperature-coefficient': 'change of launch power with temperature',
  'temperature-effect': 'change of launch power by temperature',
  sensitivity: 'sensitivity of the receiver',
  'overload-power': 'most light the receiver can take',
  'cable-length': 'length of the cable',
  attenuation: 'attenuation of the fibre',
  'fibre-loss': 'loss of the fibre',
  couplers: 'couplers',
  'loss-per-coupler': 'loss of one coupler',
  'coupler-loss': 'loss of couplers',
  'quarter-turns': 'quarter turns of bends',
  'quarter-turn-loss': 'loss of one quarter turn',
  'bend-loss': 'loss of bends',
  'loss-per-end': 'loss at one end',
  'end-loss': 'loss at the two ends',
  'cable-loss': 'loss of the cable',
  'least-cable-loss': 'loss of the cable, at least',
  'ageing-reserve': 'ageing reserve',
  'sensitivity-margin': 'margin',
  'overload-margin': 'margin against too much light',
  'length-limit': 'length allowed',
  'data-rate': 'data rate',
  axes: 'axes',
  'axis-limit': 'axes allowed',
  'axes-left': 'axes left',
  'cycle-time': 'control cycle',
  'bytes-per-axis': 'bytes for each axis',
  'wire-share': 'part of the cycle on the wire',
  'supply-voltage': 'voltage of the supply',
  'feeding-voltage': 'voltage at the unit that feeds it',
  voltage: 'voltage',
  'minimum-voltage': 'least voltage it needs',
  'maximum-voltage': 'most voltage it stands',
  headroom: 'voltage to spare',
  load: 'load',
  inrush: 'inrush',
  'rated-current': 'rated current',
  'rated-inrush': 'rated inrush',
  'lead-length': 'length of the lead',
  'cross-section': 'cross-section',
  'conductor-resistance': 'resistance of the conductor at 20 °C',
  'conductor-temperature': 'temperature of the conductor',
  'lead-resistance': 'resistance of the lead, there and back',
  'lead-current': 'current in the lead',
  'lead-drop': 'drop in the lead',
  'dc-power': 'power from the DC link',
  'rated-dc-power': 'rated power of the DC link',
  capacitance: 'capacitance',
  'discharge-resistor': 'discharge resistor',
  'line-voltage': 'line voltage',
  'line-tolerance': 'line voltage above its figure, at most',
  'charged-voltage': 'voltage to which the DC link is charged',
  'discharge-time': 'time to discharge to 60 V',
};

/** Where a value comes from. */
export const termStatusWords: { readonly [S in TermStatus]: Term } = {
  documented: { label: 'documented', meaning: 'written down for this cabinet' },
  measured: { label: 'measured', meaning: 'found with a meter' },
  computed: { label: 'computed', meaning: 'worked out from other values' },
  assumed: { label: 'assumed', meaning: 'taken because nothing better is known' },
  'not-known': { label: 'not known', meaning: 'no figure is given' },
};

/** By which formula a value was worked out, or why it was assumed. */
export const termBasisWords: { readonly [B in TermBasis]: string } = {
  'margin-without-data': 'figures are missing, so 3 dB are taken',
  'reserve-not-given': 'none is written down, so none is counted',
  'coupler-loss-not-given': 'what a coupler loses is not written down, so nothing is counted',
  'bend-loss-not-given': 'what a bend loses is not written down, so nothing is counted',
  'turn-not-given': 'a bend without its angle counts as a quarter turn',
  'least-loss-not-given': 'the least attenuation is not written down; nothing is counted, which is on the safe side',
  'reference-temperature': 'the cabinet’s temperature is not written down, so 25 °C are taken, for which data sheets hold',
  'temperature-coefficient': 'coefficient × (temperature − 25 °C)',
  'attenuation-times-length': 'attenuation × length',
  'couplers-times-loss': 'couplers × loss of each',
  'turns-times-loss': 'quarter turns × loss of each at the tightest bend allowed',
  'two-ends': '2 × loss of each end',
  'sum-of-losses': 'sum of the losses',
  'power-budget': 'least launch power − loss − ageing reserve − sensitivity',
  'overload-budget': 'most light the receiver can take − (most launch power − least loss)',
  'counted-axes': 'axes of the drives on the chain',
  'one-axis-each': 'its axes are not written down, so it counts as one',
  'limit-less-axes': 'axes allowed − axes',
  'axes-on-the-wire': 'axes × bytes × 8 / (data rate × cycle), a line carrying no more bits than bauds',
  'usual-24-volts': 'its voltage is not written down, so 24 V are taken',
  'load-for-inrush': 'sum of what the units draw at switching on',
  'sum-of-loads': 'sum of what the units draw, shared by the resistances of the leads',
  'conductor-table': 'greatest resistance by IEC 60228:2004, tables 1 to 3',
  'scaled-conductor': 'the size is not in the table of IEC 60228; scaled by area from the next smaller one',
  'flexible-conductor': 'the class is not written down, so a flexible conductor (class 5 of IEC 60228) is taken',
  'ambient-of-cabinet': 'taken to be as warm as the cabinet',
  'table-temperature': 'no temperature is written down, so that of the table is taken',
  'copper-temperature': '2 × length × resistance at 20 °C × (234.5 + temperature) / 254.5, the form for copper in IEC 60228',
  network: 'Kirchhoff’s laws for all leads together, each unit drawing its documented current',
  'feeding-less-drop': 'voltage at the feeding end − drop in the lead',
  'current-times-resistance': 'current × resistance',
  'voltage-less-minimum': 'voltage − least voltage',
  'sum-of-powers': 'sum of the drives’ powers',
  'sum-of-capacitances': 'sum of supply and drives',
  'usual-tolerance': 'not written down, so 10 % are taken',
  'peak-of-line': '√2 × line voltage × (1 + tolerance)',
  'discharge-curve': 'resistor × capacitance × ln(charged voltage / 60 V)',
};

/** A figure that is missing, as the subject of "… is not written down". */
export const figureWords: { readonly [F in FigureCode]: string } = {
  'launch-power': 'least launch power',
  sensitivity: 'sensitivity',
  'greatest-launch-power': 'greatest launch power',
  'overload-power': 'most light it can take',
  'cable-length': 'length',
  attenuation: 'attenuation of its fibre',
  'coupler-loss': 'loss of a coupler',
  'bend-loss': 'loss of a quarter turn',
  'ageing-reserve': 'ageing reserve',
  'data-rate': 'data rate',
  'length-limit-at-rate': 'length allowed at this data rate',
  'cycle-class': 'control-cycle class',
  'axis-limit': 'axis limit of its control-cycle class',
  load: '24 V load',
  inrush: '24 V inrush',
  'minimum-voltage': 'least 24 V it needs',
  'supply-voltage': 'voltage it gives',
  'rated-current': 'rated 24 V current',
  'rated-inrush': 'rated 24 V inrush',
  'lead-length': 'length',
  'cross-section': 'cross-section',
  'conductor-class': 'conductor class',
  'dc-power': 'power from the DC link',
  'rated-dc-power': 'rated power of the DC link',
  capacitance: 'DC-link capacitance',
  'discharge-resistor': 'discharge resistor',
  'line-voltage': 'line voltage',
  'dc-link-supply': 'supply of its DC link',
};

/** How the 24 V at a unit is judged. */
export const verdictWords: { readonly [V in UnitVoltage['verdict']]: string } = {
  within: 'within its limits',
  'too-low': 'too low',
  'too-high': 'too high',
  'not-known': 'not known',
  'not-fed': 'fed by nothing',
};

/** Notes on missing figures, one for each thing: "-TB2: 24 V load and 24 V inrush are not written down". */
export function wordMissing(names: Names, missing: readonly MissingFigure[]): readonly string[] {
  const byThing = new Map<string | null, string[]>();
  for (const { of, figure } of missing) byThing.set(of, [...(byThing.get(of) ?? []), figureWords[figure]]);
  return [...byThing].map(([of, figures]) => {
    const name = of === null ? 'the cabinet' : names.thing(of);
    return `${startSentence(name)}: ${figures.join(', ')} not written down`;
  });
}

/** One term in a line: "loss of the fibre: 1.1 dB, computed: attenuation × length". */
export function wordTerm(names: Names, term: SumTerm, parent: string | null = null): string {
  const { code, status, of, source, basis } = term;
  // What is about the same thing as the term above it does not name it again.
  const whose = of === null || of === parent ? '' : ` (${names.thing(of)})`;
  const why = basis === null ? '' : `: ${termBasisWords[basis]}`;
  const where = source === null ? '' : `; ${source}`;
  return `${termWords[code]}${whose} = ${wordTermValue(term)}, ${termStatusWords[status].label}${why}${where}`;
}

/**
 * The waiting time of a DC link for cautions. Without data it is never a number. The time is that of the discharge resistor alone and
 * of figures that somebody wrote down, so the manual and the meter come first in either case.
 */
export function wordWaitingTime(seconds: number | null): string {
  return seconds === null
    ? 'Time to discharge: not known, see the machine’s manual. Then measure.'
    : `By the figures written down the DC link takes ${wordDuration(seconds)} to fall to 60 V. Wait at least as long as the machine’s manual says, then measure.`;
}

/** Heads of tables of sums. */
export const sumHeadings = {
  findings: 'Findings',
  light: 'Light on every fibre',
  axes: 'Axes',
  supplies: '24 V: what the supplies give',
  feed: '24 V: what reaches the units',
  dcLink: 'DC link',
  missing: 'Not written down in this cabinet',
  way: 'Way',
  loss: 'Loss',
  margin: 'Margin',
  tooMuch: 'Below too much',
  length: 'Length',
  lengthAllowed: 'Allowed',
  how: 'How known',
  cycleClass: 'Control cycle',
  allowed: 'Allowed',
  left: 'Left',
  wire: 'Of the wire',
  load: 'Load',
  rated: 'Rated',
  used: 'Used',
  steady: 'steady',
  inrush: 'switching on',
  output: (name: string) => `output ${name}`,
  fedFrom: 'Fed from',
  voltage: 'Voltage',
  needs: 'Needs',
  spare: 'To spare',
  verdict: 'Verdict',
  power: 'Power',
  capacitance: 'Capacitance',
  discharge: 'Down to 60 V',
} as const;

/** Figures that can be tried. */
export const triedWords: { readonly [F in FigureChange['figure']]: { readonly label: string; readonly unit: TermUnit } } = {
  ambient: { label: 'temperature in the cabinet', unit: '°C' },
  reserve: { label: 'ageing reserve', unit: 'dB' },
  length: { label: 'length', unit: 'm' },
  couplers: { label: 'couplers', unit: '1' },
  'measured-outbound': { label: 'measured loss, outbound', unit: 'dB' },
  'measured-return': { label: 'measured loss, return', unit: 'dB' },
  'cross-section': { label: 'cross-section', unit: 'mm²' },
  'conductor-temperature': { label: 'temperature of the conductor', unit: '°C' },
  load: { label: '24 V load', unit: 'A' },
  inrush: { label: '24 V inrush', unit: 'A' },
  'minimum-voltage': { label: 'least voltage', unit: 'V' },
  'dc-power': { label: 'power from the DC link', unit: 'kW' },
  capacitance: { label: 'DC-link capacitance', unit: 'µF' },
  'supply-voltage': { label: 'voltage of the supply', unit: 'V' },
  'rated-current': { label: 'rated current', unit: 'A' },
  'rated-inrush': { label: 'rated inrush', unit: 'A' },
  'rated-dc-power': { label: 'rated power of the DC link', unit: 'kW' },
  'discharge-resistor': { label: 'discharge resistor', unit: 'Ω' },
  'line-voltage': { label: 'line voltage', unit: 'V' },
};

/** A figure that is tried: "length of cable -WH3 12 m". */
export function wordFigureChange(names: Names, change: FigureChange): string {
  const { label, unit } = triedWords[change.figure];
  const whose = 'id' in change ? ` of ${names.thing(change.id)}` : '';
  return `${label}${whose} ${wordQuantity(change.value, unit)}`;
}

/** Single statements about sums. */
export const sumStatements = {
  dischargeNotKnown: 'not known, see the machine’s manual',
  assumedMargin: 'assumed',
  firstToFail: (unit: string, spare: string) => `When the 24 V sags, ${unit} fails first: it has ${spare} to spare.`,
  failsAlready: (unit: string) => `${unit} has too little already.`,
  tooMeshed: 'So many leads run between so many units that the voltages were not worked out.',
  tried: 'With these figures tried',
  noChains: 'No link is on a chain, so there is no light to reckon with.',
} as const;
