import type { Diagnosis, HypothesisFault, RankedHypothesis } from '../../engine/diagnosis/index.ts';
import type { Fault, ItemKind } from '../../engine/schema/index.ts';
import { modeKey } from '../../engine/simulation/index.ts';

/*
 * What the window lists as suspects. The engine names items (a plug, a cable, a board); a person goes to a *spot* (that cable with
 * its plugs and its route, that unit). A candidate is one or two spots, as far as one ambiguity group holds them.
 */

export type Spot =
  | { readonly kind: 'link'; readonly link: string }
  | { readonly kind: 'unit'; readonly unit: string }
  | { readonly kind: 'supply'; readonly unit: string }
  | { readonly kind: 'chain-port'; readonly chain: string }
  | { readonly kind: 'controller' }
  | { readonly kind: 'lead'; readonly lead: string }
  | { readonly kind: 'feedback'; readonly feedback: string };

/** One mode of one item inside a candidate, with its share of the whole probability. */
export interface CandidatePart {
  readonly item: string;
  readonly kind: ItemKind;
  readonly fault: Fault;
  readonly probability: number;
}

export interface Candidate {
  /** Spots and best mode; the same candidate keeps its key while more is entered. */
  readonly key: string;
  readonly spots: readonly Spot[];
  /** Id of its ambiguity group. */
  readonly group: number;
  readonly probability: number;
  /** Its most probable hypothesis: what is laid over the cabinet. */
  readonly best: RankedHypothesis;
  /** Its modes, most probable first; presences added up. */
  readonly parts: readonly CandidatePart[];
}

export function spotOf(fault: Fault): Spot {
  switch (fault.item) {
    case 'cable':
    case 'plug':
    case 'route':
      return { kind: 'link', link: fault.link };
    case 'board':
    case 'fuse':
    case 'place':
    case 'wiring':
      return { kind: 'unit', unit: fault.unit };
    case 'supply':
      return { kind: 'supply', unit: fault.unit };
    case 'controller-port':
      return { kind: 'chain-port', chain: fault.chain };
    case 'controller':
      return { kind: 'controller' };
    case 'lead':
      return { kind: 'lead', lead: fault.lead };
    case 'feedback':
      return { kind: 'feedback', feedback: fault.feedback };
  }
}

export function spotKey(spot: Spot): string {
  switch (spot.kind) {
    case 'link':
      return `link/${spot.link}`;
    case 'unit':
      return `unit/${spot.unit}`;
    case 'supply':
      return `supply/${spot.unit}`;
    case 'chain-port':
      return `chain-port/${spot.chain}`;
    case 'controller':
      return 'controller';
    case 'lead':
      return `lead/${spot.lead}`;
    case 'feedback':
      return `feedback/${spot.feedback}`;
  }
}

/** Different spots of a hypothesis, in the order of their keys. */
function spotsOf(faults: readonly HypothesisFault[]): readonly Spot[] {
  const byKey = new Map(faults.map(({ fault }) => [spotKey(spotOf(fault)), spotOf(fault)]));
  return [...byKey.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, spot]) => spot);
}

/**
 * The candidates of a diagnosis, without pairs that a single fault of the same group makes needless. Members of an ambiguity group stand together; groups are ordered by their best member, members by
 * probability. Only the listed hypotheses count, so the sum may be a little below the whole.
 */
export function listCandidates(diagnosis: Diagnosis): readonly Candidate[] {
  const bundles = new Map<string, { spots: readonly Spot[]; hypotheses: RankedHypothesis[] }>();
  for (const hypothesis of diagnosis.hypotheses) {
    const spots = spotsOf(hypothesis.faults);
    const key = `${hypothesis.group} ${spots.map(spotKey).join(' ')}`;
    const bundle = bundles.get(key) ?? { spots, hypotheses: [] };
    bundle.hypotheses.push(hypothesis);
    bundles.set(key, bundle);
  }
  const candidates = [...bundles.values()].flatMap(({ spots, hypotheses }) => {
    const [best] = hypotheses;
    return best ? [makeCandidate(spots, hypotheses, best)] : [];
  });
  return inGroups(withoutNeedless(mergeAlike(candidates)));
}

