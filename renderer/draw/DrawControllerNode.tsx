import { memo } from 'react';
import type { Node, NodeProps } from 'reactflow';
import { ChainPort, ControllerFrame } from '../canvas/ControllerFrame.tsx';
import { useDetail } from '../canvas/DetailContext.ts';
import { chainElementId, unitElementId } from '../canvas/unitElement.ts';
import { ChangeTag } from '../compare/ChangeTag.tsx';
import { useDispatch } from '../state/useWorkbench.ts';
import type { DrawChainView, DrawControllerView } from './drawViews.ts';
import { PortHit } from './PortHits.tsx';

export type DrawControllerNodeType = Node<{ readonly view: DrawControllerView }, 'draw-controller'>;

/** The controller in Draw: it and each of its chains can be chosen. */
export const DrawControllerNode = memo(function DrawControllerNode({ data: { view } }: NodeProps<DrawControllerNodeType>) {
  const dispatch = useDispatch();
  const choose = (id: string) => (event: React.MouseEvent) =>
    dispatch('choose', { ids: [id], how: event.shiftKey || event.ctrlKey || event.metaKey ? 'toggle' : 'only' });
  return (
    <ControllerFrame
      designation={view.designation}
      classes={`drawn nopan${view.chosen === 'no' ? '' : ` chosen-${view.chosen}`}`}
      roomForKind
      hit={
        <button
          type="button"
          id={unitElementId(view.id)}
          className="hit"
          aria-label={view.name}
          data-controller={view.id}
          onClick={choose(view.id)}
        />
      }
    >
      <ChangeTag id={view.id} />
      {view.chains.map((chain) => (
        <DrawnChain key={chain.chain} view={chain} onPress={choose(chain.chain)} />
      ))}
    </ControllerFrame>
  );
});

function DrawnChain({ view, onPress }: { readonly view: DrawChainView; readonly onPress: (event: React.MouseEvent) => void }) {
  const detail = useDetail();
  const at = { top: view.portY };
  return (
    <>
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
      <ChainPort chain={view.chain} portY={view.portY} empty={view.empty} />
      <span className="chain-change" style={at}>
        <ChangeTag id={view.chain} bare={detail === 'strip'} />
      </span>
      <PortHit port={{ chain: view.chain }} top={view.portY} free={view.empty} takes={view.takes} />
    </>
  );
}
