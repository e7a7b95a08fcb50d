import type { LinkRecord } from '../schema/index.ts';
import type { FibreType } from './cableLoss.ts';
import { documented, type FigureCode } from './terms.ts';
import type { LengthLimit } from './types.ts';
import { given, megabauds, metres } from './units.ts';

/**
 * The length limits of a link, apart from its budget: light enough may still be too smeared to be read. The fibre's own limit, and of
 * the limits by data rate that of the lowest rate that is not below the link's. Without a length nothing is judged.
 */
export function findLengthLimits(
  record: LinkRecord,
  fibre: FibreType | undefined,
  dataRate: { readonly figure: number | undefined },
): { readonly limits: readonly LengthLimit[]; readonly missing: readonly FigureCode[] } {
  const length = given(metres, record.lengthM);
  const limits: LengthLimit[] = [];
  const missing: FigureCode[] = [];
  const add = (rule: LengthLimit['rule'], figure: number | undefined, source: string | undefined) => {
    const limit = given(metres, figure);
    if (limit === null || length === null) return;
    limits.push({
      rule,
      length: documented('cable-length', length, record.id),
      limit: documented('length-limit', limit, record.id, source),
      exceeded: length > limit,
    });
  };
  add('fibre', fibre?.maximumLengthM, fibre?.source);
  const byRate = [...(fibre?.lengthLimits ?? [])].sort((a, b) => a.dataRateMbd - b.dataRateMbd);
  if (byRate.length > 0) {
    const rate = given(megabauds, dataRate.figure);
    const row = rate === null ? undefined : byRate.find(({ dataRateMbd }) => dataRateMbd >= rate);
    if (rate === null) missing.push('data-rate');
    else if (row === undefined) missing.push('length-limit-at-rate');
    else add('data-rate', row.maximumLengthM, row.source ?? fibre?.source);
  }
  return { limits, missing };
}
