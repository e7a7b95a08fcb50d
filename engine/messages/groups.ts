import type { Fault, FaultMode } from '../schema/index.ts';
import { wordItem } from './faults.ts';
import { type Names, withoutCable } from './names.ts';
import { wordList } from './numbers.ts';

/**
 * Faults of one thing as a row of the door sheet names them: its name, and what of it may be at fault: "-WH2" "cable, plugs and route",
 * "-TB1" "board, up port". All faults concern the same link, the same unit, or the same other thing.
 */
export function wordGroupThing(names: Names, faults: readonly Fault[]): { readonly name: string; readonly what: string } {
  const [first] = faults;
  if (first === undefined) return { name: '', what: '' };
  if ('link' in first) {
    const name = names.link(first.link);
    // A cable with a designation is told by its sign alone; one without says that it is a cable.
    const sign = withoutCable(name);
    if (sign !== name) return { name: sign, what: wordList(linkParts(faults)) };
    return { name, what: wordList(linkParts(faults).filter((part) => part !== 'cable')) };
  }
  if ('unit' in first) return { name: names.unit(first.unit), what: wordList([...new Set(faults.flatMap(unitParts))], 'or') };
  return { name: wordItem(names, first), what: '' };
}

function linkParts(faults: readonly Fault[]): readonly string[] {
  const cable = faults.filter((fault) => fault.item === 'cable').map(({ mode }) => mode);
  const ends = new Set(faults.flatMap((fault) => (fault.item === 'plug' ? [fault.end] : [])));
  return [
    ...(cable.length === 0 ? [] : [cableWords(cable)]),
    ...(ends.size === 2 ? ['plugs'] : ends.has('upper') ? ['upper plug'] : ends.has('lower') ? ['lower plug'] : []),
    ...(faults.some(({ item }) => item === 'route') ? ['route'] : []),
  ];
}

/** Both fibres or the whole: the cable; else the one fibre. */
function cableWords(modes: readonly string[]): string {
  if (modes.every((mode) => mode.startsWith('outbound'))) return 'outbound fibre';
  return modes.every((mode) => mode.startsWith('return')) ? 'return fibre' : 'cable';
}

const boardWords: { readonly [M in FaultMode<'board'>]: string } = {
  'dead-dark': 'board',
  'dead-lit': 'board (still lit)',
  'up-rx': 'up port',
  'up-tx': 'up port',
  'down-rx': 'down port',
  'down-tx': 'down port',
  'up-port': 'up port',
  'down-port': 'down port',
};

function unitParts(fault: Fault): readonly string[] {
  switch (fault.item) {
    case 'board':
      return [boardWords[fault.mode]];
    case 'fuse':
      return ['fuse'];
    case 'place':
      return ['slot contact'];
    case 'supply':
      return [fault.mode === 'dead' ? 'supply dead' : 'supply, output lost'];
    case 'wiring':
      return ['plugs exchanged'];
    default:
      return [];
  }
}
