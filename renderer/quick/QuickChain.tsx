import { Delete } from 'lucide-react';
import { useEffect, useId, useMemo, useRef, useState } from 'react';
import { windowTexts, wordProblem, quickWords as words } from '../../engine/messages/index.ts';
import { kindLetters, makeQuickCabinet, parseQuickLine, type QuickParts } from '../../engine/quick/index.ts';
import { type UnitKind, unitKinds } from '../../engine/schema/index.ts';
import { beginWalk } from '../find/entryWalk.ts';
import { Sign } from '../marks/Sign.tsx';
import { useApp, useDispatch, useWindow } from '../state/useWorkbench.ts';
import './quick.css';

/** What stands in a cabinet that has no units yet: one line makes them, and the walk along their displays begins. */
export function QuickChain() {
  const { store, dispatch } = useWindow();
  const drawing = useApp((state) => state.workspace === 'draw');
  const [line, setLine] = useState('');
  /** A word that is being typed is not complained of until it is ended. */
  const [asked, setAsked] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  const said = useId();
  useEffect(() => input.current?.focus({ preventScroll: true }), []);
  const plan = useMemo(() => parseQuickLine(line), [line]);
  const parts = useMemo(
    () => (plan.ok ? makeQuickCabinet(plan.value, drawing ? null : { typeName: words.typeAsFound }) : null),
    [plan, drawing],
  );
  const problems = plan.ok ? [] : plan.problems.filter(({ facts }) => asked || isEnded(line, facts['column']));

  const type = (text: string) => {
    setLine(text);
    setAsked(false);
  };
  /** Keys for a finger: what they write goes to the end of the line. */
  const append = (text: string) => {
    type(line + text);
    input.current?.focus({ preventScroll: true });
  };
  const build = () => {
    setAsked(true);
    if (!parts || !plan.ok) return;
    const supplyAssumed = plan.value.rows.every(({ units }) => units.every(({ kind }) => kind !== 'supply'));
    dispatch('build-quick-chain', { parts, supplyAssumed });
    const first = beginWalk(store.getState());
    const made = words.made(parts.links.length, parts.chains.length);
    // Who draws a cabinet has seen no display yet.
    dispatch('announce', { text: drawing ? made : `${made} ${words.nowDisplays}` });
    if (first !== null && !drawing) dispatch('open-entry', { entry: { kind: 'display', unit: first, walking: true } });
  };
  return (
    <section className="quick" aria-label={words.region}>
      <form
        className="quick-panel"
        onSubmit={(event) => {
          event.preventDefault();
          build();
        }}
      >
        <h2>{words.title}</h2>
        <p className="quiet-text">{drawing ? words.titleDraw : words.titleHow}</p>
        <label className="quick-line">
          <span className="screen-reader">{words.line}</span>
          <input
            ref={input}
            value={line}
            maxLength={1000}
            autoComplete="off"
            autoCapitalize="off"
            spellCheck={false}
            placeholder={words.example}
            aria-describedby={said}
            aria-invalid={problems.length > 0}
            onChange={(event) => type(event.target.value)}
          />
        </label>
        <Keys onAppend={append} onBack={() => type([...line.trimEnd()].slice(0, -1).join(''))} />
        <div id={said} className="quick-said" aria-live="polite">
          {problems.map((problem) => {
            const { title, explanation, whatToDo } = wordProblem(problem);
            return (
              <p key={`${problem.code} ${JSON.stringify(problem.facts)}`} className="quick-problem">
                <b>{title}.</b> {explanation} {whatToDo}
              </p>
            );
          })}
          {parts && <span className="screen-reader">{words.preview(parts.links.length, parts.chains.length)}</span>}
        </div>
        {parts && <Preview parts={parts} />}
        {parts && <p className="quiet-text">{words.assumed(parts.units.find(isAssumed)?.designation ?? null, !drawing)}</p>}
        <div className="quick-end">
          <button type="submit" className="button primary" disabled={line.trim() === ''}>
            {drawing ? words.build.draw : words.build.find} <kbd>⏎</kbd>
          </button>
          <Others />
        </div>
      </form>
    </section>
  );
}

