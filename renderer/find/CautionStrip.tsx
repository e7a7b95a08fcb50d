import { useState } from 'react';
import {
  cautionsDefer,
  cautionWords,
  stepTexts,
  sumsPageWords,
  windowTexts,
  wordCautionDetail,
  wordCautionShort,
  wordWaitingTime,
} from '../../engine/messages/index.ts';
import type { Evidence } from '../../engine/schema/index.ts';
import { listCautions, listUnnoted, type Step, type StepCaution, stateNeeded } from '../../engine/steps/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { Sign, type SignName } from '../marks/Sign.tsx';
import { Words } from '../marks/Words.tsx';
import { hasObservations } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { selectWaitingTime } from '../sums/selectSums.ts';
import { selectShownStep } from './stepModel.ts';
import './caution.css';

const words = windowTexts.cautions;

/** What always holds before a halted cabinet, where no step is shown. */
const atFirst: readonly StepCaution[] = [{ code: 'note-first', units: [], chains: [] }, { code: 'live-cabinet' }, { code: 'fibre-light' }];

const signs: { readonly [C in StepCaution['code']]: readonly [name: SignName, tone: 'must' | 'never' | 'abnormal' | 'danger'] } = {
  'note-first': ['must', 'must'],
  'live-cabinet': ['danger', 'danger'],
  'all-feeds': ['must', 'must'],
  'lock-out': ['must', 'must'],
  'dc-link': ['must', 'must'],
  'hanging-axes': ['abnormal', 'abnormal'],
  'reference-position': ['abnormal', 'abnormal'],
  'fibre-light': ['never', 'never'],
  esd: ['must', 'must'],
  'axes-may-start': ['abnormal', 'abnormal'],
  'safety-check': ['must', 'must'],
};

/** The cautions that concern the step that is shown, short; in full on demand. It stays at the lower edge and never scrolls. */
export function CautionStrip() {
  const [full, setFull] = useState(false);
  const cabinet = useApp((state) => state.checked.cabinet);
  const evidence = useApp((state) => state.caseRecord.evidence);
  const shown = useApp(selectShownStep);
  const waitingTime = useApp(selectWaitingTime);
  const anything = useApp((state) => hasObservations(state.caseRecord));
  const cautions = cabinet && shown && anything ? withReminder(cabinet, evidence, shown.step) : atFirst;
  const isolates = anything && shown !== null && stateNeeded(shown.step) === 'isolated';
  return (
    <section id="caution" className="caution" aria-label={words.region}>
      <b className="caution-head">
        <Sign name="danger" size={18} />
        {isolates ? words.headIsolated : words.head}
      </b>
      <ul>
        {cautions.map(({ code }) => {
          const [sign, tone] = signs[code];
          return (
            <li key={code} className={tone} title={cautionWords[code].meaning}>
              <Sign name={sign} size={15} />
              <span>{code === 'dc-link' ? sumsPageWords.waitShort(waitingTime) : wordCautionShort(code)}</span>
            </li>
          );
        })}
      </ul>
      <button
        type="button"
        className="button small caution-more"
        aria-expanded={full}
        onClick={() => setFull(!full)}
        onKeyDown={(event) => event.key === 'Escape' && setFull(false)}
      >
        {full ? stepTexts.cautionsLess : stepTexts.cautionsMore}
      </button>
      <span className="defer">{words.defer}</span>
      {full && <InFull cautions={cautions} />}
    </section>
  );
}

/** The cautions of a step. As long as anything is not noted, whoever might switch off is reminded, whatever the step. */
function withReminder(cabinet: Cabinet, evidence: Evidence, step: Step): readonly StepCaution[] {
  const cautions = listCautions(cabinet, evidence, step);
  const unnoted = listUnnoted(cabinet, evidence);
  const isNoted = unnoted.units.length + unnoted.chains.length === 0;
  const isSaidAnyway = cautions.some(({ code }) => code === 'note-first');
  return isNoted || isSaidAnyway ? cautions : [{ code: 'note-first', ...unnoted }, ...cautions];
}

function InFull({ cautions }: { readonly cautions: readonly StepCaution[] }) {
  const names = useApp((state) => namesOf(state.checked.topology));
  const waitingTime = useApp(selectWaitingTime);
  return (
    <section className="caution-full" aria-label={stepTexts.caution}>
      <ul>
        {cautions.map((caution) => {
          const [sign, tone] = signs[caution.code];
          const isEmpty = caution.code === 'note-first' && caution.units.length + caution.chains.length === 0;
          return (
            <li key={caution.code}>
              <span className={tone}>
                <Sign name={sign} size={18} />
              </span>
              <p>
                <b>{cautionWords[caution.code].label}.</b> {cautionWords[caution.code].meaning}{' '}
                {!isEmpty && <Words>{wordCautionDetail(names, caution)}</Words>}
                {caution.code === 'dc-link' && wordWaitingTime(waitingTime)}
              </p>
            </li>
          );
        })}
      </ul>
      <p className="quiet-text">{cautionsDefer}</p>
    </section>
  );
}
