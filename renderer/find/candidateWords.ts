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
    object: (candidate) => wordList(candidate.spots.map((spot) => spotObject(names, spot, partsAt(candidate, spot)))) || nothingBrokenLabel,
    parts: (candidate) => wordParts(candidate),
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

const partsAt = (candidate: Candidate, spot: Spot) => candidate.parts.filter((part) => spotOfPart(part, spot));

/** A cable is named with what else of it is under suspicion; a board with the port, where all of it points to one. */
function spotTitle(names: Names, spot: Spot, parts: readonly CandidatePart[]): { readonly strong: string; readonly rest: string } {
  switch (spot.kind) {
    case 'link': {
      const name = names.link(spot.link);
      const kinds = kindsOf(parts, ['cable', 'plug', 'route']);
      const bare = name.startsWith(`${itemKindWords.cable.label} `) ? name.slice(itemKindWords.cable.label.length + 1) : name;
      return { strong: bare, rest: windowTexts.suspects.linkKinds(kinds) };
    }
    case 'unit': {
      const kinds = kindsOf(parts, ['board', 'fuse', 'place', 'wiring']).map((kind) => windowTexts.suspects.unitKinds[kind]);
      const sides = new Set(parts.map(({ fault }) => sideOf(fault.mode)));
      const [side] = sides;
      const port = sides.size === 1 && side ? `, ${windowTexts.suspects.side[side]}` : '';
      return { strong: names.unit(spot.unit), rest: `${wordList(kinds, 'or')}${port}` };
    }
    case 'supply':
      return { strong: names.unit(spot.unit), rest: itemKindWords.supply.label };
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
    default:
      return windowTexts.suspects.partOf(rest, strong);
  }
}

function kindsOf<K extends ItemKind>(parts: readonly CandidatePart[], order: readonly K[]): readonly K[] {
  return order.filter((kind) => parts.some((part) => part.kind === kind));
}

function sideOf(mode: string): 'up' | 'down' | null {
  if (mode.startsWith('up-')) return 'up';
  return mode.startsWith('down-') ? 'down' : null;
}

function wordParts(candidate: Candidate): string {
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
