import type { LinkId, UnitId } from '../base/index.ts';
import { installedNumbers } from '../cabinet/index.ts';
import type { CabinetContent, Intervention, UnitKind } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { RepairTable } from './types.ts';

type Spare = NonNullable<CabinetContent['spares']>[number];

/** Where the part of an act comes from, whether it fits, and how likely the act then does what it should. */
export interface PartSource {
  readonly kind: Spare['kind'];
  /** Part number that is needed; null where the cabinet does not name it. */
  readonly partNumber: string | null;
  /** Id of the spare in the cabinet's stock; null: none is there, or nobody wrote the stock down. */
  readonly spare: string | null;
  /** The stock is written down, and it is not in it. */
  readonly mustBeGot: boolean;
  readonly fits: 'yes' | 'unknown';
  /** Chance that the part fits and is good. */
  readonly works: number;
}

/** The part that an act puts in; null for an act that needs none. `used`: how often each spare was put in already. */
export function partFor(
  cabinet: Cabinet,
  table: RepairTable,
  act: Intervention,
  used: ReadonlyMap<string, number> = new Map(),
): PartSource | null {
  const needed = neededPart(cabinet, act);
  if (needed === null) {
    return null;
  }
  const isGood = 1 - table.chances.badSpare.value;
  const stock = (cabinet.content.spares ?? []).filter(({ id, kind, count }) => kind === needed.kind && (count ?? 1) > (used.get(id) ?? 0));
  const numbersOf = (only?: UnitKind): ReadonlySet<string> =>
    stock.length === 0 ? new Set() : installedNumbers(cabinet.content, needed.kind, only);
  const installed = numbersOf();
  const alike = needed.partNumber === null && 'unit' in act ? numbersOf(cabinet.units.get(act.unit as UnitId)?.kind) : installed;
  const judged = stock
    .flatMap((spare) => {
      const fits = fitOf(spare, needed.partNumber, installed, alike);
      return fits === 'no' ? [] : [{ spare, fits }];
    })
    .sort((a, b) => order[a.fits] - order[b.fits]);
  const [best] = judged;
  const fits = best?.fits ?? 'yes';
  const chance = fits === 'unknown' ? table.chances.unknownFit.value : 1;
  const mustBeGot = best === undefined && cabinet.content.spares !== undefined;
  // One that is got is ordered by its part number, and so fits.
  return { ...needed, spare: best?.spare.id ?? null, mustBeGot, fits, works: isGood * chance };
}

const order = { yes: 0, unknown: 1 } as const;

/**
 * Whether a spare fits where a part number is needed. Equal numbers fit (domain section 8). `fits: yes` of the cabinet is said of the part
 * and not of a place: a spare that bears the number of other parts of the cabinet is theirs, and only one that bears none of them, a
 * successor, is taken on that word. In a place without a number it may be the same part only where others of its kind bear it (`alike`).
 * Without a word and without numbers nobody knows.
 */
function fitOf(
  { fits, partNumber = '' }: Spare,
  needed: string | null,
  installed: ReadonlySet<string>,
  alike: ReadonlySet<string>,
): 'yes' | 'no' | 'unknown' {
  const number = partNumber.trim();
  if (fits === 'no' || number === needed) {
    return fits ?? 'yes';
  }
  const isOfOthers = installed.has(number);
  if (number === '' || needed === null) {
    return alike.has(number) ? 'unknown' : isOfOthers ? 'no' : (fits ?? 'unknown');
  }
  return isOfOthers ? 'no' : (fits ?? 'no');
}

function neededPart(cabinet: Cabinet, act: Intervention): Pick<PartSource, 'kind' | 'partNumber'> | null {
  const number = (part: { readonly partNumber?: string | undefined } | undefined) => part?.partNumber?.trim() || null;
  const unit = 'unit' in act ? cabinet.units.get(act.unit as UnitId) : undefined;
  switch (act.do) {
    case 'replace-cable':
      return { kind: 'cable', partNumber: number(cabinet.links.get(act.link as LinkId)) };
    case 'replace-board':
      return { kind: 'board', partNumber: number(unit?.board) };
    case 'replace-unit':
      return { kind: 'unit', partNumber: number(unit) };
    case 'replace-supply':
      return { kind: 'supply', partNumber: number(unit) };
    case 'replace-fuse':
      return { kind: 'fuse', partNumber: number(unit?.fuse) };
    case 'replace-lead':
      return { kind: 'lead', partNumber: number([...cabinet.leads.values()].find(({ id }) => id === act.lead)) };
    case 'replace-feedback':
      return { kind: 'feedback-cable', partNumber: number([...cabinet.feedbacks.values()].find(({ id }) => id === act.feedback)) };
    case 'replace-controller-port':
      return { kind: 'controller-port', partNumber: number(cabinet.chains.find(({ id }) => id === act.chain)?.record) };
    case 'replace-controller':
      return { kind: 'other', partNumber: number(cabinet.content.controller) };
    default:
      return null;
  }
}

/**
 * Units whose board, or links whose cable, may take the place of another's: those of equal, known part number, in the cabinet's order.
 * A wrong board may do damage.
 */
export function listExchangePartners(cabinet: Cabinet, of: { readonly unit: UnitId } | { readonly link: LinkId }): readonly string[] {
  const equal = <K extends string>(parts: readonly (readonly [K, { readonly partNumber?: string | undefined } | undefined])[], own: K) => {
    const number = parts.find(([id]) => id === own)?.[1]?.partNumber;
    return number ? parts.filter(([id, part]) => id !== own && part?.partNumber === number).map(([id]) => id) : [];
  };
  return 'unit' in of
    ? equal(
        [...cabinet.units].filter(([id]) => cabinet.placeOf.has(id)).map(([id, { board }]) => [id, board] as const),
        of.unit,
      )
    : equal([...cabinet.links], of.link);
}
