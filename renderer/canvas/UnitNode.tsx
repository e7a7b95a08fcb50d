import { memo } from 'react';
import { Handle, type Node, type NodeProps, Position } from 'reactflow';
import { windowTexts } from '../../engine/messages/index.ts';
import { Sign } from '../marks/Sign.tsx';
import { useDispatch } from '../state/useWorkbench.ts';
import { useDetail } from './DetailContext.ts';
import { PortMark } from './PortMark.tsx';
import { PredictedWindow, SeenWindow } from './ReadingWindows.tsx';
import { unitElementId } from './unitElement.ts';
import type { UnitView } from './views.ts';

export type UnitNodeType = Node<{ readonly view: UnitView }, 'unit'>;

/** A module of the cabinet: a drive, an encoder interface or a supply. */
export const UnitNode = memo(function UnitNode({ data: { view } }: NodeProps<UnitNodeType>) {
  const detail = useDetail();
  const dispatch = useDispatch();
  const open = () => dispatch('open-entry', { entry: { kind: 'display', unit: view.id, walking: false } });
  const classes = [
    'unit',
    `detail-${detail}`,
    view.kind === 'supply' ? 'supply' : '',
    view.onChain ? '' : 'apart',
    view.folded ? 'folded' : '',
    view.chosen ? 'suspect' : '',
    view.lit ? 'lit' : '',
    view.entering ? 'entering' : '',
  ];
  return (
    <>
      <Ends view={view} />
      <div className={classes.join(' ')}>
        {/* The button's name says all that the picture shows. Keys are heard by the cabinet as a whole; Enter and space click. */}
        <button type="button" id={unitElementId(view.id)} className="hit" aria-label={view.name} data-unit={view.id} onClick={open} />
        <div className="module" aria-hidden="true">
          {detail === 'full' && <FullUnit view={view} />}
          {detail === 'middle' && <MiddleUnit view={view} />}
          {detail === 'strip' && <StripUnit view={view} />}
        </div>
      </div>
    </>
  );
});

/** Where links and leads are tied to the node. They are never pulled here. */
function Ends({ view }: { readonly view: UnitView }) {
  const side = { top: view.portY };
  return (
    <>
      <Handle id="up" type="target" position={Position.Left} style={side} isConnectable={false} />
      <Handle id="down" type="source" position={Position.Right} style={side} isConnectable={false} />
      <Handle id="fed" type="target" position={Position.Bottom} isConnectable={false} />
      <Handle id="feeds" type="source" position={Position.Bottom} isConnectable={false} />
    </>
  );
}

function FullUnit({ view }: { readonly view: UnitView }) {
  return (
    <>
      <span className="head">
        <span className="designation">{view.designation}</span>
        {view.folded ? <PredictedWindow reading={view.reading} size={14} words={false} /> : <Corner view={view} />}
      </span>
      {!view.folded && <span className="kind">{view.kindWords}</span>}
      <SeenWindow reading={view.reading} size={20} />
      {!view.folded && <PredictedWindow reading={view.reading} size={20} />}
      {view.onChain && (
        <>
          {!view.folded && (
            <span className="port-words" style={{ top: view.portY }}>
              <span>{windowTexts.cabinet.up}</span>
              <span>{view.isLast ? windowTexts.cabinet.cap : windowTexts.cabinet.down}</span>
            </span>
          )}
          <span className="port-place up" style={{ top: view.portY }}>
            <PortMark side="up" deaf={view.deafUp} capped={false} />
          </span>
          <span className="port-place down" style={{ top: view.portY }}>
            <PortMark side="down" deaf={view.deafDown} capped={view.isLast} />
          </span>
        </>
      )}
      {!view.folded && view.outputs.length > 0 && (
        <span className="outputs">
          {view.outputs.slice(0, 3).map((output) => (
            <span key={output}>{output}</span>
          ))}
        </span>
      )}
      {!view.folded && !view.onChain && view.kind !== 'supply' && <span className="apart-words">{view.footer}</span>}
      {!view.folded && view.kind !== 'supply' && (
        <span className="foot">
          <span>{view.onChain ? view.footer : ''}</span>
          <b>{view.axes}</b>
        </span>
      )}
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
  const numbered = view.position === null || view.position === 1 || view.position % 5 === 0;
  return (
    <span className="counter-scaled">
      {view.callout && (
        <span className={`callout ${view.callout.side}`} style={{ bottom: `calc(100% + ${3 + view.callout.level * 20}px)` }}>
          <b>{view.designation}</b> {seen.words}
        </span>
      )}
      <SeenWindow reading={view.reading} size={16} words={false} />
      <PredictedWindow reading={view.reading} size={14} words={false} />
      {numbered && <span className="number">{view.position ?? view.designation}</span>}
      <span className="strip-name">{view.designation}</span>
    </span>
  );
}
