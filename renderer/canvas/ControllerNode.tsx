import { memo } from 'react';
import { Handle, type Node, type NodeProps, Position } from 'reactflow';
import { windowTexts } from '../../engine/messages/index.ts';
import { Sign } from '../marks/Sign.tsx';
import { useDispatch } from '../state/useWorkbench.ts';
import { useDetail } from './DetailContext.ts';
import { PortMark } from './PortMark.tsx';
import { chainElementId } from './unitElement.ts';
import type { ChainView, ControllerView } from './views.ts';

export type ControllerNodeType = Node<{ readonly view: ControllerView }, 'controller'>;

/** The controller, along all its chains: its report of each is evidence like any display. */
export const ControllerNode = memo(function ControllerNode({ data: { view } }: NodeProps<ControllerNodeType>) {
  const detail = useDetail();
  return (
    <div className={`unit controller detail-${detail}${view.chosen ? ' suspect' : ''}`}>
      <span className={detail === 'full' ? 'head' : 'counter-scaled head'}>
        <span className="designation">{view.designation}</span>
        {detail === 'full' && (
          <span className="kind-sign">
            <Sign name="controller" />
          </span>
        )}
      </span>
      {detail === 'full' && view.chains[0]?.folded === false && view.designation !== windowTexts.cabinet.controller && (
        <span className="kind">{windowTexts.cabinet.controller}</span>
      )}
      {view.chains.map((chain, index) => (
        <ChainWindow key={chain.chain} view={chain} first={index === 0} />
      ))}
    </div>
  );
});

function ChainWindow({ view, first }: { readonly view: ChainView; readonly first: boolean }) {
  const dispatch = useDispatch();
  const detail = useDetail();
  const open = () => dispatch('open-entry', { entry: { kind: 'report', chain: view.chain, walking: false } });
  const tone = view.seen === null ? 'none' : view.seenLost ? 'loss' : 'other';
  return (
    <>
      <Handle id={view.chain} type="source" position={Position.Right} style={{ top: view.portY }} isConnectable={false} />
      <div className={`chain-windows${view.folded ? ' folded' : ''}${first ? ' first' : ''}`} style={{ top: view.rowY }}>
        <button
          type="button"
          id={chainElementId(view.chain)}
          className="hit"
          aria-label={view.name}
          data-chain={view.chain}
          onClick={open}
        />
        <span className="counter-scaled-inner" aria-hidden="true">
          {detail !== 'full' && <span className="chain-label-small">{view.label}</span>}
          <span className={`window seen tone-${tone}`}>
            <span className="words">
              {view.folded && detail === 'full' && <b>{view.label} </b>}
              {(view.seen ?? [windowTexts.report.notAsked]).map((line) => (
                <span key={line}>{line} </span>
              ))}
            </span>
          </span>
          {view.predicted && !view.folded && (
            <span
              className={`window predicted ${view.predictedLost ? 'tone-loss' : 'tone-quiet'} ${view.agreement ?? ''}`}
              data-agreement={view.agreement}
            >
              <span className="words">
                {view.predicted.map((line) => (
                  <span key={line}>{line} </span>
                ))}
              </span>
              {view.agreement && (
                <span className={`agreement ${view.agreement}`}>
                  <Sign name={view.agreement} size={12} />
                </span>
              )}
            </span>
          )}
        </span>
      </div>
      {detail === 'full' && (
        <>
          {!view.folded && (
            <span className="chain-label" aria-hidden="true" style={{ top: view.portY }}>
              {view.share !== null && <span className={`tag${view.chosen ? '' : ' outlined'}`}>{view.share}</span>}
              <b>{view.label}</b>
            </span>
          )}
          <span className={`port-place down${view.chosen ? ' suspect' : ''}`} style={{ top: view.portY }}>
            <PortMark side="down" deaf={false} capped={view.empty} />
          </span>
        </>
      )}
    </>
  );
}