/** The line did not name it: nobody knows where it stands. */
const isAssumed = ({ kind, row }: QuickParts['units'][number]) => kind === 'supply' && row === undefined;

/** Whether the line goes on behind the word at a column, or nothing says where the problem is. */
function isEnded(line: string, column: string | number | undefined): boolean {
  return column !== undefined && /[\s,;/]/.test(line.slice(Number(column) - 1));
}

/** One key per kind, for a finger and for those who look for the letters. */
function Keys({ onAppend, onBack }: { readonly onAppend: (text: string) => void; readonly onBack: () => void }) {
  return (
    <fieldset className="quick-keys">
      <legend className="screen-reader">{words.letters}</legend>
      {unitKinds.map((kind) => (
        <button
          key={kind}
          type="button"
          className="button"
          aria-label={`${words.kinds[kind]} ${kindLetters[kind]}`}
          onClick={() => onAppend(kindLetters[kind])}
        >
          <Sign name={kind} />
          <Lettered kind={kind} />
        </button>
      ))}
      <button type="button" className="button" onClick={() => onAppend(';')}>
        {words.nextChain} <kbd>;</kbd>
      </button>
      <button type="button" className="button" onClick={() => onAppend('; off ')}>
        {words.offChain} <kbd>; off</kbd>
      </button>
      <button type="button" className="button" aria-label={words.back} title={words.back} onClick={onBack}>
        <Delete size={18} aria-hidden="true" />
      </button>
    </fieldset>
  );
}

/** The name of a kind with its letter marked. */
function Lettered({ kind }: { readonly kind: UnitKind }) {
  const name = words.kinds[kind];
  const at = name.indexOf(kindLetters[kind]);
  return (
    <span>
      {name.slice(0, at)}
      <u>{name.slice(at, at + 1)}</u>
      {name.slice(at + 1)}
    </span>
  );
}

/** What the line makes, as it is typed. */
function Preview({ parts }: { readonly parts: QuickParts }) {
  const onChain = new Set(parts.links.map(({ lower }) => lower?.unit));
  const chainOf = new Map<string, (typeof parts.units)[number][]>();
  for (const { id } of parts.chains) chainOf.set(id, []);
  let chain = '';
  for (const { upper, lower } of parts.links) {
    if (upper && 'chain' in upper) chain = upper.chain;
    const unit = parts.units.find(({ id }) => id === lower?.unit);
    if (unit) chainOf.get(chain)?.push(unit);
  }
  const apart = parts.units.filter(({ id }) => !onChain.has(id));
  const named = apart.filter((unit) => !isAssumed(unit));
  const chip = ({ id, kind, designation }: (typeof parts.units)[number]) => (
    <li key={id} className="quick-chip" title={words.unit(designation, kind)}>
      <Sign name={kind} size={14} />
      <span className="screen-reader">{words.unit(designation, kind)}</span>
      <b aria-hidden="true" className="designation">
        {designation}
      </b>
    </li>
  );
  return (
    // Long cabinets scroll in it, also by keyboard.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section className="quick-preview" aria-label={words.previewRegion} tabIndex={0}>
      {parts.chains.map(({ id, number }) => (
        <div key={id} className="quick-row">
          <span className="quick-row-name">{words.chain(number)}</span>
          <ol className="chained">{(chainOf.get(id) ?? []).map(chip)}</ol>
        </div>
      ))}
      {named.length > 0 && (
        <div className="quick-row">
          <span className="quick-row-name">{words.apart}</span>
          <ol>{named.map(chip)}</ol>
        </div>
      )}
    </section>
  );
}

/** What else there is to begin with. */
function Others() {
  const dispatch = useDispatch();
  return (
    <span className="quick-others">
      {words.orElse}
      <button type="button" className="text-button" onClick={() => dispatch('open-file')}>
        {windowTexts.commands.openFile}
      </button>
    </span>
  );
}
