import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { linkwright, shellWords } from './runLinkwright.ts';

const path = fileURLToPath(new URL('../../README.md', import.meta.url));
const readme = readFileSync(path, 'utf8');
const block = /```console\n\$ (.+)\n([\s\S]*?)```/g;
const start = ['node', 'dist/cli/linkwright.js'];

describe('README.md', () => {
  // `npx vitest run --project unit tests/cli/readme.test.ts --update` writes the outputs anew.
  it('should show what its commands really answer', async () => {
    const outputs = new Map<string, string>();
    for (const [, line = ''] of readme.matchAll(block)) {
      const words = shellWords(line);
      expect(words.slice(0, 2)).toEqual(start);
      const { out, err, exit } = await linkwright(words.slice(2));
      expect({ line, err, exit }).toEqual({ line, err: '', exit: 0 });
      outputs.set(line, out);
    }
    expect(outputs.size).toBeGreaterThanOrEqual(3);
    const current = readme.replace(block, (_, line: string) => `\`\`\`console\n$ ${line}\n${outputs.get(line) ?? ''}\`\`\``);
    await expect(current).toMatchFileSnapshot(path);
  });

  it('should name only files and folders that are there', () => {
    const named = [
      ...readme.matchAll(/\]\(([^)#]+)\)/g),
      ...readme.matchAll(/`((?:engine|renderer|electron|sample-cabinets|tests)\/[^`\s]*)`/g),
    ];
    expect(named.length).toBeGreaterThan(6);
    for (const [, file = ''] of named) expect(() => readFileSync(new URL(`../../${file}`, import.meta.url)), file).not.toThrow(/ENOENT/);
  });

  it('should begin with what the program is for, and give the two commands', () => {
    const [title, first] = readme.split('\n\n');
    expect(title).toBe('# Linkwright');
    expect(first?.replace(/\s+/g, ' ')).toMatch(/^Linkwright documents .* displays .* smallest set of parts/);
    expect(readme).toContain('npm ci && npm start');
    expect(readme).toContain('npm ci && npm test');
  });
});
