import { legendWords } from '../../engine/messages/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';

/** The type of a unit; opens what is written of it. */
export function TypeLink({ unit, name }: { readonly unit: string; readonly name: string }) {
  const dispatch = useDispatch();
  const type = useApp((state) => {
    const own = state.cabinet.units?.find(({ id }) => id === unit)?.type;
    return state.cabinet.types?.find(({ id }) => id === own);
  });
  const words = legendWords.dialog.typeOf(type?.name ?? null);
  return (
    <button
      type="button"
      className="text-button type-link"
      aria-label={legendWords.dialog.openFor(name, words)}
      onClick={() => {
        dispatch('close-entry');
        dispatch('open-equipment', { page: type ? { kind: 'type', type: type.id } : { kind: 'none' } });
      }}
    >
      {words}
    </button>
  );
}
