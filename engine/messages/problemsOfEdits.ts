import type { ProblemCode } from '../base/index.ts';
import { wordCount } from './numbers.ts';
import { ownWord } from './ownWord.ts';
import { quote, type WordsFor } from './problemWords.ts';

/** Codes of what cannot be done to a cabinet. */
type EditCode = Extract<
  ProblemCode,
  `edit-${string}` | `join-${string}` | `feed-into-supply` | 'feed-itself' | `clip-${string}` | `rows-${string}`
>;

const ports: Readonly<Record<string, (owner: string | number) => string>> = {
  chain: (owner) => `the controller’s port of chain ${owner}`,
  up: (owner) => `the up port of ${owner}`,
  down: (owner) => `the down port of ${owner}`,
};
const port = (side: string | number, owner: string | number) => ownWord(ports, side)?.(owner) ?? `${owner}, ${side}`;

const lists: Readonly<Record<string, string>> = {
  units: 'units',
  links: 'cables',
  leads: 'leads',
  chains: 'chains',
  feedbacks: 'feedback cables',
  spares: 'spares',
  fibres: 'fibres',
  types: 'types of equipment',
};

const rowKinds = 'servo, spindle, encoder or supply';
/** Where no line of heads was found: what the columns are taken for, and which heads set another order. */
const columnsWithoutHead =
  'No line names the columns, so they are taken as designation, kind, chain, axes, fed by, model, part number, serial number; heads such as Chain, Position, Designation, Kind, Axes set another order.';

