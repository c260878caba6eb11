import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';

const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const CONFIGS = [
  '.gitignore',
  '.dependency-cruiser.mjs',
  'biome.json',
  'knip.json',
  'tsconfig.json',
  'tsconfig.engine.json',
  'tsconfig.web.json',
  'tsconfig.webtest.json',
  'vitest.config.ts',
  'scripts',
];

/** A small project that keeps every rule: engine, calculation, command, screen, and tests. */
const CLEAN: Readonly<Record<string, string>> = {
  'package.json': writePackage(),
  'bench/package.json': `${JSON.stringify({ name: 'small-bench', private: true, type: 'module' }, null, 2)}\n`,
  'bench/run.mjs': "process.stdout.write('1 times faster\\n');\n",
  'bin/small.js': "import '../src/cli/main.ts';\n",
  'src/engine/area.ts': 'export const square = (side: number): number => side * side;\n',
  'src/engine/index.ts': "export { square } from './area.ts';\n",
  'src/calc/area.ts':
    "import { square } from '../engine/area.ts';\n\nexport const answer = (): number => square(2);\n\nexport type Answer = number;\n",
  'src/cli/main.ts':
    "import { type Answer, answer } from '../calc/area.ts';\n\nconst shown: Answer = answer();\nprocess.stdout.write(String(shown));\n",
  'src/web/area/main.tsx': "import { answer } from '../../calc/area.ts';\n\ndocument.title = String(answer());\n",
  'test/web/area.test.ts': "import '../../src/web/area/main.tsx';\n",
  'test/area.test.ts': "import { square } from '../src/engine/area.ts';\n\nsquare(3);\n",
};

/** The packages that the configurations and scripts name; one more would be a dead one. */
function writePackage(): string {
  const tools = [
    '@biomejs/biome',
    '@fontsource-variable/source-sans-3',
    '@types/node',
    'dejavu-fonts-ttf',
    'dependency-cruiser',
    'esbuild',
    'typescript',
    'vitest',
  ];
  const scripts = { format: 'biome check --write .' };
  const all = { name: 'small', type: 'module', private: true, bin: { small: 'bin/small.js' }, scripts };
  const devDependencies = Object.fromEntries(tools.map((name) => [name, '*']));
  return `${JSON.stringify({ ...all, devDependencies }, null, 2)}\n`;
}

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** Lays the small project with some files changed or added into a folder of its own and runs the check there. */
function check(changed: Readonly<Record<string, string>>): { readonly code: number | null; readonly output: string } {
  const folder = mkdtempSync(join(tmpdir(), 'onepour-check-'));
  folders.push(folder);
  for (const name of CONFIGS) cpSync(join(ROOT, name), join(folder, name), { recursive: true });
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'));
  for (const [name, text] of Object.entries({ ...CLEAN, ...changed })) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  const done = spawnSync(process.execPath, ['scripts/check.mjs'], { cwd: folder, encoding: 'utf8' });
  return { code: done.status, output: done.stdout + done.stderr };
}

describe('npm run check', () => {
  it('passes a project that keeps the rules', () => {
    const { output, code } = check({});
    expect(output).toContain('check: all well');
    expect(code).toBe(0);
  });

  it('finds each kind of planted fault, type imports too', () => {
    // In pieces, so that this file keeps the rules itself.
    const unfinished = ['// TO', 'DO later'].join('');
    const focused = ['it.', "only('x', () => {})"].join('');
    const { output, code } = check({
      'src/engine/to-calc.ts':
        "import type { Answer } from '../calc/area.ts';\n\nexport const same = (a: Answer): Answer => a;\n",
      'src/engine/to-node.ts': "import { sep } from 'node:path';\n\nexport const separator = sep;\n",
      'src/engine/to-package.ts': "import * as z from 'zod';\n\nexport const text = z.string();\n",
      'src/engine/ring-a.ts': "import { two } from './ring-b.ts';\n\nexport const one = (): number => two();\n",
      'src/engine/ring-b.ts': "import { one } from './ring-a.ts';\n\nexport const two = (): number => one();\n",
      'src/engine/dead.ts': 'export const never = 1;\n',
      'src/engine/index.ts': [
        "export { square } from './area.ts';",
        "export { one } from './ring-a.ts';",
        "export { same } from './to-calc.ts';",
        "export { separator } from './to-node.ts';",
        "export { text } from './to-package.ts';",
        '',
      ].join('\n'),
      'src/calc/unused.ts': 'export const used = 1;\n\nexport const unused = 2;\n',
      'src/calc/area.ts':
        "import { used } from './unused.ts';\n\nexport const answer = (): string => used;\n\nexport type Answer = number;\n",
      'src/web/area/main.tsx': [
        "import { sep } from 'node:path';",
        "import { answer } from '../../calc/area.ts';",
        "import { run } from '../../cli/run.ts';",
        '',
        'const shown: number = document.title;',
        'run(sep, answer(), shown);',
        '',
      ].join('\n'),
      'src/cli/run.ts': 'export const run = (...all: readonly unknown[]): number => all.length;\n',
      'src/nowhere/new.ts': `${unfinished}\nexport const room = 1;\n`,
      'test/area.test.ts': `import { it } from 'vitest';\n${focused}\n`,
    });
    const wanted = [
      /engine-rooms: src\/engine\/to-calc\.ts → \S*src\/calc\/area\.ts/,
      /engine-without-node: src\/engine\/to-node\.ts/,
      /engine-packages: src\/engine\/to-package\.ts/,
      /web-rooms: src\/web\/area\/main\.tsx → \S*src\/cli\/run\.ts/,
      /web-without-node: src\/web\/area\/main\.tsx/,
      /src\/web\/area\/main\.tsx\(5,\d+\): error TS2322/,
      /no-cycle: src\/engine\/ring-/,
      /no-orphan: src\/engine\/dead\.ts/,
      /known-room: .*src\/nowhere\/new\.ts|no-orphan: src\/nowhere\/new\.ts/,
      /Unused exports[\s\S]*unused\s.*src\/calc\/unused\.ts/,
      /Unused files[\s\S]*src\/engine\/dead\.ts/,
      /src\/calc\/area\.ts\(3,\d+\): error TS2322/,
      /test\/area\.test\.ts format|test\/area\.test\.ts:2:1/,
      /src\/nowhere\/new\.ts:1: a note of unfinished work/,
      /test\/area\.test\.ts:2: a skipped, focused/,
    ];
    expect(wanted.filter((pattern) => !pattern.test(output)).map(String), output).toEqual([]);
    expect(code).toBe(1);
  });
});
