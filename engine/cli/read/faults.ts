import type { Fault, ItemKind } from '../../schema/index.ts';
import { faultModes, fault as faultSchema, itemKinds, type LinkEnd, linkEnds } from '../../schema/index.ts';
import type { Topology } from '../../topology/index.ts';
import { findNearest } from '../nearest.ts';
import { type Asked, makeUsageProblem, refused, understood } from './asked.ts';
import { readChain, readFeedback, readLead, readLink, readUnit } from './names.ts';
import { readNumber } from './values.ts';

/** How kinds of items may be written besides their own names. */
const otherNames: Readonly<Record<string, ItemKind>> = { port: 'controller-port' };

const flags = ['intermittent', 'steady', 'absent-now'] as const;

/**
 * One fault as written on the command line: `ITEM:NAME:MODE[,intermittent][,absent-now]`, for example `cable:-WH3:cut`,
 * `plug:-WH3/upper:loose`, `cable:-WH3:return-dim,loss=4.5` (dB), `port:1:dead`, `controller:all-ports-dead`. The name may hold colons: only the first and last part.
 */
export function readFault(topology: Topology, text: string): Asked<Fault> {
  const trimmed = text.trim();
  const first = trimmed.indexOf(':');
  const last = trimmed.lastIndexOf(':');
  if (first <= 0 || last === trimmed.length - 1) return refused('fault-malformed', { value: trimmed });
  const kind = readKind(trimmed.slice(0, first));
  if (!kind.ok) return kind;
  const name = first === last ? '' : trimmed.slice(first + 1, last);
  const [mode = '', ...parts] = trimmed
    .slice(last + 1)
    .split(',')
    .map((part) => part.trim());
  const losses = parts.filter((part) => part.startsWith('loss='));
  const flagTexts = parts.filter((part) => !losses.includes(part));
  const modes: readonly string[] = faultModes[kind.value];
  if (!modes.includes(mode))
    return refused('value-not-allowed', { where: trimmed, value: mode, allowed: modes, near: findNearest(mode, modes) });
  const steadiness = readFlags(trimmed, flagTexts);
  if (!steadiness.ok) return steadiness;
  const reference = readReference(topology, kind.value, name, trimmed);
  if (!reference.ok) return reference;
  const loss = readLoss(trimmed, mode, losses);
  if (!loss.ok) return loss;
  // The parts fit each other by construction; the schema says so once more, and gives the union its type.
  const parsed = faultSchema.safeParse({ item: kind.value, ...reference.value, mode, ...steadiness.value, ...loss.value });
  return parsed.success ? understood(parsed.data) : refused('fault-malformed', { value: trimmed });
}

function readKind(text: string): Asked<ItemKind> {
  const word = text.trim().toLowerCase();
  const kind = itemKinds.find((one) => one === word) ?? (Object.hasOwn(otherNames, word) ? otherNames[word] : undefined);
  if (kind) return understood(kind);
  const allowed = itemKinds.map((one) => (one === 'controller-port' ? 'port' : one));
  return refused('value-not-allowed', { where: text, value: text, allowed, near: findNearest(word, allowed) });
}

/** `loss=4.5`: how much a dim fibre loses, in dB. */
function readLoss(text: string, mode: string, losses: readonly string[]): Asked<{ readonly lossDb?: number }> {
  const [loss, more] = losses;
  if (loss === undefined) return understood({});
  if (more !== undefined || !mode.endsWith('-dim')) return refused('loss-needs-dim', { value: text });
  const lossDb = readNumber(text, loss.slice('loss='.length), 0);
  return lossDb.ok ? understood({ lossDb: lossDb.value }) : lossDb;
}

function readFlags(text: string, given: readonly string[]): Asked<Partial<Pick<Fault, 'presence' | 'absentNow'>>> {
  const unknown = given.find((flag) => !flags.some((one) => one === flag));
  if (unknown !== undefined)
    return refused('value-not-allowed', { where: text, value: unknown, allowed: flags, near: findNearest(unknown, flags) });
  if (given.includes('steady') && given.includes('intermittent')) return refused('presence-both', { value: text });
  return understood({
    ...(given.includes('intermittent') ? { presence: 'intermittent' as const } : {}),
    ...(given.includes('absent-now') ? { absentNow: true } : {}),
  });
}

/** The reference fields that a kind of item has, from its name. */
export function readReference(topology: Topology, kind: ItemKind, name: string, text: string): Asked<Readonly<Record<string, string>>> {
  switch (kind) {
    case 'cable':
    case 'route':
      return field('link', readLink(topology, name));
    case 'plug':
      return readPlug(topology, name, text);
    case 'board':
    case 'fuse':
    case 'place':
    case 'wiring':
      return field('unit', readUnit(topology, name));
    case 'supply':
      return field('unit', readUnit(topology, name, 'supply'));
    case 'controller-port':
      return field('chain', readChain(topology, name));
    case 'lead':
      return field('lead', readLead(topology, name));
    case 'feedback':
      return field('feedback', readFeedback(topology, name));
    case 'controller':
      return name.trim() === '' ? understood({}) : { ok: false, problems: [makeUsageProblem('fault-malformed', { value: text })] };
  }
}

/** `-WH3/upper`: a link and its end. */
export function readPlug(topology: Topology, name: string, text: string): Asked<{ readonly link: string; readonly end: LinkEnd }> {
  const slash = name.lastIndexOf('/');
  const word = name
    .slice(slash + 1)
    .trim()
    .toLowerCase();
  const end = linkEnds.find((one) => one === word);
  if (slash < 0 || !end) return refused('plug-end-missing', { value: text });
  const link = readLink(topology, name.slice(0, slash));
  return link.ok ? understood({ link: link.value, end }) : link;
}

function field(key: string, asked: Asked<string>): Asked<Readonly<Record<string, string>>> {
  return asked.ok ? understood({ [key]: asked.value }) : asked;
}
