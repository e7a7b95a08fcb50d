import { ArrowDown, ArrowUp } from 'lucide-react';
import { useState } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useStore } from 'zustand';
import { makeFileName } from '../../engine/base/index.ts';
import { classCsv } from '../../engine/exercise/index.ts';
import {
  classHeads,
  practiceWords,
  wordList,
  wordNumber,
  wordProblem,
  wordSolved,
  classWords as words,
} from '../../engine/messages/index.ts';
import { wordTime } from '../files/wordTime.ts';
import { useDispatch } from '../state/useWorkbench.ts';
import { type ClassColumn, type ClassLine, type ClassOrder, classColumns, countExercises, orderLines } from './classModel.ts';
import { chooseFiles, classStore, emptyClass } from './classStore.ts';
import './make.css';

/** Results of a class as a table, with what could not be read. */
export function ClassScreen() {
  const dispatch = useDispatch();
  const { results, deleted } = useStore(classStore);
  const [order, setOrder] = useState<ClassOrder>({ by: 'code', descending: false });
  const lines = orderLines(results, order);
  const exercises = countExercises(results);
  return (
    <div className="practice-class">
      <header>
        <div>
          <h1>{words.title}</h1>
          <p>{words.intro}</p>
        </div>
        <p className="make-deeds">
          <button type="button" className="button primary" onClick={() => dispatch('take-results', { from: 'folder' })}>
            {words.folder}
          </button>
          <button type="button" className="button" onClick={() => dispatch('take-results', { from: 'files' })}>
            {words.files}
          </button>
        </p>
      </header>
      <p role="status" className="generate-state">
        {results.length === 0 ? words.empty : words.count(results.length)}
        {exercises.length > 1 && ` ${words.ofExercises(wordList(exercises))}`}
        {deleted > 0 && ` · ${words.deleted(deleted)}`}
      </p>
      <NotTaken />
      {lines.length > 0 && (
        <>
          <Deeds lines={lines} />
          <Table lines={lines} order={order} onOrder={setOrder} />
        </>
      )}
    </div>
  );
}

/** Files that are not in the table, each with what is wrong. */
function NotTaken() {
  const { damaged, foreign, twice, leftOut } = useStore(classStore);
  return (
    <>
      {damaged.length > 0 && (
        <section className="class-damaged" aria-label={words.damaged(damaged.length)}>
          <h2>{words.damaged(damaged.length)}</h2>
          <ul>
            {damaged.map(({ name, problem }, index) => {
              const { title, explanation, whatToDo } = wordProblem(problem);
              return (
                // biome-ignore lint/suspicious/noArrayIndexKey: two files of different folders may have one name, and the list never changes
                <li key={`${name} ${index}`}>
                  <b>{name}</b>: {title}. {explanation} {whatToDo}
                </li>
              );
            })}
          </ul>
        </section>
      )}
      <Named summary={words.twice(twice.length)} lines={twice.map(({ name, other, code }) => [name, words.sameAs(other, code)])} />
      <Named summary={words.foreign(foreign.length)} lines={foreign.map(({ name, problem }) => [name, wordProblem(problem).title])} />
      {leftOut > 0 && <p className="practice-small">{words.leftOut(leftOut)}</p>}
    </>
  );
}

/** Files that are no trouble, each by name for who asks. */
function Named({ summary, lines }: { readonly summary: string; readonly lines: readonly (readonly [string, string])[] }) {
  if (lines.length === 0) return null;
  return (
    <details className="class-named">
      <summary>{summary}</summary>
      <ul>
        {lines.map(([name, what], index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two files of different folders may have one name, and the list never changes
          <li key={`${name} ${index}`}>
            <b>{name}</b>: {what}.
          </li>
        ))}
      </ul>
    </details>
  );
}

