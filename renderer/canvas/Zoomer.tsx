import { Maximize, Minus, Plus } from 'lucide-react';
import { windowTexts } from '../../engine/messages/index.ts';
import { useDispatch } from '../state/useWorkbench.ts';

const icons = [
  ['zoom-out', windowTexts.commands.zoomOut, Minus],
  ['zoom-to-fit', windowTexts.commands.zoomToFit, Maximize],
  ['zoom-in', windowTexts.commands.zoomIn, Plus],
] as const;

/** How large the picture of the cabinet is. */
export function Zoomer() {
  const dispatch = useDispatch();
  return (
    <fieldset className="zoomer">
      <legend className="screen-reader">{windowTexts.cabinet.zoom}</legend>
      {icons.map(([command, label, Icon]) => (
        <button key={command} type="button" className="icon-button" aria-label={label} onClick={() => dispatch(command)}>
          <Icon size={16} aria-hidden="true" />
        </button>
      ))}
    </fieldset>
  );
}
