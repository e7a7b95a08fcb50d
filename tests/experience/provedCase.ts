import { checkCabinet } from '../../engine/cabinet/index.ts';
import type { Behaviour, CabinetContent, CaseContent, Circumstance, Fault, Intervention } from '../../engine/schema/index.ts';
import { simulate } from '../../engine/simulation/index.ts';

export interface Told {
  readonly fault: Fault;
  readonly act: Intervention;
  readonly id?: string;
  readonly result?: CaseContent['result'];
  readonly circumstances?: Circumstance[];
  /** How the equipment really behaves, where the cabinet says otherwise. */
  readonly behaves?: Partial<Behaviour>;
}

/** A case as it goes: a fault stops the running machine, all displays and reports are read, one act mends it, the machine runs. */
export function provedCase(content: CabinetContent, { fault, act, id = 'case-1', result, circumstances, behaves }: Told): CaseContent {
  const { cabinet } = checkCabinet({
    ...content,
    types: (content.types ?? []).map((type) => ({ ...type, behaviour: { ...type.behaviour, ...behaves } })),
  });
  if (!cabinet) throw new Error('not sound');
  const { displays, reports } = simulate({ cabinet, faults: [fault], onset: 'while-running' });
  return {
    id,
    name: `Case ${id}`,
    cabinet: content,
    evidence: {
      ...(circumstances && { circumstances }),
      snapshots: [
        {
          onset: 'while-running',
          halted: true,
          displays: [...displays.values()].map(({ unit, meaning }) => ({ unit, meanings: [meaning] })),
          reports: [...reports.values()].filter(({ speaks }) => speaks).map(({ chain, gap }) => ({ chain, gaps: [gap] })),
        },
        { interventions: [act], restarted: true, onset: 'at-power-up', halted: false },
      ],
    },
    result: result ?? { end: 'proved', at: '2026-11-02T09:00:00Z' },
  };
}
