import type { PassphraseStrength } from '../sealing/index.ts';
import { wordWeakPassphrase } from './exercise.ts';
import { wordList } from './numbers.ts';
import { ownWord } from './ownWord.ts';

/**
 * What can be wrong with what was asked of the command line (or of one line of a batch), by code with its facts. `near` is the most
 * similar name that exists, empty when none is similar.
 */
export interface UsageFacts {
  'command-missing': { readonly commands: readonly string[] };
  'command-unknown': { readonly command: string; readonly commands: readonly string[]; readonly near: string };
  'option-unknown': { readonly option: string; readonly command: string; readonly near: string };
  'option-value-missing': { readonly option: string; readonly value: string };
  'option-value-unwanted': { readonly option: string };
  'option-repeated': { readonly option: string };
  'options-together': { readonly option: string; readonly other: string };
  'option-needs': { readonly option: string; readonly other: string };
  'option-of-other-action': { readonly option: string; readonly actions: string };
  'times-malformed': { readonly value: string };
  'hint-malformed': { readonly value: string };
  'file-argument-missing': { readonly command: string };
  'two-files-needed': { readonly command: string };
  'passphrase-missing': Record<string, never>;
  'passphrase-weak': { readonly strength: PassphraseStrength };
  'fault-count': { readonly most: number };
  'delete-not-confirmed': { readonly count: number };
  'argument-unwanted': { readonly argument: string; readonly command: string };
  'value-not-allowed': { readonly where: string; readonly value: string; readonly allowed: readonly string[]; readonly near: string };
  'number-not-allowed': { readonly where: string; readonly value: string; readonly least: number; readonly whole: boolean };
  'number-out-of-range': { readonly where: string; readonly value: string; readonly least: number; readonly most: number };
  'set-malformed': { readonly value: string };
  'figure-not-of-thing': { readonly name: string; readonly figure: string; readonly allowed: readonly ThingWord[] };
  'fault-malformed': { readonly value: string };
  'act-malformed': { readonly value: string };
  'name-missing': { readonly where: string; readonly thing: ThingWord };
  'name-unknown': { readonly thing: ThingWord; readonly name: string; readonly near: string; readonly known?: readonly string[] };
  'name-of-several': { readonly thing: ThingWord; readonly name: string; readonly ids: readonly string[] };
  'chain-of-two': { readonly name: string; readonly numbers: readonly number[] };
  'plug-end-missing': { readonly value: string };
  'place-unknown': { readonly name: string; readonly chain: string; readonly length: number };
  'ordinal-unknown': { readonly name: string; readonly chain: string; readonly group: string; readonly count: number };
  'presence-only-steady': { readonly value: string };
  'presence-both': { readonly value: string };
  'only-at-power-up': { readonly value: string };
  'absent-needs-intermittent': { readonly value: string };
  'loss-needs-dim': { readonly value: string };
  'faults-exclude': { readonly item: string };
  'board-needs-chain-unit': { readonly name: string };
  'supply-needed': { readonly name: string };
  'unit-needed': { readonly name: string };
  'display-malformed': { readonly value: string };
  'meaning-not-of-supply': { readonly name: string; readonly value: string };
  'said-differently': { readonly option: string; readonly name: string; readonly values: readonly string[] };
  'code-without-legend': { readonly name: string; readonly value: string };
  'code-unknown': { readonly name: string; readonly value: string; readonly legend: string; readonly near: string };
  'report-malformed': { readonly value: string };
  'gap-not-neighbours': { readonly value: string; readonly chain: string };
  'batch-line-not-json': { readonly line: number };
  'batch-line-not-object': { readonly line: number };
  'batch-line-too-long': { readonly line: number; readonly limitMegabytes: number };
  'batch-cabinet-missing': Readonly<Record<string, never>>;
  'file-not-readable': { readonly file: string; readonly reason: string };
  'cabinet-not-sound': { readonly file: string };
  'file-not-writable': { readonly file: string; readonly reason: string };
  'output-not-writable': { readonly reason: string };
  'result-twice': { readonly file: string; readonly other: string; readonly code: string };
  'no-case-confirmed': { readonly where: string };
  'nothing-to-print': { readonly what: string };
  'document-left-out': { readonly document: string; readonly file: string };
  'signs-missing': { readonly signs: string };
  'picture-missing': { readonly picture: string };
  'map-malformed': { readonly value: string };
  'head-unknown': { readonly head: string; readonly heads: readonly string[]; readonly near: string };
  'no-column-known': { readonly heads: readonly string[] };
}
export type UsageCode = keyof UsageFacts;

