import type { Problem } from '../../base/index.ts';
import { type MadeExercise, makeExercise } from '../../exercise/index.ts';
import { exerciseKindTexts, type UsageProblem } from '../../messages/index.ts';
import { type ExerciseContent, exerciseKinds, onsets, solvedBy } from '../../schema/index.ts';
import { simulate } from '../../simulation/index.ts';
import type { Cabinet, Topology } from '../../topology/index.ts';
import { firstValue } from '../command.ts';
import type { GivenArguments } from '../options.ts';
import {
  type Asked,
  allOf,
  makeUsageProblem,
  readChain,
  readChoice,
  readCircumstance,
  readFault,
  readNumber,
  readUnit,
  refused,
  understood,
} from '../read/index.ts';

const givenSets = ['all', 'complaining', 'none'] as const;

/** The options by which `exercise make` is told what an instructor decides. */
export const wishOptions = {
  fault: { value: true, many: true },
  onset: { value: true },
  given: { value: true },
  known: { value: true, many: true },
  circumstance: { value: true, many: true },
  solved: { value: true },
  name: { value: true },
  task: { value: true },
  lesson: { value: true },
  times: { value: true },
  'most-minutes': { value: true },
  'most-steps': { value: true },
  hint: { value: true, many: true },
} as const;

export type Made =
  | { readonly ok: true; readonly value: MadeExercise }
  | { readonly ok: false; readonly usage?: readonly UsageProblem[]; readonly problems?: readonly Problem[] };

/** Makes the exercise that the command line asks for, or says what is wrong with it. */
export function makeAsked(cabinet: Cabinet, given: GivenArguments): Made {
  const all = <T>(option: string, read: (text: string) => Asked<T>) => allOf((given.options.get(option) ?? []).map(read));
  const one = <T>(option: string, read: (text: string) => Asked<T>): Asked<T | undefined> => {
    const text = firstValue(given, option);
    return text === undefined ? understood(undefined) : read(text);
  };
  const faults = all('fault', (text) => readFault(cabinet, text));
  const onset = readChoice('--onset', firstValue(given, 'onset') ?? 'while-running', onsets);
  const shown = readChoice('--given', firstValue(given, 'given') ?? 'complaining', givenSets);
  const named = all('known', (text) => readKnown(cabinet, text));
  const circumstances = all('circumstance', (text) => readCircumstance(cabinet, text));
  const solved = readChoice('--solved', firstValue(given, 'solved') ?? 'place', solvedBy);
  const kind = readChoice('--kind', firstValue(given, 'kind') ?? 'neighbours', exerciseKinds);
  const seed = readNumber('--seed', firstValue(given, 'seed') ?? '1', 0, true);
  const times = one('times', readTimes);
  const minutes = one('most-minutes', (text) => readNumber('--most-minutes', text, 1));
  const steps = one('most-steps', (text) => readNumber('--most-steps', text, 1, true));
  const hints = all('hint', readHint);
  const usage = [faults, onset, shown, named, circumstances, solved, kind, seed, times, minutes, steps, hints].flatMap((asked) =>
    asked.ok ? [] : asked.problems,
  );
  if (!faults.ok || !onset.ok || !shown.ok || !named.ok || !circumstances.ok || !solved.ok) return { ok: false, usage };
  if (!kind.ok || !seed.ok || !times.ok || !minutes.ok || !steps.ok || !hints.ok) return { ok: false, usage };
  if (faults.value.length === 0 || faults.value.length > 2) return { ok: false, usage: [makeUsageProblem('fault-count', { most: 2 })] };
  const { displays, reports } = simulate({ cabinet, faults: faults.value, onset: onset.value });
  const known =
    named.value.length > 0
      ? {
          displays: named.value.flatMap(({ unit }) => (unit === undefined ? [] : [unit])),
          reports: named.value.flatMap(({ chain }) => (chain === undefined ? [] : [chain])),
        }
      : {
          displays: [...displays.values()]
            .filter(({ meaning }) => shown.value === 'all' || (shown.value === 'complaining' && meaning !== 'quiet'))
            .map(({ unit }) => unit),
          reports: [...reports.values()].filter(({ gap }) => gap !== 'none').map(({ chain }) => chain),
        };
  const texts = exerciseKindTexts[kind.value];
  const limits = {
    ...(minutes.value === undefined ? {} : { minutes: minutes.value }),
    ...(steps.value === undefined ? {} : { steps: steps.value }),
  };
  return makeExercise({
    id: `made-${seed.value}`,
    name: firstValue(given, 'name') ?? texts.name,
    kind: kind.value,
    task: firstValue(given, 'task') ?? texts.task,
    lesson: firstValue(given, 'lesson') ?? texts.lesson,
    cabinet: cabinet.content,
    onset: onset.value,
    faults: faults.value,
    seed: seed.value,
    known: { ...known, circumstances: circumstances.value },
    solved: solved.value,
    ...(times.value === undefined ? {} : { times: times.value }),
    ...(Object.keys(limits).length === 0 ? {} : { limits }),
    ...(hints.value.length === 0 ? {} : { hints: [...hints.value] }),
  });
}

/** A display by its unit, or a report: `report:1`. */
function readKnown(topology: Topology, text: string): Asked<{ readonly unit?: string; readonly chain?: string }> {
  const report = /^report:(.*)$/i.exec(text.trim())?.[1];
  if (report === undefined) {
    const unit = readUnit(topology, text);
    return unit.ok ? understood({ unit: unit.value }) : unit;
  }
  const chain = readChain(topology, report);
  return chain.ok ? understood({ chain: chain.value }) : chain;
}

/** `OPEN,ISOLATE,BOOT`: minutes of the changes of state. */
function readTimes(text: string): Asked<ExerciseContent['times']> {
  const parts = text.split(',');
  if (parts.length !== 3) return refused('times-malformed', { value: text });
  const read = allOf(parts.map((part) => readNumber('--times', part, 0)));
  if (!read.ok) return read;
  const [openMinutes = 0, isolateMinutes = 0, bootMinutes = 0] = read.value;
  return understood({ openMinutes, isolateMinutes, bootMinutes });
}

/** `MINUTES=TEXT`: a hint, and what taking it costs. */
function readHint(text: string): Asked<{ readonly text: string; readonly minutes: number }> {
  const at = text.indexOf('=');
  const words = text.slice(at + 1).trim();
  if (at < 0 || words === '') return refused('hint-malformed', { value: text });
  const minutes = readNumber('--hint', text.slice(0, at), 0);
  return minutes.ok ? understood({ text: words, minutes: minutes.value }) : minutes;
}
