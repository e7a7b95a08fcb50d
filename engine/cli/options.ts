import { parseArgs } from 'node:util';
import type { UsageProblem } from '../messages/index.ts';
import { findNearest } from './nearest.ts';

/** One option of a command. `value`: takes a value; `many`: may be given several times. */
export interface OptionSpec {
  readonly value?: true;
  readonly many?: true;
}

/** The options of a command by their long names, without the dashes. */
export type OptionSpecs = Readonly<Record<string, OptionSpec>>;

/** What was given: for each option its values in the order given (flags hold an empty text), and the other arguments. */
export interface GivenArguments {
  readonly options: ReadonlyMap<string, readonly string[]>;
  readonly arguments: readonly string[];
}

/**
 * Splits the arguments of a command. A value may begin with a minus sign, as designations do: `--display -TB2=dark` and
 * `--display=-TB2=dark` mean the same. Everything after `--` is no option.
 */
export function splitArguments(
  command: string,
  args: readonly string[],
  specs: OptionSpecs,
  valueWords: Readonly<Record<string, string>>,
): { readonly given: GivenArguments; readonly problems: readonly UsageProblem[] } {
  const { tokens } = parseArgs({
    args: [...args],
    strict: false,
    allowPositionals: true,
    tokens: true,
    options: Object.fromEntries(
      Object.entries(specs).map(([name, spec]) => [
        name,
        { type: spec.value ? ('string' as const) : ('boolean' as const), multiple: true },
      ]),
    ),
  });
  const options = new Map<string, string[]>();
  const others: string[] = [];
  const problems: UsageProblem[] = [];
  const refused = new Set<number>();
  for (const token of tokens) {
    if (token.kind === 'positional') {
      others.push(token.value);
      continue;
    }
    if (token.kind === 'option-terminator') continue;
    const spec = Object.hasOwn(specs, token.name) && token.rawName.startsWith('--') ? specs[token.name] : undefined;
    if (!spec) {
      // A text such as -TB2 comes as one token for each letter; it is told once, as it was written.
      if (!refused.has(token.index)) problems.push(unknownOption(command, args[token.index] ?? token.rawName, specs));
      refused.add(token.index);
      continue;
    }
    const option = `--${token.name}`;
    if (spec.value) {
      const value = token.value;
      if (value === undefined || (!token.inlineValue && isOption(value, specs))) {
        problems.push({ code: 'option-value-missing', facts: { option, value: valueWords[token.name] ?? '' } });
        continue;
      }
      add(token.name, value);
    } else {
      if (token.value !== undefined) problems.push({ code: 'option-value-unwanted', facts: { option } });
      add(token.name, '');
    }
    if (!spec.many && options.get(token.name)?.length === 2) problems.push({ code: 'option-repeated', facts: { option } });
  }
  return { given: { options, arguments: others }, problems };

  function add(name: string, value: string) {
    const values = options.get(name);
    if (values) values.push(value);
    else options.set(name, [value]);
  }
}

function isOption(text: string, specs: OptionSpecs): boolean {
  return text === '--' || (text.startsWith('--') && Object.hasOwn(specs, text.slice(2).split('=')[0] ?? ''));
}

function unknownOption(command: string, argument: string, specs: OptionSpecs): UsageProblem {
  const option = argument.split('=')[0] ?? argument;
  const near = option.startsWith('--')
    ? findNearest(
        option,
        Object.keys(specs).map((name) => `--${name}`),
      )
    : '';
  return { code: 'option-unknown', facts: { command, option, near } };
}