/** One thing wrong with what was asked, as data. */
export type UsageProblem = { readonly [C in UsageCode]: { readonly code: C; readonly facts: UsageFacts[C] } }[UsageCode];

/** The things of a cabinet that are named on the command line. */
export const thingWords = {
  unit: 'unit',
  supply: 'supply',
  cable: 'cable',
  lead: 'lead',
  feedback: 'feedback cable',
  chain: 'chain',
  spare: 'spare part',
  any: 'unit, cable, lead, feedback cable or chain',
} as const;
export type ThingWord = keyof typeof thingWords;

interface Words {
  readonly title: string;
  readonly whatToDo: string;
}

const quote = (text: string) => `“${text}”`;
const meant = (near: string) => (near ? `Did you mean ${quote(near)}? ` : '');
/** Not more names than are read at a glance. */
const mostNames = 12;
const shortList = (names: readonly string[]) =>
  names.length > mostNames ? [...names.slice(0, mostNames), `${names.length - mostNames} more`] : names;
const oneOf = (values: readonly string[]) => `Use ${wordList(values, 'or')}.`;

const reasonWords: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'it may not be read',
  EPERM: 'it may not be read',
  EISDIR: 'it is a folder',
  EMFILE: 'too many files are open',
  ENAMETOOLONG: 'its name is too long',
};

const writeReasons: Readonly<Record<string, string>> = {
  ENOENT: 'its folder cannot be made there',
  EEXIST: 'there is such a file already',
  EACCES: 'it may not be written',
  EPERM: 'it may not be written',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk space of this user is used up',
  EFBIG: 'no file of that size is allowed there',
  EROFS: 'the disk is write-protected',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is no folder',
};

