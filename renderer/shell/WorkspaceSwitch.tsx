import { Fragment } from 'react';
import { drawWords } from '../../engine/messages/index.ts';
import { workspaces } from '../draw/drawState.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { shortcutsOf, wordKeys } from './shortcuts.ts';

const commandOf = { draw: 'go-draw', find: 'go-find', practice: 'go-practice' } as const;

/** The workspaces on one cabinet, joined by the duplex line of the house. */
export function WorkspaceSwitch() {
  const dispatch = useDispatch();
  const shown = useApp((state) => state.workspace);
  return (
    <nav className="workspaces" aria-label={drawWords.workspaces.label}>
      {workspaces.map((workspace, index) => (
        <Fragment key={workspace}>
          {index > 0 && <i aria-hidden="true" />}
          <button
            type="button"
            aria-current={workspace === shown ? 'page' : undefined}
            title={`${drawWords.workspaces[workspace]} (${shortcutsOf(commandOf[workspace]).map(wordKeys).join(', ')})`}
            onClick={() => dispatch(commandOf[workspace])}
          >
            {drawWords.workspaces[workspace]}
          </button>
        </Fragment>
      ))}
    </nav>
  );
}
