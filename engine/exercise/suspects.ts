/** Between the parts of an answer of several faults. */
const joint = ' + ';

/** The single things of which one or several are at fault: what may be suspected. What belongs together is not told. */
export function suspectsOf({ possible }: { readonly possible: readonly { readonly answer: string }[] }): readonly string[] {
  const things = [...new Set(possible.flatMap(({ answer }) => partsOf(answer)))];
  // Of several at once the order in the file would show which belong together.
  return possible.some(({ answer }) => answer.includes(joint)) ? things.sort() : things;
}

/** The parts of an answer, or of what was named. */
export function partsOf(answer: string): readonly string[] {
  return answer.split(joint);
}

/** The answer that is made of these parts. */
export function joinParts(parts: readonly string[]): string {
  return [...new Set(parts)].sort().join(joint);
}
