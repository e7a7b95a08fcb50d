import { useId } from 'react';
import { type CaseEffect, effectOf, leastStrength, mostStrength, ratesFor, usualStrength } from '../../engine/experience/index.ts';
import {
  startSentence,
  experienceWords as tableWords,
  wordCases,
  wordCauseKind,
  wordFactor,
  wordNotCounted,
  wordProbability,
  wordProblem,
  wordRate,
  confirmedWords as words,
} from '../../engine/messages/index.ts';
import { sameContent } from '../files/sameContent.ts';
import { NumberField } from '../practice/NumberField.tsx';
import { DialogFrame } from '../shell/DialogFrame.tsx';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { BehavedNotes } from './BehavedNotes.tsx';
import type { KeptCase } from './confirmedState.ts';
import { ratesForCase } from './ownRates.ts';
import './confirmed.css';

/** The user's own collection of confirmed cases: on which rates the case stands, what each kept case changed, what behaved otherwise. */
export function ConfirmedDialog() {
  const shown = useApp((state) => state.confirmed.shown);
  const dispatch = useDispatch();
  if (!shown) return null;
  return (
    <DialogFrame title={words.title} close={words.close} onClose={() => dispatch('close-confirmed')} name="confirmed">
      <p className="quiet-text">{words.intro}</p>
      <Trouble />
      <RatesOfCase />
      <Cases />
      <Rates />
      <BehavedNotes head />
      <Damaged />
    </DialogFrame>
  );
}

function Trouble() {
  const trouble = useApp((state) => state.confirmed.trouble);
  return trouble.map((problem) => {
    const { title, explanation, whatToDo } = wordProblem(problem);
    return (
      <p key={problem.code} role="alert" className="confirmed-trouble">
        <b>{title}.</b> {explanation} {whatToDo}
      </p>
    );
  });
}

/** On which rates the case in the window stands: a step of the document. */
function RatesOfCase() {
  const dispatch = useDispatch();
  const experience = useApp((state) => state.confirmed.experience);
  const confirmed = useApp((state) => state.confirmed);
  const caseRecord = useApp((state) => state.caseRecord);
  const takeConfirmed = useApp((state) => state.takeConfirmed);
  const now = caseRecord.evidence.rates;
  const offered = ratesForCase({ confirmed, caseRecord });
  const isOffered = now !== undefined && offered !== undefined && sameContent(now, offered);
  const choices = [
    { key: 'assumed', label: words.choices.assumed, rates: null, chosen: now === undefined },
    ...(now !== undefined && !isOffered ? [{ key: 'older', label: words.older(now.cases), rates: now, chosen: true }] : []),
    ...(offered === undefined ? [] : [{ key: 'kept', label: words.choices.asKept(offered.cases), rates: offered, chosen: isOffered }]),
  ];
  const ownCounts = experience !== null && (offered?.cases ?? 0) < (ratesFor(experience)?.cases ?? 0);
  return (
    <fieldset className="confirmed-rates">
      <legend>{words.ratesHead}</legend>
      {choices.map(({ key, label, rates, chosen }) => (
        <label key={key}>
          <input type="radio" name="rates-of-case" checked={chosen} onChange={() => dispatch('use-rates', { rates })} /> {label}
        </label>
      ))}
      {offered === undefined && experience !== null && <p className="quiet-text">{ownCounts ? words.noneButOwn : words.noneForCase}</p>}
      {offered !== undefined && ownCounts && <p className="quiet-text">{words.onlyOthers}</p>}
      <label>
        <input type="checkbox" checked={takeConfirmed} onChange={() => dispatch('toggle-take-confirmed')} /> {words.begin}
      </label>
    </fieldset>
  );
}

