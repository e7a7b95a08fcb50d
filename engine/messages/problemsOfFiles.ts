import { wordCount } from './numbers.ts';
import { ownWord } from './ownWord.ts';
import { atLine, type ProblemWords, quote, type WordsFor } from './problemWords.ts';

/** Codes of problems that keep a file, or a call of the page, from being taken at all. */
type FileCode =
  | 'file-empty'
  | 'file-too-large'
  | 'file-not-utf8'
  | 'file-unreadable'
  | 'file-not-saved'
  | 'file-name-unusable'
  | 'file-would-not-open'
  | 'file-changed-outside'
  | 'case-not-kept'
  | 'case-in-the-way'
  | 'recovery-not-kept'
  | 'recovery-unreadable'
  | 'play-not-restored'
  | 'drafts-not-restored'
  | 'call-refused'
  | 'settings-set-aside'
  | 'settings-not-kept'
  | 'json-damaged'
  | 'json-too-deep'
  | 'json-too-many-values'
  | 'json-duplicate-key'
  | 'json-prototype-key'
  | 'json-half-sign'
  | 'envelope-not-object'
  | 'envelope-field-unknown'
  | 'envelope-app-version-invalid'
  | 'format-foreign'
  | 'format-other-kind'
  | 'version-missing'
  | 'version-invalid'
  | 'version-too-new'
  | 'migration-failed'
  | 'content-missing'
  | 'field-unknown'
  | 'field-missing'
  | 'field-wrong-type'
  | 'field-not-allowed'
  | 'text-too-long'
  | 'text-too-short'
  | 'list-too-long'
  | 'list-too-short'
  | 'field-too-large'
  | 'field-too-small'
  | 'field-bad-form'
  | 'field-invalid'
  | 'more-problems'
  | 'problems-too-many'
  | 'id-duplicate';

const untouched = 'The file was left as it is.';

export const formatWords: Readonly<Record<string, string>> = {
  'linkwright-cabinet': 'cabinet file',
  'linkwright-case': 'case file',
  'linkwright-truth': 'truth file',
  'linkwright-exercise': 'exercise file',
  'linkwright-result': 'result of an exercise',
};

/** What a file of a format is called. */
export const formatName = (format: string | number) => ownWord(formatWords, format) ?? `file of the format ${quote(format)}`;

/** What should have stood at the place of a damage. */
const expectedJsonWords: Readonly<Record<string, string>> = {
  value: 'a value should stand here: a text in quotation marks, a number, a list, an object, true, false or null',
  key: 'a field name in quotation marks should stand here; the last field of an object has no comma after it',
  'key-or-end': 'a field name in quotation marks, or the closing brace, should stand here',
  colon: 'a colon should stand here, between a field name and its value',
  'comma-or-end-of-list': 'a comma or the closing bracket of a list should stand here',
  'comma-or-end-of-object': 'a comma or the closing brace of an object should stand here',
  escape: 'this is no sign that may follow a backslash in a text; a backslash itself is written twice',
  'closing-quote': 'the text is not closed by a quotation mark, or holds a line break or another control sign',
  digit: 'a digit should stand here',
  'nothing-more': 'the file should end here',
};

const typeWords: Readonly<Record<string, string>> = {
  text: 'a text',
  number: 'a number',
  'whole-number': 'a whole number',
  'true-or-false': 'true or false',
  list: 'a list',
  object: 'an object',
  nothing: 'null',
  'number-too-large': 'a number too large to be held',
};

const typeName = (type: string | number) => ownWord(typeWords, type) ?? String(type);

/** What a text of a fixed form looks like. */
const formWords: Readonly<Record<string, string>> = {
  id: 'An id begins with a letter or a digit, goes on with letters, digits, dots, underscores and hyphens, and has at most 64 signs.',
  date: 'A date is written year first, like 2026-11-25.',
  moment: 'A moment is written with its time zone, like 2026-11-25T10:42:00Z.',
  picture: 'A picture is written in base64, without line breaks.',
};

