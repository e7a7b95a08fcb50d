import type { ReactFlowProps } from 'reactflow';
import { zoomLimits } from './geometry.ts';

/** How every picture of the cabinet uses the library: it draws, pans and zooms; choosing, dragging and keys are ours. */
export const flowBasics = {
  minZoom: zoomLimits.least,
  maxZoom: zoomLimits.most,
  nodesDraggable: false,
  nodesConnectable: false,
  nodesFocusable: false,
  edgesFocusable: false,
  elementsSelectable: false,
  panOnScroll: true,
  zoomOnDoubleClick: false,
  deleteKeyCode: null,
  selectionKeyCode: null,
  disableKeyboardA11y: true,
  proOptions: { hideAttribution: true },
} as const satisfies ReactFlowProps;
