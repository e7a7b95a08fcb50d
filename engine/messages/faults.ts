import { assertNever } from '../base/index.ts';
import type { Fault, FaultMode, ItemKind } from '../schema/index.ts';
import type { Names } from './names.ts';
import { ownWord } from './ownWord.ts';
import { wordNumber } from './quantities.ts';
import { endWords, type Term } from './words.ts';

/** Kinds of items and places that can be at fault. */
export const itemKindWords: { readonly [K in ItemKind]: Term } = {
  cable: { label: 'cable', meaning: 'an optical cable with its two fibres' },
  plug: { label: 'plug', meaning: 'one end of an optical cable' },
  route: { label: 'route', meaning: 'the way on which an optical cable is laid' },
  board: { label: 'communication board', meaning: 'the board of a unit that sends and receives on the chain' },
  fuse: { label: 'control fuse', meaning: 'the 24 V fuse of a unit' },
  place: { label: 'slot contact', meaning: 'the contacts of the slot in which a unit stands' },
  wiring: { label: 'wiring', meaning: 'which of the two optical plugs sits in which port of a unit' },
  'controller-port': { label: 'controller port', meaning: 'the chain port of the controller' },
  controller: { label: 'controller', meaning: 'what all chain ports of the controller have in common' },
  lead: { label: 'lead', meaning: 'a 24 V power lead' },
  supply: { label: 'supply', meaning: 'the power-supply module' },
  feedback: { label: 'feedback cable', meaning: 'the cable of an encoder or scale' },
};

/** Every fault mode: what is said after the name of the item, and what it does. */
export const modeWords: { readonly [K in ItemKind]: { readonly [M in FaultMode<K>]: Term } } = {
  cable: {
    cut: { label: 'cut, both fibres', meaning: 'no light passes either way' },
    'outbound-cut': { label: 'one fibre cut, outbound', meaning: 'no light passes away from the controller' },
    'return-cut': { label: 'one fibre cut, return', meaning: 'no light passes back towards the controller' },
    'outbound-dim': { label: 'one fibre dim, outbound', meaning: 'weak light passes away from the controller, too weak for telegrams' },
    'return-dim': { label: 'one fibre dim, return', meaning: 'weak light passes back towards the controller, too weak for telegrams' },
    'fibres-crossed': { label: 'fibres crossed in one plug', meaning: 'light arrives in the wrong hole, nothing valid passes' },
  },
  plug: {
    loose: { label: 'loose', meaning: 'both fibres are dark; reseating the plug cures it' },
    fouled: { label: 'fouled', meaning: 'both fibres are dim; cleaning the plug and its port cures it' },
  },
  route: { kinked: { label: 'kinked', meaning: 'any cable laid there is dim on both fibres; laying it another way cures it' } },
  board: {
    'dead-dark': { label: 'dead, display out', meaning: 'the display is dark and the unit is silent' },
    'dead-lit': { label: 'dead, display still lit', meaning: 'the display stays quiet, the unit sends nothing and notices nothing' },
    'up-rx': { label: 'up port, receiver dead', meaning: 'the unit hears nothing from above' },
    'up-tx': { label: 'up port, transmitter dead', meaning: 'the unit sends nothing upwards' },
    'down-rx': { label: 'down port, receiver dead', meaning: 'the unit hears nothing from below' },
    'down-tx': { label: 'down port, transmitter dead', meaning: 'the unit sends nothing downwards' },
    'up-port': { label: 'up port dead', meaning: 'the unit neither hears from above nor sends upwards' },
    'down-port': { label: 'down port dead', meaning: 'the unit neither hears from below nor sends downwards' },
  },
  fuse: { open: { label: 'open', meaning: 'the unit is dark and silent, and still passes 24 V on to others' } },
  place: { 'contact-bad': { label: 'bad contact', meaning: 'whatever stands there is dark and silent; reseating the unit cures it' } },
  wiring: { crossed: { label: 'optical plugs exchanged', meaning: 'each plug sits in the port of the other, nothing valid passes' } },
  'controller-port': { dead: { label: 'dead', meaning: 'this chain is not driven at all' } },
  controller: { 'all-ports-dead': { label: 'all chain ports dead', meaning: 'no chain of the controller is driven' } },
  lead: { open: { label: 'open', meaning: 'everything that is fed only through it is dark' } },
  supply: {
    'output-lost': { label: 'output lost', meaning: 'it feeds nothing, and its own display stays lit' },
    dead: { label: 'dead', meaning: 'it feeds nothing, and its own display is dark' },
  },
  feedback: { short: { label: 'shorted', meaning: 'it takes the unit with it until that plug is pulled' } },
};

/** The item or place of a fault: "cable -WH3", "upper plug of cable -WH3", "board of -TB2". */
export function wordItem(names: Names, fault: Fault): string {
  switch (fault.item) {
    case 'cable':
      return names.link(fault.link);
    case 'plug':
      return `${endWords[fault.end].label} of ${names.link(fault.link)}`;
    case 'route':
      return `route of ${names.link(fault.link)}`;
    case 'board':
      return `board of ${names.unit(fault.unit)}`;
    case 'fuse':
      return `control fuse of ${names.unit(fault.unit)}`;
    case 'place':
      return `slot contact of ${names.unit(fault.unit)}`;
    case 'wiring':
      return `wiring of ${names.unit(fault.unit)}`;
    case 'controller-port':
      return `controller port of ${names.chain(fault.chain)}`;
    case 'controller':
      return itemKindWords.controller.label;
    case 'lead':
      return leadWithFuse(names, fault.lead);
    case 'supply':
      return `supply ${names.unit(fault.unit)}`;
    case 'feedback':
      return names.feedback(fault.feedback);
    default:
      return assertNever(fault);
  }
}

