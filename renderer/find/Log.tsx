import { Pencil, Undo2 } from 'lucide-react';
import { useMemo, useState } from 'react';
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { windowTexts } from '../../engine/messages/index.ts';
import { wordClock } from '../files/wordTime.ts';
import { Sign } from '../marks/Sign.tsx';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { type LogEntry, listEntries, momentOf, wordUnknown } from './logEntries.ts';
import './log.css';

const words = windowTexts.log;

/** What was entered and holds, newest first: everything can be corrected or withdrawn. Below it, on demand, all that ever happened. */
export function Log() {
  const record = useApp((state) => state.caseRecord);
  const topology = useApp((state) => state.checked.topology);
  const looks = useMemo(() => listEntries(record, topology, namesOf(topology)), [record, topology]);
  const count = looks.reduce((sum, { entries }) => sum + entries.length, 0);
  return (
    <section id="log" className="pane log" aria-label={words.region} tabIndex={-1}>
      <div className="section-head">
        <h2>
          {words.region} <small>{count}</small>
        </h2>
      </div>
      <Unknown />
      {count === 0 && <p className="empty">{words.empty}</p>}
      {looks.map(({ snapshot, entries }) => (
        <div key={snapshot}>
          {record.evidence.snapshots.length > 1 && (
            <h3>
              {words.look(snapshot + 1)}
              {record.evidence.snapshots[snapshot]?.restarted === true && <small> {words.afterRestart}</small>}
            </h3>
          )}
          <ol>
            {entries.map((entry) => (
              <Entry key={entry.key} entry={entry} />
            ))}
          </ol>
        </div>
      ))}
      <History />
    </section>
  );
}

/** What was entered of things that the cabinet does not have, as in a case file written by hand. */
function Unknown() {
  const unknown = useApp(wordUnknown);
  return unknown === '' ? null : (
    <p className="log-unknown">
      <Sign name="abnormal" size={15} /> <span>{words.unknown(unknown)}</span>
    </p>
  );
}

function Entry({ entry: { entry, at, what, code, reopen, answers } }: { readonly entry: LogEntry }) {
  const dispatch = useDispatch();
  const withdraw = () => {
    dispatch('withdraw-entry', { entry, what });
    // The line is gone; the next thing to do is in the same list.
    document.getElementById('log')?.focus();
  };
  return (
    <li>
      <time dateTime={at}>{clockOf(at)}</time>
      <span className="what" title={what}>
        {what}
        {code !== null && <span className="quiet-text"> {words.byCode(code)}</span>}
      </span>
      {reopen && (
        <button
          type="button"
          className="icon-button"
          aria-label={words.correct(what)}
          title={words.correct(what)}
          onClick={() => dispatch('open-entry', { entry: reopen })}
        >
          <Pencil size={14} aria-hidden="true" />
        </button>
      )}
      {!reopen && answers.length > 0 && (
        <MenuTrigger>
          <Button className="icon-button" aria-label={words.correct(what)}>
            <Pencil size={14} aria-hidden="true" />
          </Button>
          <Popover className="menu-popover" placement="bottom end">
            <Menu
              className="menu"
              aria-label={words.instead}
              onAction={(outcome) => dispatch('correct-entry', { entry, outcome: String(outcome), what })}
            >
              {answers.map(({ outcome, words: label }) => (
                <MenuItem key={outcome} id={outcome} className="menu-item">
                  {label}
                </MenuItem>
              ))}
            </Menu>
          </Popover>
        </MenuTrigger>
      )}
      <button type="button" className="icon-button" aria-label={words.withdraw(what)} title={words.withdraw(what)} onClick={withdraw}>
        <Undo2 size={15} aria-hidden="true" />
      </button>
    </li>
  );
}

/** As many lines as are drawn; a case file may hold thousands. */
const mostLines = 200;

/** What the case file keeps: every entry, correction and withdrawal in the order in which it was made. */
function History() {
  const log = useApp((state) => state.caseRecord.log);
  const [open, setOpen] = useState(false);
  if (!log || log.length === 0) return null;
  const lines = log.map((line, index) => ({ ...line, key: index })).slice(-mostLines);
  return (
    <div className="history">
      <button type="button" className="text-button" aria-expanded={open} onClick={() => setOpen(!open)}>
        {words.history(log.length)}
      </button>
      {open && (
        <ol>
          {lines.reverse().map(({ key, at, what }) => (
            <li key={key}>
              <time dateTime={at}>{clockOf(at)}</time>
              <span className="what" title={what}>
                {what}
              </span>
            </li>
          ))}
        </ol>
      )}
    </div>
  );
}

/** Hours and minutes as the clock on the wall shows them here. */
function clockOf(at: string | undefined): string {
  const moment = momentOf(at);
  if (moment === 0) return words.noTime;
  return wordClock(new Date(moment));
}
