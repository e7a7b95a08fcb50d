import { memo } from 'react';
import { Handle, type Node, type NodeProps, Position } from 'reactflow';
import { windowTexts } from '../../engine/messages/index.ts';
import { useDetail } from '../canvas/DetailContext.ts';
import { PortMark } from '../canvas/PortMark.tsx';
import { chainElementId, unitElementId } from '../canvas/unitElement.ts';
import { ChangeTag } from '../compare/ChangeTag.tsx';
import { Sign } from '../marks/Sign.tsx';
import { useDispatch } from '../state/useWorkbench.ts';
import type { DrawChainView, DrawControllerView } from './drawViews.ts';
import { PortHit } from './PortHits.tsx';

export type DrawControllerNodeType = Node<{ readonly view: DrawControllerView }, 'draw-controller'>;

/** The controller in Draw, along all its chains. */
export const DrawControllerNode = memo(function DrawControllerNode({ data: { view } }: NodeProps<DrawControllerNodeType>) {
  const detail = useDetail();
  const dispatch = useDispatch();
  // Without a designation the kind stands in its place.
  const isNamed = view.designation !== windowTexts.cabinet.controller;
  const choose = (id: string) => (event: React.MouseEvent) =>
    dispatch('choose', { ids: [id], how: event.shiftKey || event.ctrlKey || event.metaKey ? 'toggle' : 'only' });
  return (
    <div className={`unit controller drawn nopan detail-${detail}${view.chosen === 'no' ? '' : ` chosen-${view.chosen}`}`}>
      <button
        type="button"
        id={unitElementId(view.id)}
        className="hit"
        aria-label={view.name}
        data-controller={view.id}
        onClick={choose(view.id)}
      />
      <span className={detail === 'full' ? 'head' : 'counter-scaled head'} aria-hidden="true">
        <span className={isNamed ? 'designation' : 'designation unnamed'}>{view.designation}</span>
        {detail === 'full' && isNamed && (
          <span className="kind-sign">
            <Sign name="controller" />
          </span>
        )}
      </span>
      {detail === 'full' && isNamed && (
        <span className="kind" aria-hidden="true">
          {windowTexts.cabinet.controller}
        </span>
      )}
      <ChangeTag id={view.id} />
      {view.chains.map((chain) => (
        <ChainPort key={chain.chain} view={chain} onPress={choose(chain.chain)} />
      ))}
    </div>
  );
});

function ChainPort({ view, onPress }: { readonly view: DrawChainView; readonly onPress: (event: React.MouseEvent) => void }) {
  const detail = useDetail();
  const at = { top: view.portY };
  return (
    <>
      <Handle id={view.chain} type="source" position={Position.Right} style={at} isConnectable={false} />
      <button
        type="button"
        id={chainElementId(view.chain)}
        className={`chain-hit${view.chosen === 'no' ? '' : ' chosen'}`}
        style={at}
        aria-label={view.name}
        data-chain={view.chain}
        onClick={onPress}
      />
      <span className="chain-words" style={at} aria-hidden="true">
        <b>{view.label}</b>
        {detail === 'full' && <span>{view.axes}</span>}
      </span>
      {detail === 'full' && (
        <span className="port-place down" style={at} aria-hidden="true">
          <PortMark side="down" deaf={false} capped={view.empty} />
        </span>
      )}
      <span className="chain-change" style={at}>
        <ChangeTag id={view.chain} bare={detail === 'strip'} />
      </span>
      <PortHit port={{ chain: view.chain }} top={view.portY} free={view.empty} takes={view.takes} />
    </>
  );
}
