import type { CabinetContent, Circumstance, Fault, ItemKind, SharpenedRates } from '../schema/index.ts';

/** How often a mode occurs, and where that figure comes from. */
export interface Rate {
  /** λ, occurrences per year; for wiring mistakes the probability per new or reworked cabinet instead. */
  readonly perYear: number;
  /** Share f of the rate that shows itself as intermittent, 0 to 1. */
  readonly intermittentShare: number;
  readonly source: string;
}

const assumed = 'assumed';
const share = 0.3;

/** A mode of a kind of item, whatever thing it is of. */
export interface ModeKind {
  readonly item: ItemKind;
  readonly mode: string;
}

/**
 * Default rates: domain section 9. All are assumed; a cabinet may carry its own. An open fuse and a wiring mistake do not come
 * and go, so their intermittent share is 0.
 */
const defaultRates: Readonly<Record<ItemKind, Readonly<Record<string, Rate>>>> = {
  cable: {
    cut: { perYear: 0.0015, intermittentShare: share, source: assumed },
    'outbound-cut': { perYear: 0.0005, intermittentShare: share, source: assumed },
    'return-cut': { perYear: 0.0005, intermittentShare: share, source: assumed },
    'outbound-dim': { perYear: 0.0005, intermittentShare: share, source: assumed },
    'return-dim': { perYear: 0.0005, intermittentShare: share, source: assumed },
    'fibres-crossed': { perYear: 0.002, intermittentShare: 0, source: assumed },
  },
  plug: {
    loose: { perYear: 0.004, intermittentShare: share, source: assumed },
    fouled: { perYear: 0.002, intermittentShare: share, source: assumed },
  },
  route: { kinked: { perYear: 0.001, intermittentShare: share, source: assumed } },
  board: {
    'dead-dark': { perYear: 0.001, intermittentShare: share, source: assumed },
    'dead-lit': { perYear: 0.0005, intermittentShare: share, source: assumed },
    'up-rx': { perYear: 0.0006, intermittentShare: share, source: assumed },
    'up-tx': { perYear: 0.0004, intermittentShare: share, source: assumed },
    'down-rx': { perYear: 0.0006, intermittentShare: share, source: assumed },
    'down-tx': { perYear: 0.0004, intermittentShare: share, source: assumed },
    'up-port': { perYear: 0.0006, intermittentShare: share, source: assumed },
    'down-port': { perYear: 0.0006, intermittentShare: share, source: assumed },
  },
  fuse: { open: { perYear: 0.0005, intermittentShare: 0, source: assumed } },
  place: { 'contact-bad': { perYear: 0.0005, intermittentShare: share, source: assumed } },
  wiring: { crossed: { perYear: 0.002, intermittentShare: 0, source: assumed } },
  'controller-port': { dead: { perYear: 0.0007, intermittentShare: share, source: assumed } },
  controller: { 'all-ports-dead': { perYear: 0.0003, intermittentShare: share, source: assumed } },
  lead: { open: { perYear: 0.0005, intermittentShare: share, source: assumed } },
  supply: {
    'output-lost': { perYear: 0.001, intermittentShare: share, source: assumed },
    dead: { perYear: 0.001, intermittentShare: share, source: assumed },
  },
  feedback: { short: { perYear: 0.0005, intermittentShare: share, source: assumed } },
};

/** Whether the figure of a mode is a probability per new or reworked cabinet instead of a yearly rate. */
export function isWiringMistake(fault: ModeKind): boolean {
  return fault.item === 'wiring' || fault.mode === 'fibres-crossed';
}

/** Every mode that has a rate, in the order of the vocabulary. */
export const ratedModes: readonly { readonly item: ItemKind; readonly mode: string; readonly rate: Rate }[] = Object.entries(
  defaultRates,
).flatMap(([item, modes]) => Object.entries(modes).map(([mode, rate]) => ({ item: item as ItemKind, mode, rate }))); // keys of the table

/**
 * The rate of a mode in a cabinet: the cabinet's own where it has one, else the default. Confirmed cases sharpen what is assumed, and
 * leave alone what somebody wrote.
 */
export function rateOf(fault: ModeKind, content: CabinetContent, sharpened?: SharpenedRates): Rate {
  const written = writtenRate(fault, content);
  const factor = isAssumed(written) ? factorOf(fault, sharpened) : undefined;
  return factor === undefined ? written : { ...written, perYear: written.perYear * factor, source: 'confirmed-cases' };
}

/** The usual rate of a mode, whatever a cabinet says. */
export function usualRate({ item, mode }: ModeKind): Rate {
  return defaultRates[item][mode] ?? { perYear: 0, intermittentShare: 0, source: assumed };
}

/** Whether a rate is nobody's figure, so that confirmed cases may sharpen it. */
export function isAssumed({ source }: Rate): boolean {
  return source === assumed;
}

function writtenRate(kind: ModeKind, content: CabinetContent): Rate {
  const fallback = usualRate(kind);
  const own = ownRate(kind, content);
  return own === undefined
    ? fallback
    : {
        perYear: own.perYear,
        intermittentShare: fallback.intermittentShare === 0 ? 0 : (own.intermittentShare ?? fallback.intermittentShare),
        source: own.source ?? 'cabinet',
      };
}