/** A steady and an intermittent fault of one kind are one candidate, also where what was seen tells the two apart. */
function mergeAlike(candidates: readonly Candidate[]): readonly Candidate[] {
  const byKey = new Map<string, Candidate>();
  for (const candidate of candidates) {
    const before = byKey.get(candidate.key);
    byKey.set(candidate.key, before ? joinCandidates(before, candidate) : candidate);
  }
  return [...byKey.values()];
}

function joinCandidates(a: Candidate, b: Candidate): Candidate {
  const [main, other] = a.best.probability >= b.best.probability ? [a, b] : [b, a];
  return { ...main, probability: main.probability + other.probability, parts: joinParts([...main.parts, ...other.parts]) };
}

function joinParts(parts: readonly CandidatePart[]): readonly CandidatePart[] {
  const byMode = new Map<string, CandidatePart>();
  for (const part of parts) {
    const key = modeKey(part.fault);
    byMode.set(key, { ...part, probability: (byMode.get(key)?.probability ?? 0) + part.probability });
  }
  return [...byMode.values()].sort((a, b) => b.probability - a.probability || (a.item < b.item ? -1 : 1));
}

/** Leaves out two faults of which one alone predicts the same: they say nothing that the one does not. */
function withoutNeedless(candidates: readonly Candidate[]): readonly Candidate[] {
  const alone = new Set(
    candidates.filter(({ spots }) => spots.length === 1).map(({ spots, group }) => `${group} ${spots.map(spotKey).join()}`),
  );
  return candidates.filter(({ spots, group }) => spots.length < 2 || !spots.some((spot) => alone.has(`${group} ${spotKey(spot)}`)));
}

function makeCandidate(spots: readonly Spot[], hypotheses: readonly RankedHypothesis[], best: RankedHypothesis): Candidate {
  const parts = hypotheses.flatMap(({ faults, probability }) =>
    faults.map(({ item, fault }): CandidatePart => ({ item, kind: fault.item, fault, probability })),
  );
  return {
    key: [...spots.map(spotKey), ...best.faults.map(({ fault }) => modeKey(fault))].join(' '),
    spots,
    group: best.group,
    probability: hypotheses.reduce((sum, { probability }) => sum + probability, 0),
    best,
    parts: joinParts(parts),
  };
}

function inGroups(candidates: readonly Candidate[]): readonly Candidate[] {
  const ranked = [...candidates].sort((a, b) => b.probability - a.probability || (a.key < b.key ? -1 : 1));
  const groups = new Map<number, Candidate[]>();
  for (const candidate of ranked) {
    const group = groups.get(candidate.group);
    if (group) group.push(candidate);
    else groups.set(candidate.group, [candidate]);
  }
  return [...groups.values()].flat();
}

/** Share of the whole probability of each spot: the sum over its items, so that what the list of hypotheses leaves out counts too. */
export function shareBySpot(diagnosis: Diagnosis): ReadonlyMap<string, number> {
  const shares = new Map<string, number>();
  for (const { item, probability } of diagnosis.items) {
    const key = spotKey(spotOf(item.fault));
    // Two items of one spot at fault at once are counted twice; the cap keeps the figure a probability.
    shares.set(key, Math.min(1, (shares.get(key) ?? 0) + probability));
  }
  return shares;
}

/** Which candidate a chosen key means now: the same one, or the one that its best mode has gone into. */
export function findCandidate(candidates: readonly Candidate[], key: string): Candidate | undefined {
  const exact = candidates.find((candidate) => candidate.key === key);
  if (exact) return exact;
  const spots = key.split(' ').filter((part) => part !== '' && !part.includes(':'));
  const modes = key.split(' ').filter((part) => part.includes(':'));
  return candidates.find(
    (candidate) =>
      candidate.spots.length === spots.length &&
      candidate.spots.every((spot) => spots.includes(spotKey(spot))) &&
      modes.every((mode) => candidate.parts.some((part) => modeKey(part.fault) === mode)),
  );
}
