import { assertNever } from '../base/index.ts';
import type { DisplayMeaning, Fault, Intervention, LinkEnd, MachineState, Provocation } from '../schema/index.ts';
import type { Step, StepCaution } from '../steps/index.ts';
import type { Topology } from '../topology/index.ts';
import { actWords, wordAct } from './acts.ts';
import { type CautionCode, cautionWords } from './cautions.ts';
import { wordGap } from './explanations.ts';
import { wordItem } from './faults.ts';
import { type LookKind, wordLook, wordOutcomes } from './looks.ts';
import { type Names, withoutCable } from './names.ts';
import { startSentence, wordCount, wordList } from './numbers.ts';
import { directionWords, endWords, meaningWords, type Term } from './words.ts';

/** What state of the machine a step needs. */
export const machineStateWords: { readonly [S in MachineState]: Term } = {
  closed: { label: 'cabinet closed', meaning: 'the machine stays as it is, the cabinet closed' },
  open: { label: 'opens the live cabinet', meaning: 'the machine stays switched on, and the cabinet is opened' },
  isolated: { label: 'switched off and locked', meaning: 'switched off, locked and discharged; switching off erases displays and report' },
};

/** A step as something to do: "check light at -WH3, lower plug", "reseat -WH3 at both ends". */
export function wordStep(names: Names, step: Step): string {
  switch (step.do) {
    case 'read-display':
      return `read the display of ${names.unit(step.unit)}`;
    case 'read-report':
      return `read the report of ${names.chain(step.chain)}`;
    case 'look':
      return wordLookToDo(names, step.look);
    case 'act':
      return wordActs(names, step.acts, 'toDo');
    case 'provoke':
      return provocationWords[step.how].toDo;
    default:
      return assertNever(step);
  }
}

/** Ways to make a fault that comes and goes show itself: as something to do, how, and as something done. */
const provocationWords: { readonly [P in Provocation]: { readonly toDo: string; readonly how: string; readonly done: string } } = {
  wait: {
    toDo: 'restart and wait',
    how: 'Switch off and on again, let the machine run as it usually does, and wait: does it halt again?',
    done: 'restarted and waited',
  },
  flex: {
    toDo: 'restart and move the cables',
    how: 'Switch off and on again, drives disabled: axes may start, stand clear. Open the door and move the cables gently, well away from live parts, one after another: does it halt again?',
    done: 'restarted and moved the cables',
  },
  warm: {
    toDo: 'restart and let it get warm',
    how: 'Switch off and on again, close the cabinet and let it get as warm as it does at work: does it halt again?',
    done: 'restarted and let it get warm',
  },
};

function wordLookToDo(names: Names, look: Extract<Step, { do: 'look' }>['look']): string {
  switch (look.look) {
    case 'light-at-plug':
      return `check light at ${shortLink(names, look.link)}, ${endWords[look.end].label}`;
    case 'light-at-port':
      return `check light at the port of ${shortLink(names, look.link)}, ${endWords[look.end].label}`;
    case 'lamp':
      return `lamp through ${shortLink(names, look.link)}, ${directionWords[look.fibre].label}`;
    case 'voltage':
      return `measure 24 V at ${names.unit(look.unit)}`;
    case 'compare-plugs':
      return `compare the plugs of ${names.unit(look.unit)}`;
    case 'compare-fibres':
      return `compare the fibres of ${shortLink(names, look.link)}`;
    default:
      return assertNever(look);
  }
}

/** A cable by its designation alone, where it has one: the sign at its beginning says what it is. */
function shortLink(names: Names, link: string): string {
  const name = names.link(link);
  return withoutCable(name);
}

function wordActs(names: Names, acts: readonly Intervention[], form: 'toDo' | 'done'): string {
  return wordList(listActs(names, acts, form));
}

/** Every act in words; where both plugs of a cable are reseated or cleaned, that is one: "reseat -WH3 at both ends". */
export function listActs(names: Names, acts: readonly Intervention[], form: 'toDo' | 'done'): readonly string[] {
  const listed: string[] = [];
  for (const [index, act] of acts.entries()) {
    const isTwin = (other: Intervention) =>
      'end' in act && 'end' in other && other.do === act.do && other.link === act.link && other.end !== act.end;
    if (acts.slice(0, index).some(isTwin)) continue;
    const both = (act.do === 'reseat-plug' || act.do === 'clean-plug') && acts.slice(index + 1).some(isTwin);
    listed.push(both ? `${actWords[act.do][form]} ${shortLink(names, act.link)} at both ends` : wordAct(names, act, form));
  }
  return listed;
}

