import { useEffect, useRef } from 'react';
import { sumHeadings, sumsPageWords } from '../../engine/messages/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { AxesSection } from './AxesSection.tsx';
import { DcLinkSection } from './DcLinkSection.tsx';
import { FeedSection } from './FeedSection.tsx';
import { LightSection } from './LightSection.tsx';
import { MissingPane } from './MissingPane.tsx';
import { OpenTermsProvider } from './OpenTerms.tsx';
import { ProblemsPane } from './ProblemsPane.tsx';
import { SumsHead } from './SumsHead.tsx';
import { SupplySection } from './SupplySection.tsx';
import { selectTried, sumsOf } from './selectSums.ts';
import { TriedPane } from './TriedPane.tsx';
import './sums.css';

const parts = [
  ['light', sumHeadings.light, LightSection],
  ['feed', sumHeadings.feed, FeedSection],
  ['supplies', sumHeadings.supplies, SupplySection],
  ['dcLink', sumHeadings.dcLink, DcLinkSection],
  ['axes', sumHeadings.axes, AxesSection],
] as const;

/** The page of sums: what the cabinet as drawn comes to, over the same cabinet as Find. */
export function SumsPage() {
  const topology = useApp((state) => state.checked.topology);
  const tried = useApp(selectTried);
  const dispatch = useDispatch();
  const page = useRef<HTMLElement>(null);
  const written = sumsOf(topology);
  const sums = tried?.sums ?? written;
  const base = tried === null ? null : written;
  const wrong = sums.problems.length + (tried?.sums.axes ?? written.axes).filter(({ left }) => (left.value ?? 0) < 0).length;

  // Coming here is going to another page: a screen reader reads on from its first line.
  useEffect(() => page.current?.querySelector<HTMLElement>('.sums-head')?.focus(), []);

  return (
    <main
      ref={page}
      className="sums-page"
      data-tried={tried !== null}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || event.defaultPrevented) return;
        event.preventDefault();
        // In a field it ends the typing; the next one leaves the page.
        if (event.target instanceof HTMLInputElement || event.target instanceof HTMLSelectElement) {
          page.current?.querySelector<HTMLElement>('.sums-head')?.focus();
          return;
        }
        dispatch('toggle-sums');
      }}
    >
      <SumsHead sums={sums} isTried={tried !== null} wrong={wrong} />
      <div className="sums-body">
        <div className="sums-scroll" id="cabinet" tabIndex={-1}>
          <nav className="sums-parts" aria-label={sumsPageWords.partsLabel}>
            {parts.map(([id]) => (
              <button key={id} type="button" className="text-button" onClick={() => goTo(page.current, id)}>
                {sumsPageWords.parts[id]}
              </button>
            ))}
          </nav>
          <OpenTermsProvider>
            {parts.map(([id, head, Section]) => (
              <section key={id} className="sums-part" data-part={id} aria-labelledby={`sums-${id}`}>
                <h2 className="section-head" id={`sums-${id}`} tabIndex={-1}>
                  {head}
                </h2>
                <Section sums={sums} base={base} />
              </section>
            ))}
          </OpenTermsProvider>
        </div>
        <aside className="side" id="suspects" tabIndex={-1} aria-label={sumsPageWords.whatIf}>
          <TriedPane />
          <ProblemsPane />
          <MissingPane sums={written} />
        </aside>
      </div>
    </main>
  );
}

/** Brings a part into view and the focus to its head. */
function goTo(page: HTMLElement | null, id: string): void {
  const head = page?.querySelector<HTMLElement>(`#sums-${id}`);
  head?.scrollIntoView({ block: 'start' });
  head?.focus({ preventScroll: true });
}
