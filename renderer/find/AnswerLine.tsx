import type { LinkId } from '../../engine/base/index.ts';
import { windowTexts, wordProbability } from '../../engine/messages/index.ts';
import { inReadingOrder } from '../canvas/projectUnits.ts';
import type { AppState } from '../state/appState.ts';
import { currentSnapshot, hasObservations } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch, useWindow } from '../state/useWorkbench.ts';
import type { Spot } from './candidates.ts';
import { type CandidateWords, useCandidateWords } from './candidateWords.ts';
import { type FindModel, type Row, selectFindModel } from './findModel.ts';
import './answer.css';

const words = windowTexts.answer;

/** The first line: what to do next, and how sure that is; the button beside it does the first half of it. */
export function AnswerLine() {
  const model = useApp(selectFindModel);
  const status = useApp((state) => state.diagnosis);
  const sound = useApp((state) => state.checked.cabinet !== null);
  const anything = useApp((state) => hasObservations(state.caseRecord));
  return (
    <section id="answer" className="answer" aria-label={words.region} tabIndex={-1}>
      {!sound ? (
        <Unsound />
      ) : status.state === 'failed' ? (
        <Say head={words.failed} why={words.failedWhy} />
      ) : !anything ? (
        <Begin />
      ) : (
        <Answered model={model} />
      )}
      <Progress />
    </section>
  );
}

function Say({ head, why, children }: { readonly head: string; readonly why: string; readonly children?: React.ReactNode }) {
  return (
    <div className="say">
      <h1>
        <b>{head}</b>
        {children}
      </h1>
      <p>{why}</p>
    </div>
  );
}

function Unsound() {
  const errors = useApp((state) => state.checked.problems.filter(({ severity }) => severity === 'error').length);
  return <Say head={words.unsound} why={words.unsoundWhy(errors)} />;
}

function Begin() {
  const dispatch = useDispatch();
  return (
    <>
      <Say head={words.noteFirst} why={words.noteFirstWhy} />
      <button type="button" className="button primary act" onClick={() => dispatch('walk-displays')}>
        <span className="act-what">
          {words.enter} <kbd>E</kbd>
        </span>
        <span className="act-where">{words.enterWhy}</span>
      </button>
    </>
  );
}

function Answered({ model }: { readonly model: FindModel }) {
  const dispatch = useDispatch();
  const candidateWords = useCandidateWords();
  const basis = useApp(wordBasis);
  const names = useApp((state) => namesOf(state.checked.topology));
  const topology = useApp((state) => state.checked.topology);
  const { diagnosis, rows } = model;
  const [top] = rows;
  if (!diagnosis) return <Say head={`${words.working} …`} why={basis} />;
  if (diagnosis.impossible || !top) return <Say head={words.impossible} why={basis} />;
  const alike = rows.filter((row) => row !== top && row.candidate.group === top.candidate.group).length;
  const why = `${basis} ${alike > 0 ? words.alike(alike) : ''}`.trim();
  if (top.candidate.spots.length === 0) return <Say head={words.nothingBroken} why={why} />;
  const subject = candidateWords.subject(top.candidate);
  const spot = top.candidate.spots[0];
  const where = spot ? whereIs(spot, topology, names) : '';
  return (
    <>
      <Say head={words.lookFirst(candidateWords.object(top.candidate))} why={diagnosis.contradiction ? words.contradiction : why}>
        {' '}
        <span className="share">{wordProbability(top.candidate.probability)}</span> <span className="likely">{words.likely}</span>
      </Say>
      {subject !== null && (
        <button type="button" className="button primary act" onClick={() => show(dispatch, candidateWords, top)}>
          <span className="act-what">{words.show(candidateWords.title(top.candidate).strong)}</span>
          <span className="act-where">{where}</span>
        </button>
      )}
    </>
  );
}

function show(dispatch: ReturnType<typeof useDispatch>, candidateWords: CandidateWords, { candidate }: Row) {
  const subject = candidateWords.subject(candidate);
  dispatch('choose-candidate', { chosen: { by: 'rank' }, subject });
}

/** Where to go: between which ports, on which chain, from what to what. */
function whereIs(spot: Spot, topology: AppState['checked']['topology'], names: ReturnType<typeof namesOf>): string {
  if (spot.kind === 'unit') return names.place(spot.unit);
  if (spot.kind === 'lead') {
    const feed = topology.feeds.find(({ lead }) => lead === spot.lead);
    return feed ? words.leadFrom(names.unit(feed.from), names.unit(feed.to)) : '';
  }
  if (spot.kind !== 'link') return '';
  for (const chain of topology.chains) {
    // The link of a spot is one of the cabinet's.
    const index = chain.links.indexOf(spot.link as LinkId);
    if (index < 0) continue;
    const after = names.unit(chain.units[index] ?? '');
    const before = chain.units[index - 1];
    return before ? words.between(names.unit(before), after) : words.atController(names.chain(chain.id), after);
  }
  return '';
}

/** "From 7 of 9 displays and the controller’s report, fault came while running." */
function wordBasis(state: AppState): string {
  const snapshot = currentSnapshot(state.caseRecord);
  const units = inReadingOrder(state.checked.topology);
  const seen = units.filter((unit) => snapshot.displays?.some((display) => display.unit === unit)).length;
  return `${words.from(seen, units.length, snapshot.reports?.length ?? 0)}, ${words.came(snapshot.restarted ? 'at-power-up' : (snapshot.onset ?? 'unknown'))}.`;
}

/** A search that takes long says so, and can be stopped. Short ones never show: the style lets it appear only after a while. */
function Progress() {
  const status = useApp((state) => state.diagnosis);
  const { cancelDiagnosis, restartDiagnosis } = useWindow();
  if (status.state === 'working') {
    return (
      <div className="working" key={status.revision}>
        <progress aria-label={words.working} value={status.share} max={1} />
        <span>{words.working}</span>
        <button type="button" className="button small" onClick={cancelDiagnosis}>
          {words.cancel}
        </button>
      </div>
    );
  }
  if (status.state !== 'cancelled') return null;
  return (
    <div className="working stopped">
      <span>{words.cancelled}</span>
      <button type="button" className="button small" onClick={restartDiagnosis}>
        {words.again}
      </button>
    </div>
  );
}
