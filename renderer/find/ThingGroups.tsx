import type { Names } from '../../engine/messages/index.ts';

interface Props {
  readonly names: Names;
  /** Ids of what can be chosen, under the head of its group. */
  readonly groups: readonly (readonly [head: string, ids: readonly string[]])[];
}

/** Units, cables and the like as lines of a choice, by groups. */
export function ThingGroups({ names, groups }: Props) {
  return groups.map(([head, ids]) => (
    <optgroup key={head} label={head}>
      {ids.map((id) => (
        <option key={id} value={id}>
          {names.thing(id)}
        </option>
      ))}
    </optgroup>
  ));
}