/** Where to go for it: "at -TB3 up", "at -TB2 down and -TB3 up", "chain 1, position 3, drive 2"; empty where the step says it itself. */
export function wordStepPlace(names: Names, topology: Topology, step: Step): string {
  switch (step.do) {
    case 'read-display':
      return names.place(step.unit);
    case 'read-report':
      return `at ${names.controller()}`;
    case 'look': {
      const { look } = step;
      if (!('link' in look)) return names.place(look.unit);
      return 'end' in look ? `at ${plugPlace(names, topology, look.link, look.end)}` : between(names, topology, look.link);
    }
    case 'act':
      return wordList([...new Set(step.acts.flatMap((act) => actPlaces(names, topology, act)))]);
    case 'provoke':
      return '';
    default:
      return assertNever(step);
  }
}

function actPlaces(names: Names, topology: Topology, act: Intervention): readonly string[] {
  if ('end' in act) return [plugPlace(names, topology, act.link, act.end)];
  if ('link' in act) return [between(names, topology, act.link)];
  if ('unit' in act) return [names.place(act.unit)];
  if ('chain' in act || act.do === 'replace-controller') return [`at ${names.controller()}`];
  if ('lead' in act) {
    const feed = topology.feeds.find(({ lead }) => lead === act.lead);
    return feed ? [`from ${names.unit(feed.from)} to ${names.unit(feed.to)}`] : [];
  }
  const unit = [...topology.feedbacks.values()].find(({ id }) => id === act.feedback)?.unit;
  return unit === undefined ? [] : [`at ${names.unit(unit)}`];
}

/** The port in which a plug belongs: "-TB2 down". */
function plugPlace(names: Names, topology: Topology, link: string, end: LinkEnd): string {
  const record = [...topology.links.values()].find(({ id }) => id === link);
  if (end === 'lower') return record?.lower ? `${names.unit(record.lower.unit)} up` : endWords.lower.label;
  if (!record?.upper) return endWords.upper.label;
  return 'chain' in record.upper ? `${names.controller()}, ${names.chain(record.upper.chain)}` : `${names.unit(record.upper.unit)} down`;
}

const between = (names: Names, topology: Topology, link: string) =>
  `between ${plugPlace(names, topology, link, 'upper')} and ${plugPlace(names, topology, link, 'lower')}`;

/** How it is done, in one or two short sentences. */
export function wordStepHow(step: Step): string {
  switch (step.do) {
    case 'read-display':
      return 'Read it before anything is switched off.';
    case 'read-report':
      return 'Read it before anything is switched off or reset.';
    case 'look':
      return lookHow[step.look.look];
    case 'act':
      return step.acts.some(({ do: kind }) => kind === 'pull-feedback')
        ? pulledHow
        : 'Switch off, do it, switch on again: does the machine run?';
    case 'provoke':
      return provocationWords[step.how].how;
    default:
      return assertNever(step);
  }
}

/** A control halts for an encoder that is missing, whatever the chain does. */
export const pulledHow =
  'Does the chain come up, all displays quiet? The control may still halt for the missing encoder. It stays pulled until the next act plugs it in again, or exchanges the cable.';

const lookHow: { readonly [K in LookKind]: string } = {
  'light-at-plug': 'Leave the machine on. Pull the plug and hold white paper before it; plug it in again afterwards.',
  'light-at-port': 'Leave the machine on. Pull the plug and hold white paper before the port; plug it in again afterwards.',
  lamp: 'Pull both plugs, shine a lamp into the one, hold white paper before the other; plug both in again afterwards.',
  voltage: 'Measure at the unit’s own terminals, under load.',
  'compare-plugs': 'Compare with a photo or drawing: does each optical plug sit in its own port?',
  'compare-fibres': 'Compare with a photo or drawing: does each fibre sit in its own hole?',
};