function Cases() {
  const dispatch = useDispatch();
  const { cases, state, experience, removed } = useApp((app) => app.confirmed);
  const inOrder = [...cases].sort((a, b) => ((a.content.result?.at ?? '') < (b.content.result?.at ?? '') ? 1 : -1));
  return (
    <section aria-label={words.casesHead}>
      <h3>{words.casesHead}</h3>
      {removed !== null && (
        <p role="status" className="confirmed-removed">
          {words.removed(removed.name)}{' '}
          <button type="button" className="button" onClick={() => dispatch('put-back-kept')}>
            {words.putBack}
          </button>
        </p>
      )}
      {state === 'read' && cases.length === 0 && <p>{words.empty}</p>}
      {cases.length > 0 && experience === null && <p role="status">{words.working}</p>}
      {cases.length > 0 && (
        <table>
          <thead>
            <tr>
              <th scope="col">{words.heads.date}</th>
              <th scope="col">{words.heads.machine}</th>
              <th scope="col">{words.heads.cause}</th>
              <th scope="col">{words.heads.effect}</th>
              <th scope="col">
                <span className="screen-reader">{words.heads.remove}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {inOrder.map((kept) => (
              <CaseRow key={kept.key} kept={kept} />
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

/** Less than this share of a case is not named. */
const leastShare = 0.05;

function CaseRow({ kept: { key, content } }: { readonly kept: KeptCase }) {
  const dispatch = useDispatch();
  const experience = useApp((state) => state.confirmed.experience);
  const counted = experience?.confirmed.find((one) => one.content.id === content.id);
  const left = experience?.uncounted.find((one) => one.content.id === content.id);
  const effect = experience && counted ? effectOf(experience, counted) : null;
  const machine = content.machine ?? content.cabinet.machineNumber ?? content.cabinet.name;
  return (
    <tr>
      <td>{content.result?.at?.slice(0, 10) ?? words.noDate}</td>
      <th scope="row">
        {machine}
        <small>{content.name}</small>
      </th>
      {counted ? (
        <>
          <td className="words">
            {counted.causes
              .filter(({ share }) => share >= leastShare)
              .map((cause) => `${startSentence(wordCauseKind(cause))} ${wordProbability(cause.share)}`)
              .join('; ')}
          </td>
          <td className="words">{effect ? wordEffect(effect) : words.noEffect}</td>
        </>
      ) : (
        <td className="words" colSpan={2}>
          {left ? wordNotCounted(left.reason) : ''}
        </td>
      )}
      <td>
        <button
          type="button"
          className="text-button"
          aria-label={words.removeOne(`${content.name}, ${machine}`)}
          onClick={() => dispatch('remove-kept', { key })}
        >
          {words.remove}
        </button>
      </td>
    </tr>
  );
}

const wordEffect = (effect: CaseEffect) =>
  words.effect(startSentence(wordCauseKind(effect)), wordFactor(effect.without), wordFactor(effect.with));

/** Rates that moved by less are not listed. */
const leastMove = 0.05;

function Rates() {
  const experience = useApp((state) => state.confirmed.experience);
  if (experience === null || experience.confirmed.length === 0) return null;
  const { heads } = tableWords;
  const moved = experience.rates.filter(({ factor }) => Math.abs(factor - 1) >= leastMove);
  const possible = experience.rates.filter(({ expected }) => expected > 0);
  return (
    <section aria-label={words.tableHead}>
      <h3>{words.tableHead}</h3>
      <Strength />
      {moved.length > 0 && (
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">{heads.kind}</th>
              <th scope="col">{heads.confirmed}</th>
              <th scope="col">{heads.expected}</th>
              <th scope="col">{heads.assumed}</th>
              <th scope="col">{heads.sharpened}</th>
              <th scope="col">{heads.factor}</th>
            </tr>
          </thead>
          <tbody>
            {moved.map((rate) => (
              <tr key={`${rate.item} ${rate.mode}`}>
                <th scope="row">{startSentence(wordCauseKind(rate))}</th>
                <td>{wordCases(rate.cases)}</td>
                <td>{wordCases(rate.expected)}</td>
                <td>{wordRate(rate.assumed)}</td>
                <td>{wordRate(rate.sharpened)}</td>
                <td>{wordFactor(rate.factor)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p>{tableWords.moreKinds(possible.length - moved.length)}</p>
      <p className="quiet-text">{tableWords.how(tableWords.worth(experience.strength))}</p>
    </section>
  );
}

/** How far cases move the rates: what each assumed rate weighs against them. */
function Strength() {
  const dispatch = useDispatch();
  const strength = useApp((state) => state.confirmedStrength);
  const id = useId();
  return (
    <fieldset className="confirmed-strength" aria-describedby={id} aria-label={words.strength}>
      <NumberField
        label={words.strength}
        shown="before"
        value={strength}
        least={leastStrength}
        most={mostStrength}
        onChange={(next) => next !== null && dispatch('set-strength', { strength: next })}
      />
      <small id={id} className="quiet-text">
        {words.strengthWhy(leastStrength, mostStrength, usualStrength)}
      </small>
    </fieldset>
  );
}

function Damaged() {
  const damaged = useApp((state) => state.confirmed.damaged);
  if (damaged.length === 0) return null;
  return (
    <section aria-label={words.damaged}>
      <h3>{words.damaged}</h3>
      <ul>
        {damaged.flatMap(({ name, problems }) =>
          problems.slice(0, 3).map((problem) => {
            const { title, explanation, whatToDo } = wordProblem(problem);
            return (
              <li key={`${name} ${problem.code} ${problem.where}`}>
                <b>{[name, title].filter(Boolean).join(': ')}.</b> {explanation} {whatToDo}
              </li>
            );
          }),
        )}
      </ul>
    </section>
  );
}
