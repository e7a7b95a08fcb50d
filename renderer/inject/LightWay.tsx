import { ChevronLeft, ChevronRight } from 'lucide-react';
import { useEffect, useRef } from 'react';
import { injectWords } from '../../engine/messages/index.ts';
import { Words } from '../marks/Words.tsx';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { type InjectModel, selectInjectModel } from './injectModel.ts';
import { type Hop, isStopped, nextStop } from './lightWay.ts';
import { saySettled, sayStep } from './sayings.ts';
import './light.css';

const moments = ['trip', 'now'] as const;

/** The light step by step: out along the chain, back again, and the report; numbered, never moving by itself. */
export function LightWay() {
  const dispatch = useDispatch();
  const model = useApp(selectInjectModel);
  if (!model || model.chain === null) return null;
  const { hops, hop } = model;
  const last = hops.length - 1;
  const onKeyDown = (event: React.KeyboardEvent) => {
    if (event.target instanceof HTMLSelectElement || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key !== 'ArrowRight' && event.key !== 'ArrowLeft') return;
    event.preventDefault();
    dispatch(event.key === 'ArrowRight' ? 'next-hop' : 'previous-hop');
  };
  return (
    <section className="pane light-way" aria-label={injectWords.way} onKeyDown={onKeyDown}>
      <div className="section-head">
        <h2>
          {injectWords.way} <small>{hop === null ? injectWords.stepsInAll(hops.length) : injectWords.step(hop + 1, hops.length)}</small>
        </h2>
      </div>
      <WayChoices model={model} />
      <Steps model={model} />
      <div className="hop-buttons">
        <button type="button" className="button" disabled={hop === null} onClick={() => dispatch('previous-hop')}>
          <ChevronLeft size={16} aria-hidden="true" /> {injectWords.back} <kbd>←</kbd>
        </button>
        <button type="button" className="button primary" disabled={hop === last} onClick={() => dispatch('next-hop')}>
          {hop === null ? injectWords.begin : injectWords.next} <ChevronRight size={16} aria-hidden="true" /> <kbd>→</kbd>
        </button>
        {hop !== null && nextStop(hops, hop) === null ? (
          <button type="button" className="button plain" onClick={() => dispatch('go-to-hop', { hop: null })}>
            {injectWords.toEnd}
          </button>
        ) : (
          <button
            type="button"
            className="button plain"
            title={injectWords.toStopTitle}
            disabled={nextStop(hops, hop) === null}
            onClick={() => dispatch('next-stop')}
          >
            {nextStop(hops, hop) === null ? injectWords.noStop : injectWords.toStop}
          </button>
        )}
      </div>
    </section>
  );
}

/** Which chain, and which of the two moments. */
function WayChoices({ model }: { readonly model: InjectModel }) {
  const dispatch = useDispatch();
  const moment = useApp((state) => state.inject.moment);
  const names = namesOf(model.cabinet);
  const chains = model.cabinet.chains.filter(({ units }) => units.length > 0);
  return (
    <div className="way-choices">
      {chains.length > 1 && (
        <select
          aria-label={injectWords.chainChoice}
          value={model.chain ?? ''}
          onChange={(event) => dispatch('follow-chain', { chain: event.target.value })}
        >
          {chains.map(({ id }) => (
            <option key={id} value={id}>
              {names.chain(id)}
            </option>
          ))}
        </select>
      )}
      <fieldset className="moments">
        <legend className="screen-reader">{injectWords.moment}</legend>
        {moments.map((one) => (
          <button
            key={one}
            type="button"
            className="button small"
            aria-pressed={moment === one}
            title={model.momentsAlike ? injectWords.momentsAlike : undefined}
            onClick={() => dispatch('show-moment', { moment: one })}
          >
            {injectWords.moments[one]}
          </button>
        ))}
      </fieldset>
    </div>
  );
}

function Steps({ model }: { readonly model: InjectModel }) {
  const list = useRef<HTMLOListElement>(null);
  const { hop } = model;
  useEffect(() => {
    const now = hop === null ? null : list.current?.querySelector<HTMLElement>('[aria-current]');
    if (!now || !list.current) return;
    // Scrolls the list alone: `scrollIntoView` would move more than that.
    const box = list.current;
    const top = now.offsetTop - box.offsetTop;
    if (top < box.scrollTop + 40) box.scrollTop = Math.max(0, top - 40);
    else if (top + now.offsetHeight > box.scrollTop + box.clientHeight - 30) box.scrollTop = top + now.offsetHeight - box.clientHeight + 30;
  }, [hop]);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard.
    <ol ref={list} className="hops" tabIndex={0} aria-label={injectWords.way}>
      {model.hops.map((one, index) => (
        <Step key={keyOf(one)} hop={one} before={model.hops[index - 1]} index={index} model={model} />
      ))}
    </ol>
  );
}

const keyOf = (hop: Hop) => (hop.kind === 'outbound' || hop.kind === 'return' ? `${hop.kind} ${hop.link}` : hop.kind);

function headOf(hop: Hop, before: Hop | undefined): string | null {
  if (hop.kind === before?.kind) return null;
  if (hop.kind === 'start') return injectWords.outboundHead;
  if (hop.kind === 'return') return injectWords.returnHead;
  return hop.kind === 'report' ? injectWords.reportHead : null;
}

function Step({
  hop,
  before,
  index,
  model,
}: {
  readonly hop: Hop;
  readonly before: Hop | undefined;
  readonly index: number;
  readonly model: InjectModel;
}) {
  const dispatch = useDispatch();
  const moment = useApp((state) => state.inject.moment);
  const names = namesOf(model.cabinet);
  const state = model.hop === null ? 'whole' : index === model.hop ? 'now' : index < model.hop ? 'done' : 'waiting';
  const settled = saySettled(names, hop, model);
  const head = headOf(hop, before);
  return (
    <li className={`hop ${state}${isStopped(hop) ? ' stopped' : ''}`} aria-current={state === 'now' ? 'step' : undefined}>
      {head !== null && <span className="hop-head">{head}</span>}
      <button type="button" className="hop-row" onClick={() => dispatch('go-to-hop', { hop: index })}>
        <span className="hop-number">{index + 1}</span>
        <span className="hop-words">
          <Words>{sayStep(names, hop, moment)}</Words>
          {settled && state !== 'waiting' && (
            <span className={`hop-shows${settled.meaning === 'quiet' ? ' quiet' : ''}`}>
              <b>
                <Words>{settled.shows}</Words>
              </b>{' '}
              {state === 'now' && <Words>{settled.why}</Words>}
            </span>
          )}
        </span>
      </button>
    </li>
  );
}