function Deeds({ lines }: { readonly lines: readonly ClassLine[] }) {
  const dispatch = useDispatch();
  const { canDelete, chosen } = useStore(classStore);
  const [asking, setAsking] = useState(false);
  const files = lines.filter(({ file }) => chosen.includes(file.handle)).map(({ file }) => file);
  const saveCsv = () =>
    dispatch('export-file', {
      name: makeFileName(words.csvName, '.csv', words.csvName),
      content: new TextEncoder().encode(classCsv(lines, classHeads)),
      kind: 'csv',
    });
  return (
    <div className="make-deeds class-deeds">
      <button type="button" className="button" onClick={saveCsv}>
        {words.csv}
      </button>
      <button type="button" className="button" onClick={emptyClass}>
        {words.clear}
      </button>
      {canDelete ? (
        <button type="button" className="button" disabled={files.length === 0} onClick={() => setAsking(true)}>
          {words.delete}
        </button>
      ) : (
        <span className="practice-small">{words.cannotDelete}</span>
      )}
      {asking && (
        <ModalOverlay isOpen isDismissable onOpenChange={setAsking} className="overlay">
          <Modal className="modal">
            <Dialog className="sheet" role="alertdialog">
              <Heading slot="title">{words.deleteTitle(files.length)}</Heading>
              <p>{words.deleteWhat}</p>
              <div className="sheet-end make-deeds">
                <button type="button" className="button" onClick={() => setAsking(false)}>
                  {words.cancel}
                </button>
                <button
                  type="button"
                  className="button primary"
                  onClick={() => {
                    setAsking(false);
                    dispatch('delete-results', { files });
                  }}
                >
                  {words.deleteYes}
                </button>
              </div>
            </Dialog>
          </Modal>
        </ModalOverlay>
      )}
    </div>
  );
}

function Table({
  lines,
  order,
  onOrder,
}: {
  readonly lines: readonly ClassLine[];
  readonly order: ClassOrder;
  readonly onOrder: (order: ClassOrder) => void;
}) {
  const { canDelete, chosen } = useStore(classStore);
  const handles = lines.map(({ file }) => file.handle);
  const all = handles.every((handle) => chosen.includes(handle));
  return (
    <table className="practice-table">
      <thead>
        <tr>
          {canDelete && (
            <th scope="col">
              <input type="checkbox" aria-label={words.chooseAll} checked={all} onChange={() => chooseFiles(all ? [] : handles)} />
            </th>
          )}
          {classColumns.map((column) => (
            <Head key={column} column={column} order={order} onOrder={onOrder} />
          ))}
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.file.handle} title={line.file.name}>
            {canDelete && (
              <td>
                <input
                  type="checkbox"
                  aria-label={words.choose(line.code, line.name)}
                  checked={chosen.includes(line.file.handle)}
                  onChange={() =>
                    chooseFiles(
                      chosen.includes(line.file.handle)
                        ? chosen.filter((handle) => handle !== line.file.handle)
                        : [...chosen, line.file.handle],
                    )
                  }
                />
              </td>
            )}
            <th scope="row">{line.code}</th>
            <td>{line.name}</td>
            <td>{wordSolved(line)}</td>
            <td>
              {practiceWords.minutes(line.minutes)} <span className="practice-small">{words.best(line.bestMinutes)}</span>
            </td>
            <td>{line.ratio === null ? words.notTold : words.times(wordNumber(Math.round(line.ratio * 10) / 10))}</td>
            <td>{words.of(line.predictionsRight, line.predictions)}</td>
            <td data-unsafe={line.unsafe > 0}>{line.unsafe === 0 ? words.safe : words.unsafe(line.unsafe)}</td>
            <td>{line.seconds === null ? words.notTold : words.took(line.seconds)}</td>
            <td>{line.startedAt === null ? words.notTold : wordTime(line.startedAt)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Head({
  column,
  order,
  onOrder,
}: {
  readonly column: ClassColumn;
  readonly order: ClassOrder;
  readonly onOrder: (order: ClassOrder) => void;
}) {
  const isThis = order.by === column;
  const Arrow = order.descending ? ArrowDown : ArrowUp;
  return (
    <th scope="col" aria-sort={isThis ? (order.descending ? 'descending' : 'ascending') : 'none'}>
      <button
        type="button"
        title={words.sortBy(words.heads[column])}
        onClick={() => onOrder({ by: column, descending: isThis && !order.descending })}
      >
        {words.heads[column]} {isThis && <Arrow size={12} aria-hidden="true" />}
      </button>
    </th>
  );
}
