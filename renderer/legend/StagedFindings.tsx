import { useMemo, useState } from 'react';
import { findBehaviour, type NextBreak, type ParameterFinding, proposeBreaks, type StagedFinding } from '../../engine/behaviour/index.ts';
import { legendWords, parameterHead } from '../../engine/messages/index.ts';
import type { TypeRecord } from '../../engine/schema/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import type { StagedDraft, StagedEntry } from './equipmentState.ts';
import type { Verified } from './legendCommands.ts';
import { emptyEntry, thoroughType, toBreaks } from './stagedDraft.ts';
import { useEquipmentDispatch } from './useEquipment.ts';

const words = legendWords.staged;

/** What follows from the breaks so far, what stays open, and which further break would settle it. */
export function StagedFindings({
  cabinet,
  type,
  draft,
  set,
  onStage,
}: {
  readonly cabinet: Cabinet;
  readonly type: TypeRecord;
  readonly draft: StagedDraft;
  readonly set: (draft: StagedDraft) => void;
  readonly onStage: (entry: StagedEntry) => void;
}) {
  const dispatch = useEquipmentDispatch();
  const types = useApp((state) => state.cabinet.types ?? []);
  const names = namesOf(cabinet);
  // Entered breaks change with every key; the proposals take longer, and are worked out for those who open them.
  const [proposing, setProposing] = useState(false);
  const breaks = useMemo(() => toBreaks(cabinet, draft), [cabinet, draft]);
  const thoroughly = thoroughType(draft, type.id);
  const finding = useMemo(() => (breaks.length === 0 ? null : findBehaviour(cabinet, breaks, thoroughly)), [cabinet, breaks, thoroughly]);
  const next = useMemo(
    () => (proposing && breaks.length > 0 ? proposeBreaks(cabinet, breaks, thoroughly) : []),
    [proposing, cabinet, breaks, thoroughly],
  );
  const nameOf = (id: string) => types.find((one) => one.id === id)?.name ?? id;
  const settled = finding?.contradicted === false ? finding.parameters.filter(({ state }) => state === 'settled') : [];

  const accept = () => {
    const acts = draft.breaks
      .filter(({ displays }) => displays.length > 0)
      .map(({ link, end, onset, pluggedAgain }) => words.howAct(names.link(link), end, onset, pluggedAgain));
    const how = words.how(acts);
    // The day as it is at the machine, not at Greenwich.
    const now = new Date();
    const on = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
    const ids = [...new Set(settled.map((one) => one.type))];
    const verified = ids.map((id): Verified => {
      const own = settled
        .filter((one) => one.type === id)
        .map(({ parameter, values }) => [parameter, values.find(({ fits }) => fits)?.value]);
      return { type: id, behaviour: Object.fromEntries(own), on, how };
    });
    dispatch('verify-behaviour', { verified });
    dispatch('announce', { text: words.accepted(ids.map(nameOf)) });
    dispatch('open-equipment', { page: { kind: 'type', type: type.id } });
  };

  return (
    <section className="staged-findings" aria-label={words.finding}>
      <div className="section-head">
        <h3>{words.finding}</h3>
      </div>
      <label>
        <input type="checkbox" checked={draft.thoroughly} onChange={(event) => set({ ...draft, thoroughly: event.target.checked })} />{' '}
        {words.thoroughly(type.name)}
      </label>
      {finding === null ? (
        <p className="empty">{words.nothingRead}</p>
      ) : (
        <>
          <Remarks finding={finding} unitName={(unit) => names.unit(unit)} chainName={(chain) => names.chain(chain)} typeName={nameOf} />
          <ul className="findings">
            {finding.parameters.map((one) => (
              <Finding key={`${one.type} ${one.parameter}`} finding={one} typeName={nameOf(one.type)} />
            ))}
          </ul>
          <Proposals
            isOpen={proposing}
            onToggle={setProposing}
            next={next}
            finding={finding}
            typeName={nameOf}
            linkName={(link) => names.link(link)}
            onStage={onStage}
          />
          <button type="button" className="button primary" disabled={settled.length === 0} onClick={accept}>
            {words.accept(settled.length)}
          </button>
        </>
      )}
    </section>
  );
}

function Remarks({
  finding,
  unitName,
  chainName,
  typeName,
}: {
  readonly finding: StagedFinding;
  readonly unitName: (unit: string) => string;
  readonly chainName: (chain: string) => string;
  readonly typeName: (type: string) => string;
}) {
  return (
    <>
      {finding.parameters.length === 0 && <p>{words.nothingAsked}</p>}
      {finding.contradicted ? (
        <p className="staged-against" role="alert">
          {words.contradicted(finding.unexplained.map(unitName))}
        </p>
      ) : (
        finding.parameters.length > 0 && <p>{words.fitting(finding.fitting, finding.combinations)}</p>
      )}
      {finding.reportsElsewhere.map((chain) => (
        <p key={chain} className="staged-against" role="alert">
          {words.reportElsewhere(chainName(chain))}
        </p>
      ))}
      {finding.setToDefault.length > 0 && <p>{words.setToDefault(finding.setToDefault.map(typeName))}</p>}
    </>
  );
}

function Finding({ finding, typeName }: { readonly finding: ParameterFinding; readonly typeName: string }) {
  const { parameter, state, values } = finding;
  return (
    <li className={`finding ${state}`}>
      <span className="finding-state">{words.states[state]}</span>
      <span>
        <b>{typeName}</b> {parameterHead(parameter).toLowerCase()}
      </span>
      <span className="finding-values">
        {values.map(({ value, probability, fits }) => (
          <span key={value} className={fits ? '' : 'excluded'}>
            {words.share(parameter, value, probability, fits)}
          </span>
        ))}
      </span>
    </li>
  );
}

function Proposals({
  isOpen,
  onToggle,
  next,
  finding,
  typeName,
  linkName,
  onStage,
}: {
  readonly isOpen: boolean;
  readonly onToggle: (open: boolean) => void;
  readonly next: readonly NextBreak[];
  readonly finding: StagedFinding;
  readonly typeName: (type: string) => string;
  readonly linkName: (link: string) => string;
  readonly onStage: (entry: StagedEntry) => void;
}) {
  const open = finding.parameters.filter(({ state }) => state !== 'settled');
  if (open.length === 0) return null;
  return (
    <details className="proposals" open={isOpen} onToggle={(event) => onToggle(event.currentTarget.open)}>
      <summary>{words.next}</summary>
      <ul>
        {(isOpen ? open : []).map(({ type, parameter }) => {
          const found = next.find((one) => one.type === type && one.parameter === parameter);
          const act = found?.act;
          return (
            <li key={`${type} ${parameter}`}>
              <span>
                <b>{words.nextFor(typeName(type), parameter)}</b>
                {found && act
                  ? words.act(linkName(act.link), act.end, act.onset, act.pluggedAgain, found.withLight)
                  : parameter === 'shortEffect'
                    ? words.noBreak.shortEffect
                    : words.noBreak.other}
              </span>
              {act && (
                <button
                  type="button"
                  className="button small"
                  onClick={() => onStage({ ...emptyEntry(act.link), end: act.end, onset: act.onset, pluggedAgain: act.pluggedAgain })}
                >
                  {words.use}
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </details>
  );
}
