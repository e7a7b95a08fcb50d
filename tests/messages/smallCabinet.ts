import type { ChainId, FeedbackId, LeadId, LinkId, TypeId, UnitId } from '../../engine/base/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';

/** A cabinet in which every kind of thing occurs once or twice. */
export const content: CabinetContent = {
  id: 'small',
  name: 'Small cabinet',
  controller: { id: 'k1', designation: '-KF1' },
  chains: [{ id: 'c1', number: 1 }],
  units: [
    { id: 'u1', kind: 'servo-drive', designation: '-TB1', type: 't1', axes: [{ name: 'X' }] },
    { id: 'u2', kind: 'encoder-interface', designation: '-TB2' },
    { id: 'u3', kind: 'servo-drive', designation: '-TB3', onChain: false },
    { id: 's1', kind: 'supply', designation: '-TB9' },
  ],
  links: [
    { id: 'w1', designation: '-WH1', upper: { chain: 'c1' }, lower: { unit: 'u1' } },
    { id: 'w2', designation: '-WH2', upper: { unit: 'u1' }, lower: { unit: 'u2' } },
  ],
  leads: [
    { id: 'd1', designation: '-WD1', from: { unit: 's1' }, to: { unit: 'u1' } },
    { id: 'd2', from: { unit: 'u1' }, to: { unit: 'u2' } },
    { id: 'd3', from: { unit: 's1' }, to: { unit: 'u3' } },
  ],
  feedbacks: [{ id: 'f1', unit: 'u1', axis: 'X' }],
  types: [{ id: 't1', name: 'Type Q' }],
};

/** Its ids in their branded forms. The file holds them as plain text; that they occur is plain to see above. */
export const ids = {
  chain: 'c1' as ChainId,
  unit: 'u1' as UnitId,
  supply: 's1' as UnitId,
  link: 'w2' as LinkId,
  lead: 'd1' as LeadId,
  feedback: 'f1' as FeedbackId,
  type: 't1' as TypeId,
};
