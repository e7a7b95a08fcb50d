import { startSentence, wordFault, wordItem, handBackTexts as words } from '../../engine/messages/index.ts';
import { type EndState, listCauses, type PossibleCause } from '../../engine/plan/index.ts';
import { lastDiagnosis } from '../state/lastDiagnosis.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import type { NamedCause } from './handBackCommands.ts';

interface Choice {
  readonly value: string;
  readonly label: string;
  readonly cause: NamedCause;
}

const keyOfCause = ({ item = '', mode = '' }: NonNullable<NamedCause>) => (item === '' && mode === '' ? '' : `${item} ${mode}`);

/** Lets whoever saw it name what was wrong with what was mended, where that leaves several causes, or proves none. */
export function FoundCause({ end }: { readonly end: EndState }) {
  const dispatch = useDispatch();
  const cabinet = useApp((state) => state.checked.cabinet);
  const evidence = useApp((state) => state.caseRecord.evidence);
  const diagnosis = useApp((state) => lastDiagnosis(state.diagnosis));
  const result = useApp((state) => state.caseRecord.result);
  if ((end.end !== 'proved' && end.end !== 'not-proved') || !cabinet || !diagnosis) return null;
  const causes = listCauses(cabinet, evidence, diagnosis);
  if (causes.length < (end.end === 'proved' ? 2 : 1)) return null;
  const choices = listChoices(causes, namesOf(cabinet));
  const { item, mode } = result ?? {};
  const chosen = keyOfCause({ ...(item !== undefined && { item }), ...(mode !== undefined && { mode }) });
  const name = (value: string) => {
    const cause = choices.find((choice) => choice.value === value)?.cause ?? null;
    dispatch('write-result', { end: end.end, change: { cause }, at: new Date().toISOString() });
  };
  return (
    <section aria-label={words.cause}>
      <h3>{words.cause}</h3>
      <p className="quiet-text">{words.causeWhy}</p>
      <select className="found-cause" aria-label={words.cause} value={chosen} onChange={(event) => name(event.target.value)}>
        <option value="">{words.causeUnseen}</option>
        {!choices.some(({ value }) => value === chosen) && chosen !== '' && <option value={chosen}>{words.causeUnfit}</option>}
        {choices.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </section>
  );
}

/** Item by item, the likeliest first: what may have been wrong with it, and that somebody knows only the item. */
function listChoices(causes: readonly PossibleCause[], names: ReturnType<typeof namesOf>): readonly Choice[] {
  return [...new Set(causes.map(({ key }) => key))].flatMap((item) => {
    const faults = causes.filter(({ key }) => key === item).map(({ fault: { presence: _, ...fault } }) => fault);
    const modes = faults.map((fault) => {
      const cause = { item, mode: fault.mode };
      return { value: keyOfCause(cause), label: startSentence(wordFault(names, fault)), cause };
    });
    const [first] = faults;
    if (first === undefined || modes.length === 1) return modes;
    return [...modes, { value: keyOfCause({ item }), label: words.causeItem(startSentence(wordItem(names, first))), cause: { item } }];
  });
}
