import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { programFolder } from '../support/folders.ts';

// Plants violations in a copy of the lint and type settings: a rule that bites nothing would pass the real sources as well.
const copy = mkdtempSync(join(tmpdir(), 'linkwright-layers-'));
for (const file of ['biome.json', 'tsconfig.json', 'package.json', 'engine/tsconfig.json', '.gitignore']) {
  cpSync(join(programFolder, file), join(copy, file));
}
symlinkSync(join(programFolder, 'node_modules'), join(copy, 'node_modules'), 'dir');
afterAll(() => rmSync(copy, { recursive: true, force: true }));

const sound: Readonly<Record<string, string>> = {
  'engine/base/index.ts': "export { one } from './one.ts';\n",
  'engine/base/one.ts': 'export const one = 1;\n',
  'engine/schema/index.ts': "export { two } from './two.ts';\n",
  'engine/schema/two.ts': "import { one } from '../base/index.ts';\n\nexport const two = one + one;\n",
  'engine/cli/main.ts':
    "import { readFileSync } from 'node:fs';\nimport { two } from '../schema/index.ts';\n\nprocess.stdout.write(readFileSync('x', 'utf8') + two);\n",
  'renderer/main.tsx': "import { two } from '../engine/schema/index.ts';\n\ndocument.title = String(two);\n",
  'electron/main.ts':
    "import { join } from 'node:path';\nimport { two } from '../engine/schema/index.ts';\n\nprocess.title = join(String(two));\n",
  'tests/one.test.ts': "import { one } from '../engine/base/one.ts';\n\nprocess.title = String(one);\n",
};

interface Diagnostic {
  readonly category: string;
  readonly location: { readonly path: string };
}

/** Lints the sound sources with some files replaced or added; answers what was found as `rule in file`. */
function lint(planted: Readonly<Record<string, string>>): readonly string[] {
  for (const folder of ['engine/base', 'engine/schema', 'engine/cli', 'renderer', 'electron', 'tests']) {
    rmSync(join(copy, folder), { recursive: true, force: true });
  }
  for (const [file, text] of Object.entries({ ...sound, ...planted })) {
    mkdirSync(dirname(join(copy, file)), { recursive: true });
    writeFileSync(join(copy, file), text);
  }
  const run = spawnSync(process.execPath, [biome, 'lint', '--vcs-enabled=false', '--reporter=json', '--max-diagnostics=none', '.'], {
    cwd: copy,
    encoding: 'utf8',
  });
  // The shape of Biome's JSON report.
  const report = JSON.parse(run.stdout) as { readonly diagnostics: readonly Diagnostic[] };
  return report.diagnostics.map(({ category, location }) => `${category.split('/').at(-1)} in ${location.path}`);
}

const biome = join(programFolder, 'node_modules', '@biomejs', 'biome', 'bin', 'biome');

describe('the lint rules', () => {
  it('should find nothing in sound layers', () => {
    expect(lint({})).toEqual([]);
  });

  it.each([
    [
      'the engine importing the page',
      'engine/base/one.ts',
      "import '../../renderer/main.tsx';\n\nexport const one = 1;\n",
      'noRestrictedImports',
    ],
    [
      'the engine importing the shell',
      'engine/base/one.ts',
      "import '../../electron/main.ts';\n\nexport const one = 1;\n",
      'noRestrictedImports',
    ],
    [
      'the engine importing its command line',
      'engine/base/one.ts',
      "import '../cli/main.ts';\n\nexport const one = 1;\n",
      'noRestrictedImports',
    ],
    [
      'the engine importing the page late',
      'engine/base/one.ts',
      "export const one = () => import('../../renderer/main.tsx');\n",
      'noRestrictedImports',
    ],
    ['the engine importing React', 'engine/base/one.ts', "import 'react';\n\nexport const one = 1;\n", 'noRestrictedImports'],
    ['the engine importing Electron', 'engine/base/one.ts', "import 'electron';\n\nexport const one = 1;\n", 'noRestrictedImports'],
    ['the engine using Node', 'engine/base/one.ts', "import { sep } from 'node:path';\n\nexport const one = sep;\n", 'noNodejsModules'],
    [
      'the engine using Node without prefix',
      'engine/base/one.ts',
      "import { sep } from 'path';\n\nexport const one = sep;\n",
      'noNodejsModules',
    ],
    ['the engine reading the clock', 'engine/base/one.ts', 'export const one = Date.now();\n', 'noRestrictedGlobals'],
    ['the engine rolling dice', 'engine/base/one.ts', 'export const one = Math.random();\n', 'noJsRestrictedProperties'],
    ['a star re-export', 'engine/base/index.ts', "export * from './one.ts';\n", 'noReExportAll'],
    [
      'a neighbour folder reached past its index',
      'engine/schema/two.ts',
      "import { one } from '../base/one.ts';\n\nexport const two = one;\n",
      'noPrivateImports',
    ],
    [
      'a folder importing its own index',
      'engine/schema/two.ts',
      "import { three } from './index.ts';\n\nexport const two = three;\n",
      'noRestrictedImports',
    ],
    [
      'the page reaching past an engine index',
      'renderer/main.tsx',
      "import { one } from '../engine/base/one.ts';\n\ndocument.title = String(one);\n",
      'noRestrictedImports',
    ],
    ['the page importing the shell', 'renderer/main.tsx', "import '../electron/main.ts';\n", 'noRestrictedImports'],
    ['the page importing Electron', 'renderer/main.tsx', "import 'electron';\n", 'noRestrictedImports'],
    ['the page using Node', 'renderer/main.tsx', "import 'node:fs';\n", 'noNodejsModules'],
    ['the shell importing the page', 'electron/main.ts', "import '../renderer/main.tsx';\n", 'noRestrictedImports'],
    [
      'the shell reaching past an engine index',
      'electron/main.ts',
      "import { one } from '../engine/base/one.ts';\n\nprocess.title = String(one);\n",
      'noRestrictedImports',
    ],
    ['a promise left floating', 'electron/main.ts', 'async function wait() {}\nwait();\n', 'noFloatingPromises'],
    ['any', 'electron/main.ts', 'export const x: any = 1;\n', 'noExplicitAny'],
    ['an import without its ending', 'electron/main.ts', "import '../engine/schema/index';\n", 'useImportExtensions'],
    ['a package that is not declared', 'electron/main.ts', "import 'undici';\n", 'noUndeclaredDependencies'],
  ])('should find %s', (_what, file, text, rule) => {
    expect(lint({ [file]: text })).toContain(`${rule} in ${file}`);
  });

  it('should find a circle of imports, of types too', () => {
    const found = lint({
      'engine/base/one.ts':
        "import type { Two } from './two.ts';\n\nexport interface One {\n  readonly two: Two;\n}\nexport const one = 1;\n",
      'engine/base/two.ts': "import type { One } from './one.ts';\n\nexport interface Two {\n  readonly one: One;\n}\n",
    });
    expect(found).toContain('noImportCycles in engine/base/one.ts');
  });
});

