import type { Problem, Severity } from '../base/index.ts';
import type { Topology } from '../topology/index.ts';
import { wordCount, wordList } from './numbers.ts';

/** What a cabinet holds, in one line: "2 chains with 9 units, 1 unit off the chain, 1 supply". */
export function wordContents(topology: Topology): string {
  const { chains, offChain, orphans, supplies } = topology;
  const onChain = chains.reduce((sum, { units }) => sum + units.length, 0);
  const parts = [`${wordCount(chains.length, 'chain')} with ${wordCount(onChain, 'unit')}`];
  if (offChain.length > 0) parts.push(`${wordCount(offChain.length, 'unit')} off the chain`);
  if (orphans.length > 0) parts.push(`${wordCount(orphans.length, 'unit')} that no chain reaches`);
  parts.push(wordCount(supplies.length, 'supply', 'supplies'));
  return parts.join(', ');
}

/** How a check ended: "nothing wrong found", or "2 errors and 1 warning". It never claims that all is well. */
export function wordFindings(problems: readonly Pick<Problem, 'severity'>[]): string {
  if (problems.length === 0) return 'nothing wrong was found';
  const count = (severity: Severity) => problems.filter((problem) => problem.severity === severity).length;
  const parts = [
    count('refused') > 0 ? `${count('refused')} not taken` : '',
    count('error') > 0 ? wordCount(count('error'), 'error') : '',
    count('incomplete') > 0 ? wordCount(count('incomplete'), 'missing thing') : '',
    count('warning') > 0 ? wordCount(count('warning'), 'warning') : '',
  ];
  return wordList(parts.filter(Boolean));
}
