import { type ReactNode, useEffect } from 'react';
import { Handle, Position, useNodeId, useUpdateNodeInternals } from 'reactflow';
import { windowTexts } from '../../engine/messages/index.ts';
import { Sign } from '../marks/Sign.tsx';
import { useDetail } from './DetailContext.ts';
import { PortMark } from './PortMark.tsx';
import { chainElementId } from './unitElement.ts';

interface FrameProps {
  /** Without one the kind stands in its place. */
  readonly designation: string;
  /** Classes that only this workspace has. */
  readonly classes: string;
  /** Whether there is room for the kind below the designation. */
  readonly roomForKind: boolean;
  /** What is pressed, where the controller itself can be. */
  readonly hit?: ReactNode;
  readonly children: ReactNode;
}

/** The controller, along all its chains, alike in every workspace; what it says of each chain is passed in. */
export function ControllerFrame({ designation, classes, roomForKind, hit, children }: FrameProps) {
  const detail = useDetail();
  const isFull = detail === 'full';
  const isNamed = designation !== windowTexts.cabinet.controller;
  return (
    <div className={`unit controller detail-${detail} ${classes}`.trim()}>
      {hit}
      <span className={isFull ? 'head' : 'counter-scaled head'} aria-hidden="true">
        <span className={isNamed ? 'designation' : 'designation unnamed'}>{designation}</span>
        {isFull && isNamed && (
          <span className="kind-sign">
            <Sign name="controller" />
          </span>
        )}
      </span>
      {isFull && isNamed && roomForKind && (
        <span className="kind" aria-hidden="true">
          {windowTexts.cabinet.controller}
        </span>
      )}
      {children}
    </div>
  );
}

interface PortProps {
  readonly chain: string;
  readonly portY: number;
  /** Nothing hangs on it. */
  readonly empty: boolean;
  readonly deaf?: boolean;
  readonly className?: string;
}

/** Where a chain begins. */
export function ChainPort({ chain, portY, empty, deaf = false, className = '' }: PortProps) {
  const detail = useDetail();
  const at = { top: portY };
  const node = useNodeId();
  const measureAgain = useUpdateNodeInternals();
  // Handles are looked for when a node changes its size. Another cabinet may have a controller of the same size with other chains.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another chain is the reason to look again, although it is not read
  useEffect(() => {
    if (node !== null) measureAgain(node);
  }, [chain, node, measureAgain]);
  return (
    <>
      {/* Where the first link is tied to the node. It is never pulled here. */}
      <Handle id={chain} type="source" position={Position.Right} style={at} isConnectable={false} />
      {detail === 'full' && (
        <span className={`port-place down ${className}`.trim()} style={at} aria-hidden="true">
          <PortMark side="down" deaf={deaf} capped={empty} />
        </span>
      )}
    </>
  );
}

/** What the windows of a chain need besides what stands in them. */
export interface ChainWindowsView {
  readonly chain: string;
  readonly name: string;
  readonly label: string;
  readonly folded: boolean;
  readonly rowY: number;
  readonly portY: number;
}

interface WindowsProps {
  readonly view: ChainWindowsView;
  readonly classes: string;
  readonly onPress: () => void;
  /** What stands before the name of the chain at its port. */
  readonly tag?: ReactNode;
  readonly children: ReactNode;
}

/** The windows of the controller for one chain, as one thing that can be pressed. */
export function ChainWindows({ view, classes, onPress, tag, children }: WindowsProps) {
  const isFull = useDetail() === 'full';
  return (
    <>
      <div className={`chain-windows${view.folded ? ' folded' : ''} ${classes}`.trim()} style={{ top: view.rowY }}>
        <button
          type="button"
          id={chainElementId(view.chain)}
          className="hit"
          aria-label={view.name}
          data-chain={view.chain}
          onClick={onPress}
        />
        <span className="counter-scaled-inner" aria-hidden="true">
          {!isFull && <span className="chain-label-small">{view.label}</span>}
          {children}
        </span>
      </div>
      {isFull && !view.folded && (
        <span className="chain-label" aria-hidden="true" style={{ top: view.portY }}>
          {tag}
          <b>{view.label}</b>
        </span>
      )}
    </>
  );
}

/** The lines of one window; in a folded row the name of the chain goes before them, where it is asked for. */
export function WindowLines({ lines, view }: { readonly lines: readonly string[]; readonly view?: ChainWindowsView }) {
  const isFull = useDetail() === 'full';
  return (
    <span className="words">
      {view?.folded && isFull && <b>{view.label} </b>}
      {lines.map((line) => (
        <span key={line}>{line} </span>
      ))}
    </span>
  );
}
