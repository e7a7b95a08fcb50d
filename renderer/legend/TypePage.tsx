import { legendWords } from '../../engine/messages/index.ts';
import type { TypeRecord } from '../../engine/schema/index.ts';
import { inMountingOrder } from '../../engine/topology/index.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { BehaviourTable } from './BehaviourTable.tsx';
import { CheckedField } from './CheckedField.tsx';
import { KeepOrRemove } from './KeepOrRemove.tsx';
import { useEquipmentDispatch } from './useEquipment.ts';

const words = legendWords.type;

/** One type: its name, how it behaves, which units are of it, which legend reads their codes. */
export function TypePage({ type }: { readonly type: TypeRecord }) {
  const dispatch = useEquipmentDispatch();
  const cabinet = useApp((state) => state.cabinet);
  const nameTrouble = (name: string) => {
    if (name.trim() === '') return words.nameEmpty;
    return cabinet.types?.some((other) => other.id !== type.id && other.name === name.trim()) ? words.nameTaken : null;
  };
  const usual = cabinet.legends?.find(({ id }) => id === cabinet.defaultLegend)?.name ?? null;
  return (
    <article className="equipment-page" aria-label={words.region(type.name)}>
      <div className="page-head">
        <CheckedField
          key={type.id}
          label={words.name}
          value={type.name}
          check={nameTrouble}
          maxLength={200}
          className="wide"
          onTake={(name) => dispatch('rename-type', { type: type.id, name })}
        />
        <button
          type="button"
          className="button small"
          onClick={() => dispatch('open-equipment', { page: { kind: 'staged', type: type.id } })}
        >
          {words.stage}
        </button>
        <KeepOrRemove kind="type" record={type} />
      </div>
      <p className={`verified ${type.behaviourVerified ? 'yes' : ''}`}>
        {type.behaviourVerified ? words.verified(type.behaviourVerified.on, type.behaviourVerified.how) : words.notVerified}
      </p>
      <BehaviourTable key={type.id} type={type} />
      <UnitsOfType type={type} />
      <section className="type-legend">
        <label>
          {words.legend}{' '}
          <select
            value={type.legend ?? ''}
            onChange={(event) =>
              dispatch('set-type-legend', { type: type.id, legend: event.target.value === '' ? null : event.target.value })
            }
          >
            <option value="">{words.legendUsual(usual)}</option>
            {(cabinet.legends ?? []).map((legend) => (
              <option key={legend.id} value={legend.id}>
                {legend.name}
              </option>
            ))}
          </select>
        </label>
      </section>
    </article>
  );
}

function UnitsOfType({ type }: { readonly type: TypeRecord }) {
  const dispatch = useEquipmentDispatch();
  const topology = useApp((state) => state.checked.topology);
  const types = useApp((state) => state.cabinet.types ?? []);
  const names = namesOf(topology);
  return (
    <section className="units-of-type" aria-label={words.unitsOfType}>
      <div className="section-head">
        <h3>{words.unitsOfType}</h3>
      </div>
      <div className="unit-checks">
        {inMountingOrder(topology).map((unit) => {
          const own = topology.units.get(unit)?.type;
          const other = own === type.id ? undefined : types.find(({ id }) => id === own)?.name;
          return (
            <label key={unit}>
              <input
                type="checkbox"
                checked={own === type.id}
                onChange={(event) => dispatch('assign-type', { unit, type: event.target.checked ? type.id : null })}
              />
              <b className="designation">{names.unit(unit)}</b>
              {other !== undefined && <span className="quiet-text">{words.otherType(other)}</span>}
            </label>
          );
        })}
      </div>
    </section>
  );
}