const inLine = (line: string | number) => (Number(line) > 0 ? ` (line ${line})` : '');

const unreadableWords: Readonly<Record<string, string>> = {
  ENOENT: 'It is not there any more.',
  EACCES: 'The system does not allow it to be read.',
  EPERM: 'The system does not allow it to be read.',
  EBUSY: 'Another program holds it open.',
  EISDIR: 'It is a folder.',
  EIO: 'The disk did not answer as it should.',
  special: 'It is a device or a pipe, not a file.',
  forgotten: 'The program no longer knows where it is.',
};

const unsavedWords: Readonly<Record<string, string>> = {
  EACCES: 'You are not allowed to write there.',
  EPERM: 'You are not allowed to write there, or another program holds the file open.',
  EROFS: 'That disk can only be read.',
  ENOSPC: 'That disk is full.',
  EBUSY: 'Another program holds the file open.',
  ENOENT: 'That folder is not there any more.',
  EISDIR: 'That is a folder.',
  ENOTDIR: 'That folder is not there any more.',
  EDQUOT: 'Your share of that disk is used up.',
  ENAMETOOLONG: 'The name, with its folders, is too long for that disk.',
  EIO: 'The disk did not take it.',
  ENXIO: 'That drive is not there any more.',
  ENODEV: 'That drive is not there any more.',
  ESTALE: 'The network drive is not connected any more.',
  ENETUNREACH: 'The network drive cannot be reached.',
  EHOSTUNREACH: 'The network drive cannot be reached.',
  EHOSTDOWN: 'The network drive cannot be reached.',
  ETIMEDOUT: 'The network drive did not answer in time.',
  forgotten: 'The program no longer knows where it is.',
  NotAllowedError: 'The browser was not allowed to write there.',
  NotFoundError: 'It is not there any more.',
  QuotaExceededError: 'That disk, or the browser’s share of it, is full.',
  NoModificationAllowedError: 'It can only be read, or another program holds it open.',
};

const unusableNameWords: Readonly<Record<string, string>> = {
  reserved: 'Windows keeps this name for a device, whatever follows its first dot.',
  ending: 'Windows drops dots and spaces at the end of a name, so the file would get another one.',
  sign: 'Windows allows none of the signs < > : " / \\ | ? * in a name.',
};

const damaged = (title: string, explanation: string): ProblemWords => ({
  title,
  explanation: `${explanation} ${untouched}`,
  whatToDo: 'Correct it there in a text editor, or open an earlier copy of the file.',
});

const wrong = (field: string | number, line: string | number, explanation: string, whatToDo: string): ProblemWords => ({
  title: `${quote(field)}${inLine(line)} cannot be read`,
  explanation,
  whatToDo,
});

