import { assertNever } from '../base/index.ts';
import type { Fault, FaultMode, Onset } from '../schema/index.ts';
import type { DisplayPrediction, DisplayTerm, FibreCause, MomentName, UnitCause, UnitState } from '../simulation/index.ts';
import { wordFibreCause, wordUnitCause } from './explanations.ts';
import { type Tense, wordFaultClause } from './faults.ts';
import type { Names } from './names.ts';
import { startSentence, wordCount, wordList } from './numbers.ts';
import { directionWords, meaningWords, onsetWords } from './words.ts';

/*
 * What the simulation says: what was put in, what every unit then shows and why, and the way of the light hop by hop. Every word of
 * it says that nothing of this was seen.
 */

/** Labels of the commands about the simulation. */
export const injectCommandLabels = {
  toggleInject: 'Simulate a fault',
  endInject: 'End the simulation',
  openInjection: 'Choose a fault to simulate',
  closeInjection: 'Close the list of faults',
  injectFault: 'Simulate this fault',
  removeFault: 'Take a simulated fault out',
  clearFaults: 'Take all simulated faults out',
  setPresence: 'Say whether a simulated fault comes and goes',
  setLoss: 'Say how dim a simulated fault makes a fibre',
  setInjectOnset: 'Say when the simulated faults came',
  showMoment: 'Show the trip, or now',
  followChain: 'Follow the light along a chain',
  goToHop: 'Go to a step of the light',
  nextHop: 'Next step of the light',
  previousHop: 'Previous step of the light',
  nextStop: 'Go on to where the light stops',
  askTakePattern: 'Take this pattern into the case…',
  closeTakePattern: 'Take nothing into the case',
  takePattern: 'Take this pattern into the case',
} as const;

/** What happened to a display or report that is not as in the whole cabinet. */
export interface ShownChange {
  readonly unit: string;
  readonly meaning: DisplayPrediction['meaning'];
}

const mostChanges = 4;

const simulatedFaults = (faults: readonly string[]) => `Simulated ${faults.length === 1 ? 'fault' : 'faults'}: ${wordList(faults)}.`;

