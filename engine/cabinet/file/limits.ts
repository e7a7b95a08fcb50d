/** Files above this size are refused, in bytes: 20 MB. */
export const maximumFileBytes = 20_000_000;
/** How deep lists and objects may stand in one another. A case needs about ten; the rest is room for `extra`. */
export const maximumDepth = 64;
/**
 * How many values (texts, numbers, lists, objects, …) a file may hold: about twenty times a cabinet of 300 units with its case.
 * It bounds time and memory for files made to exhaust them: the worst kind found takes about one second.
 */
export const maximumValues = 300_000;
/** How many problems of one file are listed; the rest is counted. */
export const maximumProblems = 200;
