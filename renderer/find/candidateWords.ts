import { useMemo } from 'react';
import {
  endWords,
  itemKindWords,
  type Names,
  nothingBrokenLabel,
  windowTexts,
  wordItem,
  wordList,
  wordMode,
  wordProbability,
} from '../../engine/messages/index.ts';
import type { ItemKind, LinkEnd } from '../../engine/schema/index.ts';
import type { SignName } from '../marks/Sign.tsx';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import type { Candidate, CandidatePart, Spot } from './candidates.ts';

/** How a candidate is called: the thing in bold, what of it after it. */
export interface CandidateTitle {
  readonly strong: string;
  readonly rest: string;
  /** Both together. */
  readonly text: string;
}

export interface CandidateWords {
  readonly title: (candidate: Candidate) => CandidateTitle;
  /** "cable -WH3", to be looked at first. */
  readonly object: (candidate: Candidate) => string;
  /** Its modes with their shares: "upper plug loose 31 · cut, both fibres 9"; empty where the title says it all. */
  readonly parts: (candidate: Candidate) => string;
  /** What may be wrong with it, likeliest first; for two candidates of one name. */
  readonly modes: (candidate: Candidate) => string;
  readonly sign: (candidate: Candidate) => SignName;
  /** Where it is drawn. */
  readonly subject: (candidate: Candidate) => string | null;
}

export function useCandidateWords(): CandidateWords {
  const topology = useApp((state) => state.checked.topology);
  return useMemo(() => makeCandidateWords(namesOf(topology)), [topology]);
}

export function makeCandidateWords(names: Names): CandidateWords {
  const title = (candidate: Candidate): CandidateTitle => {
    const [spot, second] = candidate.spots;
    if (!spot) return { strong: nothingBrokenLabel, rest: '', text: nothingBrokenLabel };
    const first = spotTitle(names, spot, partsAt(candidate, spot));
    if (!second) return { ...first, text: joined(first) };
    const text = `${joined(first)} + ${joined(spotTitle(names, second, partsAt(candidate, second)))}`;
    return { strong: first.strong, rest: text.slice(first.strong.length).trim(), text };
  };
  return {
    title,
    object: (candidate) => {
      const [only, second] = candidate.spots;
      if (!only) return nothingBrokenLabel;
      if (!second) return spotObject(names, only, partsAt(candidate, only));
      return wordList(candidate.spots.map((spot) => spotTitle(names, spot, partsAt(candidate, spot)).strong));
    },
    parts: (candidate) => wordParts(candidate),
    modes: (candidate) => {
      const modes = worthNaming(candidate.parts).map(({ kind, fault }) => wordMode(kind, fault.mode));
      return [...new Set(modes)].slice(0, mostModes).join(' · ');
    },
    sign: (candidate) => (candidate.spots[0] ? spotSigns[candidate.spots[0].kind] : 'fits'),
    subject: (candidate) => (candidate.spots[0] ? spotSubject(candidate.spots[0]) : null),
  };
}

const joined = ({ strong, rest }: { readonly strong: string; readonly rest: string }) => (rest === '' ? strong : `${strong} ${rest}`);

const spotSigns: { readonly [K in Spot['kind']]: SignName } = {
  link: 'link',
  unit: 'board',
  supply: 'supply',
  'chain-port': 'controller',
  controller: 'controller',
  lead: 'lead',
  feedback: 'feedback',
};

export function spotSubject(spot: Spot): string | null {
  switch (spot.kind) {
    case 'link':
      return spot.link;
    case 'unit':
    case 'supply':
      return spot.unit;
    case 'chain-port':
      return spot.chain;
    case 'lead':
      return spot.lead;
    case 'feedback':
      return spot.feedback;
    case 'controller':
      return null;
  }
}

function spotOfPart({ fault }: CandidatePart, spot: Spot): boolean {
  switch (spot.kind) {
    case 'link':
      return 'link' in fault && fault.link === spot.link;
    case 'unit':
    case 'supply':
      return 'unit' in fault && fault.unit === spot.unit;
    case 'chain-port':
      return fault.item === 'controller-port' && fault.chain === spot.chain;
    case 'controller':
      return fault.item === 'controller';
    case 'lead':
      return fault.item === 'lead' && fault.lead === spot.lead;
    case 'feedback':
      return fault.item === 'feedback' && fault.feedback === spot.feedback;
  }
}

const partsAt = (candidate: Candidate, spot: Spot) => worthNaming(candidate.parts.filter((part) => spotOfPart(part, spot)));

/** A cable is named with what else of it is under suspicion; a board with the port, where all of it points to one. */
function spotTitle(names: Names, spot: Spot, parts: readonly CandidatePart[]): { readonly strong: string; readonly rest: string } {
  if (spot.kind !== 'unit') return otherTitle(names, spot, parts);
  const { kinds, detail } = unitWords(parts);
  return { strong: names.unit(spot.unit), rest: detail === '' ? kinds : `${kinds}, ${detail}` };
}

/** What of a unit is suspected, and the port or the mode where all of it points to one. */
function unitWords(parts: readonly CandidatePart[]): { readonly kinds: string; readonly detail: string } {
  const kinds = wordList(
    kindsOf(parts, ['board', 'fuse', 'place', 'wiring']).map((kind) => windowTexts.suspects.unitKinds[kind]),
    'or',
  );
  const mode = onlyMode(parts);
  if (mode !== null && parts[0]?.kind === 'board' && !sideOf(mode)) return { kinds, detail: wordMode('board', mode) };
  const [side, ...others] = new Set(parts.map(({ fault }) => sideOf(fault.mode)));
  return { kinds, detail: side && others.length === 0 ? windowTexts.suspects.side[side] : '' };
}

