import { memo } from 'react';
import type { Node, NodeProps } from 'reactflow';
import { Sign } from '../marks/Sign.tsx';
import { useDispatch } from '../state/useWorkbench.ts';
import { ModuleFoot, ModuleFrame, ModulePorts, StripFoot } from './ModuleFrame.tsx';
import { PredictedWindow, SeenWindow } from './ReadingWindows.tsx';
import type { UnitView } from './views.ts';

export type UnitNodeType = Node<{ readonly view: UnitView }, 'unit'>;

/** A module in Find: what its display was seen to say, and what the chosen candidate predicts. */
export const UnitNode = memo(function UnitNode({ data: { view } }: NodeProps<UnitNodeType>) {
  const dispatch = useDispatch();
  return (
    <ModuleFrame
      view={view}
      classes={[view.chosen ? 'suspect' : '', view.lit ? 'lit' : '', view.entering ? 'entering' : '']}
      onPress={() => dispatch('open-entry', { entry: { kind: 'display', unit: view.id, walking: false } })}
      full={() => <FullUnit view={view} />}
      middle={() => <MiddleUnit view={view} />}
      strip={() => <StripUnit view={view} />}
    />
  );
});

function FullUnit({ view }: { readonly view: UnitView }) {
  return (
    <>
      <span className="head">
        <span className="designation">{view.designation}</span>
        {view.folded ? <PredictedWindow reading={view.reading} size={14} words={false} /> : <Corner view={view} />}
      </span>
      {!view.folded && <span className={view.displaced ? 'kind moved' : 'kind'}>{view.displaced ?? view.kindWords}</span>}
      <SeenWindow reading={view.reading} size={20} />
      {!view.folded && <PredictedWindow reading={view.reading} size={20} />}
      {view.onChain && <ModulePorts view={view} deafUp={view.deafUp} deafDown={view.deafDown} />}
      <ModuleFoot view={view} />
    </>
  );
}

/** Kind sign, or how probable it is that the fault lies in this unit. */
function Corner({ view }: { readonly view: UnitView }) {
  if (view.share === null) {
    return (
      <span className="kind-sign">
        <Sign name={view.kind} />
      </span>
    );
  }
  return (
    <span className={`tag${view.chosen ? '' : ' outlined'}`}>
      <Sign name={view.kind === 'supply' ? 'supply' : 'board'} size={12} />
      {view.share}
    </span>
  );
}

function MiddleUnit({ view }: { readonly view: UnitView }) {
  return (
    <span className="counter-scaled">
      <span className="designation">{view.designation}</span>
      <SeenWindow reading={view.reading} size={16} />
      <PredictedWindow reading={view.reading} size={16} words={false} />
    </span>
  );
}

/** Marks only; what complains turns inside out and keeps its word in a label above. */
function StripUnit({ view }: { readonly view: UnitView }) {
  const { seen } = view.reading;
  return (
    <span className="counter-scaled">
      {view.callout && (
        <span className={`callout ${view.callout.side}`} style={{ bottom: `calc(100% + ${3 + view.callout.level * 20}px)` }}>
          <b>{view.designation}</b> {seen.words}
        </span>
      )}
      <SeenWindow reading={view.reading} size={16} words={false} />
      <PredictedWindow reading={view.reading} size={14} words={false} />
      <StripFoot view={view} />
    </span>
  );
}
