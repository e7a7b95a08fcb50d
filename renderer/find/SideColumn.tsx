import { useEffect, useRef } from 'react';
import { sideTexts, stepTexts, touchedTexts, windowTexts } from '../../engine/messages/index.ts';
import { Sign } from '../marks/Sign.tsx';
import { hasObservations } from '../state/evidence.ts';
import { useApp } from '../state/useWorkbench.ts';
import { Log } from './Log.tsx';
import { wordUnknown } from './logEntries.ts';
import { SeenPane } from './SeenPane.tsx';
import { StepCard } from './StepCard.tsx';
import { StepMore } from './StepMore.tsx';
import { Suspects } from './Suspects.tsx';
import { selectPlan, selectShownStep } from './stepModel.ts';
import { TouchedPane } from './TouchedPane.tsx';
import { selectTouched } from './touched.ts';
import { WhyPane } from './WhyPane.tsx';
import './side.css';

/**
 * The column beside the cabinet. Suspects and the step with its outcomes stand still at its top; how it is done, the other steps, the
 * reasons, what was touched and seen, and the log scroll below, each one press away by the line between the two.
 */
export function SideColumn() {
  const side = useRef<HTMLElement>(null);
  const first = useRef<HTMLDivElement>(null);
  useOneScroller(side, first);
  return (
    <aside ref={side} className="side">
      <div ref={first} className="side-first">
        <Suspects />
        <StepCard />
      </div>
      <SideIndex />
      <div className="side-rest">
        <StepMore />
        <WhyPane />
        <TouchedPane />
        <SeenPane />
        <Log />
      </div>
    </aside>
  );
}

/** What stands below, and how much of it: a press brings it into sight. */
function SideIndex() {
  const wanted = useApp((state) => state.checked.cabinet !== null && hasObservations(state.caseRecord));
  const others = useApp((state) => {
    const shown = selectShownStep(state);
    return selectPlan(state)?.steps.filter((one) => one.useless === null && one !== shown).length ?? 0;
  });
  const touched = useApp((state) => selectTouched(state).handlings.length);
  const hasUnknown = useApp((state) => wordUnknown(state) !== '');
  const parts = [
    { id: 'how', label: sideTexts.how, count: 0, shown: wanted },
    { id: 'others', label: stepTexts.others, count: others, shown: wanted },
    { id: 'why', label: windowTexts.suspects.why, count: 0, shown: wanted },
    { id: 'touched', label: touchedTexts.region, count: touched, shown: touched > 0 },
    { id: 'seen', label: sideTexts.seen, count: 0, shown: true },
    { id: 'log', label: windowTexts.log.region, count: 0, shown: true },
  ];
  return (
    <nav className="side-index" aria-label={sideTexts.index}>
      {parts.map(({ id, label, count, shown }) =>
        shown ? (
          <button key={id} type="button" className="text-button" onClick={() => goTo(id)}>
            {label}
            {count > 0 && <small> {count}</small>}
            {id === 'log' && hasUnknown && (
              <>
                <Sign name="abnormal" size={13} />
                <span className="screen-reader"> {windowTexts.log.unknownSign}</span>
              </>
            )}
          </button>
        ) : null,
      )}
    </nav>
  );
}

function goTo(id: string): void {
  const part = document.getElementById(id);
  part?.scrollIntoView({ block: 'start' });
  part?.focus({ preventScroll: true });
}

/** What is left for the part that scrolls must show some lines, pixels; and by how much there must be more before it scrolls alone again. */
const leastRest = 96;
const slack = 24;

/** Where what stands still would leave no room for the rest, the whole column scrolls: never two scrollers, one in the other. */
function useOneScroller(side: React.RefObject<HTMLElement | null>, first: React.RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const column = side.current;
    const top = first.current;
    if (!column || !top) return;
    const measure = () => {
      const left = column.clientHeight - top.offsetHeight;
      const isCrowded = left < leastRest + (column.dataset['crowded'] === undefined ? 0 : slack);
      if (isCrowded) column.dataset['crowded'] = '';
      else {
        delete column.dataset['crowded'];
        // What stands still must not stay where it was scrolled to.
        column.scrollTop = 0;
      }
    };
    const sizes = new ResizeObserver(measure);
    sizes.observe(column);
    sizes.observe(top);
    return () => sizes.disconnect();
  }, [side, first]);
}
