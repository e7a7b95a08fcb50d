import { memo } from 'react';
import type { Node, NodeProps } from 'reactflow';
import { injectWords } from '../../engine/messages/index.ts';
import { ChainPort, ChainWindows, ControllerFrame, WindowLines } from '../canvas/ControllerFrame.tsx';
import { useDispatch } from '../state/useWorkbench.ts';
import type { SimChainView, SimControllerView } from './simViews.ts';

export type SimControllerNodeType = Node<{ readonly view: SimControllerView }, 'sim-controller'>;

/** The controller while a fault is simulated: what it would report of each chain. */
export const SimControllerNode = memo(function SimControllerNode({ data: { view } }: NodeProps<SimControllerNodeType>) {
  return (
    <ControllerFrame designation={view.designation} classes="sim" roomForKind={view.chains[0]?.folded === false}>
      {view.chains.map((chain, index) => (
        <SimWindows key={chain.chain} view={chain} first={index === 0} />
      ))}
    </ControllerFrame>
  );
});

function SimWindows({ view, first }: { readonly view: SimChainView; readonly first: boolean }) {
  const dispatch = useDispatch();
  const tone = view.waiting ? 'waiting' : view.predictedLost ? 'tone-loss' : 'tone-quiet';
  const isFaulty = view.faultTag !== null;
  return (
    <>
      <ChainPort
        chain={view.chain}
        portY={view.portY}
        empty={view.empty}
        deaf={view.deaf && !isFaulty}
        className={isFaulty ? 'faulty' : ''}
      />
      <ChainWindows
        view={view}
        classes={`${first ? 'first' : ''}${view.current ? ' current' : ''}`.trim()}
        onPress={() => dispatch('open-injection', { target: { kind: 'chain', chain: view.chain } })}
      >
        <span className={`window predicted ${tone}`}>
          <WindowLines lines={view.waiting ? [injectWords.notYet] : (view.predicted ?? [])} view={view} />
        </span>
        {isFaulty && <span className="fault-tag">{view.faultTag}</span>}
      </ChainWindows>
    </>
  );
}
