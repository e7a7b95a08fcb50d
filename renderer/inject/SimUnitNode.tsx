import { memo } from 'react';
import { Handle, type Node, type NodeProps, Position } from 'reactflow';
import { injectWords, windowTexts } from '../../engine/messages/index.ts';
import { useDetail } from '../canvas/DetailContext.ts';
import { PortMark } from '../canvas/PortMark.tsx';
import { unitElementId } from '../canvas/unitElement.ts';
import { DisplayMark, toneOf } from '../marks/DisplayMark.tsx';
import { Sign } from '../marks/Sign.tsx';
import { useDispatch } from '../state/useWorkbench.ts';
import type { SimUnitView } from './simViews.ts';

export type SimUnitNodeType = Node<{ readonly view: SimUnitView }, 'sim-unit'>;

/** A module while a fault is simulated: what it would show, and why. No glass: nothing of it was seen. */
export const SimUnitNode = memo(function SimUnitNode({ data: { view } }: NodeProps<SimUnitNodeType>) {
  const detail = useDetail();
  const dispatch = useDispatch();
  const classes = [
    'unit sim',
    `detail-${detail}`,
    view.kind === 'supply' ? 'supply' : '',
    view.onChain ? '' : 'apart',
    view.folded ? 'folded' : '',
    view.faultTag === null ? '' : 'faulty',
    view.current ? 'current' : '',
    view.entering ? 'entering' : '',
  ];
  const side = { top: view.portY };
  return (
    <>
      <Handle id="up" type="target" position={Position.Left} style={side} isConnectable={false} />
      <Handle id="down" type="source" position={Position.Right} style={side} isConnectable={false} />
      <Handle id="fed" type="target" position={Position.Bottom} isConnectable={false} />
      <Handle id="feeds" type="source" position={Position.Bottom} isConnectable={false} />
      <div className={classes.join(' ')}>
        <button
          type="button"
          id={unitElementId(view.id)}
          className="hit"
          aria-label={view.name}
          data-unit={view.id}
          onClick={() => dispatch('open-injection', { target: { kind: 'unit', unit: view.id } })}
        />
        <div className="module" aria-hidden="true">
          {detail === 'full' && <FullUnit view={view} />}
          {detail === 'middle' && <MiddleUnit view={view} />}
          {detail === 'strip' && <StripUnit view={view} />}
        </div>
      </div>
    </>
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
  const numbered = view.position === null || view.position === 1 || view.position % 5 === 0;
  return (
    <span className="counter-scaled">
      {view.callout && (
        <span className={`callout sim ${view.callout.side}`} style={{ bottom: `calc(100% + ${3 + view.callout.level * 20}px)` }}>
          <b>{view.designation}</b> {view.faultTag !== null && <i>{view.faultTag} </i>}
          {view.reading.predicted?.words}
        </span>
      )}
      <SimWindow view={view} size={16} words={false} />
      {numbered && <span className="number">{view.position ?? view.designation}</span>}
      <span className="strip-name">{view.designation}</span>
    </span>
  );
}
