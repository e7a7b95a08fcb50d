import { memo } from 'react';
import type { Node, NodeProps } from 'reactflow';
import { injectWords } from '../../engine/messages/index.ts';
import { ModuleFoot, ModuleFrame, ModulePorts, StripFoot } from '../canvas/ModuleFrame.tsx';
import { DisplayMark, toneOf } from '../marks/DisplayMark.tsx';
import { Sign } from '../marks/Sign.tsx';
import { useDispatch } from '../state/useWorkbench.ts';
import type { SimUnitView } from './simViews.ts';

export type SimUnitNodeType = Node<{ readonly view: SimUnitView }, 'sim-unit'>;

/** A module while a fault is simulated: what it would show, and why. No glass: nothing of it was seen. */
export const SimUnitNode = memo(function SimUnitNode({ data: { view } }: NodeProps<SimUnitNodeType>) {
  const dispatch = useDispatch();
  return (
    <ModuleFrame
      view={view}
      classes={['sim', view.faultTag === null ? '' : 'faulty', view.current ? 'current' : '', view.entering ? 'entering' : '']}
      onPress={() => dispatch('open-injection', { target: { kind: 'unit', unit: view.id } })}
      full={() => <FullUnit view={view} />}
      middle={() => <MiddleUnit view={view} />}
      strip={() => <StripUnit view={view} />}
    />
  );
});

/** The dashed window with what the display would show; dotted while the light has not come so far. */
function SimWindow({ view, size, words = true }: { readonly view: SimUnitView; readonly size: number; readonly words?: boolean }) {
  const shown = view.reading.predicted;
  if (view.waiting || !shown) {
    return (
      <span className="window predicted waiting">
        <DisplayMark name="not-looked-at" size={size} />
        {words && <span className="words">{injectWords.notYet}</span>}
      </span>
    );
  }
  return (
    <span className={`window predicted tone-${toneOf(shown.mark)}`} data-mark={shown.mark}>
      <DisplayMark name={shown.mark} size={size} />
      {words && <span className="words">{shown.words}</span>}
    </span>
  );
}

function FullUnit({ view }: { readonly view: SimUnitView }) {
  return (
    <>
      <span className="head">
        <span className="designation">{view.designation}</span>
        {view.folded ? (
          view.faultTag !== null && <span className="fault-tag">{view.faultTag}</span>
        ) : (
          <span className="kind-sign">
            <Sign name={view.kind} />
          </span>
        )}
      </span>
      {!view.folded &&
        (view.faultTag === null ? <span className="kind">{view.kindWords}</span> : <span className="kind fault-tag">{view.faultTag}</span>)}
      <SimWindow view={view} size={20} />
      {!view.folded && <span className="sim-why">{view.why}</span>}
      {view.onChain && <ModulePorts view={view} deafUp={view.deafUp} deafDown={view.deafDown} />}
      <ModuleFoot view={view} />
    </>
  );
}

function MiddleUnit({ view }: { readonly view: SimUnitView }) {
  return (
    <span className="counter-scaled">
      <span className="designation">{view.designation}</span>
      <SimWindow view={view} size={16} />
      {view.faultTag !== null && <span className="fault-tag">{view.faultTag}</span>}
    </span>
  );
}

/** Marks only; what is not quiet keeps its word in a label above. */
function StripUnit({ view }: { readonly view: SimUnitView }) {
  return (
    <span className="counter-scaled">
      {view.callout && (
        <span className={`callout sim ${view.callout.side}`} style={{ bottom: `calc(100% + ${3 + view.callout.level * 20}px)` }}>
          <b>{view.designation}</b> {view.faultTag !== null && <i>{view.faultTag} </i>}
          {view.reading.predicted?.words}
        </span>
      )}
      <SimWindow view={view} size={16} words={false} />
      <StripFoot view={view} />
    </span>
  );
}