/** A lead with the fuse that the file names for it, which is the first to be looked at: "lead -WD6 with fuse -FC22". */
function leadWithFuse(names: Names, lead: string): string {
  const fuse = names.leadFuse(lead);
  return fuse ? `${names.lead(lead)} with ${fuse}` : names.lead(lead);
}

/** The item in the middle of a sentence: "cable -WH3", "the upper plug of cable -WH3". */
export function wordTheItem(names: Names, fault: Fault): string {
  const item = wordItem(names, fault);
  // Cables, leads and supplies are named by what they are; parts of something need their article.
  return fault.item === 'cable' || fault.item === 'lead' || fault.item === 'supply' || fault.item === 'feedback' ? item : `the ${item}`;
}

/** The mode alone: "one fibre cut, outbound". Empty for a mode that this kind of item does not have. */
export function wordMode(kind: ItemKind, mode: string): string {
  const modes: Readonly<Record<string, Term>> = modeWords[kind];
  return ownWord(modes, mode)?.label ?? '';
}

/** Item and mode, and "intermittent" where it is: "cable -WH3: one fibre cut, outbound". */
export function wordFault(names: Names, fault: Fault): string {
  const steadiness = fault.presence === 'intermittent' ? ', intermittent' : '';
  const loss = 'lossDb' in fault && fault.lossDb !== undefined ? `, by ${wordNumber(fault.lossDb)} dB` : '';
  return `${wordItem(names, fault)}: ${wordMode(fault.item, fault.mode)}${loss}${steadiness}`;
}

/** When a sentence speaks: of now, or of the trip. */
export type Tense = 'now' | 'trip';

/** The fault as a clause: "cable -WH3 is cut", "the upper plug of cable -WH3 was loose". */
export function wordFaultClause(names: Names, fault: Fault, tense: Tense = 'now'): string {
  const [subject, predicate, plural = false] = clause(names, fault);
  const verb = tense === 'now' ? (plural ? 'are' : 'is') : plural ? 'were' : 'was';
  return `${subject} ${verb} ${predicate}`;
}

type Clause = readonly [subject: string, predicate: string, plural?: true];

function clause(names: Names, fault: Fault): Clause {
  switch (fault.item) {
    case 'cable':
      return cableClause(names.link(fault.link), fault.mode);
    case 'plug':
      return [`the ${wordItem(names, fault)}`, fault.mode === 'loose' ? 'loose' : 'fouled'];
    case 'board':
      return boardClause(names.unit(fault.unit), fault.mode);
    case 'route':
      return [`the ${wordItem(names, fault)}`, 'kinked'];
    case 'fuse':
      return [`the ${wordItem(names, fault)}`, 'open'];
    case 'place':
      return [`the slot contact of ${names.unit(fault.unit)}`, 'bad'];
    case 'wiring':
      return [`the optical plugs of ${names.unit(fault.unit)}`, 'exchanged', true];
    case 'controller-port':
      return [`the ${wordItem(names, fault)}`, 'dead'];
    case 'controller':
      return ['all chain ports of the controller', 'dead', true];
    case 'lead':
      return [leadWithFuse(names, fault.lead), 'open'];
    case 'supply':
      return fault.mode === 'dead' ? [wordItem(names, fault), 'dead'] : [`the output of ${wordItem(names, fault)}`, 'lost'];
    case 'feedback':
      return [names.feedback(fault.feedback), 'shorted'];
    default:
      return assertNever(fault);
  }
}

function cableClause(cable: string, mode: FaultMode<'cable'>): Clause {
  switch (mode) {
    case 'cut':
      return [cable, 'cut'];
    case 'outbound-cut':
      return [`the outbound fibre of ${cable}`, 'cut'];
    case 'return-cut':
      return [`the return fibre of ${cable}`, 'cut'];
    case 'outbound-dim':
      return [`the outbound fibre of ${cable}`, 'too dim'];
    case 'return-dim':
      return [`the return fibre of ${cable}`, 'too dim'];
    case 'fibres-crossed':
      return [`the two fibres of ${cable}`, 'crossed', true];
    default:
      return assertNever(mode);
  }
}

const boardParts: { readonly [M in Exclude<FaultMode<'board'>, 'dead-dark' | 'dead-lit'>]: string } = {
  'up-rx': 'receiver of the up port',
  'up-tx': 'transmitter of the up port',
  'down-rx': 'receiver of the down port',
  'down-tx': 'transmitter of the down port',
  'up-port': 'up port',
  'down-port': 'down port',
};

function boardClause(unit: string, mode: FaultMode<'board'>): Clause {
  if (mode === 'dead-dark') return [`the board of ${unit}`, 'dead, with its display out'];
  if (mode === 'dead-lit') return [`the board of ${unit}`, 'dead, with its display still lit'];
  return [`the ${boardParts[mode]} of ${unit}`, 'dead'];
}