export const injectWords = {
  mode: 'Simulation',
  title: (title: string) => `Simulation: ${title}`,
  badge: 'nothing here was seen on the machine',
  entered: 'Simulation. Nothing here was seen on the machine. Choose a part of the picture and say what is wrong with it.',
  left: 'Simulation ended. The window shows what was seen.',
  button: 'Simulate',
  end: 'End simulation',
  answerRegion: 'What would happen',
  cabinetRegion: 'Cabinet, simulated',
  skipTo: {
    answer: 'Go to what would happen',
    cabinet: 'Go to the picture',
    suspects: 'Go to the simulated faults',
    grid: 'Go to the light',
  },

  /** The first line. */
  ifNothing: 'What if …?',
  ifNothingWhy: 'Click a part of the picture, or press Enter on it, and say what is wrong with it. Several faults at once are allowed.',
  if: (clauses: readonly string[]) => `If ${wordList(clauses)} …`,
  noChange: 'No display and no report changes.',
  changes: (names: Names, changes: readonly ShownChange[], reports: readonly string[]): string => {
    const listed = changes
      .slice(0, mostChanges)
      .map(({ unit, meaning }, index) => `${names.unit(unit)}${index === 0 ? ' shows' : ''} ${meaningWords[meaning].label}`);
    const more = changes.length - listed.length;
    const shown = [...listed, ...(more > 0 ? [`${wordCount(more, 'more display')} change${more === 1 ? 's' : ''}`] : [])];
    const sentences = [...(shown.length > 0 ? [wordList(shown)] : []), ...reports];
    return sentences.map((sentence) => `${startSentence(sentence)}.`).join(' ');
  },
  unsound: 'This cabinet cannot be simulated yet.',

  /** The head of the picture. */
  legend: { light: 'light', dark: 'no light', silent: 'nothing sent', heard: 'heard', unheard: 'not heard' },
  reportOf: 'report of the controller',
  shows: 'shows',
  why: 'why',
  notYet: 'not yet known',
  /** What a screen reader hears of a unit. */
  unitName: (parts: {
    readonly unit: string;
    readonly kind: string;
    readonly place: string;
    readonly faults: readonly string[];
    readonly shows: string | null;
    readonly why: string;
  }) =>
    [
      `${parts.unit}, ${parts.kind}${parts.place ? `, ${parts.place}` : ''}.`,
      parts.faults.length > 0 ? simulatedFaults(parts.faults) : '',
      parts.shows === null ? 'Simulated: not yet known.' : `Simulated: ${parts.shows}. ${parts.why}`,
    ]
      .filter((part) => part !== '')
      .join(' ')
      .trim(),
  linkName: (link: string, faults: readonly string[], outbound: string, back: string) =>
    `${startSentence(link)}. ${faults.length > 0 ? `${simulatedFaults(faults)} ` : ''}Outbound ${outbound}, return ${back}.`,
  leadName: (lead: string, faults: readonly string[]) => `${startSentence(lead)}.${faults.length > 0 ? ` ${simulatedFaults(faults)}` : ''}`,
  faultCount: (count: number) => wordCount(count, 'fault'),

  /** The list of faults that can be put on a thing. */
  choose: (thing: string) => `What is wrong with ${thing}?`,
  chooseHint: 'Chosen again, a fault is taken out.',

  /** The faults that were put in. */
  injected: 'Simulated faults',
  none: 'Nothing is broken yet.',
  another: 'Another fault',
  remove: (fault: string) => `Take out: ${fault}`,
  clear: 'Take all out',
  presence: 'How steadily',
  presences: { steady: 'steady', intermittent: 'comes and goes', gone: 'gone now' },
  presenceMeanings: {
    steady: 'there all the time',
    intermittent: 'comes and goes, and is there at the trip and now',
    gone: 'comes and goes: it was there at the trip, and is gone now',
  },
  onlySteady: 'always steady',
  lossDb: 'loses',
  lossUnit: 'dB more',
  lossHint: 'empty: too much for telegrams',
  lossName: (fault: string) => `Added loss in decibels: ${fault}`,
  onset: 'Fault came',
  onsets: { 'while-running': onsetWords['while-running'].label, 'at-power-up': onsetWords['at-power-up'].label } satisfies Record<
    Onset,
    string
  >,
  mistakeWhileRunning: 'A wiring mistake shows when the machine is first switched on: one that was running did not have it.',
  assumedBehaviour: (types: readonly string[]) =>
    `How ${wordList(types)} ${types.length === 1 ? 'answers' : 'answer'} to a loss is not known in full; the usual way is taken.`,
  said: (fault: string, change: string) => `${simulatedFaults([fault])} ${change}`,
  saidOut: (fault: string, change: string) => `Taken out: ${fault}. ${change}`,

  /** The way of the light. */
  way: 'Along the light',
  wayOf: 'Along the light of',
  chainChoice: 'Chain',
  step: (hop: number, of: number) => `step ${hop} of ${of}`,
  stepsInAll: (count: number) => wordCount(count, 'step'),
  back: 'Back',
  next: 'Next step',
  begin: 'First step',
  toStop: 'Next stop',
  noStop: 'No stop',
  toStopTitle: 'Go on to where the light stops',
  toEnd: 'All at once',
  outboundHead: 'Outbound, away from the controller',
  returnHead: 'Return, back to the controller',
  reportHead: 'Report',
  moment: 'Moment',
  moments: { trip: 'at the trip', now: 'now' } satisfies Record<MomentName, string>,
  momentsAlike: 'Both are alike: nothing is gone since the trip.',
  saidHop: (step: string, words: string) => `${startSentence(step)}. ${words}`,

  /** The light as a table. */
  lightRegion: 'Light',
  light: (chain: string) => `Light on ${chain}`,
  after: (hop: number, of: number) => `after step ${hop} of ${of}`,
  wholeWay: 'the whole way',
  lightCaption: 'What the controller and each unit of the chain hear and send at each port, in chain order.',
  rows: { hearsUp: 'hears at up', sendsDown: 'sends at down', hearsDown: 'hears at down', sendsUp: 'sends at up' },
  soItShows: 'so it shows',
  reports: 'reports',
  cells: { light: 'light', dark: 'nothing', silent: 'silent', none: 'no port', waiting: 'not yet known' },

  /** Against what was seen, and into the case. */
  against: 'Against what was seen',
  fits: (fitting: number, of: number, nothing: boolean) =>
    `${nothing ? 'A whole cabinet' : 'This'} fits ${fitting === of && of > 1 ? 'all ' : `${fitting} of `}${wordCount(of, 'observation')}.`,
  nothingSeen: 'Nothing was seen yet.',
  take: {
    button: 'Take this pattern into the case…',
    title: 'Take this pattern into the case',
    what: 'The displays and reports chosen here are entered as if they had been seen, with when the fault came and whether the control is halted. Each is noted as simulated.',
    replaces: (what: string) => `They take the place of what the case holds: ${what}. Undo brings that back.`,
    holds: (displays: number, reports: number, looks: number, snapshots: number) =>
      wordList([
        ...(displays > 0 ? [wordCount(displays, 'display')] : []),
        ...(reports > 0 ? [wordCount(reports, 'report')] : []),
        ...(looks > 0 ? [wordCount(looks, 'look')] : []),
        ...(snapshots > 1 ? [`${snapshots} states of the machine`] : []),
      ]),
    displays: 'Displays',
    reports: 'Reports',
    all: 'All',
    none: 'None',
    notQuiet: 'Only what is not quiet',
    take: 'Take into the case',
    cancel: 'Cancel',
    count: (displays: number, reports: number) => `${wordCount(displays, 'display')}, ${wordCount(reports, 'report')}`,
    also: (onset: string, halted: string) => `Fault came ${onset}; the control is ${halted}.`,
    simulated: 'simulated, not seen',
    note: (faults: readonly string[]) => `Simulated, not seen on a machine: ${faults.length === 0 ? 'nothing broken' : wordList(faults)}.`,
    step: 'pattern from the simulation',
    taken: (displays: number, reports: number) =>
      `Taken into the case: ${wordCount(displays, 'simulated display')} and ${wordCount(reports, 'simulated report')}.`,
  },
} as const;

