import type { WordsFor } from './problemWords.ts';

type TableCode =
  | 'table-too-large'
  | 'table-empty'
  | 'table-not-text'
  | 'table-quote-open'
  | 'graph-document-type'
  | 'graph-too-deep'
  | 'graph-too-many'
  | 'graph-damaged'
  | 'graph-missing';

const nothingDone = 'Nothing was taken from it.';

/** Problems of files of lists that are to be imported. */
export const tableProblemWords: WordsFor<TableCode> = {
  'table-too-large': ({ megabytes, limitMegabytes }) => ({
    title: `The list is too large: ${megabytes} MB`,
    explanation: `Lists of up to ${limitMegabytes} MB are read. ${nothingDone}`,
    whatToDo: 'Split it into several files, or choose another one.',
  }),
  'table-empty': () => ({
    title: 'The file holds nothing',
    explanation: nothingDone,
    whatToDo: 'Choose another file.',
  }),
  'table-not-text': () => ({
    title: 'The file is not a list as text',
    explanation: `It may be a workbook of a spreadsheet. ${nothingDone}`,
    whatToDo: 'Save it from the spreadsheet as CSV, with the encoding UTF-8 if it asks, and import that.',
  }),
  'table-quote-open': () => ({
    title: 'A quotation mark in the list is never closed',
    explanation: `What follows it cannot be told apart into cells. ${nothingDone}`,
    whatToDo: 'Open the file in a spreadsheet, look for the row that swallowed all that follow, and save it as CSV again.',
  }),
  'graph-document-type': () => ({
    title: 'The graph file declares a document type or entities',
    explanation: `Such declarations can make a reader fetch or unfold what nobody asked for, and no graph needs them. ${nothingDone}`,
    whatToDo: 'Export the graph again without them, or delete the line that begins with <!DOCTYPE.',
  }),
  'graph-too-deep': ({ limit }) => ({
    title: `The elements of the graph file stand more than ${limit} deep in one another`,
    explanation: `A graph of a cabinet needs no more than five. ${nothingDone}`,
    whatToDo: 'Export the graph without graphs inside of its nodes.',
  }),
  'graph-too-many': ({ limit }) => ({
    title: `The graph file has more than ${limit} elements`,
    explanation: nothingDone,
    whatToDo: 'Export a smaller part of it.',
  }),
  'graph-damaged': ({ line, column }) => ({
    title: `The graph file is damaged: line ${line}, column ${column}`,
    explanation: `There it is no longer XML. ${nothingDone}`,
    whatToDo: 'Export the graph again, or choose another file.',
  }),
  'graph-missing': () => ({
    title: 'The file holds no graph',
    explanation: `It is XML, and not GraphML: an element “graph” inside of “graphml” is missing. ${nothingDone}`,
    whatToDo: 'Choose another file, or export the graph as GraphML.',
  }),
};