function otherTitle(
  names: Names,
  spot: Exclude<Spot, { kind: 'unit' }>,
  parts: readonly CandidatePart[],
): { readonly strong: string; readonly rest: string } {
  switch (spot.kind) {
    case 'link': {
      const name = names.link(spot.link);
      const kinds = kindsOf(parts, ['cable', 'plug', 'route']);
      const bare = name.startsWith(`${itemKindWords.cable.label} `) ? name.slice(itemKindWords.cable.label.length + 1) : name;
      return { strong: bare, rest: windowTexts.suspects.linkKinds(kinds) };
    }
    case 'supply': {
      const mode = onlyMode(parts);
      return {
        strong: names.unit(spot.unit),
        rest: `${itemKindWords.supply.label}${mode === null ? '' : `, ${wordMode('supply', mode)}`}`,
      };
    }
    case 'chain-port':
      return { strong: names.controller(), rest: windowTexts.suspects.portOf(names.chain(spot.chain)) };
    case 'controller':
      return { strong: names.controller(), rest: windowTexts.suspects.allPorts };
    case 'lead':
    case 'feedback': {
      const [part] = parts;
      return { strong: part ? wordItem(names, part.fault) : '', rest: '' };
    }
  }
}

/** The same as an object: "cable -WH3 and its plugs", "the board of -TB3, up port". */
function spotObject(names: Names, spot: Spot, parts: readonly CandidatePart[]): string {
  const { strong, rest } = spotTitle(names, spot, parts);
  switch (spot.kind) {
    case 'link':
      return windowTexts.suspects.linkObject(strong, kindsOf(parts, ['cable', 'plug', 'route']));
    case 'lead':
    case 'feedback':
      return strong;
    case 'supply':
      return `${itemKindWords.supply.label} ${strong}`;
    case 'unit': {
      const { kinds, detail } = unitWords(parts);
      return windowTexts.suspects.partOf(kinds, strong, detail);
    }
    case 'controller':
      return windowTexts.suspects.allPortsOf(strong);
    default:
      return windowTexts.suspects.partOf(rest, strong, '');
  }
}

function kindsOf<K extends ItemKind>(parts: readonly CandidatePart[], order: readonly K[]): readonly K[] {
  return order.filter((kind) => parts.some((part) => part.kind === kind));
}

/** Modes named of one candidate. */
const mostModes = 3;

/** A kind of item with less than this share of its place is no longer named: both plugs were cleaned, and what is left is the cable. */
const leastNamed = 0.02;

/** The parts whose kind is still worth naming. */
function worthNaming(parts: readonly CandidatePart[]): readonly CandidatePart[] {
  const shareOf = (wanted: readonly CandidatePart[]) => wanted.reduce((sum, { probability }) => sum + probability, 0);
  const whole = shareOf(parts);
  return parts.filter(({ kind }) => shareOf(parts.filter((part) => part.kind === kind)) >= leastNamed * whole);
}

/** The mode, where all parts are in the same one. */
function onlyMode(parts: readonly CandidatePart[]): string | null {
  const modes = new Set(parts.map(({ fault }) => fault.mode));
  const [mode] = modes;
  return modes.size === 1 && mode !== undefined ? mode : null;
}

function sideOf(mode: string): 'up' | 'down' | null {
  if (mode.startsWith('up-')) return 'up';
  return mode.startsWith('down-') ? 'down' : null;
}

function wordParts(candidate: Candidate): string {
  if (candidate.spots.length > 1) return windowTexts.suspects.twoFaults;
  const shares = new Map<string, number>();
  for (const part of partsToName(candidate.parts)) shares.set(part.words, (shares.get(part.words) ?? 0) + part.probability);
  const listed = [...shares].filter(([, share]) => share >= 0.005);
  if (listed.length < 2) return '';
  return windowTexts.suspects.partsOf(listed.map(([words, share]) => ({ words, percent: wordProbability(share) })));
}

/** Boards are told apart by mode, all else by item; the two plugs of a cable are one where nothing tells them apart. */
function partsToName(parts: readonly CandidatePart[]): readonly { readonly words: string; readonly probability: number }[] {
  const plugs = (end: LinkEnd) =>
    parts.reduce((sum, { fault, probability }) => sum + (fault.item === 'plug' && fault.end === end ? probability : 0), 0);
  const alike = Math.abs(plugs('upper') - plugs('lower')) <= 0.1 * Math.max(plugs('upper'), plugs('lower'));
  return parts.map(({ fault, probability }) => {
    if (fault.item === 'plug') return { words: alike ? windowTexts.suspects.plugs : endWords[fault.end].label, probability };
    return { words: fault.item === 'board' ? wordMode(fault.item, fault.mode) : itemKindWords[fault.item].label, probability };
  });
}

/** A place in as few words as there are: "-WH3", "-TB2", "chain 1". */
export function wordSpotShort(names: Names, spot: Spot): string {
  switch (spot.kind) {
    case 'link':
      return withoutKind(names.link(spot.link), itemKindWords.cable.label);
    case 'lead':
      return withoutKind(names.lead(spot.lead), itemKindWords.lead.label);
    case 'feedback':
      return withoutKind(names.feedback(spot.feedback), itemKindWords.feedback.label);
    case 'unit':
    case 'supply':
      return names.unit(spot.unit);
    case 'chain-port':
      return names.chain(spot.chain);
    case 'controller':
      return names.controller();
  }
}

const withoutKind = (name: string, kind: string) => (name.startsWith(`${kind} -`) ? name.slice(kind.length + 1) : name);
