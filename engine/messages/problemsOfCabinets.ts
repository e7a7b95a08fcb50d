import { faultModes } from '../schema/index.ts';
import { itemKindWords } from './faults.ts';
import { wordList } from './numbers.ts';
import { ownWord } from './ownWord.ts';
import { named, type ProblemWords, quote, type WordsFor } from './problemWords.ts';

/** Codes of problems in a cabinet that could be opened. */
type CabinetCode =
  | 'reference-unknown'
  | 'link-end-open'
  | 'chain-fork'
  | 'unit-fork'
  | 'unit-merge'
  | 'chain-loop'
  | 'chain-number-doubled'
  | 'chain-empty'
  | 'unit-orphan'
  | 'unit-off-chain-linked'
  | 'supply-on-chain'
  | 'supply-marked-on-chain'
  | 'encoder-interface-off-chain'
  | 'unit-not-fed'
  | 'feeds-not-documented'
  | 'feed-without-supply'
  | 'feed-loop-without-supply'
  | 'feed-loop'
  | 'lead-into-supply'
  | 'lead-end-open'
  | 'feedback-on-supply'
  | 'cabinet-empty'
  | 'controller-missing'
  | 'designation-missing'
  | 'designation-doubled'
  | 'place-doubled'
  | 'row-doubled'
  | 'axis-limit-exceeded'
  | 'axis-limit-missing'
  | 'axis-limit-doubled'
  | 'axes-on-supply'
  | 'supply-ratings-on-unit'
  | 'feedback-axis-unknown'
  | 'legend-code-doubled'
  | 'unknown-behaviours-too-many'
  | 'spare-unequal'
  | 'rate-mode-unknown'
  | 'rate-doubled'
  | 'figures-crossed';

/** What a reference should name, by the field in which it stands. */
const referenceWords: Readonly<Record<string, string>> = {
  upper: 'upper plug sits at',
  lower: 'lower plug sits at',
  from: 'comes from',
  to: 'leads to',
  unit: 'belongs to',
  type: 'is of the type',
  legend: 'is read by the legend',
  defaultLegend: 'is read by the legend',
  photos: 'is shown by the picture',
  cabinetPhotos: 'is shown by the picture',
  fibre: 'is made of the fibre',
  output: 'comes from the output',
  dcLinkSupply: 'hangs on the DC link of the supply',
  subject: 'has a row of its repair table for',
};

const openEnds: Readonly<Record<string, string>> = {
  upper: 'upper plug, the one nearer the controller,',
  lower: 'lower plug, the one farther from the controller,',
  from: 'end at the supply’s side',
  to: 'end at the side of what it feeds',
};

const quantities: Readonly<Record<string, string>> = {
  'control-voltage': '24 V limits',
  'launch-power': 'launch powers',
  'receive-power': 'receive powers',
};

const spareKinds: Readonly<Record<string, string>> = {
  board: 'communication board',
  'feedback-cable': 'feedback cable',
  'controller-port': 'controller port',
};

// A kind that is not known reads as itself.
const itemWord = (item: string | number) => ownWord(itemKindWords, item)?.label ?? String(item);
const modesOf = (item: string | number): readonly string[] => ownWord<readonly string[]>(faultModes, item) ?? [];

const notSimulated = 'As long as this stands, the cabinet cannot be simulated.';

const onePlug = (place: string, links: string | number, count: string | number, whatToDo: string): ProblemWords => ({
  title: `${count} cables are plugged into ${place}`,
  explanation: `${named(links, count)} sit in it, and a port takes one plug. ${notSimulated}`,
  whatToDo,
});