const usageWords: { readonly [C in UsageCode]: (facts: UsageFacts[C]) => Words } = {
  'command-missing': ({ commands }) => ({ title: 'No command was given', whatToDo: oneOf(commands) }),
  'command-unknown': ({ command, commands, near }) => ({
    title: `There is no command ${quote(command)}`,
    whatToDo: meant(near) + oneOf(commands),
  }),
  'option-unknown': ({ option, command, near }) => ({
    title: `${command} has no option ${quote(option)}`,
    whatToDo: `${meant(near)}See linkwright ${command} --help. A file whose name begins with a minus sign goes after “--”.`,
  }),
  'option-value-missing': ({ option, value }) => ({
    title: `${option} needs a value`,
    whatToDo: `Write ${option} ${value}.`,
  }),
  'option-value-unwanted': ({ option }) => ({ title: `${option} takes no value`, whatToDo: `Write ${option} alone.` }),
  'option-repeated': ({ option }) => ({ title: `${option} was given more than once`, whatToDo: 'Give it once.' }),
  'options-together': ({ option, other }) => ({ title: `${option} does not go with ${other}`, whatToDo: 'Leave one of them out.' }),
  'option-needs': ({ option, other }) => ({ title: `${option} goes only with ${other}`, whatToDo: `Give ${other} too, or leave it out.` }),
  'option-of-other-action': ({ option, actions }) => ({ title: `${option} goes only with ${actions}`, whatToDo: 'Leave it out.' }),
  'times-malformed': ({ value }) => ({
    title: `${quote(value)} is not three numbers of minutes`,
    whatToDo: 'Write minutes to open, to isolate and to switch on again, parted by commas, for example 2,8,5.',
  }),
  'hint-malformed': ({ value }) => ({
    title: `${quote(value)} is no hint with its price`,
    whatToDo: 'Write minutes=text, for example "3=Look at both ends of the gap".',
  }),
  'passphrase-missing': () => ({
    title: 'An exercise needs a passphrase that seals its answer',
    whatToDo: 'Add --passphrase WORD, and tell it to whoever shall play.',
  }),
  'passphrase-weak': ({ strength }) => ({
    title: 'This passphrase is too weak to seal an answer',
    whatToDo: wordWeakPassphrase(strength),
  }),
  'fault-count': ({ most }) => ({
    title: `An exercise hides one fault, or up to ${most}`,
    whatToDo: 'Name them with --fault.',
  }),
  'delete-not-confirmed': ({ count }) => ({
    title: `${count === 1 ? 'One result file' : `${count} result files`} would be deleted for good`,
    whatToDo: 'Add --yes if that is what you want.',
  }),
  'file-argument-missing': ({ command }) => ({
    title: `${command} was given no file`,
    whatToDo: `Name the file, for example: linkwright ${command} my.cabinet.json`,
  }),
  'two-files-needed': ({ command }) => ({
    title: `${command} needs two files`,
    whatToDo: `Write them behind it: the earlier one, or the design, first. Help: linkwright help ${command}.`,
  }),
  'argument-unwanted': ({ argument, command }) => ({
    title: `${command} does not know what to do with ${quote(argument)}`,
    whatToDo: `Leave it out, or see linkwright ${command} --help.`,
  }),
  'value-not-allowed': ({ where, value, allowed, near }) => ({
    title: `${where}: ${value ? quote(value) : 'an empty value'} is not known here`,
    whatToDo: meant(near) + oneOf(allowed),
  }),
  'number-not-allowed': ({ where, value, least, whole }) => ({
    title: `${where}: ${value ? quote(value) : 'an empty value'} is not a number that fits`,
    whatToDo: whole
      ? `Give a whole number of ${least} or more.`
      : `Give a number of ${least} or more, with a decimal point if it needs one.`,
  }),
  'number-out-of-range': ({ where, value, least, most }) => ({
    title: `${where}: ${value ? quote(value) : 'an empty value'} is not a number that fits`,
    whatToDo: `Give a number from ${least} to ${most}, with a decimal point if it needs one.`,
  }),
  'set-malformed': ({ value }) => ({
    title: `${value ? quote(value) : 'an empty text'} does not say which figure to try`,
    whatToDo: 'Write figure:name=value, for example length:-WH3=12, or figure=value for ambient and reserve.',
  }),
  'figure-not-of-thing': ({ name, figure, allowed }) => ({
    title: `${name} has no ${quote(figure)}`,
    whatToDo: `Name a ${wordList(
      allowed.map((thing) => thingWords[thing]),
      'or',
    )}.`,
  }),
  'fault-malformed': ({ value }) => ({
    title: `${value ? quote(value) : 'an empty text'} does not name a fault`,
    whatToDo: 'Write item:name:mode, for example cable:-WH3:cut or plug:-WH3/upper:loose.',
  }),
  'act-malformed': ({ value }) => ({
    title: `${value ? quote(value) : 'an empty text'} does not name an act`,
    whatToDo: 'Write act:name, for example reseat-plug:-WH3/upper or exchange-boards:-TB2/-TB3.',
  }),
  'name-missing': ({ where, thing }) => ({
    title: `${where} does not say which ${thingWords[thing]}`,
    whatToDo: 'Name it by its designation or its id.',
  }),
  'name-unknown': ({ thing, name, near, known = [] }) => ({
    title: `The cabinet has no ${thingWords[thing]} ${quote(name)}`,
    whatToDo: `${meant(near)}Use a designation or an id of the cabinet file.${known.length > 0 ? ` It has ${wordList(shortList(known))}.` : ''}`,
  }),
  'name-of-several': ({ thing, name, ids }) => ({
    title: `More than one ${thingWords[thing]} is called ${quote(name)}`,
    whatToDo: `Use an id instead: ${wordList(ids.slice(0, 10), 'or')}.`,
  }),
  'chain-of-two': ({ name, numbers }) => ({
    title: `${quote(name)} is the number of one chain and the id of another`,
    whatToDo: `Write ${wordList(
      numbers.map((number) => quote(`chain ${number}`)),
      'or',
    )}: that is always the number.`,
  }),
  'plug-end-missing': ({ value }) => ({
    title: `${quote(value)} does not say which end of the cable`,
    whatToDo: 'Add /upper for the end nearer the controller, or /lower for the other.',
  }),
  'place-unknown': ({ name, chain, length }) => ({
    title: `${quote(name)}: ${chain} has no such position`,
    whatToDo: length > 0 ? `Its positions are 1 to ${length}, counted from the controller.` : 'No unit is on this chain.',
  }),
  'ordinal-unknown': ({ name, chain, group, count }) => ({
    title: `${quote(name)}: ${chain} has no such ${group}`,
    whatToDo: count > 0 ? `It has ${count}, counted from the controller, starting at 1.` : `It has no ${group} at all.`,
  }),
  'presence-only-steady': ({ value }) => ({
    title: `${quote(value)} cannot come and go`,
    whatToDo: 'Leave “intermittent” out: this kind of fault is there all the time.',
  }),
  'presence-both': ({ value }) => ({
    title: `${quote(value)} is said to be there all the time, and to come and go`,
    whatToDo: 'Leave either “steady” or “intermittent” out.',
  }),
  'only-at-power-up': ({ value }) => ({
    title: `${quote(value)} cannot come while the machine runs: nothing valid would have passed before`,
    whatToDo: 'Add --onset at-power-up, or name the act that left it so with --before-trip or --since-trip.',
  }),
  'absent-needs-intermittent': ({ value }) => ({
    title: `${quote(value)}: a steady fault cannot be absent now`,
    whatToDo: 'Add “intermittent”, or leave “absent-now” out.',
  }),
  'loss-needs-dim': ({ value }) => ({
    title: `${quote(value)}: only a dim fibre loses so many dB, and it does so once`,
    whatToDo: 'Write loss after outbound-dim or return-dim, for example cable:-WH3:return-dim,loss=4.5.',
  }),
  'faults-exclude': ({ item }) => ({
    title: `${item} was given two faults that cannot be there together`,
    whatToDo: 'Give one mode for each item. A cable may have one mode for each of its two fibres, if it is neither cut nor crossed.',
  }),
  'board-needs-chain-unit': ({ name }) => ({
    title: `${name} is on no chain, so it has neither a board nor optical plugs that could fail`,
    whatToDo: 'Name a unit on a chain.',
  }),
  'supply-needed': ({ name }) => ({ title: `${name} is not a supply`, whatToDo: 'Name a supply, or another kind of fault.' }),
  'unit-needed': ({ name }) => ({
    title: `${name} is a supply, and supplies do not have this kind of fault`,
    whatToDo: 'Use supply:name:output-lost or supply:name:dead.',
  }),
  'display-malformed': ({ value }) => ({
    title: `${value ? quote(value) : 'an empty text'} does not say what a display shows`,
    whatToDo: 'Write unit=what, for example -TB2=upstream-loss or 1/drive/2=dark.',
  }),
  'meaning-not-of-supply': ({ name, value }) => ({
    title: `${name} is a supply, and a supply never shows ${quote(value)}`,
    whatToDo: oneOf(['dark', 'quiet', 'other', 'lit']),
  }),
  'said-differently': ({ option, name, values }) => ({
    title: `${option} says different things of ${name}: ${wordList(values)}`,
    whatToDo: 'Give the one that holds. What was seen at another time belongs into a case, as a snapshot of its own.',
  }),
  'code-without-legend': ({ name, value }) => ({
    title: `${quote(value)} is no meaning, and no legend tells what it means at ${name}`,
    whatToDo: 'Use dark, quiet, upstream-loss, downstream-loss, both-losses, other, lit or complains, or give the unit’s type a legend.',
  }),
  'code-unknown': ({ name, value, legend, near }) => ({
    title: `${quote(value)} is neither a meaning nor a code of the legend ${quote(legend)} of ${name}`,
    whatToDo: `${meant(near)}Use a meaning or a code of the legend; “other” stands for any other code.`,
  }),
  'report-malformed': ({ value }) => ({
    title: `${value ? quote(value) : 'an empty text'} does not say where a chain is lost`,
    whatToDo: 'Write chain=gap, for example "1=2|3", 1=2..3, "1=drive 2|encoder 1" or 1=none.',
  }),
  'gap-not-neighbours': ({ value, chain }) => ({
    title: `${quote(value)} does not name two neighbours of ${chain}`,
    whatToDo: 'Name two positions that follow each other, counted from the controller, which is 0.',
  }),
  'batch-line-not-json': ({ line }) => ({
    title: `Line ${line} is not valid JSON`,
    whatToDo: 'Write one whole JSON object on each line.',
  }),
  'batch-line-not-object': ({ line }) => ({
    title: `Line ${line} is not a JSON object`,
    whatToDo: 'Write one whole JSON object on each line.',
  }),
  'batch-line-too-long': ({ line, limitMegabytes }) => ({
    title: `Line ${line} is longer than ${limitMegabytes} MB`,
    whatToDo: 'Leave the photos out of the cabinet, or give the cabinet as a file.',
  }),
  'batch-cabinet-missing': () => ({
    title: 'There is no cabinet for this line',
    whatToDo: 'Put a field “cabinet” into the line, or name a cabinet file on the command line.',
  }),
  'file-not-readable': ({ file, reason }) => ({
    title: `${file} cannot be read: ${ownWord(reasonWords, reason) ?? reason}`,
    whatToDo: 'Check the name and the folder, and that nothing else holds the file.',
  }),
  'file-not-writable': ({ file, reason }) => ({
    title: `${file} cannot be written: ${ownWord(writeReasons, reason) ?? reason}`,
    whatToDo: reason === 'EEXIST' ? 'Choose another name, or add --replace.' : 'Check the folder, and that nothing else holds the file.',
  }),
  'output-not-writable': ({ reason }) => ({
    title: `The answer could not be written to the end: ${ownWord(writeReasons, reason) ?? reason}`,
    whatToDo: 'What came out is not the whole answer. Make room where it goes, or send it elsewhere, and run the command again.',
  }),
  'result-twice': ({ file, other, code }) => ({
    title: `${file} is the same play as ${other}`,
    whatToDo: `It is counted once, under the code “${code}”.`,
  }),
  'no-case-confirmed': ({ where }) => ({
    title: `In ${where} no other case is confirmed`,
    whatToDo: 'The rates are as without it. linkwright cases says why each case is not counted.',
  }),
  'nothing-to-print': ({ what }) => ({
    title: `There is nothing to print: ${what}`,
    whatToDo: 'Ask for other documents, or see linkwright print --help.',
  }),
  'document-left-out': ({ document, file }) => ({
    title: `${file}: the ${document} was left out, because the cabinet cannot be simulated as it is`,
    whatToDo: `See linkwright check ${file}`,
  }),
  'signs-missing': ({ signs }) => ({
    title: `No typeface at hand has the signs ${signs}`,
    whatToDo: 'A box stands for each. The same text is whole in SVG and HTML.',
  }),
  'picture-missing': ({ picture }) => ({
    title: `The photo “${picture}” could not be printed`,
    whatToDo: 'It is damaged, too large, or neither PNG nor JPEG. Its words stand in its place.',
  }),
  'map-malformed': ({ value }) => ({
    title: `${value ? quote(value) : 'an empty text'} does not say which column is meant`,
    whatToDo: 'Write column=head, for example serial=S/N. The columns are listed by linkwright import --help.',
  }),
  'head-unknown': ({ head, heads, near }) => ({
    title: `The list has no column ${quote(head)}`,
    whatToDo: meant(near) + oneOf(heads.slice(0, 30)),
  }),
  'no-column-known': ({ heads }) => ({
    title: 'No column of the list is known',
    whatToDo: `Its heads are ${wordList(heads.slice(0, 30).map(quote))}. Known are heads such as Designation, Kind, Chain, Position, Axes, Model, Serial number, or say what yours mean with --map.`,
  }),
  'cabinet-not-sound': ({ file }) => ({
    title: `${file} has errors that must be mended before anything can be computed from it`,
    whatToDo: 'Mend what is listed above, in Draw or in the file.',
  }),
};

/** The words for a usage problem: what is wrong and where, and what to do. */
export function wordUsage(problem: UsageProblem): Words {
  // The table has a function for exactly this code's facts; a union of them cannot be called without saying so.
  const words = usageWords[problem.code] as (facts: UsageProblem['facts']) => Words;
  return words(problem.facts);
}