/** The line of a cabinet's own table for a mode. */
export function ownRate({ item, mode }: ModeKind, { rates }: CabinetContent): NonNullable<CabinetContent['rates']>[number] | undefined {
  return rates?.find((rate) => rate.item === item && rate.mode === mode);
}

function factorOf({ item, mode }: ModeKind, sharpened: SharpenedRates | undefined): number | undefined {
  return sharpened?.factors.find((one) => one.item === item && one.mode === mode)?.factor;
}

/** Whether any default rate is in use, so that an answer must say "rates assumed". */
export function usesAssumedRates(content: CabinetContent): boolean {
  return Object.entries(defaultRates).some(([item, modes]) =>
    Object.keys(modes).some((mode) => !content.rates?.some((rate) => rate.item === item && rate.mode === mode)),
  );
}

/** Days in a year: the Julian year, so that a week is 7/365.25 of it. */
const daysPerYear = 365.25;
/** Days since the machine was last known whole, where nobody says (domain section 6). */
export const defaultDaysSinceWhole = 7;
/** An hour: a fault needs some time to come, also since a machine that ran a moment ago. */
const leastDays = 1 / 24;

/** What a circumstance does to the rates it concerns (domain section 9). */
const circumstanceFactors: Readonly<
  Record<Exclude<Circumstance['kind'], 'not-reworked'>, { readonly factor: number; readonly concerns: (fault: Fault) => boolean }>
> = {
  'transport-or-crash': { factor: 10, concerns: (fault) => fault.item === 'plug' || fault.item === 'place' },
  'work-at-door': { factor: 20, concerns: (fault) => fault.item === 'route' || fault.item === 'plug' },
  'recent-exchange': { factor: 50, concerns: () => true },
  'oil-or-coolant': { factor: 10, concerns: (fault) => fault.mode === 'fouled' },
  heat: { factor: 3, concerns: (fault) => fault.item === 'board' },
  storm: { factor: 5, concerns: (fault) => fault.item === 'board' || fault.item === 'supply' },
};

/** Prior odds p / (1 − p) of a mode being there steadily, and of its coming and going: p = 1 − exp(−λ·w), λ split by the share f. */
export function priorOdds(
  fault: Fault,
  content: CabinetContent,
  circumstances: readonly Circumstance[],
  daysSinceWhole: number,
  sharpened?: SharpenedRates,
): { readonly steady: number; readonly intermittent: number } {
  const { perYear, intermittentShare } = rateOf(fault, content, sharpened);
  const factor = factorFor(fault, circumstances);
  if (isWiringMistake(fault)) {
    // A cabinet that nobody wired since it last ran has no wiring mistakes; where something was just exchanged, a plug may well sit wrong.
    const p = circumstances.some(({ kind }) => kind === 'not-reworked') ? 0 : Math.min(perYear * factor, Math.max(perYear, mostMistaken));
    return { steady: p < 1 ? Math.min(mostOdds, p / (1 - p)) : mostOdds, intermittent: 0 };
  }
  const years = Math.max(leastDays, daysSinceWhole) / daysPerYear;
  const expected = perYear * factor * years;
  return { steady: oddsOf(expected * (1 - intermittentShare)), intermittent: oddsOf(expected * intermittentShare) };
}

/** However many times likelier something makes it, a wiring mistake is not taken for likelier than not: it is a probability, not a rate. */
const mostMistaken = 0.5;

/** By how much the circumstances multiply the rate of a fault. */
function factorFor(fault: Fault, circumstances: readonly Circumstance[]): number {
  let product = 1;
  const applied = new Set<string>();
  for (const circumstance of circumstances) {
    // Ticked twice, a circumstance is still one.
    if (circumstance.kind !== 'not-reworked' && !applied.has(circumstance.kind) && touches(circumstance, fault)) {
      applied.add(circumstance.kind);
      const { factor, concerns } = circumstanceFactors[circumstance.kind];
      product *= concerns(fault) ? factor : 1;
    }
  }
  return product;
}

/** odds = p / (1 − p) = exp(λ·w) − 1, exact also for small λ·w; never more than near certainty, so that sums stay numbers. */
function oddsOf(expected: number): number {
  return Math.min(mostOdds, Math.expm1(expected));
}

const mostOdds = 1e9;

/** Whether a circumstance names the place of a fault; one without places concerns the whole cabinet. */
function touches(circumstance: Circumstance, fault: Fault): boolean {
  const subjects = circumstance.subjects ?? [];
  return subjects.length === 0 || placesOf(fault).some((place) => subjects.includes(place));
}

function placesOf(fault: Fault): readonly string[] {
  switch (fault.item) {
    case 'cable':
    case 'plug':
    case 'route':
      return [fault.link];
    case 'controller-port':
      return [fault.chain];
    case 'controller':
      return [];
    case 'lead':
      return [fault.lead];
    case 'feedback':
      return [fault.feedback];
    default:
      return [fault.unit];
  }
}
