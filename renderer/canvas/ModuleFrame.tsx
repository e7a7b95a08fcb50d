import type { ReactNode } from 'react';
import { Handle, Position } from 'reactflow';
import { windowTexts } from '../../engine/messages/index.ts';
import { useDetail } from './DetailContext.ts';
import { PortMark } from './PortMark.tsx';
import { unitElementId } from './unitElement.ts';
import type { FrameView } from './views.ts';

interface ModuleProps {
  readonly view: FrameView & { readonly name: string };
  /** Classes that only this workspace has; empty ones do nothing. */
  readonly classes: readonly string[];
  readonly onPress: (event: React.MouseEvent) => void;
  /** What is drawn at each detail. */
  readonly full: () => ReactNode;
  readonly middle: () => ReactNode;
  readonly strip: () => ReactNode;
  /** What lies over the module and can be pressed besides it. */
  readonly over?: ReactNode;
}

/** The frame of a module, alike in every workspace: its ends, what is pressed, and what is seen. What it shows is passed in. */
export function ModuleFrame({ view, classes, onPress, full, middle, strip, over }: ModuleProps) {
  const detail = useDetail();
  const common = [
    'unit',
    `detail-${detail}`,
    view.kind === 'supply' ? 'supply' : '',
    view.onChain ? '' : 'apart',
    view.folded ? 'folded' : '',
  ];
  const side = { top: view.portY };
  return (
    <>
      {/* Where links and leads are tied to the node. They are never pulled here. */}
      <Handle id="up" type="target" position={Position.Left} style={side} isConnectable={false} />
      <Handle id="down" type="source" position={Position.Right} style={side} isConnectable={false} />
      <Handle id="fed" type="target" position={Position.Bottom} isConnectable={false} />
      <Handle id="feeds" type="source" position={Position.Bottom} isConnectable={false} />
      <div className={[...common, ...classes].filter((name) => name !== '').join(' ')}>
        {/* The button's name says all that the picture shows. Keys are heard by the cabinet as a whole; Enter and space click. */}
        <button type="button" id={unitElementId(view.id)} className="hit" aria-label={view.name} data-unit={view.id} onClick={onPress} />
        <div className="module" aria-hidden="true">
          {detail === 'full' ? full() : detail === 'middle' ? middle() : strip()}
        </div>
        {over}
      </div>
    </>
  );
}

/** The optical ports on the edges, with their words. */
export function ModulePorts({
  view,
  deafUp = false,
  deafDown = false,
}: {
  readonly view: FrameView;
  readonly deafUp?: boolean;
  readonly deafDown?: boolean;
}) {
  const at = { top: view.portY };
  return (
    <>
      {!view.folded && (
        <span className="port-words" style={at}>
          <span>{windowTexts.cabinet.up}</span>
          <span>{view.isLast ? windowTexts.cabinet.cap : windowTexts.cabinet.down}</span>
        </span>
      )}
      <span className="port-place up" style={at}>
        <PortMark side="up" deaf={deafUp} capped={false} />
      </span>
      <span className="port-place down" style={at}>
        <PortMark side="down" deaf={deafDown} capped={view.isLast} />
      </span>
    </>
  );
}

/** The lower part of a module: what a supply feeds, how the unit is counted, its axes. */
export function ModuleFoot({ view }: { readonly view: FrameView }) {
  if (view.folded) return null;
  return (
    <>
      {view.outputs.length > 0 && (
        <span className="outputs">
          {view.outputs.slice(0, 3).map((output) => (
            <span key={output}>{output}</span>
          ))}
        </span>
      )}
      {!view.onChain && view.kind !== 'supply' && <span className="apart-words">{view.footer}</span>}
      {view.kind !== 'supply' && (
        <span className="foot">
          <span>{view.onChain ? view.footer : ''}</span>
          <b>{view.axes}</b>
        </span>
      )}
    </>
  );
}

/** What stands under a mark of a strip: every fifth position, and the designation where there is room. */
export function StripFoot({ view }: { readonly view: FrameView }) {
  const numbered = view.position === null || view.position === 1 || view.position % 5 === 0;
  return (
    <>
      {numbered && <span className="number">{view.position ?? view.designation}</span>}
      <span className="strip-name">{view.designation}</span>
    </>
  );
}
