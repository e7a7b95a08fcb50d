import { describe, expect, it } from 'vitest';
import {
  cases,
  check,
  compare,
  diagnose,
  exercise,
  exportLists,
  importLists,
  isolation,
  next,
  print,
  replay,
  schema,
  simulate,
  sums,
} from '../../engine/cli/commands/index.ts';
import { type CommandName, type CommandWords, commandWords } from '../../engine/messages/index.ts';
import { linkwright, shellWords } from './runLinkwright.ts';

const commands = {
  cases,
  check,
  compare,
  diagnose,
  exercise,
  export: exportLists,
  import: importLists,
  isolation,
  next,
  print,
  replay,
  schema,
  simulate,
  sums,
};
const words: Readonly<Record<CommandName, CommandWords>> = commandWords;
const names = Object.keys(words) as CommandName[]; // the keys are exactly the names

const examples = names.flatMap((name) => words[name].examples.map(({ line }) => [line] as const));

describe('the help', () => {
  it.each(names)('should describe every option of %s, and no other', async (name) => {
    expect(Object.keys(words[name].options).sort()).toEqual(Object.keys(commands[name].options).sort());
    for (const [option, { value }] of Object.entries(words[name].options)) {
      const spec: { readonly value?: true } = commands[name].options[option] ?? {};
      expect(value !== '', option).toBe(spec.value === true);
    }
    for (const args of [
      [name, '--help'],
      [name, 'x', '-h'],
      ['help', name],
    ]) {
      const ran = await linkwright(args);
      expect(ran).toMatchObject({ exit: 0, err: '' });
      for (const option of Object.keys(words[name].options)) expect(ran.out).toContain(`--${option}`);
      for (const { line } of words[name].examples) expect(ran.out).toContain(line);
    }
  });

  it('should have an example for every command', () => {
    expect(names.filter((name) => words[name].examples.length === 0)).toEqual([]);
  });

  it.each(examples)('should have an example that works: %s', async (line) => {
    const [program, ...args] = shellWords(line);
    expect(program).toBe('linkwright');
    const ran = await linkwright(args);
    expect(ran.err).toBe('');
    expect(ran.exit).toBe(0);
    expect(ran.out.length).toBeGreaterThan(50);
  });

  it.each([40, 60, 100, 200])('should fit into %i columns, but for what is there to be copied', async (columns) => {
    for (const args of [['--help'], ...names.map((name) => [name, '--help'])]) {
      for (const line of (await linkwright(args, {}, columns)).out.split('\n')) {
        if (!/^ {2,4}linkwright /.test(line)) expect(line.length, line).toBeLessThanOrEqual(columns);
      }
    }
  });
});