export const cabinetProblemWords: WordsFor<CabinetCode> = {
  'reference-unknown': ({ thing, field, id }) => ({
    title: `${thing} names ${quote(id)}, and there is no such thing`,
    explanation: `The file says that ${thing} ${ownWord(referenceWords, field) ?? field} ${quote(id)}, and does not describe that.`,
    whatToDo: 'Correct the id, or describe what is missing.',
  }),
  'link-end-open': ({ link, end }) => ({
    title: `Cable ${link} is plugged in at one end at most`,
    explanation: `Its ${ownWord(openEnds, end) ?? end} sits nowhere. The cable is left out of the chain.`,
    whatToDo: 'Plug it in, or take the cable out of the cabinet.',
  }),
  'chain-fork': ({ chain, links, count }) =>
    onePlug(
      `the controller’s port of chain ${chain}`,
      links,
      count,
      'Keep the one that is there, and give the others the port in which they really sit.',
    ),
  'unit-fork': ({ unit, links, count }) =>
    onePlug(
      `the down port of ${unit}`,
      links,
      count,
      'A chain does not fork: keep the one that is there, and plug the others in where they really sit.',
    ),
  'unit-merge': ({ unit, links, count }) =>
    onePlug(`the up port of ${unit}`, links, count, 'Keep the one that is there, and plug the others in where they really sit.'),
  'chain-loop': ({ units, count }) => ({
    title: `The chain runs in a loop through ${named(units, count)}`,
    explanation: `A chain begins at the controller and ends at its last unit, whose down port carries a dust cap. ${notSimulated}`,
    whatToDo: 'Take out the cable that leads back.',
  }),
  'chain-number-doubled': ({ number, chains, count }) => ({
    title: `${count} chains have the number ${number}`,
    explanation: `These are ${named(chains, count)}. A report that names chain ${number} could mean any of them. ${notSimulated}`,
    whatToDo: 'Give each chain the number of its port at the controller.',
  }),
  'chain-empty': ({ chain }) => ({
    title: `Chain ${chain} has no unit`,
    explanation: 'No cable leads from this port of the controller to a unit.',
    whatToDo: 'Plug in the first cable of the chain, or take the chain out.',
  }),
  'unit-orphan': ({ unit, units, count }) => ({
    title: Number(count) === 1 ? `No chain reaches ${unit}` : `No chain reaches ${unit} and what follows it`,
    explanation: `${named(units, count)}: no cables lead there from the controller. ${notSimulated}`,
    whatToDo: `Plug in the cable that leads to ${unit}. A drive with a link of its own to the controller is marked as not on a chain.`,
  }),
  'unit-off-chain-linked': ({ unit, link }) => ({
    title: `${unit} is marked as not on a chain, and cable ${link} is plugged in there`,
    explanation: `Only one of the two can be true. ${notSimulated}`,
    whatToDo: 'Look at the unit: take the mark away, or plug the cable in where it really sits.',
  }),
  'supply-on-chain': ({ unit, link }) => ({
    title: `Cable ${link} is plugged into the supply ${unit}`,
    explanation: `A supply has no optical ports. ${notSimulated}`,
    whatToDo: `Plug the cable in where it really sits, or correct what kind of unit ${unit} is.`,
  }),
  'supply-marked-on-chain': ({ unit }) => ({
    title: `The supply ${unit} is marked as being on a chain`,
    explanation: `A supply is never on a chain. ${notSimulated}`,
    whatToDo: `Take the mark away, or correct what kind of unit ${unit} is.`,
  }),
  'encoder-interface-off-chain': ({ unit }) => ({
    title: `The encoder interface ${unit} is marked as not on a chain`,
    explanation: 'An encoder interface does its work on a chain only. It is treated as a unit that is fed and nothing else.',
    whatToDo: `Take the mark away and plug in its cables, or correct what kind of unit ${unit} is.`,
  }),
  'unit-not-fed': ({ unit }) => ({
    title: `${unit} is fed by nothing`,
    explanation: 'No 24 V lead leads to it, so it is taken to be dark.',
    whatToDo: 'Add the lead that feeds it.',
  }),
  'feeds-not-documented': () => ({
    title: 'No 24 V lead is written down',
    explanation: 'Every unit is taken to have its 24 V, and faults of the 24 V feeds are not among the suspects.',
    whatToDo: 'Add the leads as they are laid. A unit without a lead is taken to be dark once the first lead is there.',
  }),
  'feed-without-supply': ({ unit, from }) => ({
    title: `${unit} gets no 24 V`,
    explanation: `It is fed from ${from}, and that is fed by no supply, so ${unit} is taken to be dark.`,
    whatToDo: `Add the lead that feeds ${from}.`,
  }),
  'feed-loop-without-supply': ({ units, count }) => ({
    title: `${named(units, count)} feed each other, and no supply feeds them`,
    explanation: 'Following their 24 V leads back one never comes to a supply, so all of them are taken to be dark.',
    whatToDo: 'Add the lead from the supply, and take out the one that leads back.',
  }),
  'feed-loop': ({ units, count }) => ({
    title: `The 24 V leads run in a loop through ${named(units, count)}`,
    explanation: 'They are fed by a supply, but one lead leads back. A second feed is allowed; a loop is seldom meant.',
    whatToDo: 'See that the leads are drawn as they are laid.',
  }),
  'lead-into-supply': ({ lead, unit }) => ({
    title: `Lead ${lead} feeds the supply ${unit}`,
    explanation: `A supply is never fed by a 24 V lead. ${notSimulated}`,
    whatToDo: 'Turn the lead round, or lead it to what it feeds.',
  }),
  'lead-end-open': ({ lead, end }) => ({
    title: `Lead ${lead} is connected at one end at most`,
    explanation: `Its ${ownWord(openEnds, end) ?? end} is connected to nothing. It feeds nothing.`,
    whatToDo: 'Connect it, or take the lead out of the cabinet.',
  }),
  'feedback-on-supply': ({ feedback, unit }) => ({
    title: `Feedback cable ${feedback} is plugged into the supply ${unit}`,
    explanation: `An encoder is wired to a drive or an encoder interface. ${notSimulated}`,
    whatToDo: 'Give it the unit in which it really sits.',
  }),
  'cabinet-empty': () => ({
    title: 'The cabinet has no units',
    explanation: 'There is nothing yet that could be simulated or searched.',
    whatToDo: 'Add the units, or build a whole chain at once with the quick chain.',
  }),
  'controller-missing': () => ({
    title: 'The controller is not described',
    explanation: 'Every chain hangs on one. It is taken to be there and powered.',
    whatToDo: 'Add the controller with its designation.',
  }),
  'designation-missing': ({ thing, id }) => ({
    title: `The ${thing} with the id ${quote(id)} has no designation`,
    explanation: 'Nobody at the cabinet can tell by its id which one it is.',
    whatToDo: 'Write down the designation that stands on it.',
  }),
  'designation-doubled': ({ designation, ids, count }) => ({
    title: `${count} things bear the designation ${quote(designation)}`,
    explanation: `Their ids are ${named(ids, count)}. Asked for by this designation, none of them can be found.`,
    whatToDo: 'Give each a designation of its own, on the machine too.',
  }),
  'place-doubled': ({ row, slot, units, count }) => ({
    title: `${named(units, count)} stand in the same place`,
    explanation: `All of them are said to stand in row ${row}, slot ${slot}.`,
    whatToDo: 'Correct the row or the slot.',
  }),
  'row-doubled': ({ row }) => ({
    title: `Row ${row} is named twice`,
    explanation: 'Only the first name is used.',
    whatToDo: 'Take one of the names out, or correct its row.',
  }),
  'axis-limit-exceeded': ({ chain, axes, limit, cycleClass, assumedDrives }) => ({
    title: `Chain ${chain} has ${axes} axes, and ${limit} are allowed`,
    explanation: `${limit} is your limit for the control cycle ${quote(cycleClass)}.${
      Number(assumedDrives) > 0 ? ` Drives whose axes are not written down were counted as one axis each; there are ${assumedDrives}.` : ''
    }`,
    whatToDo: 'Move units to another chain, choose a slower control cycle, or correct the limit.',
  }),
  'axis-limit-missing': ({ chain, cycleClass }) => ({
    title: `No axis limit is given for chain ${chain}`,
    explanation: `It runs at the control cycle ${quote(cycleClass)}, which the table of axis limits does not name.`,
    whatToDo: 'Add the limit from the controller’s manual to the table.',
  }),
  'axis-limit-doubled': ({ cycleClass }) => ({
    title: `The table of axis limits names ${quote(cycleClass)} twice`,
    explanation: 'The lower limit is used.',
    whatToDo: 'Take one of the two out.',
  }),
  'axes-on-supply': ({ unit }) => ({
    title: `The supply ${unit} is said to drive axes`,
    explanation: 'A supply drives none. They are not counted.',
    whatToDo: `Take the axes out, or correct what kind of unit ${unit} is.`,
  }),
  'supply-ratings-on-unit': ({ unit }) => ({
    title: `${unit} has the ratings of a supply and is none`,
    explanation: 'They are not used.',
    whatToDo: `Take them out, or correct what kind of unit ${unit} is.`,
  }),
  'feedback-axis-unknown': ({ feedback, unit, axis }) => ({
    title: `Feedback cable ${feedback} names an axis that ${unit} does not drive`,
    explanation: `${quote(axis)} is not among the axes of ${unit}.`,
    whatToDo: 'Correct the name of the axis, or add the axis to the unit.',
  }),
  'legend-code-doubled': ({ legend, code }) => ({
    title: `The legend ${quote(legend)} has the code ${quote(code)} twice`,
    explanation: 'One code may have several meanings, but stands in the legend once.',
    whatToDo: 'Put the meanings of both into one entry, from the equipment’s manual.',
  }),
  'unknown-behaviours-too-many': ({ types, count, limit }) => ({
    title: `The behaviour of ${count} types of equipment is unknown`,
    explanation: `These are ${named(types, count)}. A search weighs all behaviours of up to ${limit} types; of the others it takes the default, and its answer says so.`,
    whatToDo: 'Settle the behaviour of some of them: pull one plug on a healthy machine and note what the displays show.',
  }),
  'spare-unequal': ({ spare, partNumber, kind }) => ({
    title: `The spare ${spare} is equal to nothing in the cabinet`,
    explanation: `No ${ownWord(spareKinds, kind) ?? kind} of the cabinet has the part number ${quote(partNumber)}.`,
    whatToDo: 'Compare the numbers on the parts. If the spare fits nevertheless, ask its maker; if it does not, mark it as not fitting.',
  }),
  'rate-mode-unknown': ({ item, mode }) => ({
    title: `The table of rates names ${quote(mode)} for a ${itemWord(item)}`,
    explanation: 'A fault of this name does not exist there. The line is not used.',
    whatToDo: `Use one of these: ${wordList(modesOf(item), 'or')}.`,
  }),
  'rate-doubled': ({ item, mode }) => ({
    title: `The table of rates names ${quote(mode)} for a ${itemWord(item)} twice`,
    explanation: 'It cannot be told which of the two is meant.',
    whatToDo: 'Take one of the two out.',
  }),
  'figures-crossed': ({ thing, quantity, low, high }) => ({
    title: `The ${ownWord(quantities, quantity) ?? quantity} of ${thing} are the wrong way round`,
    explanation: `The lower figure is ${low}, the higher one ${high}.`,
    whatToDo: 'Compare both with the data sheet.',
  }),
};
