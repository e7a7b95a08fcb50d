import { memo } from 'react';
import type { Node, NodeProps } from 'reactflow';
import { windowTexts } from '../../engine/messages/index.ts';
import { Sign } from '../marks/Sign.tsx';
import { useDispatch } from '../state/useWorkbench.ts';
import { ChainPort, ChainWindows, ControllerFrame, WindowLines } from './ControllerFrame.tsx';
import type { ChainView, ControllerView } from './views.ts';

export type ControllerNodeType = Node<{ readonly view: ControllerView }, 'controller'>;

/** The controller in Find: its report of each chain is evidence like any display. */
export const ControllerNode = memo(function ControllerNode({ data: { view } }: NodeProps<ControllerNodeType>) {
  return (
    <ControllerFrame designation={view.designation} classes={view.chosen ? 'suspect' : ''} roomForKind={view.chains[0]?.folded === false}>
      {view.chains.map((chain, index) => (
        <ReportWindows key={chain.chain} view={chain} first={index === 0} />
      ))}
    </ControllerFrame>
  );
});

function ReportWindows({ view, first }: { readonly view: ChainView; readonly first: boolean }) {
  const dispatch = useDispatch();
  const tone = view.seen === null ? 'none' : view.seenLost ? 'loss' : 'other';
  return (
    <>
      <ChainPort chain={view.chain} portY={view.portY} empty={view.empty} className={view.chosen ? 'suspect' : ''} />
      <ChainWindows
        view={view}
        classes={first ? 'first' : ''}
        onPress={() => dispatch('open-entry', { entry: { kind: 'report', chain: view.chain, walking: false } })}
        tag={view.share !== null && <span className={`tag${view.chosen ? '' : ' outlined'}`}>{view.share}</span>}
      >
        <span className={`window seen tone-${tone}`}>
          <WindowLines lines={view.seen ?? [windowTexts.report.notAsked]} view={view} />
        </span>
        {view.predicted && !view.folded && (
          <span
            className={`window predicted ${view.predictedLost ? 'tone-loss' : 'tone-quiet'} ${view.agreement ?? ''}`}
            data-agreement={view.agreement}
          >
            <WindowLines lines={view.predicted} />
            {view.agreement && (
              <span className={`agreement ${view.agreement}`}>
                <Sign name={view.agreement} size={12} />
              </span>
            )}
          </span>
        )}
      </ChainWindows>
    </>
  );
}
