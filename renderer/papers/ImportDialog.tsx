import { useMemo, useState } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import {
  importTexts,
  startSentence,
  tableKindWords,
  tableWords,
  wordDoes,
  wordDoubt,
  wordFieldChange,
  wordImport,
  wordProblem,
  papersWords as words,
} from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import {
  type ColumnKey,
  columnsOf,
  guessKind,
  guessMapping,
  type ImportOptions,
  type ImportPlan,
  labelHeads,
  type Mapping,
  planImport,
  type RawTable,
  type TableKind,
  tableKinds,
} from '../../engine/tables/index.ts';
import type { ListFile } from '../files/access.ts';
import { findStorage } from '../state/preferences.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { keepHeads, readKnownHeads } from './knownHeads.ts';
import { readList } from './readList.ts';
import './papers.css';

/** What a list would do to the cabinet, row by row, before it does it. */
export function ImportDialog() {
  const papers = useApp((state) => state.papers);
  const dispatch = useDispatch();
  if (papers.shown !== 'import') return null;
  return (
    <ModalOverlay isOpen isDismissable onOpenChange={(open) => !open && dispatch('close-papers')} className="overlay">
      <Modal className="modal papers-modal">
        <Dialog className="sheet papers">
          <Heading slot="title">{words.importTitle(papers.list.name)}</Heading>
          <ImportList key={papers.list.name} list={papers.list} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function ImportList({ list }: { readonly list: ListFile }) {
  const cabinet = useApp((state) => state.cabinet);
  const dispatch = useDispatch();
  const read = useMemo(() => readList(list.content), [list]);
  const first = read.kind === 'table' ? guessKind(read.table.heads, tableWords) : 'units';
  const [kind, setKind] = useState<TableKind>(first);
  const [said, setSaid] = useState<Mapping>({});
  const [replace, setReplace] = useState(false);
  const guessed = useMemo(
    () => (read.kind === 'table' ? guessMapping(kind, read.table, tableWords, readKnownHeads(findStorage())) : {}),
    [read, kind],
  );
  const mapping = useMemo(() => ({ ...guessed, ...said }), [guessed, said]);
  const plans = useMemo(() => {
    if (read.kind === 'refused') return [];
    return read.kind === 'table'
      ? planAll(cabinet, [[kind, read.table, mapping]], { replace, place: true })
      : planAll(
          cabinet,
          tableKinds.map((one) => [one, read.tables[one], guessMapping(one, read.tables[one], tableWords)] as const),
          { replace },
        );
  }, [cabinet, read, kind, mapping, replace]);
  if (read.kind === 'refused') return <Refused problems={read.problems} />;
  const taken = plans.flatMap(({ rows }) => rows).filter(({ does }) => does === 'add' || does === 'change').length;
  const take = () => {
    if (read.kind === 'table') keepHeads(findStorage(), kind, read.table.heads, guessed, said);
    dispatch('take-import', { content: plans.at(-1)?.content ?? cabinet, name: list.name });
    dispatch('announce', { text: words.applied(taken) });
    dispatch('close-papers');
  };
  return (
    <>
      <div className="papers-columns">
        <div className="papers-choice">
          <label className="papers-check">
            <input type="checkbox" checked={replace} onChange={(event) => setReplace(event.target.checked)} />
            {words.overwrite}
          </label>
          {read.kind === 'table' && (
            <>
              <label className="papers-field">
                {words.isList}
                <select
                  value={kind}
                  onChange={(event) => {
                    setKind(tableKinds.find((one) => one === event.target.value) ?? kind);
                    setSaid({});
                  }}
                >
                  {tableKinds.map((one) => (
                    <option key={one} value={one}>
                      {tableKindWords[one]}
                    </option>
                  ))}
                </select>
              </label>
              <MappingTable
                kind={kind}
                table={read.table}
                mapping={mapping}
                onChange={(key, index) => setSaid({ ...said, [key]: index })}
              />
            </>
          )}
        </div>
        {/* It scrolls, so it can be reached by key. */}
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: see above */}
        <section className="papers-preview" tabIndex={0} aria-label={words.would}>
          {plans.map((plan) => (
            <PlanTable key={plan.kind} plan={plan} />
          ))}
          {read.kind === 'table' && Object.values(mapping).every((index) => index < 0) && <p>{words.noColumns}</p>}
        </section>
      </div>
      <div className="sheet-end">
        <button type="button" className="button" onClick={() => dispatch('close-papers')}>
          {words.cancel}
        </button>
        <button type="button" className="button primary" disabled={taken === 0} onClick={take}>
          {words.apply(taken)}
        </button>
      </div>
    </>
  );
}

/** One list after another: cables name the units that came before them. */
function planAll(
  cabinet: CabinetContent,
  tables: readonly (readonly [TableKind, RawTable, Mapping])[],
  options: Omit<ImportOptions, 'mapping'>,
): readonly ImportPlan[] {
  const plans: ImportPlan[] = [];
  for (const [kind, table, mapping] of tables) {
    if (table.rows.length === 0) continue;
    plans.push(planImport(plans.at(-1)?.content ?? cabinet, kind, table, tableWords, { ...options, mapping }));
  }
  return plans;
}

function Refused({ problems }: { readonly problems: Parameters<typeof wordProblem>[0][] | readonly Parameters<typeof wordProblem>[0][] }) {
  const dispatch = useDispatch();
  return (
    <>
      <ul className="refused">
        {problems.map((problem) => {
          const { title, explanation, whatToDo } = wordProblem(problem);
          return (
            <li key={problem.code}>
              <b>{title}</b>
              <p>
                {explanation} {whatToDo}
              </p>
            </li>
          );
        })}
      </ul>
      <div className="sheet-end">
        <button type="button" className="button primary" onClick={() => dispatch('close-papers')}>
          {words.close}
        </button>
      </div>
    </>
  );
}

interface MappingProps {
  readonly kind: TableKind;
  readonly table: RawTable;
  readonly mapping: Mapping;
  readonly onChange: (key: ColumnKey, index: number) => void;
}

function MappingTable({ kind, table, mapping, onChange }: MappingProps) {
  const columns = columnsOf(kind).filter(({ form }) => form !== 'derived');
  const heads = labelHeads(table.heads, words.columnNumber);
  return (
    <fieldset className="papers-mapping">
      <legend>{words.columns}</legend>
      {columns.map(({ key }) => (
        <label key={key} className="papers-field">
          {tableWords.heads[key]}
          <select value={mapping[key] ?? -1} onChange={(event) => onChange(key, Number(event.target.value))}>
            <option value={-1}>{words.noHead}</option>
            {heads.map((head, index) => (
              <option key={head} value={index}>
                {head}
              </option>
            ))}
          </select>
        </label>
      ))}
    </fieldset>
  );
}

const mostRows = 200;

function PlanTable({ plan }: { readonly plan: ImportPlan }) {
  const wanted = plan.rows.filter(({ does, changes }) => does !== 'same' || changes.length > 0);
  // Where not all are shown, those that are left out come first: they are what one must look at.
  const isDoubtful = ({ does }: ImportPlan['rows'][number]) => does === 'doubtful';
  const shown = wanted.length <= mostRows ? wanted : [...wanted.filter(isDoubtful), ...wanted.filter((row) => !isDoubtful(row))];
  return (
    <section className="import-plan">
      <h3>{startSentence(`${tableKindWords[plan.kind]}: ${wordImport(plan.rows)}`)}</h3>
      {shown.length > 0 && (
        <table>
          <thead>
            <tr>
              <th scope="col">{importTexts.line}</th>
              <th scope="col">{importTexts.name}</th>
              <th scope="col">{importTexts.does}</th>
              <th scope="col">{importTexts.what}</th>
            </tr>
          </thead>
          <tbody>
            {shown.slice(0, mostRows).map((row) => (
              <tr key={row.line} className={row.does}>
                <td>{row.line}</td>
                <th scope="row">{row.name}</th>
                <td>{wordDoes(row)}</td>
                <td>{[...row.doubts.map(wordDoubt), ...(row.does === 'doubtful' ? [] : row.changes.map(wordFieldChange))].join('; ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {shown.length > mostRows && <p>{words.moreRows(shown.length - mostRows)}</p>}
    </section>
  );
}
