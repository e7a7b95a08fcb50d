import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { glossary, helpTopics, helpWords, windowTexts } from '../../engine/messages/index.ts';
import { listKeys } from '../../renderer/shell/listKeys.ts';
import { listShortcuts } from '../../renderer/shell/shortcuts.ts';
import { commands } from '../../renderer/state/commands.ts';

describe('the help', () => {
  it('should have the one glossary, word by word as DEVELOPERS.md has it', () => {
    const text = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8');
    const table = text.slice(text.indexOf('## Glossary'), text.indexOf('## Sources'));
    const rows = [...table.matchAll(/^\| (\S.*?) +\| (.*?) +\|$/gm)]
      .map(([, label = '', meaning = '']) => ({ label, meaning: meaning.replaceAll('_', '').replaceAll("'", '’') }))
      .filter(({ label }) => label !== 'term' && !label.startsWith('--'));
    expect(glossary).toEqual(rows);
    expect(rows.length).toBeGreaterThan(40);
  });

  it('should list every command that has a key, each once where it is heard', () => {
    const listed = listKeys().flatMap(({ keys }) => keys.map(([, what]) => what));
    for (const { id } of listShortcuts()) expect(listed).toContain(windowTexts.commands[commands[id].label]);
  });

  it('should say nothing twice, and name keys in the steps', () => {
    const keys = new Proxy({}, { get: (_, name) => `<${String(name)}>` }) as Parameters<typeof helpWords.steps.technician>[0];
    const heads = Object.values(helpWords.steps).flatMap((steps) => steps(keys).map(({ head }) => head));
    expect(new Set(heads).size).toBe(heads.length);
    expect(JSON.stringify(Object.values(helpWords.steps).map((steps) => steps(keys)))).not.toContain('undefined');
    expect(Object.keys(helpWords.topic)).toEqual([...helpTopics]);
  });
});
