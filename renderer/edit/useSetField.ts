import { type FieldEdit, type FieldOwner, type FieldValue, setFields } from '../../engine/edit/index.ts';
import { wordProblem } from '../../engine/messages/index.ts';
import { useWindow } from '../state/useWorkbench.ts';

/** Sets one field of several things, as one step; answers what is wrong with the value, in words, or null when it was set. */
export type SetField = (owners: readonly FieldOwner[], path: string, value: FieldValue | null) => string | null;

export function useSetField(): SetField {
  const { store, dispatch } = useWindow();
  return (owners, path, value) => {
    const edits: FieldEdit[] = owners.map((of) => ({ of, path: path.split('.'), value }));
    const answer = setFields(store.getState().cabinet, edits);
    if (!answer.ok) {
      const [problem] = answer.problems;
      if (problem === undefined) return null;
      const { explanation, whatToDo } = wordProblem(problem);
      return `${explanation} ${whatToDo}`;
    }
    dispatch('set-fields', { edits });
    return null;
  };
}
