import { Fragment } from 'react';
import type { LinkId, UnitId } from '../../engine/base/index.ts';
import type { Game, Play } from '../../engine/exercise/index.ts';
import { meaningWords, type Names, practiceWords, withoutCable } from '../../engine/messages/index.ts';
import type { DisplayMeaning } from '../../engine/schema/index.ts';
import { DisplayMark } from '../marks/DisplayMark.tsx';

interface PlayCabinetProps {
  readonly game: Game;
  readonly play: Play;
  readonly names: Names;
}

/** The cabinet as a trainee stands before it: along each chain the cables and the units with what feeds them; only what was paid for shows. */
export function PlayCabinet({ game, play, names }: PlayCabinetProps) {
  const shown = shownOf(game, play);
  const { chains, supplies, offChain, orphans } = game.cabinet;
  // Of many units each is a line of few: what it is, and what its display is known to say.
  const isDense = chains.reduce((sum, { units }) => sum + units.length, 0) > mostAtLarge;
  const apart = [...supplies, ...offChain, ...orphans];
  const unit = (id: UnitId) => <Unit unit={id} meaning={shown.get(id)} game={game} names={names} />;
  return (
    <div className={isDense ? 'practice-dense' : undefined}>
      {chains.map(({ id, units, links }) => (
        <section key={id} aria-label={names.chain(id)}>
          <h3 className="practice-chain-name">{names.chain(id)}</h3>
          <ol className="practice-chain">
            <li className="practice-controller">
              <b>{names.controller()}</b>
            </li>
            {units.map((one, index) => (
              <Fragment key={one}>
                <Cable link={links[index]} names={names} />
                {unit(one)}
              </Fragment>
            ))}
          </ol>
        </section>
      ))}
      {apart.length > 0 && (
        <section aria-label={practiceWords.apart}>
          <h3 className="practice-chain-name">{practiceWords.apart}</h3>
          <ul className="practice-chain">
            {apart.map((one) => (
              <Fragment key={one}>{unit(one)}</Fragment>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}

/** More units than this are drawn small: a screen of them must be seen at once. */
const mostAtLarge = 16;

/** The upper cable of a unit, as its two fibres with their directions. */
function Cable({ link, names }: { readonly link: LinkId | undefined; readonly names: Names }) {
  if (link === undefined) return null;
  const name = names.link(link);
  const short = withoutCable(name);
  return (
    <li className="practice-cable" aria-label={name} title={name}>
      {/* A cable without a designation is named by what it joins, and that stands at both sides. */}
      <span className="designation">{short === name ? '' : short}</span>
      <svg width="40" height="20" viewBox="0 0 40 20" aria-hidden="true">
        <path d="M2 5h30" stroke="currentColor" strokeWidth="2.5" />
        <path d="M30 0.5l9 4.5-9 4.5z" fill="currentColor" />
        <path d="M9 15h29" stroke="currentColor" strokeWidth="1.2" />
        <path d="M10 10.5l-8 4.5 8 4.5z" fill="none" stroke="currentColor" strokeWidth="1.2" />
      </svg>
    </li>
  );
}

function Unit({
  unit,
  meaning,
  game,
  names,
}: {
  readonly unit: UnitId;
  readonly meaning: DisplayMeaning | undefined;
  readonly game: Game;
  readonly names: Names;
}) {
  const { leads = [], feedbacks = [] } = game.cabinet.content;
  const fed = leads.filter(({ to }) => to?.unit === unit).map(({ id }) => names.lead(id));
  const encoders = feedbacks.filter((feedback) => feedback.unit === unit).map(({ id }) => names.feedback(id));
  return (
    <li className="practice-unit" data-known={meaning !== undefined} data-loss={meaning !== undefined && meaning !== 'quiet'}>
      <b className="designation">{names.unit(unit)}</b>
      <span className="practice-small">{game.cabinet.placeOf.has(unit) ? names.ordinal(unit) : practiceWords.apart}</span>
      <span className="practice-glass">
        {meaning !== undefined && <DisplayMark name={meaning} size={16} />}
        {meaning === undefined ? practiceWords.notRead : meaningWords[meaning].label}
      </span>
      {[...fed, ...encoders].map((line) => (
        <span key={line} className="practice-small">
          {line}
        </span>
      ))}
    </li>
  );
}

/** What each display is known to show: given at the start, or read since the machine was last switched on. */
function shownOf(game: Game, play: Play): ReadonlyMap<string, DisplayMeaning> {
  const shown = new Map<string, DisplayMeaning>(
    play.stand.trip === 0 ? (game.exercise.given.displays ?? []).map(({ unit, meaning }) => [unit, meaning as DisplayMeaning]) : [],
  );
  for (const id of play.stand.seen) {
    const step = game.steps.find((one) => one.id === id);
    const last = play.steps.filter((one) => one.step === id).at(-1);
    // Outcomes of displays are meanings.
    if (step?.step.do === 'read-display' && last !== undefined) shown.set(step.step.unit, last.outcome as DisplayMeaning);
  }
  return shown;
}