const boardTags: { readonly [M in FaultMode<'board'>]: string } = {
  'dead-dark': 'board dead',
  'dead-lit': 'board dead, lit',
  'up-rx': 'receiver dead',
  'up-tx': 'transmitter dead',
  'down-rx': 'receiver dead',
  'down-tx': 'transmitter dead',
  'up-port': 'up port dead',
  'down-port': 'down port dead',
};

/** A fault in one or two words, for the place on the picture where it lies: "cut", "loose", "receiver dead". */
export function wordFaultTag(fault: Fault): string {
  switch (fault.item) {
    case 'cable':
      return fault.mode === 'fibres-crossed' ? 'crossed' : fault.mode.endsWith('dim') ? 'dim' : 'cut';
    case 'plug':
    case 'route':
      return fault.mode;
    case 'board':
      return boardTags[fault.mode];
    case 'fuse':
      return 'fuse open';
    case 'place':
      return 'bad contact';
    case 'wiring':
      return 'plugs exchanged';
    case 'controller-port':
      return 'port dead';
    case 'controller':
      return 'all ports dead';
    case 'lead':
      return 'open';
    case 'supply':
      return fault.mode === 'dead' ? 'dead' : 'output lost';
    case 'feedback':
      return 'cable shorted';
    default:
      return assertNever(fault);
  }
}

/** Why a unit shows what it shows, in the few words that a module has room for. */
export function wordShortReason(because: readonly DisplayTerm[]): string {
  const lost = (side: 'upstream' | 'downstream') => because.find((term) => term.code === 'lost' && term.side === side);
  const up = lost('upstream');
  const down = lost('downstream');
  const held = because.some(({ code }) => code === 'held') ? ', held since the trip' : '';
  if (up?.code === 'lost' && down?.code === 'lost') {
    return up.scope === 'chain' ? `breaks above and below it${held}` : `${hears(up.moment)} nothing at either port${held}`;
  }
  const one = up ?? down;
  if (one?.code === 'lost') {
    const [side, port] = one.side === 'upstream' ? ['above', 'up'] : ['below', 'down'];
    return one.scope === 'chain' ? `a break ${side} it${held}` : `${hears(one.moment)} nothing at ${port}${held}`;
  }
  const [first] = because.filter(({ code }) => code !== 'restarted');
  return first ? shortTerm(first) : 'has started again';
}

const hears = (moment: MomentName) => (moment === 'trip' ? 'heard' : 'hears');

function shortTerm(term: DisplayTerm): string {
  switch (term.code) {
    case 'unit':
      return shortCause(term.cause);
    case 'hears-both':
      return 'hears light at both ports';
    case 'end-of-chain':
      return 'hears light at up, end of chain';
    case 'off-chain':
      return 'not on a chain, is fed';
    case 'supply-lit':
      return 'is lit';
    case 'never-linked':
      return 'its chain has not been up yet';
    case 'restarted':
      return 'has started again';
    case 'held':
      return 'held since the trip';
    case 'lost':
      return term.side === 'upstream' ? 'a break above it' : 'a break below it';
    case 'both-shown-as':
      return 'lost both ways';
    default:
      return assertNever(term);
  }
}

