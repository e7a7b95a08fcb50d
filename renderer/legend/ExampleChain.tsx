import { type Example, isSameShown, showParameter } from '../../engine/behaviour/index.ts';
import { legendWords, meaningWords } from '../../engine/messages/index.ts';
import { type Behaviour, type BehaviourParameter, behaviourValues } from '../../engine/schema/index.ts';
import { DisplayMark, toneOf } from '../marks/DisplayMark.tsx';

const words = legendWords.example;
type FibreLook = 'hears' | 'broken' | 'muted';

/** A chain of four such units with one break, simulated: what the parameter at this value makes of it. */
export function ExampleChain({
  behaviour,
  parameter,
  unknown,
}: {
  readonly behaviour: Behaviour;
  readonly parameter: BehaviourParameter;
  readonly unknown: boolean;
}) {
  const example = showParameter(behaviour, parameter);
  const all = behaviourValues[parameter].map((value) => showParameter({ ...behaviour, [parameter]: value }, parameter));
  const makesNoDifference = all.every((one) => isSameShown(one, example));
  return (
    <figure className="example" aria-label={words.region}>
      <figcaption>
        <b>{words.events[parameter]}</b> <span className="quiet-text">{example.event.withLight && words.lightAt}</span>
        <span className="example-badge">{words.simulated}</span>
      </figcaption>
      <div className="example-chain">
        <span className="example-controller">{words.controller}</span>
        {example.units.map((unit, index) => {
          const link = example.links[index];
          const meaning = example.simulation.displays.get(unit)?.meaning ?? 'other';
          return (
            <span className="example-place" key={unit}>
              {link !== undefined && <ExampleLink example={example} link={link} />}
              <span className="example-unit">
                <b>{index + 1}</b>
                <span className={`window predicted tone-${toneOf(meaning)}`} data-meaning={meaning}>
                  <DisplayMark name={meaning} size={20} />
                  <span className="words">{meaningWords[meaning].label}</span>
                </span>
              </span>
            </span>
          );
        })}
      </div>
      <p className="example-note quiet-text">{makesNoDifference ? words.same : unknown ? words.unknownShown : ''}</p>
    </figure>
  );
}

function lookOf(fibre: { readonly hears: boolean; readonly causes: readonly { readonly code: string }[] }): FibreLook {
  if (fibre.hears) return 'hears';
  return fibre.causes[0]?.code === 'muted' ? 'muted' : 'broken';
}

function ExampleLink({ example, link }: { readonly example: Example; readonly link: Example['links'][number] }) {
  const state = example.simulation.now.links.get(link);
  const light = example.light.get(link);
  if (!state) return null;
  // A fault that is gone now was there at the trip: its mark stays, its fibres are whole.
  const isFault = ({ causes }: { readonly causes: readonly { readonly code: string }[] }) => causes.some(({ code }) => code === 'fault');
  const then = example.simulation.trip.links.get(link);
  const faulty = { outbound: then !== undefined && isFault(then.outbound), back: then !== undefined && isFault(then.return) };
  const gone = (faulty.outbound || faulty.back) && state.outbound.hears && state.return.hears;
  return (
    <span className="example-link">
      <svg viewBox="0 0 64 48" width="64" height="48" aria-hidden="true">
        <path className={`outbound ${lookOf(state.outbound)}`} d="M2 15H62" />
        <path className={`arrow-out ${lookOf(state.outbound)}`} d="M46 9L56 15L46 21Z" />
        <path className={`return ${lookOf(state.return)}`} d="M2 32H62M2 35H62" />
        <path className={`arrow-back ${lookOf(state.return)}`} d="M18 27.5L8 33.5L18 39.5" />
        {faulty.outbound && <path className={`break ${gone ? 'gone' : ''}`} d="M26 24L31 6M33 24L38 6" />}
        {faulty.back && <path className={`break ${gone ? 'gone' : ''}`} d="M26 43L31 25M33 43L38 25" />}
      </svg>
      {light && (
        <span className="example-light">
          <i className={`light ${light.upper ?? ''}`} />
          {words.light('down', light.upper === 'bright' ? 'bright' : 'none')}
          <br />
          <i className={`light ${light.lower ?? ''}`} />
          {words.light('up', light.lower === 'bright' ? 'bright' : 'none')}
        </span>
      )}
    </span>
  );
}
