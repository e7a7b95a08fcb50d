import { injectWords, wordInjectedClause, wordReport } from '../../engine/messages/index.ts';
import { Words } from '../marks/Words.tsx';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { selectInjectModel } from './injectModel.ts';
import { listChanges } from './sayings.ts';

/** The first line while a fault is simulated: what is taken to be broken, and what would be seen of it. */
export function InjectAnswer() {
  const dispatch = useDispatch();
  const model = useApp(selectInjectModel);
  const names = useApp((state) => namesOf(state.checked.topology));
  const clauses = (model?.faults ?? []).map((fault) => wordInjectedClause(names, fault));
  const { displays, reports } = model ? listChanges(model) : { displays: [], reports: [] };
  const head = clauses.length === 0 ? injectWords.ifNothing : injectWords.if(clauses);
  const changes = injectWords.changes(
    names,
    displays,
    reports.map((report) => wordReport(names, report)),
  );
  const why = !model
    ? injectWords.unsound
    : clauses.length === 0
      ? injectWords.ifNothingWhy
      : changes === ''
        ? injectWords.noChange
        : changes;
  return (
    <section id="answer" className="answer simulated" aria-label={injectWords.answerRegion} tabIndex={-1}>
      <div className="say">
        <h1 title={head}>
          <b>
            <Words>{head}</Words>
          </b>
        </h1>
        <p title={why}>
          <Words>{why}</Words>
        </p>
      </div>
      <button type="button" className="button end-simulation" onClick={() => dispatch('end-inject')}>
        {injectWords.end} <kbd>Esc</kbd>
      </button>
    </section>
  );
}
