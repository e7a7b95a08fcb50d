import { assertNever } from '../base/index.ts';
import type { Behaviour } from '../schema/index.ts';
import type { DisplayPrediction, DisplayTerm, FibreCause, MomentName, ReportPrediction, UnitCause } from '../simulation/index.ts';
import { type Tense, wordFaultClause } from './faults.ts';
import type { Names } from './names.ts';
import { startSentence, wordList } from './numbers.ts';
import { wordNumber } from './quantities.ts';
import { endWords, meaningWords, type Term } from './words.ts';

/** The two moments of a simulation. */
export const momentWords: { readonly [M in MomentName]: Term } = {
  trip: { label: 'at the trip', meaning: 'when the machine stopped, or failed to come up' },
  now: { label: 'now', meaning: 'when the displays are read' },
};

/** Why a unit is dark, dead, or says something of its own; the unit itself is the subject: "its control fuse is open". */
export function wordUnitCause(names: Names, cause: UnitCause): string {
  switch (cause.code) {
    case 'not-powered': {
      const why = [
        ...cause.leads.map((id) => `${names.lead(id)} is open`),
        ...cause.supplies.map((id) => `supply ${names.unit(id)} gives none`),
      ];
      return `gets no 24 V: ${why.length > 0 ? wordList(why) : 'nothing feeds it'}`;
    }
    case 'voltage-too-low':
      return `gets too little voltage: ${wordNumber(cause.volts)} V are left of the 24 V, and it needs ${wordNumber(cause.minimumV)} V`;
    case 'fuse-open':
      return 'its control fuse is open';
    case 'contact-bad':
      return 'the contact at its place is bad';
    case 'taken-out':
      return 'it has been taken out';
    case 'feedback-short':
      return shortWords[cause.effect];
    case 'board-dead-dark':
      return 'its board is dead, with the display out';
    case 'board-dead-lit':
      return 'its board is dead although the display is lit: it sends nothing and notices nothing';
    case 'supply-dead':
      return 'the supply itself is dead';
    default:
      return assertNever(cause);
  }
}

const shortWords: { readonly [E in Behaviour['shortEffect']]: string } = {
  dark: 'a shorted feedback cable has put it out',
  code: 'a shorted feedback cable makes it show a code of its own, and silent on the chain',
  'code-linked': 'a shorted feedback cable makes it show a code of its own; it stays on the chain',
};

/** Why one direction of a link passes nothing: "cable -WH3 is cut", "-TB2 sends nothing". */
export function wordFibreCause(names: Names, cause: FibreCause, tense: Tense = 'now'): string {
  const past = tense === 'trip';
  const who = (unit: string | null) => (unit === null ? names.controller() : names.unit(unit));
  switch (cause.code) {
    case 'fault':
      return wordFaultClause(names, cause.fault, tense);
    case 'unplugged':
      return `the ${endWords[cause.end].label} ${past ? 'was' : 'is'} pulled`;
    case 'sender-not-alive':
      return `${who(cause.unit)} ${past ? 'sent' : 'sends'} nothing, because it ${past ? 'was' : 'is'} out of action`;
    case 'receiver-not-alive':
      return `${who(cause.unit)} ${past ? 'heard' : 'hears'} nothing, because it ${past ? 'was' : 'is'} out of action`;
    case 'muted':
      return `${who(cause.by)} ${past ? 'heard nothing on this link and so sent' : 'hears nothing on this link and so sends'} nothing on it`;
    default:
      return assertNever(cause);
  }
}

/** One term of a display's explanation, the unit being the subject: "hears nothing from above: cable -WH3 is cut". */
export function wordDisplayTerm(names: Names, term: DisplayTerm): string {
  switch (term.code) {
    case 'unit':
      return wordUnitCause(names, term.cause);
    case 'lost':
      return wordLoss(names, term);
    case 'hears-both':
      return 'hears its neighbours';
    case 'end-of-chain':
      return 'hears its neighbour above, and stands last on its chain';
    case 'off-chain':
      return 'is not on a chain, and is fed';
    case 'supply-lit':
      return 'is lit';
    case 'held':
      return 'keeps showing what it showed at the trip';
    case 'restarted':
      return 'was out of action at the trip and has started again since, so it keeps nothing';
    case 'never-linked':
      return 'says nothing of losses, because the whole chain has not been up since it was switched on';
    case 'both-shown-as':
      return shownAsWords[term.shown];
    default:
      return assertNever(term);
  }
}

