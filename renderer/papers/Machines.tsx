import { papersWords as words } from '../../engine/messages/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';

/** Other machines of the same design, of which the same documents are made. */
export function Machines() {
  const papers = useApp((state) => state.papers);
  const dispatch = useDispatch();
  if (papers.shown !== 'documents') return null;
  const { machines, leftOut } = papers;
  return (
    <fieldset className="papers-lists papers-machines">
      <legend>{words.machines}</legend>
      <p className="papers-note">{words.machinesHelp}</p>
      {machines.length > 0 && (
        <ul>
          {machines.map(({ file, content }) => (
            <li key={content.id}>{words.machineOf(content.machineNumber?.trim() || content.name, file)}</li>
          ))}
        </ul>
      )}
      <div className="papers-actions">
        <button type="button" className="button" onClick={() => dispatch('choose-machines', { from: 'files' })}>
          {words.addFiles}
        </button>
        <button type="button" className="button" onClick={() => dispatch('choose-machines', { from: 'folder' })}>
          {words.addFolder}
        </button>
        {machines.length > 0 && (
          <button type="button" className="button" onClick={() => dispatch('drop-machines')}>
            {words.dropMachines}
          </button>
        )}
      </div>
      {leftOut.length > 0 && (
        <p className="papers-note" role="status">
          {words.leftOut(leftOut.length, leftOut.slice(0, mostNamed).join(', ') + (leftOut.length > mostNamed ? ', …' : ''))}
        </p>
      )}
    </fieldset>
  );
}

const mostNamed = 5;