describe('the folders of the engine', () => {
  /** The rows of the table in DEVELOPERS.md: a folder, and what it stands on. */
  const table = new Map(
    [...readFileSync(join(programFolder, 'DEVELOPERS.md'), 'utf8').matchAll(/^\| `([a-z]+)` +\| [^|]+ \| ([^|]+) \|$/gm)].map(
      ([, folder = '', standsOn = '']) => [folder, standsOn.trim()],
    ),
  );
  const namesIn = (text: string) => [...text.matchAll(/`([a-z]+)`/g)].map(([, name = '']) => name);
  /** All that a folder may use the values of: what it stands on, and what that stands on. */
  const below = (folder: string): ReadonlySet<string> => new Set(namesIn(table.get(folder) ?? '').flatMap((one) => [one, ...below(one)]));

  const folders = readdirSync(join(programFolder, 'engine'), { withFileTypes: true }).filter((entry) => entry.isDirectory());

  it('should all stand in the table of DEVELOPERS.md, and nothing else', () => {
    expect([...table.keys()].sort()).toEqual(folders.map(({ name }) => name).sort());
  });

  it.each(folders.map(({ name }) => name).filter((name) => table.get(name) !== 'all'))('should use only what %s stands on', (folder) => {
    const place = join(programFolder, 'engine', folder);
    const files = readdirSync(place, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
    const ofTypes = table.get(folder)?.includes('types of all above') === true;
    const used = files.flatMap((name) =>
      [...readFileSync(join(place, name), 'utf8').matchAll(/^(?:import|export) ([^;]*?)from '(?:\.\.\/)+([a-z]+)\/index\.ts'/gms)].flatMap(
        ([, what = '', other = '']) => (ofTypes && !/\{\s*(?!type )|,\s*(?!type |\})/.test(what.replace(/^type .*/s, '')) ? [] : [other]),
      ),
    );
    expect([...new Set(used)].filter((other) => table.has(other) && !below(folder).has(other))).toEqual([]);
  });
});

describe('the types of the engine', () => {
  const compiler = join(programFolder, 'node_modules', 'typescript', 'bin', 'tsc');
  const compile = (text: string): string => {
    lint({ 'engine/base/one.ts': text });
    return spawnSync(process.execPath, [compiler, '-p', 'engine'], { cwd: copy, encoding: 'utf8' }).stdout;
  };

  it('should let the language through', () => {
    expect(compile('export const one = [3, 1].map((n) => n + 1).length;\n')).toBe('');
  });

  it.each([
    ['the page', 'export const one = document.title;\n'],
    ['Node', 'export const one = process.title;\n'],
    ['what came after ES2022', 'export const one = [3, 1].toSorted();\n'],
    ['an index that may miss', 'const list: string[] = [];\nexport const one: string = list[0];\n'],
  ])('should refuse %s', (_what, text) => {
    expect(compile(text)).toContain('engine/base/one.ts(');
  });
});
