import { assertNever, type ChainId, type FeedbackId, type LeadId, type LinkId, type UnitId } from '../base/index.ts';
import type { Behaviour, Direction, Fault, LinkEnd } from '../schema/index.ts';
import { findToleratedLoss } from '../sums/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { type Arrangement, otherEnd } from './arrangement.ts';
import { modeKey } from './itemKey.ts';

/** What a fault does at a place, as things now lie. Faults with equal effects cannot be told apart by anything. */
export type Effect =
  /** `weak`: visibly dimmer, and telegrams still pass. */
  | { readonly at: 'fibre'; readonly link: LinkId; readonly direction: Direction; readonly is: 'cut' | 'dim' | 'weak' }
  | { readonly at: 'plug'; readonly link: LinkId; readonly end: LinkEnd; readonly is: 'loose' | 'fouled' }
  | { readonly at: 'route'; readonly link: LinkId; readonly is: 'kinked' }
  /** The two fibres are exchanged in one plug. */
  | { readonly at: 'holes'; readonly link: LinkId; readonly is: 'crossed' }
  | { readonly at: 'port'; readonly unit: UnitId; readonly port: 'up' | 'down'; readonly is: 'rx-dead' | 'tx-dead' }
  | { readonly at: 'unit'; readonly unit: UnitId; readonly is: UnitEffect }
  /** The unit's two optical plugs are exchanged. */
  | { readonly at: 'wiring'; readonly unit: UnitId; readonly is: 'crossed' }
  | { readonly at: 'chain-port'; readonly chain: ChainId; readonly is: 'dead' }
  | { readonly at: 'lead'; readonly lead: LeadId; readonly is: 'open' }
  | { readonly at: 'supply'; readonly unit: UnitId; readonly is: 'output-lost' | 'dead' };

/** Why a unit as a whole is dark, dead or says something of its own. */
export type UnitEffect = 'dead-dark' | 'dead-lit' | 'fuse-open' | 'contact-bad' | 'short-dark' | 'short-code' | 'short-code-linked';

/**
 * The effects of one fault in an arrangement; none when it was mended, when its item is out of use, or when the unit or cable it
 * names is not there. `behaviourOf` decides what a shorted feedback cable does.
 */
export function effectsOf(
  fault: Fault,
  cabinet: Cabinet,
  arrangement: Arrangement,
  behaviourOf: (unit: UnitId) => Behaviour,
): readonly Effect[] {
  if (arrangement.cured.has(modeKey(fault))) {
    return [];
  }
  // Ids in a fault are plain strings because they come from files; here they get the brand of what they name.
  switch (fault.item) {
    case 'cable':
      return cableEffects(fault, cabinet, arrangement);
    case 'plug': {
      const lie = findCable(arrangement, fault.link as LinkId);
      return lie === null ? [] : [{ at: 'plug', link: lie.link, end: lie.turned ? otherEnd(fault.end) : fault.end, is: fault.mode }];
    }
    case 'route':
      return cabinet.links.has(fault.link as LinkId) ? [{ at: 'route', link: fault.link as LinkId, is: fault.mode }] : [];
    case 'board':
      return boardEffects(fault, arrangement);
    case 'fuse':
      return [{ at: 'unit', unit: fault.unit as UnitId, is: 'fuse-open' }];
    case 'place':
      return [{ at: 'unit', unit: fault.unit as UnitId, is: 'contact-bad' }];
    case 'wiring':
      return [{ at: 'wiring', unit: fault.unit as UnitId, is: 'crossed' }];
    case 'controller-port':
      return [{ at: 'chain-port', chain: fault.chain as ChainId, is: 'dead' }];
    case 'controller':
      return cabinet.chains.map((chain) => ({ at: 'chain-port', chain: chain.id, is: 'dead' }));
    case 'lead':
      return [{ at: 'lead', lead: fault.lead as LeadId, is: fault.mode }];
    case 'supply':
      return [{ at: 'supply', unit: fault.unit as UnitId, is: fault.mode }];
    case 'feedback': {
      const record = cabinet.feedbacks.get(fault.feedback as FeedbackId);
      if (record === undefined || arrangement.pulledFeedbacks.has(fault.feedback as FeedbackId)) {
        return [];
      }
      const unit = record.unit as UnitId;
      return [{ at: 'unit', unit, is: `short-${behaviourOf(unit).shortEffect}` }];
    }
    default:
      return assertNever(fault);
  }
}

