import { type CommandName, type CommandWords, commandWords, exitCodeWords, headings, programWords } from '../messages/index.ts';
import { padText, paragraph, textWidth } from './text.ts';

/** Names of the commands, in the order of the help. */
export const commandNames = Object.keys(commandWords) as readonly CommandName[]; // the keys are exactly the names

/** The general help. */
export function formatHelp(columns: number): string {
  return [
    paragraph(programWords.summary, columns),
    section(headings.usage, programWords.usage.map((line) => `  ${line}\n`).join('')),
    section(
      headings.commands,
      pairs(
        commandNames.map((name) => [name, commandWords[name].summary]),
        columns,
      ),
    ),
    section(
      headings.exitCodes,
      pairs(
        Object.entries(exitCodeWords).map(([code, words]) => [code, words]),
        columns,
      ),
    ),
    section(headings.examples, commandNames.map((name) => `  ${commandWords[name].examples[0].line}\n`).join('')),
    `\n${paragraph(programWords.more, columns)}`,
  ].join('');
}

/** The help of one command, with all its examples. */
export function formatCommandHelp(name: CommandName, columns: number): string {
  const words: CommandWords = commandWords[name];
  const options = Object.entries({ ...words.options, help: { value: '', meaning: programWords.help } }).map(
    ([option, { value, meaning }]): [string, string] => [`--${option}${value ? ` ${value}` : ''}`, meaning],
  );
  return [
    paragraph(`linkwright ${name}: ${words.summary}.`, columns),
    section(headings.usage, words.usage.map((line) => `  ${line}\n`).join('')),
    ...words.about.map((text) => `\n${paragraph(text, columns)}`),
    section(headings.options, pairs(options, columns)),
    // Examples are not wrapped: they are there to be copied.
    section(headings.examples, words.examples.map(({ says, line }) => `${paragraph(`${says}:`, columns, '  ')}    ${line}\n`).join('')),
  ].join('');
}

function section(head: string, body: string): string {
  return `\n${head}\n${body}`;
}

/** Two columns, the second wrapped; a first one that is too long stands on a line of its own. */
function pairs(rows: readonly (readonly [string, string])[], columns: number): string {
  const most = 24;
  const width = Math.min(most, Math.max(...rows.map(([first]) => textWidth(first))));
  const indent = ' '.repeat(width + 4);
  return rows
    .map(([first, second]) => {
      const head = `  ${padText(first, width)}  `;
      return textWidth(first) > width ? `  ${first}\n${paragraph(second, columns, indent)}` : paragraph(second, columns, indent, head);
    })
    .join('');
}
