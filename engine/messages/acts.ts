import { assertNever } from '../base/index.ts';
import type { Intervention, InterventionKind } from '../schema/index.ts';
import type { Names } from './names.ts';
import { endWords } from './words.ts';

/** The verb of every act on the cabinet: as something to do, and as something done. The object follows it. */
export const actWords: { readonly [K in InterventionKind]: { readonly toDo: string; readonly done: string } } = {
  unplug: { toDo: 'pull', done: 'pulled' },
  'plug-in': { toDo: 'plug in', done: 'plugged in' },
  'reseat-plug': { toDo: 'reseat', done: 'reseated' },
  'clean-plug': { toDo: 'clean', done: 'cleaned' },
  're-route': { toDo: 're-route', done: 're-routed' },
  'replace-cable': { toDo: 'replace', done: 'replaced' },
  'exchange-cables': { toDo: 'exchange', done: 'exchanged' },
  'turn-cable': { toDo: 'turn', done: 'turned' },
  'uncross-fibres': { toDo: 'put right', done: 'put right' },
  'uncross-plugs': { toDo: 'put right', done: 'put right' },
  'replace-board': { toDo: 'replace', done: 'replaced' },
  'exchange-boards': { toDo: 'exchange', done: 'exchanged' },
  'replace-unit': { toDo: 'replace', done: 'replaced' },
  'reseat-unit': { toDo: 'reseat', done: 'reseated' },
  'take-out-unit': { toDo: 'take out', done: 'took out' },
  'put-back-unit': { toDo: 'put back', done: 'put back' },
  'replace-fuse': { toDo: 'replace', done: 'replaced' },
  'replace-supply': { toDo: 'replace', done: 'replaced' },
  'replace-lead': { toDo: 'replace', done: 'replaced' },
  'replace-controller-port': { toDo: 'replace', done: 'replaced' },
  'replace-controller': { toDo: 'replace', done: 'replaced' },
  'pull-feedback': { toDo: 'pull', done: 'pulled' },
  'plug-feedback': { toDo: 'plug in', done: 'plugged in' },
  'replace-feedback': { toDo: 'replace', done: 'replaced' },
  'bridge-unit': { toDo: 'bridge past', done: 'bridged past' },
  'unbridge-unit': { toDo: 'take the bridge off', done: 'took the bridge off' },
};

/** An act with what it is done to: "reseat the upper plug of cable -WH3", "exchanged the boards of -TB2 and -TB3". */
export function wordAct(names: Names, act: Intervention, form: 'toDo' | 'done' = 'toDo'): string {
  const whole = form === 'toDo' ? inOwnWords(names, act) : null;
  return whole ?? `${actWords[act.do][form]} ${object(names, act)}`;
}

/** What can be looked at or measured is, before it is exchanged or put right; and what was pulled is plugged in again. Null: no such act. */
function inOwnWords(names: Names, act: Intervention): string | null {
  switch (act.do) {
    case 'replace-supply':
      return `check main switch, breaker and feed of ${object(names, act)}, then replace it`;
    case 'replace-lead':
      return `check ${names.leadFuse(act.lead) || 'fuse'} and terminals of ${object(names, act)}, then replace it`;
    case 'replace-fuse':
      return `measure ${object(names, act)}, replace it if it is open`;
    case 'uncross-plugs':
    case 'uncross-fibres':
      return `check and put right ${object(names, act)}`;
    case 'plug-feedback':
      return `plug ${names.feedback(act.feedback)} in again`;
    default:
      return null;
  }
}

function object(names: Names, act: Intervention): string {
  switch (act.do) {
    case 'unplug':
    case 'plug-in':
    case 'reseat-plug':
      return `the ${endWords[act.end].label} of ${names.link(act.link)}`;
    case 'clean-plug':
      return `the ${endWords[act.end].label} of ${names.link(act.link)} and its port`;
    case 're-route':
    case 'replace-cable':
      return names.link(act.link);
    case 'turn-cable':
      return `${names.link(act.link)} end for end`;
    case 'exchange-cables':
      return `${names.link(act.link)} and ${names.link(act.other)}`;
    case 'uncross-fibres':
      return `the two fibres of ${names.link(act.link)}`;
    case 'uncross-plugs':
      return `the two optical plugs of ${names.unit(act.unit)}`;
    case 'replace-board':
      return `the board of ${names.unit(act.unit)}`;
    case 'exchange-boards':
      return `the boards of ${names.unit(act.unit)} and ${names.unit(act.other)}`;
    case 'replace-unit':
    case 'reseat-unit':
    case 'take-out-unit':
    case 'put-back-unit':
    case 'unbridge-unit':
      return names.unit(act.unit);
    case 'replace-fuse':
      return `the control fuse of ${names.unit(act.unit)}`;
    case 'replace-supply':
      return `supply ${names.unit(act.unit)}`;
    case 'replace-lead':
      return names.lead(act.lead);
    case 'replace-controller-port':
      return `the controller port of ${names.chain(act.chain)}`;
    case 'replace-controller':
      return 'the controller';
    case 'pull-feedback':
    case 'plug-feedback':
      return `the plug of ${names.feedback(act.feedback)}`;
    case 'replace-feedback':
      return names.feedback(act.feedback);
    case 'bridge-unit':
      return `${names.unit(act.unit)} with ${names.link(act.cable)}`;
    default:
      return assertNever(act);
  }
}