function shortCause(cause: UnitCause): string {
  switch (cause.code) {
    case 'not-powered':
      return 'gets no 24 V';
    case 'voltage-too-low':
      return 'gets too little voltage';
    case 'fuse-open':
      return 'control fuse open';
    case 'contact-bad':
      return 'bad slot contact';
    case 'taken-out':
      return 'taken out';
    case 'feedback-short':
      return 'feedback cable shorted';
    case 'board-dead-dark':
      return 'board dead';
    case 'board-dead-lit':
      return 'board dead, notices nothing';
    case 'supply-dead':
      return 'dead itself';
    default:
      return assertNever(cause);
  }
}

/** What is said of one hop of the light; `from` and `to` are the ends by the way it runs, null the controller. */
export interface HopFacts {
  readonly direction: 'outbound' | 'return';
  readonly link: string;
  readonly from: string | null;
  readonly to: string | null;
  readonly hears: boolean;
  readonly causes: readonly FibreCause[];
  readonly fromState: Pick<UnitState, 'alive' | 'causes'> | null;
  readonly toState: Pick<UnitState, 'alive' | 'causes'> | null;
  readonly silences: boolean;
  /** The last unit of the chain is reached: here the light turns round. */
  readonly isLast: boolean;
}

/** One hop in plain words: "-TB2 hears -TB1 at up." or "The outbound fibre of cable -WH3 is cut, so -TB3 hears nothing at up." */
export function wordHop(names: Names, facts: HopFacts, moment: MomentName): string {
  const past = moment === 'trip';
  const who = (unit: string | null) => (unit === null ? names.controller() : names.unit(unit));
  const port = facts.direction === 'outbound' ? 'up' : facts.to === null ? 'its port' : 'down';
  const hear = past ? 'heard' : 'hears';
  const by = names.link(facts.link);
  if (facts.hears) {
    const turn = facts.isLast ? ` It ${past ? 'was' : 'is'} the last one: here the light turns round.` : '';
    return `${startSentence(who(facts.to))} ${hear} ${who(facts.from)} at ${port}, by ${by}.${turn}`;
  }
  const reasons = hopReasons(names, facts, moment);
  const deaf = facts.toState?.alive === false ? '' : `, so ${who(facts.to)} ${hear} nothing at ${port}`;
  const silent = facts.silences ? ` It therefore ${past ? 'fell' : 'falls'} silent on this link itself.` : '';
  return `${startSentence(wordList(reasons))}${deaf}.${silent}`;
}

/** Why nothing passes: each cause once; who is out of action with the reason; what the fault of the port says already is left out. */
function hopReasons(names: Names, { causes, fromState, toState, direction }: HopFacts, moment: MomentName): readonly string[] {
  const tense: Tense = moment;
  const said = causes.flatMap((cause) => {
    const words = wordFibreCause(names, cause, tense);
    const state = cause.code === 'sender-not-alive' ? fromState : cause.code === 'receiver-not-alive' ? toState : null;
    const portFault = causes.some(
      (one) => one.code === 'fault' && (one.fault.item === 'controller' || one.fault.item === 'controller-port'),
    );
    if ((cause.code === 'sender-not-alive' || cause.code === 'receiver-not-alive') && cause.unit === null && portFault) return [];
    if (cause.code === 'muted') {
      return [`${words}, although the ${directionWords[direction].label} fibre ${moment === 'trip' ? 'was' : 'is'} whole`];
    }
    const why = (state?.causes ?? []).map((one) => wordUnitCause(names, one));
    return [why.length > 0 ? `${words} (${wordList(why)})` : words];
  });
  return [...new Set(said)];
}

/** How the way begins: "-KF1 sends light out on chain 1." */
export function wordHopStart(names: Names, chain: string, causes: readonly FibreCause[], moment: MomentName): string {
  const past = moment === 'trip';
  const port = causes.find((cause) => cause.code === 'sender-not-alive');
  if (port)
    return `The controller’s port of ${names.chain(chain)} ${past ? 'was' : 'is'} out of action: it ${past ? 'sent' : 'sends'} nothing.`;
  const muted = causes.find((cause) => cause.code === 'muted');
  if (muted) return `${startSentence(wordFibreCause(names, muted, moment))}.`;
  return `${startSentence(names.controller())} ${past ? 'sent' : 'sends'} light out on ${names.chain(chain)}.`;
}

/** "-TB3 shows upstream loss." */
export function wordShows(names: Names, unit: string, meaning: DisplayPrediction['meaning']): string {
  return `${names.unit(unit)} shows ${meaningWords[meaning].label}.`;
}

/** The clauses of injected faults, those that are gone now said so. */
export function wordInjectedClause(names: Names, fault: Fault): string {
  const clause = wordFaultClause(names, fault);
  if (fault.absentNow) return `${wordFaultClause(names, fault, 'trip')} at the trip only`;
  return fault.presence === 'intermittent' ? `${clause} now and then` : clause;
}
