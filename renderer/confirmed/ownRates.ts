import { ratesFor, withoutCase } from '../../engine/experience/index.ts';
import type { SharpenedRates } from '../../engine/schema/index.ts';
import type { AppState } from '../state/appState.ts';

/** Under which id the case in the window is kept: one that was begun without an id of its own gets one by its first entry. */
export function keptIdOf({ caseRecord }: Pick<AppState, 'caseRecord'>): string {
  const { id, startedAt, log, result } = caseRecord;
  if (startedAt !== undefined) return id;
  const stamp = (log?.find(({ at }) => at !== undefined)?.at ?? result?.at ?? '').slice(0, 16).replace(/\D/g, '');
  return stamp === '' ? id : `${id.slice(0, 63 - stamp.length)}-${stamp}`;
}

/** The rates that the collection gives to the case in the window: without that case itself. */
export function ratesForCase(state: Pick<AppState, 'confirmed' | 'caseRecord'>): SharpenedRates | undefined {
  const { experience } = state.confirmed;
  if (experience === null) return undefined;
  const own = keptIdOf(state);
  if (!experience.confirmed.some(({ content }) => content.id === own)) return ratesFor(experience);
  return ratesFor(withoutCase(experience, own));
}
