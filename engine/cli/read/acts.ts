import { type Intervention, intervention } from '../../schema/index.ts';
import type { Topology } from '../../topology/index.ts';
import { findNearest } from '../nearest.ts';
import { type Asked, refused, understood } from './asked.ts';
import { readPlug } from './faults.ts';
import { readChain, readFeedback, readLead, readLink, readUnit } from './names.ts';

type Reference = Readonly<Record<string, string>>;
type Reader = (topology: Topology, name: string, text: string) => Asked<Reference>;

const one =
  (key: string, read: (topology: Topology, name: string) => Asked<string>): Reader =>
  (topology, name) => {
    const asked = read(topology, name);
    return asked.ok ? understood({ [key]: asked.value }) : asked;
  };

/** Two names parted by a slash. A name may hold slashes itself, so every slash is tried until both sides are found. */
const two =
  (first: readonly [string, typeof readLink], second: readonly [string, typeof readLink]): Reader =>
  (topology, name, text) => {
    let answer: Asked<Reference> = refused('act-malformed', { value: text });
    for (let slash = name.indexOf('/'); slash >= 0; slash = name.indexOf('/', slash + 1)) {
      const left = first[1](topology, name.slice(0, slash));
      const right = second[1](topology, name.slice(slash + 1));
      if (left.ok && right.ok) return understood({ [first[0]]: left.value, [second[0]]: right.value });
      answer = { ok: false, problems: [...(left.ok ? [] : left.problems), ...(right.ok ? [] : right.problems)] };
    }
    return answer;
  };

const plug: Reader = (topology, name, text) => readPlug(topology, name, text);
const link = one('link', readLink);
const unit = one('unit', readUnit);
const supply = one('unit', (topology, name) => readUnit(topology, name, 'supply'));
const feedback = one('feedback', readFeedback);

/** How the reference of each act is written after its name. */
const readers: { readonly [K in Intervention['do']]: Reader | null } = {
  unplug: plug,
  'plug-in': plug,
  'reseat-plug': plug,
  'clean-plug': plug,
  're-route': link,
  'replace-cable': link,
  'exchange-cables': two(['link', readLink], ['other', readLink]),
  'turn-cable': link,
  'uncross-fibres': link,
  'uncross-plugs': unit,
  'replace-board': unit,
  'exchange-boards': two(['unit', readUnit], ['other', readUnit]),
  'replace-unit': unit,
  'reseat-unit': unit,
  'take-out-unit': unit,
  'put-back-unit': unit,
  'replace-fuse': unit,
  'replace-supply': supply,
  'replace-lead': one('lead', readLead),
  'replace-controller-port': one('chain', readChain),
  'replace-controller': null,
  'pull-feedback': feedback,
  'plug-feedback': feedback,
  'replace-feedback': feedback,
  'bridge-unit': two(['unit', readUnit], ['cable', readLink]),
  'unbridge-unit': unit,
};

/** The names of all acts, in the order of the schema. */
export const actNames = Object.keys(readers);

/** One act as written on the command line: `ACT:NAME`, for example `reseat-plug:-WH3/upper` or `exchange-boards:-TB2/-TB3`. */
export function readAct(topology: Topology, text: string): Asked<Intervention> {
  const trimmed = text.trim();
  const colon = trimmed.indexOf(':');
  const word = (colon < 0 ? trimmed : trimmed.slice(0, colon)).toLowerCase();
  const name = colon < 0 ? '' : trimmed.slice(colon + 1);
  if (!word) return refused('act-malformed', { value: trimmed });
  if (!Object.hasOwn(readers, word)) {
    return refused('value-not-allowed', { where: trimmed, value: word, allowed: actNames, near: findNearest(word, actNames) });
  }
  // `word` is a key of the table, as just tested.
  const reader = readers[word as Intervention['do']];
  if ((reader === null) !== (name.trim() === '')) return refused('act-malformed', { value: trimmed });
  const reference = reader === null ? understood({}) : reader(topology, name, trimmed);
  if (!reference.ok) return reference;
  const parsed = intervention.safeParse({ do: word, ...reference.value });
  return parsed.success ? understood(parsed.data) : refused('act-malformed', { value: trimmed });
}
