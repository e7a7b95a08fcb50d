import { legendWords } from '../../engine/messages/index.ts';
import type { LegendRecord, TypeRecord } from '../../engine/schema/index.ts';
import { useEquipmentDispatch } from './useEquipment.ts';

/** What can be done with a whole type or legend: keep it for other cabinets, or take it out of this one. */
export function KeepOrRemove({ kind, record }: { readonly kind: 'type' | 'legend'; readonly record: TypeRecord | LegendRecord }) {
  const dispatch = useEquipmentDispatch();
  const words = legendWords.library;
  const keep = () => {
    dispatch('keep-in-library', { kind, id: record.id });
    dispatch('announce', { text: words.kept(record.name) });
  };
  const remove = () => {
    if (kind === 'type') dispatch('remove-type', { type: record.id });
    else dispatch('remove-legend', { legend: record.id });
    dispatch('open-equipment', { page: { kind: 'none' } });
  };
  return (
    <>
      <button type="button" className="button small" onClick={keep}>
        {words.keep}
      </button>
      <button type="button" className="button small" onClick={remove}>
        {words.remove[kind]}
      </button>
    </>
  );
}
