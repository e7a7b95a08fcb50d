import { X } from 'lucide-react';
import { entryWords } from '../../engine/messages/index.ts';
import { inReadingOrder } from '../canvas/projectFrame.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { ThingGroups } from './ThingGroups.tsx';

const words = entryWords.circumstances;

interface Props {
  /** What a screen reader hears of the box in which things are chosen. */
  readonly label: string;
  /** Words before what was chosen. */
  readonly lead: string;
  readonly subjects: readonly string[];
  readonly onChange: (subjects: readonly string[]) => void;
}

/** Which units and cables something concerns; none chosen: all. */
export function SubjectsField({ label, lead, subjects, onChange }: Props) {
  const topology = useApp((state) => state.checked.topology);
  const names = namesOf(topology);
  const left = (ids: readonly string[]) => ids.filter((id) => !subjects.includes(id));
  const groups = [
    [words.units, left(inReadingOrder(topology))],
    [words.links, left(topology.chains.flatMap((chain) => chain.links))],
  ] as const;
  return (
    <div className="subjects">
      <span className="quiet-text">{lead}</span>
      {subjects.map((id) => (
        <button
          key={id}
          type="button"
          className="subject"
          aria-label={words.remove(names.thing(id))}
          title={words.remove(names.thing(id))}
          onClick={() => onChange(subjects.filter((one) => one !== id))}
        >
          {names.thing(id)} <X size={13} aria-hidden="true" />
        </button>
      ))}
      <select
        aria-label={label}
        value=""
        onChange={(event) => {
          if (event.target.value !== '') onChange([...subjects, event.target.value]);
        }}
      >
        <option value="">{subjects.length === 0 ? words.addFirst : words.addMore}</option>
        <ThingGroups names={names} groups={groups} />
      </select>
    </div>
  );
}