/** Where a cable lies now, or null when it was taken away. */
function findCable(arrangement: Arrangement, cable: LinkId): { readonly link: LinkId; readonly turned: boolean } | null {
  const home = arrangement.cableOn.get(cable);
  if (home?.cable === cable) {
    return { link: cable, turned: home.turned };
  }
  for (const [link, lie] of arrangement.cableOn) {
    if (lie.cable === cable) {
      return { link, turned: lie.turned };
    }
  }
  return null;
}

function cableEffects(fault: Extract<Fault, { item: 'cable' }>, cabinet: Cabinet, arrangement: Arrangement): readonly Effect[] {
  const lie = findCable(arrangement, fault.link as LinkId);
  if (lie === null) {
    return [];
  }
  const { link, turned } = lie;
  const outbound: Direction = turned ? 'return' : 'outbound';
  const back: Direction = turned ? 'outbound' : 'return';
  switch (fault.mode) {
    case 'cut':
      return [
        { at: 'fibre', link, direction: 'outbound', is: 'cut' },
        { at: 'fibre', link, direction: 'return', is: 'cut' },
      ];
    case 'outbound-cut':
      return [{ at: 'fibre', link, direction: outbound, is: 'cut' }];
    case 'return-cut':
      return [{ at: 'fibre', link, direction: back, is: 'cut' }];
    case 'outbound-dim':
      return [{ at: 'fibre', link, direction: outbound, is: howDim(cabinet, link, outbound, fault.lossDb) }];
    case 'return-dim':
      return [{ at: 'fibre', link, direction: back, is: howDim(cabinet, link, back, fault.lossDb) }];
    case 'fibres-crossed':
      return [{ at: 'holes', link, is: 'crossed' }];
    default:
      return assertNever(fault);
  }
}

/**
 * Telegrams fail on a dim fibre when its added loss, in dB, exceeds margin plus ageing reserve of the optical budget; without a loss
 * they fail (domain section 4). The budget is that of the link on which the cable lies now.
 */
function howDim(cabinet: Cabinet, link: LinkId, direction: Direction, lossDb: number | undefined): 'dim' | 'weak' {
  return lossDb !== undefined && lossDb <= findToleratedLoss(cabinet, link, direction) ? 'weak' : 'dim';
}

function boardEffects(fault: Extract<Fault, { item: 'board' }>, arrangement: Arrangement): readonly Effect[] {
  const unit = findBoard(arrangement, fault.unit as UnitId);
  if (unit === null) {
    return [];
  }
  switch (fault.mode) {
    case 'dead-dark':
    case 'dead-lit':
      return [{ at: 'unit', unit, is: fault.mode }];
    case 'up-rx':
      return [{ at: 'port', unit, port: 'up', is: 'rx-dead' }];
    case 'up-tx':
      return [{ at: 'port', unit, port: 'up', is: 'tx-dead' }];
    case 'down-rx':
      return [{ at: 'port', unit, port: 'down', is: 'rx-dead' }];
    case 'down-tx':
      return [{ at: 'port', unit, port: 'down', is: 'tx-dead' }];
    case 'up-port':
    case 'down-port': {
      const port = fault.mode === 'up-port' ? 'up' : 'down';
      return [
        { at: 'port', unit, port, is: 'rx-dead' },
        { at: 'port', unit, port, is: 'tx-dead' },
      ];
    }
    default:
      return assertNever(fault.mode);
  }
}

function findBoard(arrangement: Arrangement, board: UnitId): UnitId | null {
  if (arrangement.boardIn.get(board) === board) {
    return board;
  }
  for (const [unit, lies] of arrangement.boardIn) {
    if (lies === board) {
      return unit;
    }
  }
  return null;
}
