import type { CabinetContent } from '../schema/index.ts';
import { type ModeKind, ownRate, usualRate } from './rates.ts';

/** One field of the rate of a mode as the user wants it; null: without it. A rate without a figure is the usual one again. */
export type RateEdit = ModeKind &
  (
    | { readonly field: 'perYear' | 'intermittentShare'; readonly value: number | null }
    | { readonly field: 'source'; readonly value: string | null }
  );

/**
 * The cabinet with one field of its table of rates changed (domain section 6: an editable table). A share or a source alone makes the
 * usual figure the cabinet's own: somebody stands by it from then on. The cabinet given is not touched.
 */
export function editRate(content: CabinetContent, { item, mode, field, value }: RateEdit): CabinetContent {
  const { rates = [], ...rest } = content;
  const before = ownRate({ item, mode }, content);
  if (before === undefined && value === null) {
    return content;
  }
  const { [field]: _dropped, ...others } = before ?? { item, mode, perYear: usualRate({ item, mode }).perYear };
  const edited = value === null ? others : { ...others, [field]: value };
  // Without a figure there is no line, and everything but the one field is as it was.
  const lines = 'perYear' in edited ? [edited as NonNullable<CabinetContent['rates']>[number]] : [];
  const next = before === undefined ? [...rates, ...lines] : rates.flatMap((rate) => (rate === before ? lines : [rate]));
  return next.length === 0 ? rest : { ...rest, rates: next };
}
