import { X } from 'lucide-react';
import { useState } from 'react';
import type { Change, ChangeKind } from '../../engine/edit/index.ts';
import { changeKindWords, comparisonWords, wordChange } from '../../engine/messages/index.ts';
import { chosenId, type ListTable } from '../edit/inspected.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { ChangeSign } from './ChangeTag.tsx';
import { comparisonOf, countKinds, type ShownComparison } from './comparison.ts';
import './compare.css';

/** What differs between the cabinet in the window and another one, below the drawing on which it is marked. */
export function ComparisonPane() {
  const dispatch = useDispatch();
  const shown = useApp(comparisonOf);
  const compared = useApp((state) => state.comparison);
  const [only, setOnly] = useState<ChangeKind | null>(null);
  if (shown === null || compared === null) return null;
  const counts = countKinds(shown.changes);
  const kind = counts.some((one) => one.kind === only) ? only : null;
  const changes = shown.changes.filter((change) => kind === null || change.kind === kind);
  return (
    <section className="comparison-pane" id="problems" tabIndex={-1} aria-label={comparisonWords.title}>
      <h2 className="section-head">
        {comparisonWords.title}{' '}
        <small>
          {comparisonWords.with(compared.kind, compared.name)}
          {': '}
          {shown.changes.length === 0 ? comparisonWords.same : comparisonWords.differences(shown.changes.length)}
        </small>
        <button type="button" className="icon-button" aria-label={comparisonWords.close} onClick={() => dispatch('close-comparison')}>
          <X size={16} aria-hidden="true" />
        </button>
      </h2>
      {counts.length > 1 && (
        <fieldset className="comparison-kinds">
          <legend className="screen-reader">{comparisonWords.which}</legend>
          <KindButton kind={null} count={shown.changes.length} pressed={kind === null} onPress={setOnly} />
          {counts.map((one) => (
            <KindButton key={one.kind} {...one} pressed={kind === one.kind} onPress={setOnly} />
          ))}
        </fieldset>
      )}
      {changes.length > 0 && (
        <div className="comparison-scroll">
          <table className="comparison-table">
            <thead>
              <tr>
                {(['kind', 'thing', 'what', 'was', 'is'] as const).map((head) => (
                  <th key={head} scope="col">
                    {comparisonWords.heads[head]}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {changes.map((change) => (
                <ChangeRow key={keyOf(change)} change={change} shown={shown} />
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

function KindButton({
  kind,
  count,
  pressed,
  onPress,
}: {
  readonly kind: ChangeKind | null;
  readonly count: number;
  readonly pressed: boolean;
  readonly onPress: (kind: ChangeKind | null) => void;
}) {
  return (
    <button type="button" aria-pressed={pressed} onClick={() => onPress(kind)}>
      {kind !== null && <ChangeSign kind={kind} />}
      {kind === null ? comparisonWords.all : changeKindWords[kind]} <b>{count}</b>
    </button>
  );
}

function ChangeRow({ change, shown }: { readonly change: Change; readonly shown: ShownComparison }) {
  const dispatch = useDispatch();
  const { kind, thing, what, was, is } = wordChange(change, shown.before, shown.after);
  const { list, after } = change.of;
  const inWindow = after !== null && list !== 'cabinet' && list !== 'legends' && list !== 'photos';
  const id = inWindow ? (list === 'controller' ? after : chosenId(list as ListTable, after)) : null; // the other lists are tables
  return (
    <tr>
      <td>
        <span className="change-kind">
          <ChangeSign kind={change.kind} />
          {kind}
        </span>
      </td>
      <td>
        {id === null ? (
          thing
        ) : (
          <button type="button" className="link-button" onClick={() => dispatch('show-problem', { subjects: [id] })}>
            {thing}
          </button>
        )}
      </td>
      <td>{what}</td>
      <td>{was}</td>
      <td>{is}</td>
    </tr>
  );
}

function keyOf({ kind, of, ...rest }: Change): string {
  return JSON.stringify([kind, of, rest]);
}
