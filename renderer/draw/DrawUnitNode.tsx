import { memo } from 'react';
import type { Node, NodeProps } from 'reactflow';
import { drawWords } from '../../engine/messages/index.ts';
import { ModuleFoot, ModuleFrame, ModulePorts, StripFoot } from '../canvas/ModuleFrame.tsx';
import { ChangeTag } from '../compare/ChangeTag.tsx';
import { Sign } from '../marks/Sign.tsx';
import { severitySigns } from '../marks/severitySigns.ts';
import { useDispatch } from '../state/useWorkbench.ts';
import type { DrawUnitView } from './drawViews.ts';
import { FeedPort, PortHit } from './PortHits.tsx';

export type DrawUnitNodeType = Node<{ readonly view: DrawUnitView }, 'draw-unit'>;

/** A module in Draw: what is documented of it. */
export const DrawUnitNode = memo(function DrawUnitNode({ data: { view } }: NodeProps<DrawUnitNodeType>) {
  const dispatch = useDispatch();
  return (
    <ModuleFrame
      view={view}
      classes={[
        'drawn nopan',
        view.chosen === 'no' ? '' : `chosen-${view.chosen}`,
        view.mate ? 'mate' : '',
        view.carried ? 'carried' : '',
        view.problem === null ? '' : `problem-${view.problem}`,
      ]}
      onPress={(event) => dispatch('choose', { ids: [view.id], how: event.shiftKey || event.ctrlKey || event.metaKey ? 'toggle' : 'only' })}
      full={() => <FullUnit view={view} />}
      middle={() => <MiddleUnit view={view} />}
      strip={() => <StripUnit view={view} />}
      over={
        <>
          {view.onChain && (
            <PortHit port={{ unit: view.id, side: 'up' }} top={view.portY} free={view.upFree} takes={view.takes?.up ?? null} />
          )}
          {view.onChain && (
            <PortHit port={{ unit: view.id, side: 'down' }} top={view.portY} free={view.downFree} takes={view.takes?.down ?? null} />
          )}
          <ChangeTag id={view.id} />
          <FeedPort unit={view.id} kind={view.kind} fed={view.fed} takes={view.takes?.feed ?? null} />
        </>
      }
    />
  );
});

function FullUnit({ view }: { readonly view: DrawUnitView }) {
  return (
    <>
      {view.feedbacks.length > 0 && (
        <span className="feedback-stubs">
          {view.feedbacks.map((name) => (
            <i key={name}>{name}</i>
          ))}
        </span>
      )}
      <span className="head">
        <span className="designation">{view.designation}</span>
        <Corner view={view} />
      </span>
      <span className="kind">{drawWords.shortKind[view.kind] ?? view.kindWords}</span>
      {view.kind !== 'supply' && (
        <span className="facts">
          <b>{view.axes || ' '}</b>
          <span className={view.voltsWrong ? 'wrong' : ''}>{view.fed ? view.volts : drawWords.notFed}</span>
          <span className={view.partNumber === '' ? 'model none' : 'model'}>{view.model || view.partNumber || drawWords.noPartNumber}</span>
        </span>
      )}
      {view.onChain && <ModulePorts view={{ ...view, isLast: view.isLast && view.downFree }} />}
      <ModuleFoot view={{ ...view, axes: '' }} />
    </>
  );
}

/** Kind sign, or that something is wrong here. */
function Corner({ view }: { readonly view: DrawUnitView }) {
  const isError = view.problem === 'error' || view.problem === 'refused';
  return (
    <span className={`kind-sign${view.problem === null ? '' : isError ? ' error' : ' warning'}`}>
      <Sign name={view.problem === null ? view.kind : severitySigns[view.problem]} />
    </span>
  );
}

function MiddleUnit({ view }: { readonly view: DrawUnitView }) {
  return (
    <span className="counter-scaled">
      <span className="designation" style={{ '--signs': view.designation.length } as React.CSSProperties}>
        {view.designation}
      </span>
      <Corner view={view} />
      <span className="middle-axes">{view.axes}</span>
    </span>
  );
}

function StripUnit({ view }: { readonly view: DrawUnitView }) {
  return (
    <span className="counter-scaled">
      <span className="strip-sign">
        <Corner view={view} />
      </span>
      <StripFoot view={view} />
    </span>
  );
}
