import { equipmentKey, equipmentOf, type SharedClue } from '../../engine/experience/index.ts';
import { wordClue, wordClueShort, confirmedWords as words } from '../../engine/messages/index.ts';
import { Sign } from '../marks/Sign.tsx';
import type { AppState } from '../state/appState.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';

/** What kept cases say of equipment in this cabinet, unless a staged break settled it since; with the type to settle it at. */
function selectClues(
  state: Pick<AppState, 'checked' | 'cabinet' | 'confirmed'>,
): readonly { readonly clue: SharedClue; readonly type: string | null }[] {
  const { topology } = state.checked;
  const clues = state.confirmed.experience?.clues ?? [];
  if (clues.length === 0) return [];
  const found = new Map<SharedClue, string | null>();
  for (const [unit, { type: id }] of topology.units) {
    const equipment = equipmentOf(topology, unit);
    if (equipment === null) continue;
    const key = equipmentKey(equipment);
    const type = state.cabinet.types?.find((one) => one.id === id);
    for (const clue of clues) {
      if (equipmentKey(clue.equipment) !== key) continue;
      const documented = type?.behaviour?.[clue.parameter];
      // Written down otherwise meanwhile, or not known: then nothing is assumed.
      if (documented !== undefined && documented !== clue.assumed) continue;
      if (isSettledSince(type?.behaviourVerified?.on, clue)) continue;
      found.set(clue, found.get(clue) ?? type?.id ?? null);
    }
  }
  return [...found].map(([clue, type]) => ({ clue, type }));
}

/** A staged break after the last of the cases says more than they do. */
function isSettledSince(on: string | undefined, { cases }: SharedClue): boolean {
  return on !== undefined && cases.every(({ result }) => (result?.at ?? '') < on);
}

/** Equipment of this cabinet that behaved otherwise in confirmed cases; `head` where it stands alone. */
export function BehavedNotes({ head = false }: { readonly head?: boolean }) {
  const dispatch = useDispatch();
  const checked = useApp((state) => state.checked);
  const cabinet = useApp((state) => state.cabinet);
  const confirmed = useApp((state) => state.confirmed);
  const clues = selectClues({ checked, cabinet, confirmed });
  if (clues.length === 0) return null;
  const settle = (type: string | null) => {
    dispatch('close-confirmed');
    dispatch('open-equipment', { page: type === null ? { kind: 'none' } : { kind: 'staged', type } });
  };
  return (
    <section className="behaved" aria-label={words.behavedHead}>
      {head && <h3>{words.behavedHead}</h3>}
      <ul>
        {clues.map(({ clue, type }) => (
          <li key={`${equipmentKey(clue.equipment)} ${clue.parameter} ${clue.instead}`}>
            <Sign name="abnormal" size={15} /> <span>{head ? wordClue(clue) : wordClueShort(clue)}</span>{' '}
            <button type="button" className="text-button" onClick={() => settle(type)}>
              {words.settle}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
