import { wordField } from './fields.ts';
import { wordCount, wordList } from './numbers.ts';

/*
 * What the window says where a cabinet is edited by fields, lists and problems.
 */

/** Labels of the commands of editing. */
export const editCommandLabels = {
  setFields: 'Change fields',
  closeRefusal: 'Close',
} as const;

const mostNamed = 3;

export const editWords = {
  /** Things of several kinds together. */
  things: 'things',
  steps: {
    /** "length of cable -WH3", "serial number of 4 units". */
    fields: (paths: readonly string[], things: readonly string[], many: string) => {
      const labels = [...new Set(paths)].map((path) => wordField(path).label);
      const what = labels.length > mostNamed ? wordCount(labels.length, 'field') : wordList(labels);
      const [only] = things;
      return `${lowerFirst(what)} of ${things.length === 1 && only !== undefined ? only : `${things.length} ${many}`}`;
    },
  },
} as const;

function lowerFirst(text: string): string {
  // "DC link" and "24 V" keep their letters.
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
