/** Files above this size are refused, in bytes: 20 MB. */
export const maximumFileBytes = 20_000_000;
/** How deep lists and objects may stand in one another. A case needs about ten; the rest is room for `extra`. */
export const maximumDepth = 64;
/** How many values (texts, numbers, lists, objects, …) a file may hold: about a hundred times a cabinet of 300 units. */
export const maximumValues = 1_000_000;
/** How many problems of one file are listed; the rest is counted. */
export const maximumProblems = 200;