/** What was found, as a button says it: "none", "quiet", "machine runs". */
export function wordStepOutcome(names: Names, step: Step, outcome: string): string {
  switch (step.do) {
    case 'read-display':
      return meaningWords[outcome as DisplayMeaning].label; // the outcome of reading a display is a meaning
    case 'read-report':
      return wordGap(names, step.chain, outcome === 'none' ? 'none' : Number(outcome));
    case 'look':
      return wordOutcomes(step.look.look, [outcome]);
    case 'act':
      if (step.acts.some(({ do: kind }) => kind === 'pull-feedback')) return outcome === 'runs' ? 'chain comes up' : 'chain still down';
      return outcome === 'runs' ? 'machine runs' : 'still halted';
    case 'provoke':
      return outcome === 'runs' ? 'did not come again' : 'came again';
    default:
      return assertNever(step);
  }
}

/**
 * An item in few words, as an outcome's consequence: "lower plug", "-TB3 board". `link`: the cable that the step is about, which need
 * not be named again.
 */
export function wordItemShort(names: Names, fault: Fault, link: string | null): string {
  if ('link' in fault) {
    const what = fault.item === 'plug' ? endWords[fault.end].label : fault.item === 'route' ? 'cable route' : 'cable';
    return fault.link === link ? what : `${shortLink(names, fault.link)} ${what}`;
  }
  if ('unit' in fault) return `${names.unit(fault.unit)} ${unitItems[fault.item]}`;
  return wordItem(names, fault);
}

const unitItems = { board: 'board', fuse: 'fuse', place: 'slot contact', wiring: 'plugs crossed', supply: 'supply' } as const;

/** A step as done, with what was found: "light at the lower plug of cable -WH3: none". */
export function wordStepDone(names: Names, step: Step, outcome: string): string {
  const found = wordStepOutcome(names, step, outcome);
  switch (step.do) {
    case 'read-display':
      return `${names.unit(step.unit)} ${found}`;
    case 'read-report':
      return `report ${names.chain(step.chain)}: ${found}`;
    case 'look':
      return `${wordLook(names, step.look)}: ${found}`;
    case 'act':
      return `${wordActs(names, step.acts, 'done')}: ${found}`;
    case 'provoke':
      return `${wordProvoked(names, step)}: ${found}`;
    default:
      return assertNever(step);
  }
}

/** A step as done, where nobody has said yet what came of it: "reseated -WH3 at both ends". */
export function wordStepTried(names: Names, step: Extract<Step, { do: 'act' | 'provoke' }>): string {
  return step.do === 'act' ? wordActs(names, step.acts, 'done') : wordProvoked(names, step);
}

/** "restarted and moved the cables (cable -WH3)". */
function wordProvoked(names: Names, { how, subjects }: Extract<Step, { do: 'provoke' }>): string {
  const { done } = provocationWords[how];
  return subjects.length === 0 ? done : `${done} (${fewNames(subjects.map((id) => names.thing(id)))})`;
}

/** Acts as done: "reseated -WH3 at both ends". */
export function wordActsDone(names: Names, acts: readonly Intervention[]): string {
  return wordActs(names, acts, 'done');
}

/** More names than this would be a page. */
const mostNamed = 6;

/** What a caution is about in this cabinet, after its own words; empty where there is nothing to add. */
export function wordCautionDetail(names: Names, caution: StepCaution): string {
  switch (caution.code) {
    case 'note-first':
      return `Not noted yet: ${fewNames([
        ...caution.units.map((unit) => names.unit(unit)),
        ...caution.chains.map((chain) => `report of ${names.chain(chain)}`),
      ])}.`;
    case 'hanging-axes':
      return wordHanging(names, caution);
    case 'reference-position':
      return `Here: ${fewNames(caution.feedbacks.map((feedback) => names.feedback(feedback)))}.`;
    default:
      return '';
  }
}

