import { sumsPageWords } from '../../engine/messages/index.ts';
import type { SumTerm } from '../../engine/sums/index.ts';
import { panelId, useOpenTerms } from './OpenTerms.tsx';
import { TermTree } from './TermTree.tsx';

/** A number of a row that can be opened. */
export interface Opening {
  readonly at: string;
  readonly what: string;
  readonly term: SumTerm;
  /** Shown above its terms, such as a field for a measured value. */
  readonly above?: React.ReactNode;
}

interface Props {
  readonly columns: number;
  /** What the row is about. */
  readonly about: string | null;
  readonly openings: readonly Opening[];
  readonly children: React.ReactNode;
  readonly className?: string;
}

/** A row of a table of sums, and below it what is opened of it. */
export function SumRow({ columns, about, openings, children, className }: Props) {
  const { open } = useOpenTerms();
  const shown = openings.filter(({ at }) => open.has(at));
  return (
    <>
      <tr {...(className === undefined ? {} : { className })} data-open={shown.length > 0}>
        {children}
      </tr>
      {shown.map(({ at, what, term, above }) => (
        <tr key={at} className="sum-opened">
          <td colSpan={columns}>
            <Panel at={at} what={what}>
              {above}
              <ul className="terms">
                <TermTree term={term} about={about} />
              </ul>
            </Panel>
          </td>
        </tr>
      ))}
    </>
  );
}

/** What a number was worked out from; a region, so that a screen reader can find it. */
function Panel({ at, what, children }: { readonly at: string; readonly what: string; readonly children: React.ReactNode }) {
  return (
    <section id={panelId(at)} className="sum-panel" aria-label={sumsPageWords.terms(what)}>
      {children}
    </section>
  );
}
