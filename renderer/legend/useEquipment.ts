import { legendWords } from '../../engine/messages/index.ts';
import type { Dispatch } from '../state/dispatcher.ts';
import { namesOf } from '../state/names.ts';
import { useWindow } from '../state/useWorkbench.ts';

/** Runs a command, and tells which codes of the case mean something else after it. */
export function useEquipmentDispatch(): Dispatch {
  const { store, dispatch } = useWindow();
  return (id, ...args) => {
    const before = store.getState().caseRecord.evidence.snapshots;
    dispatch(id, ...args);
    const state = store.getState();
    const names = namesOf(state.checked.topology);
    const changes = state.caseRecord.evidence.snapshots.flatMap(({ displays }, index) =>
      (displays ?? []).flatMap(({ unit, code, meanings }) => {
        const then = before[index]?.displays?.find((display) => display.unit === unit)?.meanings;
        return code === undefined || then === undefined || then === meanings || then.join() === meanings.join()
          ? []
          : [{ unit: names.unit(unit), code, meanings }];
      }),
    );
    const notice = legendWords.reread(changes);
    if (notice !== '') dispatch('announce', { text: notice });
    if (notice !== '' || state.equipment.notice !== '') dispatch('tell-reread', { notice });
  };
}
