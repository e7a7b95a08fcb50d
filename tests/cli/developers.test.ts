import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { programFolder } from '../support/folders.ts';

const text = readFileSync(join(programFolder, 'DEVELOPERS.md'), 'utf8');
// A wrong shape makes the expectations fail.
const { scripts } = JSON.parse(readFileSync(join(programFolder, 'package.json'), 'utf8')) as { scripts: Record<string, string> };

describe('DEVELOPERS.md', () => {
  it('should name only files and folders that are there', () => {
    const named = [
      ...text.matchAll(/\]\(([^)#]+)\)/g),
      ...text.matchAll(/`((?:engine|renderer|electron|sample-cabinets|tests|\.ci)\/[^`\s*]*)`/g),
      ...text.matchAll(/--project unit (\S+\.ts)/g),
    ].map(([, file = '']) => file);
    expect(named.length).toBeGreaterThan(20);
    expect(named.filter((file) => !existsSync(join(programFolder, file)))).toEqual([]);
  });

  it('should name only npm commands that there are, and every one that a developer needs', () => {
    const named = [...text.matchAll(/npm run ([\w:]+)/g)].map(([, name = '']) => name);
    expect(named.filter((name) => !Object.hasOwn(scripts, name))).toEqual([]);
    const told = new Set([...named, ...[...text.matchAll(/npm (start|test)\b/g)].map(([, name = '']) => name)]);
    // Run by others, never by hand.
    const inner = new Set(['prepare', 'build', 'bench:smoke']);
    expect(Object.keys(scripts).filter((name) => !told.has(name) && !inner.has(name))).toEqual([]);
  });

  it('should explain every folder of the engine', () => {
    for (const folder of ['base', 'schema', 'topology', 'cabinet', 'sums', 'simulation', 'search', 'diagnosis', 'messages', 'cli']) {
      expect(text).toMatch(new RegExp(`^\\| \`${folder}\` `, 'm'));
    }
  });
});