export const editProblemWords: WordsFor<EditCode> = {
  'edit-thing-unknown': ({ id }) => ({
    title: `${quote(id)} is not in the cabinet`,
    explanation: 'It was taken out meanwhile, or never was there.',
    whatToDo: 'Choose what is there now.',
  }),
  'edit-too-many': ({ list, maximum }) => ({
    title: `A cabinet cannot hold that many ${ownWord(lists, list) ?? list}`,
    explanation: `Its file takes ${maximum} of them at most.`,
    whatToDo: 'Divide the machine into several cabinets.',
  }),
  'edit-supply-on-chain': () => ({
    title: 'A supply is never on a chain',
    explanation: 'It has no optical ports; it feeds the units by leads.',
    whatToDo: 'Put it beside the chain, and lead its 24 V to the units.',
  }),
  'edit-encoder-off-chain': () => ({
    title: 'An encoder interface is always on a chain',
    explanation: 'It does its work there only. Drives alone can have a link of their own.',
    whatToDo: 'Put it onto a cable or at the end of a chain.',
  }),
  'edit-row-full': ({ row }) => ({
    title: `There is no such place in row ${row}`,
    explanation: 'Rows are counted up to 999 and slots up to 9999, and none of what stands there can move on.',
    whatToDo: 'Choose another row or slot.',
  }),
  'edit-no-spot': ({ unit }) => ({
    title: `${unit} cannot be moved there`,
    explanation: 'The place is beside what is being moved itself, and on no chain.',
    whatToDo: 'Choose a cable or the end of a chain.',
  }),
  'edit-controller-stays': () => ({
    title: 'The controller stays',
    explanation: 'Every chain hangs on it.',
    whatToDo: 'Change what is written about it instead.',
  }),
  'edit-chain-in-use': ({ chain, count }) => ({
    title: `Chain ${chain} still has ${wordCount(Number(count), 'unit')}`,
    explanation: 'Without its port at the controller nothing would reach them.',
    whatToDo: 'Move its units to another chain, or choose them too.',
  }),
  'edit-feedback-on-supply': ({ unit }) => ({
    title: `${unit} takes no feedback cable`,
    explanation: 'It is a supply. An encoder is wired to a drive or an encoder interface.',
    whatToDo: 'Choose the unit in which the cable really sits.',
  }),
  'edit-field-fixed': ({ field }) => ({
    title: `${quote(field)} cannot be typed`,
    explanation: 'It says how things hang together, or which thing this is.',
    whatToDo: 'Move or join the things instead.',
  }),
  'edit-kind-in-use': ({ unit }) => ({
    title: `${unit} cannot become a supply`,
    explanation: 'Optical cables, feedback cables or 24 V leads lead to it, and a supply takes none of them.',
    whatToDo: 'Take these out first.',
  }),
  'edit-record-in-use': ({ thing, count }) => ({
    title: `${quote(thing)} is still in use`,
    explanation: Number(count) === 1 ? 'One thing of the cabinet names it.' : `${count} things of the cabinet name it.`,
    whatToDo: 'Let them name another one first.',
  }),
  'edit-no-fix': () => ({
    title: 'This cannot be mended by itself any more',
    explanation: 'The cabinet has changed meanwhile, or only somebody who knows it can tell what is meant.',
    whatToDo: 'Look at the place itself.',
  }),
  'join-supply': ({ unit }) => ({
    title: `${unit} has no optical ports`,
    explanation: 'It is a supply, and a supply is never on a chain.',
    whatToDo: 'Choose a drive or an encoder interface.',
  }),
  'join-off-chain': ({ unit }) => ({
    title: `${unit} is not on a chain`,
    explanation: 'It is marked as having a link of its own to the controller.',
    whatToDo: 'Take that mark away first, or move the unit onto a chain.',
  }),
  'join-two-up': ({ first, second }) => ({
    title: `The up ports of ${first} and ${second} do not go together`,
    explanation: 'A cable leads from the port away from the controller to the up port of the next unit.',
    whatToDo: 'Join an up port with a down port, or with the controller’s port.',
  }),
  'join-two-down': ({ first, second }) => ({
    title: `The ports of ${first} and ${second} both lead away from the controller`,
    explanation: 'A cable leads from such a port to the up port of the next unit.',
    whatToDo: 'Join it with an up port.',
  }),
  'join-itself': ({ unit }) => ({
    title: `${unit} cannot be joined with itself`,
    explanation: 'The chain would end there and begin nowhere.',
    whatToDo: 'Choose another unit.',
  }),
  'join-port-taken': ({ owner, cable, side }) => ({
    title: `In ${port(side, owner)} sits ${cable} already`,
    explanation: 'A port takes one plug.',
    whatToDo: 'Pull that cable first, or drop a unit onto it to put the unit in between.',
  }),
  'join-loop': ({ unit }) => ({
    title: `The chain would run in a loop through ${unit}`,
    explanation: 'A chain begins at the controller and ends at its last unit.',
    whatToDo: 'Choose a unit that does not lie further up in the same chain.',
  }),
  'join-upper-plug': ({ cable }) => ({
    title: `The upper plug of ${cable} does not go into an up port`,
    explanation: 'The plug nearer the controller sits in a down port, or in the controller’s own port.',
    whatToDo: 'Choose a down port or the controller’s port.',
  }),
  'join-lower-plug': ({ cable }) => ({
    title: `The lower plug of ${cable} goes into an up port only`,
    explanation: 'The plug farther from the controller sits in the up port of the next unit.',
    whatToDo: 'Choose an up port.',
  }),
  'feed-into-supply': ({ unit }) => ({
    title: `${unit} cannot be fed by a lead`,
    explanation: 'It is a supply: it feeds, and no 24 V lead feeds it.',
    whatToDo: 'Lead the 24 V from it to the units.',
  }),
  'feed-itself': ({ unit }) => ({
    title: `${unit} cannot feed itself`,
    explanation: 'A lead comes from a supply, or from another unit that passes its 24 V on.',
    whatToDo: 'Choose another unit.',
  }),
  'clip-too-large': ({ limitMegabytes }) => ({
    title: 'What was copied is too large to be pasted',
    explanation: `More than ${limitMegabytes} million signs are not looked at.`,
    whatToDo: 'Copy less at once, or open it as a file.',
  }),
  'clip-foreign': () => ({
    title: 'What was copied is no part of a cabinet',
    explanation: 'The clipboard holds some other text.',
    whatToDo: 'Copy units in a cabinet, or rows of a table, and paste those.',
  }),
  'clip-empty': () => ({
    title: 'There is no unit in what was copied',
    explanation: 'Cables and leads come along with the units between which they lie, and not by themselves.',
    whatToDo: 'Choose the units too, and copy again.',
  }),
  'rows-empty': () => ({
    title: 'There are no rows to paste',
    explanation: 'No line of the text names a unit.',
    whatToDo: 'Copy rows of a table with a unit in each, and paste them here.',
  }),
  'rows-too-many': ({ maximum }) => ({
    title: 'These are too many rows',
    explanation: `At most ${maximum} are taken at once.`,
    whatToDo: 'Paste them in parts.',
  }),
  'rows-no-kind-column': ({ row }) => ({
    title: `Row ${row} names the columns, but none that says what kind of unit each row is`,
    explanation: 'Every row describes one unit.',
    whatToDo: `Add a column headed Kind with ${rowKinds} in its cells.`,
  }),
  'rows-kind-missing': ({ row, form }) => ({
    title: `Row ${row} does not say what kind of unit it is`,
    explanation: 'Every row describes one unit.',
    whatToDo: `Write the kind there: ${rowKinds}.${form === 'no-head' ? ` ${columnsWithoutHead}` : ''}`,
  }),
  'rows-kind-unknown': ({ row, word, nearest, form }) => ({
    title: `${quote(word)} in row ${row} is not a kind of unit`,
    explanation: nearest === '' ? 'No known kind is written like this.' : `Perhaps ${quote(nearest)} is meant.`,
    whatToDo: `Write ${rowKinds}.${form === 'no-head' ? ` ${columnsWithoutHead}` : ''}`,
  }),
  'rows-value-wrong': ({ row, column, word }) => ({
    title: `${quote(word)} in row ${row} does not fit the column ${quote(column)}`,
    explanation: 'A number of zero or more is expected there; rows and slots are whole numbers.',
    whatToDo: 'Correct the cell, or leave it empty.',
  }),
  'rows-chain-wrong': ({ row, word, maximum }) => ({
    title: `${quote(word)} in row ${row} is no number of a chain`,
    explanation: `Chains are numbered from 1 to ${maximum}; ${quote('off')} is a drive with a link of its own to the controller.`,
    whatToDo: 'Correct the cell. Left empty it means the chain of the row above.',
  }),
  'rows-not-on-chain': ({ row }) => ({
    title: `The unit of row ${row} cannot stand there`,
    explanation: 'An encoder interface is always on a chain, and a supply is never on one.',
    whatToDo: 'Correct the kind or the chain.',
  }),
  'rows-feeder-unknown': ({ row, word }) => ({
    title: `Nothing bears the designation ${quote(word)} that row ${row} is fed by`,
    explanation: 'It is neither in the rows nor in the cabinet.',
    whatToDo: 'Correct the designation, or paste the supply too.',
  }),
  'rows-text-too-long': ({ row, column, maximum }) => ({
    title: `The text in row ${row}, column ${quote(column)}, is too long`,
    explanation: `A cell holds ${maximum} signs at most.`,
    whatToDo: 'Shorten it.',
  }),
};