export const fileProblemWords: WordsFor<FileCode> = {
  'file-empty': () => ({
    title: 'The file is empty',
    explanation: 'It holds nothing but white space.',
    whatToDo: 'Choose another file, or open an earlier copy of this one.',
  }),
  'file-too-large': ({ megabytes, limitMegabytes }) => ({
    title: `The file is too large: ${megabytes} MB`,
    explanation: `Files of up to ${limitMegabytes} MB are opened. ${untouched}`,
    whatToDo: 'If it is one of ours, it is its pictures that make it large: take some out, or make them smaller. Else choose another file.',
  }),
  'file-not-utf8': ({ line }) => ({
    title: `The file is not plain text: line ${line}`,
    explanation: `Our files are text in UTF-8. This one holds bytes that are no such text. ${untouched}`,
    whatToDo: 'Choose another file. If it was edited by hand, save it again with the encoding UTF-8.',
  }),
  'file-unreadable': ({ file, reason }) => ({
    title: `${quote(file)} could not be read`,
    explanation: ownWord(unreadableWords, reason) ?? `The system answered ${reason}.`,
    whatToDo: 'See that the file is there, that its drive or network is connected, and that you may read it; then open it again.',
  }),
  'file-not-saved': ({ file, reason }) => ({
    title: `${quote(file)} could not be saved`,
    explanation: `${ownWord(unsavedWords, reason) ?? `The system answered ${reason}.`} Nothing was changed on the disk, and your work is still in the window.`,
    whatToDo: 'Save it in another place, for example in your own folder.',
  }),
  'file-name-unusable': ({ file, reason }) => ({
    title: `${quote(file)} cannot be the name of a file`,
    explanation: `${ownWord(unusableNameWords, reason) ?? `The system answered ${reason}.`} Nothing was saved.`,
    whatToDo: 'Save it under another name.',
  }),
  'file-would-not-open': ({ file }) => ({
    title: `${quote(file)} was not saved: what was written would not open again`,
    explanation: 'Before it replaces a file, the program opens what it wrote. That failed, so the file on the disk was left as it is.',
    whatToDo:
      'Save it under another name. Undo the last steps if that fails too, and report it: it is a fault of the program or of the disk.',
  }),
  'file-changed-outside': ({ file }) => ({
    title: `${quote(file)} was not saved: another program has changed it`,
    explanation: 'Since it was opened or last saved here, it was changed on the disk. It was left as it is.',
    whatToDo: 'Load it from the disk, save yours under another name, or say that yours shall replace it.',
  }),
  'case-not-kept': ({ reason }) => ({
    title: 'The collection of confirmed cases cannot be changed',
    explanation: `${ownWord(unsavedWords, reason) ?? `The system answered ${reason}.`} What was kept before is as it was.`,
    whatToDo: 'See that there is room on the disk, and that you may write to your own settings folder; then try again.',
  }),
  'case-in-the-way': ({ file }) => ({
    title: `${file} stands in the way, and does not open`,
    explanation: 'It is damaged, or written by a newer version. It was left untouched, and the case was not kept.',
    whatToDo: 'Move that file out of the folder “cases” of the settings folder, or use the newer version; then keep the case again.',
  }),
  'recovery-not-kept': ({ reason }) => ({
    title: 'No recovery copy can be kept',
    explanation: `${ownWord(unsavedWords, reason) ?? `The system answered ${reason}.`} If the program ends now, what you have not saved is lost.`,
    whatToDo: 'Save your work now. Then see that there is room on the disk, and that you may write to your own settings folder.',
  }),
  'play-not-restored': () => ({
    title: 'An exercise that was being played could not be brought back',
    explanation: 'What was kept of the play by an earlier run is damaged.',
    whatToDo: 'Begin the exercise anew. Its file is as it was.',
  }),
  'drafts-not-restored': () => ({
    title: 'Exercises that were being made could not be brought back',
    explanation: 'What was kept of them by an earlier run is damaged.',
    whatToDo: 'Make them anew. Exercises that were saved are as they were.',
  }),
  'recovery-unreadable': ({ file }) => ({
    title: 'A recovery copy cannot be read',
    explanation: `It was kept by an earlier run, and is damaged. It was set aside as ${quote(file)} in the program’s settings folder.`,
    whatToDo: 'Open the file itself: it is as it was last saved.',
  }),
  'call-refused': ({ call, reason }) => ({
    title: `The program refused a request of its own window: ${call}`,
    explanation: `The request did not come in the agreed form or from the agreed place (${reason}), so nothing was done.`,
    whatToDo: 'Save your work under a new name and start the program again. If it happens again, report it: it is a fault of the program.',
  }),
  'settings-set-aside': ({ file }) => ({
    title: 'The settings could not be read and were set aside',
    explanation: `The program starts as on its first day. The old settings are kept as ${quote(file)}. Your cabinets and cases are not touched.`,
    whatToDo: 'Set what you want otherwise again. The file can be deleted.',
  }),
  'settings-not-kept': ({ reason }) => ({
    title: 'The settings cannot be kept',
    explanation: `The folder of the settings cannot be read or written (${reason}). What you set lasts until the program is closed.`,
    whatToDo: 'See that the disk is not full and that you may write to your own settings folder, then start the program again.',
  }),
  'json-damaged': (facts) =>
    damaged(
      `The file is damaged at ${atLine(facts)}`,
      `${facts.found === '' ? 'The file ends there' : `It holds ${quote(facts.found)} there`}: ${ownWord(expectedJsonWords, facts.expected) ?? facts.expected}.`,
    ),
  'json-too-deep': (facts) => ({
    title: `The file is nested too deeply at ${atLine(facts)}`,
    explanation: `Lists and objects may stand in one another up to ${facts.limit} deep. ${untouched}`,
    whatToDo: 'No program of ours writes such a file: choose another one, or an earlier copy.',
  }),
  'json-too-many-values': ({ limit }) => ({
    title: 'The file holds too many values',
    explanation: `Up to ${Number(limit).toLocaleString('en-US')} values are read, far more than any cabinet needs. ${untouched}`,
    whatToDo: 'Choose another file, or open an earlier copy of this one.',
  }),
  'json-duplicate-key': (facts) =>
    damaged(
      `The field ${quote(facts.key)} stands twice in one object, the second time at ${atLine(facts)}`,
      'Only one of the two could be kept, and which one is meant cannot be told.',
    ),
  'json-half-sign': (facts) => ({
    title: `A text holds half a sign: ${atLine(facts)}`,
    explanation: `Some signs are written in two parts, such as \\ud83d\\ude00. One part alone is no sign: saved again, it would silently become another one. ${untouched}`,
    whatToDo: 'Write this text anew, or take the lone part out.',
  }),
  'json-prototype-key': (facts) => ({
    title: `The field name ${quote(facts.key)} is not allowed: ${atLine(facts)}`,
    explanation: `Files that try to harm a program use this name; no program of ours writes it. ${untouched}`,
    whatToDo: 'Do not trust the file if you do not know where it comes from. Else rename the field there.',
  }),
  'envelope-not-object': ({ expected }) => ({
    title: `This is not a ${formatName(expected)}`,
    explanation: `It is not an object with a format, a version and a content. ${untouched}`,
    whatToDo: 'Choose another file.',
  }),
  'envelope-field-unknown': ({ field }) => ({
    title: `The file has a field ${quote(field)} that does not belong there`,
    explanation: 'Besides the content there are only the fields format, formatVersion and appVersion.',
    whatToDo: 'Take the field out in a text editor; what belongs to the cabinet stands inside the content.',
  }),
  'envelope-app-version-invalid': () => ({
    title: 'The field “appVersion” cannot be read',
    explanation: 'It must be a text of at most 100 signs. It is for information only.',
    whatToDo: 'Correct it or take it out in a text editor.',
  }),
  'format-foreign': ({ format, expected }) => ({
    title: `This is not a ${formatName(expected)}`,
    explanation: `${format === '' ? 'It does not say what it is.' : `It says that it is a ${formatName(format)}.`} ${untouched}`,
    whatToDo: `Choose another file. A ${formatName(expected)} begins with its format: ${expected}.`,
  }),
  'format-other-kind': ({ format, expected }) => ({
    title: `This is a ${formatName(format)}, not a ${formatName(expected)}`,
    explanation: untouched,
    whatToDo: `Open it as a ${formatName(format)}, or choose a ${formatName(expected)}.`,
  }),
  'version-missing': () => ({
    title: 'The file does not say in which version of the format it is written',
    explanation: `The field “formatVersion” is missing. ${untouched}`,
    whatToDo: 'Open an earlier copy. If the file was written by hand, add the version that the documentation names.',
  }),
  'version-invalid': ({ version }) => ({
    title: `${version} is no version of the format`,
    explanation: `The field “formatVersion” must be a whole number from 1. ${untouched}`,
    whatToDo: 'Open an earlier copy. If the file was written by hand, give the version that the documentation names.',
  }),
  'version-too-new': ({ version, supported, appVersion }) => ({
    title: 'The file was written by a newer version of this program',
    explanation: `It is in version ${version} of the format; this program knows versions up to ${supported}. ${untouched}`,
    whatToDo: `Open it with ${appVersion === '' ? 'a newer version of the program' : `version ${appVersion} of the program or a newer one`}.`,
  }),
  'migration-failed': ({ from, to }) => ({
    title: 'The file could not be brought up to date',
    explanation: `It is in version ${from} of the format, and the step to version ${to} failed. Nothing was opened. ${untouched}`,
    whatToDo: 'Open an earlier copy, or open the file with the version of the program that wrote it. Please report this.',
  }),
  'content-missing': () => ({
    title: 'The file has no content',
    explanation: `The field “content” is missing, or is not an object. ${untouched}`,
    whatToDo: 'Open an earlier copy of the file.',
  }),
  'field-unknown': ({ field, line }) => ({
    title: `There is no field ${quote(field)}${inLine(line)}`,
    explanation: 'Unknown fields are refused, so that a slip in a name does not lose what was meant.',
    whatToDo: 'Correct the name or take the field out. What is not ours may stand in the field “extra”.',
  }),
  'field-missing': ({ field, line }) => ({
    title: `The field ${quote(field)} is missing${inLine(line)}`,
    explanation: 'What it belongs to cannot be understood without it.',
    whatToDo: 'Add it there.',
  }),
  'field-wrong-type': ({ field, expected, found, line }) =>
    wrong(field, line, `It must be ${typeName(expected)}, and is ${typeName(found)}.`, 'Correct the value.'),
  'field-not-allowed': ({ field, allowed, line }) =>
    wrong(field, line, 'Its value is none of those that are known.', `Use one of these: ${allowed}.`),
  'text-too-long': ({ field, maximum, line }) => wrong(field, line, `The text has more than ${maximum} signs.`, 'Shorten it.'),
  'text-too-short': ({ field, minimum, line }) =>
    wrong(field, line, `The text must have ${wordCount(Number(minimum), 'sign')} or more.`, 'Fill it in, or leave the whole field out.'),
  'list-too-long': ({ field, maximum, line }) => wrong(field, line, `The list has more than ${maximum} entries.`, 'Take some out.'),
  'list-too-short': ({ field, minimum, line }) =>
    wrong(
      field,
      line,
      `The list must have ${wordCount(Number(minimum), 'entry', 'entries')} or more.`,
      'Add what is missing, or leave the whole field out.',
    ),
  'field-too-large': ({ field, maximum, line }) => wrong(field, line, `The number must be ${maximum} or less.`, 'Correct the number.'),
  'field-too-small': ({ field, minimum, line }) => wrong(field, line, `The number must be ${minimum} or more.`, 'Correct the number.'),
  'field-bad-form': ({ field, form, line }) =>
    wrong(field, line, ownWord(formWords, form) ?? 'The text does not have the form that it must have.', 'Correct the text.'),
  'field-invalid': ({ field, line }) =>
    wrong(field, line, 'Its value does not fit.', 'Compare it with the published schema of the format, and correct it.'),
  'more-problems': ({ count }) => ({
    title: Number(count) === 1 ? 'There is one more problem' : `There are ${count} more problems`,
    explanation: 'Only the first ones are listed.',
    whatToDo: 'Correct those listed and open the file again.',
  }),
  'problems-too-many': () => ({
    title: 'Hardly anything in this file fits',
    explanation: `There are more mistakes in it than can be listed. ${untouched}`,
    whatToDo: 'Choose another file, or open an earlier copy of this one.',
  }),
  'id-duplicate': ({ id, first, second }) => ({
    title: `The id ${quote(id)} is given twice`,
    explanation: `It stands at ${first} and at ${second}. What names this id could mean either.`,
    whatToDo: 'Give one of the two another id, and correct what refers to it.',
  }),
};