const shownAsWords: { readonly [S in Behaviour['whenBoth']]: string } = {
  both: `has lost both ways, and shows ${meaningWords['both-losses'].label}`,
  upstream: `has lost both ways; its type then shows ${meaningWords['upstream-loss'].label} only`,
  downstream: `has lost both ways; its type then shows ${meaningWords['downstream-loss'].label} only`,
};

function wordLoss(names: Names, term: Extract<DisplayTerm, { code: 'lost' }>): string {
  const past = term.moment === 'trip';
  const side = term.side === 'upstream' ? 'above' : 'below';
  const when = past ? ' at the trip' : '';
  const causes = wordCauses(names, term.causes, term.moment);
  const at = term.link === null ? '' : ` at ${names.link(term.link)}`;
  if (term.scope === 'chain') {
    return `${past ? 'had' : 'has'} a break ${side} it${when}${at}${causes ? `: ${causes}` : ''}`;
  }
  return `${past ? 'heard' : 'hears'} nothing from ${side}${when}${causes ? `: ${causes}` : at && `, break${at}`}`;
}

function wordCauses(names: Names, causes: readonly FibreCause[], tense: Tense): string {
  return wordList([...new Set(causes.map((cause) => wordFibreCause(names, cause, tense)))]);
}

/** The whole reason of a display as sentences without the unit's name: "Hears nothing from above: cable -WH3 is cut." */
export function wordDisplayReason(names: Names, prediction: Pick<DisplayPrediction, 'because'>): string {
  const parts = [...new Set(prediction.because.map((term) => wordDisplayTerm(names, term)))];
  return parts.map((part) => `${startSentence(part)}.`).join(' ');
}

/** A gap of a chain: "between drive 2 (-TB2) and drive 3 (-TB3)"; for `none`: "all units reached". */
export function wordGap(names: Names, chainId: string, gap: number | 'none'): string {
  if (gap === 'none') return 'all units reached';
  return `between ${names.position(chainId, gap - 1)} and ${names.position(chainId, gap)}`;
}

/** Several possible gaps of one chain, as they may be read from a report. */
export function wordGaps(names: Names, chainId: string, gaps: readonly (number | 'none')[]): string {
  return wordList(
    gaps.map((gap) => wordGap(names, chainId, gap)),
    'or',
  );
}

/** What the controller says of a chain: "chain 1 is lost between drive 2 (-TB2) and drive 3 (-TB3)". */
export function wordReport(names: Names, prediction: Pick<ReportPrediction, 'chain' | 'gap' | 'speaks'>): string {
  const chain = names.chain(prediction.chain);
  if (!prediction.speaks) return `${chain}: the report tells nothing, because a unit is bridged`;
  return prediction.gap === 'none' ? `${chain}: all units reached` : `${chain} is lost ${wordGap(names, prediction.chain, prediction.gap)}`;
}

/** Why a chain is reported lost; empty when it is not. */
export function wordReportReason(names: Names, prediction: Pick<ReportPrediction, 'because'>): string {
  const reasons = prediction.because.map(({ link, direction, causes }) => ({ link, direction, why: wordCauses(names, causes, 'trip') }));
  const [first, second] = reasons;
  // A cut cable stops both directions for one reason, which is then said once.
  const alike =
    first !== undefined && second !== undefined && reasons.length === 2 && first.link === second.link && first.why === second.why;
  const parts = (alike ? [{ ...first, direction: null }] : reasons).map(({ link, direction, why }) => {
    const way = direction === null ? 'either way' : direction === 'outbound' ? 'outwards' : 'back';
    return `nothing passed ${names.link(link)} ${way}${why ? `: ${why}` : ''}`;
  });
  return parts.map((part) => `${startSentence(part)}.`).join(' ');
}
