import type { ChainId } from '../../base/index.ts';
import { makeNames } from '../../messages/index.ts';
import type { Snapshot } from '../../schema/index.ts';
import type { Topology } from '../../topology/index.ts';
import { type Asked, allOf, refused, understood } from './asked.ts';
import { atOrdinal, readChain, readGroup, readUnit } from './names.ts';

type ReportObservation = NonNullable<Snapshot['reports']>[number];

/**
 * The controller's report as written on the command line: `CHAIN=GAP[,GAP…]`. A gap is `2|3` or `2..3` (positions, the controller
 * is 0), `drive 2|encoder 1` (ordinals), `-TB2|-TB3` (units), or `none`. Several gaps mean that any of them may be meant.
 */
export function readReport(topology: Topology, text: string): Asked<ReportObservation> {
  const at = text.lastIndexOf('=');
  const named = text.indexOf('=');
  if (at <= 0) return refused('report-malformed', { value: text.trim() });
  // Both a chain's name and a designation in the gap may hold an equals sign: the first that leaves a known chain parts them.
  let chain = readChain(topology, text.slice(0, named));
  let split = named;
  for (let next = text.indexOf('=', named + 1); !chain.ok && next > 0; next = text.indexOf('=', next + 1)) {
    const other = readChain(topology, text.slice(0, next));
    if (other.ok) {
      chain = other;
      split = next;
    }
  }
  if (!chain.ok) return chain;
  const chainId = chain.value;
  const gaps = allOf(
    text
      .slice(split + 1)
      .split(',')
      .map((gap) => readGap(topology, chainId, gap.trim(), text.trim())),
  );
  if (!gaps.ok) return gaps;
  return understood({ chain: chainId, gaps: [...new Set(gaps.value)] });
}

function readGap(topology: Topology, chain: ChainId, text: string, whole: string): Asked<number | 'none'> {
  if (text.toLowerCase() === 'none') return understood('none');
  const sides = text.split(/\||\.\./);
  if (sides.length !== 2 || sides.some((side) => side.trim() === '')) return refused('report-malformed', { value: whole });
  const [left = '', right = ''] = sides.map((side) => side.trim());
  // "drive 2|3" is short for "drive 2|drive 3", as controllers print it; positions are bare on both sides.
  const group = /^(\D+?)[\s/]*\d+$/.exec(left)?.[1] ?? '';
  const nearer = readSide(topology, chain, left, whole);
  const farther = readSide(topology, chain, readGroup(group) && /^\d+$/.test(right) ? `${group} ${right}` : right, whole);
  if (!nearer.ok) return nearer;
  if (!farther.ok) return farther;
  const length = topology.chainById.get(chain)?.units.length ?? 0;
  if (farther.value !== nearer.value + 1 || nearer.value < 0 || farther.value > length) {
    return refused('gap-not-neighbours', { value: text, chain: makeNames(topology).chain(chain) });
  }
  return understood(farther.value);
}

/** One side of a gap as a position: a number, `controller`, group and ordinal, or a unit's name. */
function readSide(topology: Topology, chain: ChainId, side: string, whole: string): Asked<number> {
  if (/^\d+$/.test(side)) return understood(Number(side));
  const designation = topology.content.controller?.designation.trim();
  if (side.toLowerCase() === 'controller' || (designation && side === designation)) return understood(0);
  const counted = /^(\D*?)[\s/]*(\d+)$/.exec(side);
  const group = counted ? readGroup(counted[1] ?? '') : undefined;
  const unit = group ? atOrdinal(topology, chain, group, Number(counted?.[2]), side) : readUnit(topology, side);
  if (!unit.ok) return unit;
  const place = topology.placeOf.get(unit.value);
  if (place?.chain !== chain) return refused('gap-not-neighbours', { value: whole, chain: makeNames(topology).chain(chain) });
  return understood(place.position);
}
