import { drawWords } from '../../engine/messages/index.ts';
import { unitKinds } from '../../engine/schema/index.ts';
import { Sign } from '../marks/Sign.tsx';
import { useApp } from '../state/useWorkbench.ts';

/** The kinds that can stand in a cabinet, and the chains that there are. */
export function Shelf() {
  const topology = useApp((state) => state.checked.topology);
  return (
    <aside className="shelf" id="shelf" tabIndex={-1} aria-label={drawWords.shelf.region}>
      <h2 className="section-head">{drawWords.shelf.region}</h2>
      {unitKinds.map((kind) => (
        <button key={kind} type="button" className="shelf-kind">
          <Sign name={kind} size={20} />
          <span>{drawWords.shelf.kinds[kind]}</span>
        </button>
      ))}
      {topology.chains.length > 0 && <h2 className="section-head">{drawWords.shelf.chains}</h2>}
      <ul className="shelf-chains">
        {topology.chains.map(({ id, record, units }) => {
          const axes = units.reduce((sum, unit) => sum + (topology.units.get(unit)?.axes?.length ?? 0), 0);
          const { name, what } = drawWords.shelf.chain(record.number, units.length, axes);
          return (
            <li key={id}>
              <b>{name}</b> {what}
            </li>
          );
        })}
      </ul>
    </aside>
  );
}
