import { memo } from 'react';
import { Handle, type Node, type NodeProps, Position } from 'reactflow';
import { injectWords, windowTexts } from '../../engine/messages/index.ts';
import { useDetail } from '../canvas/DetailContext.ts';
import { PortMark } from '../canvas/PortMark.tsx';
import { chainElementId } from '../canvas/unitElement.ts';
import { Sign } from '../marks/Sign.tsx';
import { useDispatch } from '../state/useWorkbench.ts';
import type { SimChainView, SimControllerView } from './simViews.ts';

export type SimControllerNodeType = Node<{ readonly view: SimControllerView }, 'sim-controller'>;

/** The controller while a fault is simulated: what it would report of each chain. */
export const SimControllerNode = memo(function SimControllerNode({ data: { view } }: NodeProps<SimControllerNodeType>) {
  const detail = useDetail();
  return (
    <div className={`unit controller sim detail-${detail}`}>
      <span className={detail === 'full' ? 'head' : 'counter-scaled head'} aria-hidden="true">
        <span className="designation">{view.designation}</span>
        {detail === 'full' && (
          <span className="kind-sign">
            <Sign name="controller" />
          </span>
        )}
      </span>
      {detail === 'full' && view.chains[0]?.folded === false && view.designation !== windowTexts.cabinet.controller && (
        <span className="kind" aria-hidden="true">
          {windowTexts.cabinet.controller}
        </span>
      )}
      {view.chains.map((chain, index) => (
        <ChainWindow key={chain.chain} view={chain} first={index === 0} />
      ))}
    </div>
  );
});

function ChainWindow({ view, first }: { readonly view: SimChainView; readonly first: boolean }) {
  const dispatch = useDispatch();
  const detail = useDetail();
  const lines = view.waiting ? [injectWords.notYet] : (view.predicted ?? []);
  const tone = view.waiting ? 'waiting' : view.predictedLost ? 'tone-loss' : 'tone-quiet';
  return (
    <>
      <Handle id={view.chain} type="source" position={Position.Right} style={{ top: view.portY }} isConnectable={false} />
      <div
        className={`chain-windows${view.folded ? ' folded' : ''}${first ? ' first' : ''}${view.current ? ' current' : ''}`}
        style={{ top: view.rowY }}
      >
        <button
          type="button"
          id={chainElementId(view.chain)}
          className="hit"
          aria-label={view.name}
          data-chain={view.chain}
          onClick={() => dispatch('open-injection', { target: { kind: 'chain', chain: view.chain } })}
        />
        <span className="counter-scaled-inner" aria-hidden="true">
          {detail !== 'full' && <span className="chain-label-small">{view.label}</span>}
          <span className={`window predicted ${tone}`}>
            <span className="words">
              {view.folded && detail === 'full' && <b>{view.label} </b>}
              {lines.map((line) => (
                <span key={line}>{line} </span>
              ))}
            </span>
          </span>
          {view.faultTag !== null && <span className="fault-tag">{view.faultTag}</span>}
        </span>
      </div>
      {detail === 'full' && (
        <>
          {!view.folded && (
            <span className="chain-label" aria-hidden="true" style={{ top: view.portY }}>
              <b>{view.label}</b>
            </span>
          )}
          <span className={`port-place down${view.faultTag === null ? '' : ' faulty'}`} style={{ top: view.portY }} aria-hidden="true">
            <PortMark side="down" deaf={view.deaf && view.faultTag === null} capped={view.empty} />
          </span>
        </>
      )}
    </>
  );
}
