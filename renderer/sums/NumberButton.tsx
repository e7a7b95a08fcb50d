import { ChevronDown, ChevronRight } from 'lucide-react';
import { sumsPageWords, termStatusWords, wordTermValue } from '../../engine/messages/index.ts';
import type { SumTerm } from '../../engine/sums/index.ts';
import { panelId, useOpenTerms } from './OpenTerms.tsx';

/** A number, and where it is tried with other figures what it was without them. */
export interface ShownTerm {
  readonly term: SumTerm;
  readonly was: SumTerm | null;
}

interface Props extends ShownTerm {
  /** Names the number on the page: its row and what of it. */
  readonly at: string;
  /** What it is, for those who do not see the head of its column: "margin of cable -WH3, outbound". */
  readonly what: string;
  /** Something is wrong with it. */
  readonly bad?: boolean;
  /** Said instead of a dash where it is not known. */
  readonly unknown?: string;
}

/** A number that opens to its terms. */
export function NumberButton({ term, was, at, what, bad = false, unknown }: Props) {
  const { open, toggle } = useOpenTerms();
  const isOpen = open.has(at);
  const isTried = was !== null && was.value !== term.value;
  const value = term.value === null && unknown !== undefined ? unknown : wordTermValue(term);
  const Chevron = isOpen ? ChevronDown : ChevronRight;
  return (
    <button
      type="button"
      className="sum-number"
      data-status={term.status}
      data-bad={bad}
      data-tried={isTried}
      aria-expanded={isOpen}
      aria-controls={panelId(at)}
      title={sumsPageWords.explain(what)}
      onClick={() => toggle(at)}
    >
      <span className="screen-reader">{what}: </span>
      <span className="sum-value">{value}</span>
      {term.value === null && unknown === undefined && <span className="screen-reader"> {termStatusWords['not-known'].label}</span>}
      {(term.status === 'assumed' || term.status === 'measured') && <small>{termStatusWords[term.status].label}</small>}
      {isTried && <small className="sum-was">{sumsPageWords.was(wordTermValue(was))}</small>}
      <Chevron size={12} aria-hidden="true" />
    </button>
  );
}