function wordHanging(names: Names, { axes, unsaid }: Extract<StepCaution, { code: 'hanging-axes' }>): string {
  const open = [...unsaid.axes.map((axis) => `axis ${axis}`), ...unsaid.units.map((unit) => `the axis of ${names.unit(unit)}`)];
  return [
    axes.length > 0 ? `Here: ${fewNames(axes.map((axis) => `axis ${axis}`))}.` : '',
    open.length > 0 ? `Not written down whether ${open.length === 1 ? 'it hangs' : 'they hang'}, so look first: ${fewNames(open)}.` : '',
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

function fewNames(list: readonly string[]): string {
  if (list.length <= mostNamed) return wordList(list);
  return `${list.slice(0, mostNamed - 1).join(', ')} and ${wordCount(list.length - mostNamed + 1, 'other')}`;
}

/** The caution itself: label and sentence. */
export const wordCaution = (caution: StepCaution): Term => cautionWords[caution.code];

/** A caution in as few words as there are, for a strip. */
const shortCautions: { readonly [C in CautionCode]: string } = {
  'note-first': 'First note all displays and the report',
  'live-cabinet': 'Dangerous voltages',
  'all-feeds': 'Switch off all feeds',
  'dc-link': 'Wait for the DC link, measure',
  'lock-out': 'Lock out, tag',
  'hanging-axes': 'Prop hanging axes',
  'axes-may-start': 'Axes may start: drives disabled, stand clear',
  'reference-position': 'Reference position may be lost',
  'fibre-light': 'Never look into a fibre end',
  esd: 'Static charge',
  'safety-check': 'Test safety functions after',
};
export const wordCautionShort = (code: CautionCode): string => shortCautions[code];

/** Labels around the steps. */
export const stepTexts = {
  region: 'Next step',
  bestOf: (count: number) => (count === 1 ? 'the only one that tells' : `best of ${count}`),
  other: (count: number) => `one of ${count}`,
  next: (step: string) => `Next: ${step}`,
  others: 'Other steps',
  working: 'Working out what to do next …',
  none: 'No look and no act would tell more. Note what has not been read yet.',
  noneSuspected: 'Nothing needs to be done by what was seen.',
  /** In how many of a hundred such cases the act mends the machine. */
  mends: (hundred: number) => `Mends ${hundred} of 100 such cases.`,
  mendsShort: (hundred: number) => `mends ${hundred} of 100`,
  /** In how many of a hundred such cases one place stands out afterwards. */
  settles: (hundred: number) =>
    hundred === 0 ? 'Narrows it down, but does not settle it alone.' : `Leaves one place nearly sure in ${hundred} of 100 such cases.`,
  thenSuspect: (suspect: string, share: string) => `then ${suspect} ${share}`,
  thenNothing: 'not expected',
  /** "From 9 displays, 2 reports and 1 check, after 2 acts; look 2 at the machine." */
  fromSeveral: (
    count: { readonly displays: number; readonly reports: number; readonly looks: number; readonly acts: number },
    snapshots: number,
  ) =>
    `From ${wordList([
      wordCount(count.displays, 'display'),
      ...(count.reports > 0 ? [wordCount(count.reports, 'report')] : []),
      ...(count.looks > 0 ? [wordCount(count.looks, 'check')] : []),
    ])}${count.acts > 0 ? `, after ${wordCount(count.acts, 'act')}` : ''}; look ${snapshots} at the machine.`,
  found: 'What was found?',
  rare: 'Not expected:',
  somethingElse: 'Something else',
  backToBest: 'Back to the best step',
  partsGroup: 'Best told apart by:',
  /** Why what tells the group apart is not the next step. */
  partsLater: (nextInAll: string, thisInAll: string) =>
    nextInAll === thisInAll
      ? 'The step above comes first: it costs no more down to the repaired machine, and may mend it at once.'
      : `The step above comes first: down to the repaired machine about ${nextInAll}, this one first ${thisInAll}.`,
  partsNow: 'The step above tells them apart best.',
  showStep: (step: string) => `Show the step: ${step}`,
  caution: 'Before you begin',
  rateNote: 'By what it tells; how long it takes is not weighed.',
  noteNow: 'Enter them now',
  cautionsMore: 'In full',
  cautionsLess: 'Close',
  entered: (what: string) => `Entered: ${what}.`,
  undoName: (what: string) => what,
  startsAnew: 'A restart begins a new look: note the displays again if it is still halted.',
} as const;

/** The text of a step in a sentence of its own. */
export const wordStepTitle = (names: Names, step: Step): string => startSentence(wordStep(names, step));
