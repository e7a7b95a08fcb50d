import { describe, expect, it } from 'vitest';
import type { ChainId, UnitId } from '../../engine/base/index.ts';
import { defaultBehaviour, documentedBehaviour, documentedPortBehaviour, unknownParameters } from '../../engine/cabinet/index.ts';
import { behaviourParameters, behaviourValues, type CabinetContent } from '../../engine/schema/index.ts';
import { buildTopology } from '../../engine/topology/index.ts';
import { line } from '../topology/small.ts';

const unit = (id: string) => id as UnitId; // units of the cabinet below
const content: CabinetContent = {
  ...line(3),
  chains: [{ id: 'ch1', number: 1, behaviour: { onReceiveLoss: 'keep', idleLight: 'unknown' } }],
  units: (line(3).units ?? []).map((record) =>
    record.id === 'u1' ? { ...record, type: 't' } : record.id === 'u2' ? { ...record, type: 'bare' } : record,
  ),
  types: [
    { id: 't', name: 'T', behaviour: { holds: 'unknown', whenBoth: 'upstream', lossScope: 'unknown' } },
    { id: 'bare', name: 'Bare' },
  ],
};
const { topology } = buildTopology(content);

describe('documentedBehaviour', () => {
  it('should be the first value of each parameter where nothing is documented', () => {
    expect(Object.keys(defaultBehaviour)).toEqual(behaviourParameters);
    for (const parameter of behaviourParameters) expect(defaultBehaviour[parameter]).toBe(behaviourValues[parameter][0]);
    for (const id of ['u2', 'u3', 'nobody']) expect(documentedBehaviour(topology, unit(id))).toEqual(defaultBehaviour);
  });

  it('should be what the type says, and the default where it says unknown', () => {
    expect(documentedBehaviour(topology, unit('u1'))).toEqual({ ...defaultBehaviour, whenBoth: 'upstream' });
  });

  it('should know the controller’s end of a chain too', () => {
    expect(documentedPortBehaviour(topology, 'ch1' as ChainId)).toEqual({ onReceiveLoss: 'keep', idleLight: 'yes' });
    expect(documentedPortBehaviour(topology, 'ch9' as ChainId)).toEqual({ onReceiveLoss: 'mute', idleLight: 'yes' });
  });
});

describe('unknownParameters', () => {
  it('should list what the type says is unknown, in the order of the parameters', () => {
    expect(unknownParameters(topology, unit('u1'))).toEqual(['lossScope', 'holds']);
    expect(unknownParameters(topology, unit('u2'))).toEqual([]);
    expect(unknownParameters(topology, unit('u3'))).toEqual([]);
  });
});
