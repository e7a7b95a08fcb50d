import { useState } from 'react';
import { defaultBehaviour } from '../../engine/cabinet/index.ts';
import { behaviourWords, findValueWords, legendWords, parameterHead } from '../../engine/messages/index.ts';
import {
  type Behaviour,
  type BehaviourParameter,
  behaviourParameters,
  behaviourValues,
  type TypeRecord,
} from '../../engine/schema/index.ts';
import { ExampleChain } from './ExampleChain.tsx';
import { useEquipmentDispatch } from './useEquipment.ts';

const words = legendWords.type;

/** Every parameter of a type with its values; what one does is drawn for the value under the pointer or the focus. */
export function BehaviourTable({ type }: { readonly type: TypeRecord }) {
  const dispatch = useEquipmentDispatch();
  const [pointed, setPointed] = useState<{ readonly parameter: BehaviourParameter; readonly value: string } | null>(null);
  const written = (parameter: BehaviourParameter) => type.behaviour?.[parameter] ?? defaultBehaviour[parameter];
  const parameter = pointed?.parameter ?? 'lossScope';
  const value = pointed?.value ?? written(parameter);
  const settled = Object.fromEntries(
    behaviourParameters.map((one) => {
      const own = one === parameter ? value : written(one);
      return [one, own === 'unknown' ? defaultBehaviour[one] : own];
    }),
  ) as unknown as Behaviour; // every parameter has one of its own values here
  return (
    <section className="behaviour" aria-label={words.behaviour}>
      <div className="behaviour-show">
        <div className="section-head">
          <h3>
            {words.behaviour} <small>{words.behaviourHow}</small>
          </h3>
        </div>
        <ExampleChain behaviour={settled} parameter={parameter} unknown={value === 'unknown'} />
      </div>
      <div className="parameters">
        {behaviourParameters.map((one) => (
          <fieldset key={one} className={`parameter ${one === parameter ? 'shown' : ''}`} onPointerLeave={() => setPointed(null)}>
            <legend>
              <b>{parameterHead(one)}</b> <span className="quiet-text">{behaviourWords[one].meaning}</span>
            </legend>
            <div className="values">
              {[...behaviourValues[one], 'unknown' as const].map((choice) => {
                const term = choice === 'unknown' ? undefined : findValueWords(one, choice);
                const point = () => setPointed({ parameter: one, value: choice });
                return (
                  <label
                    key={choice}
                    className={`value ${choice === 'unknown' ? 'unknown' : ''}`}
                    data-chosen={written(one) === choice}
                    onPointerEnter={point}
                    onPointerMove={point}
                  >
                    <input
                      type="radio"
                      name={`${type.id} ${one}`}
                      value={choice}
                      checked={written(one) === choice}
                      onFocus={point}
                      onChange={() => {
                        point();
                        dispatch('set-behaviour', { type: type.id, parameter: one, value: choice });
                      }}
                    />
                    <span className="value-words">
                      <span>
                        {term?.label ?? words.unknown}
                        {choice === behaviourValues[one][0] && <em className="usual">{words.usual}</em>}
                      </span>
                      <small>{term?.meaning ?? words.unknownMeans}</small>
                    </span>
                  </label>
                );
              })}
            </div>
          </fieldset>
        ))}
      </div>
    </section>
  );
}
