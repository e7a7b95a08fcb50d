import { type Names, wordGroupThing } from '../messages/index.ts';
import type { Run } from '../paper/index.ts';
import type { SingleFault } from '../patterns/index.ts';
import type { Fault } from '../schema/index.ts';

/** What belongs to one place that a person walks to. */
interface Thing {
  readonly key: string;
  readonly faults: Fault[];
  rate: number;
}

/** The faults of a group by the thing at which they lie, likeliest first: "-WH2 cable, plugs", "-TB1 board, down port". */
export function describeGroup(names: Names, faults: readonly SingleFault[]): readonly Run[] {
  const things = new Map<string, Thing>();
  for (const { fault, ratePerYear } of faults) {
    const key = 'link' in fault ? `link/${fault.link}` : 'unit' in fault ? `unit/${fault.unit}` : JSON.stringify({ ...fault, mode: '' });
    const thing = things.get(key) ?? { key, faults: [], rate: 0 };
    things.set(key, thing);
    thing.faults.push(fault);
    thing.rate += ratePerYear;
  }
  const inOrder = [...things.values()].sort((a, b) => b.rate - a.rate);
  return inOrder.flatMap((thing, index): readonly Run[] => {
    const { name, what } = wordGroupThing(names, thing.faults);
    const runs: Run[] = [{ text: name, face: 'bold' }, ...(what === '' ? [] : [{ text: ` ${what}` }])];
    return index === 0 ? runs : [{ text: ', ' }, ...runs];
  });
}
