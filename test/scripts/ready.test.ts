import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, it } from 'vitest';

const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const COPIED = [
  'bin',
  'package.json',
  'package-lock.json',
  'scripts',
  'tsconfig.json',
  'tsconfig.engine.json',
  'tsconfig.types.json',
];

/** What the build copies and fills in for the screens. */
const SCREEN_FILES = [
  'src/web/parts/icon.svg',
  'src/web/office/index.html',
  'src/web/office/office.webmanifest',
  'src/web/answer/index.html',
  'src/web/answer/answer.webmanifest',
  'src/web/yard/index.html',
  'src/web/yard/yard.webmanifest',
];

const folder = mkdtempSync(join(tmpdir(), 'onepour-ready-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The project with small sources in place of its own, and the packages as installed. */
function layProject(): void {
  for (const name of COPIED) cpSync(join(ROOT, name), join(folder, name), { recursive: true });
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'));
  for (const name of SCREEN_FILES) cpSync(join(ROOT, name), join(folder, name), { recursive: true });
  for (const page of [
    'office/main.tsx',
    'answer/main.tsx',
    'yard/main.tsx',
    'worker/main.ts',
    'pdf-worker/main.ts',
    'service-worker/main.ts',
  ]) {
    mkdirSync(join(folder, 'src/web', dirname(page)), { recursive: true });
    writeFileSync(join(folder, 'src/web', page), `document.title = '${page}';\n`);
  }
  for (const room of ['engine', 'cli']) mkdirSync(join(folder, 'src', room), { recursive: true });
  writeFileSync(join(folder, 'src/engine/index.ts'), 'export const answer: number = 42;\n');
  writeFileSync(
    join(folder, 'src/cli/main.ts'),
    "import { answer } from '../engine/index.ts';\nprocess.stdout.write(String(answer));\n",
  );
}

/** Runs a script from another folder. Without a path no npm can be started: a test must not install anything. */
function run(script: string): { readonly code: number | null; readonly out: string; readonly err: string } {
  const env = { ...process.env, PATH: '', npm_execpath: '', NODE_ENV: 'production' };
  const done = spawnSync(process.execPath, [join(folder, script)], { cwd: tmpdir(), env, encoding: 'utf8' });
  return { code: done.status, out: done.stdout, err: done.stderr };
}

it('builds what changed, does nothing when nothing did, and says what is not installed', () => {
  layProject();
  expect(run('bin/onepour.js')).toEqual({
    code: 1,
    out: '',
    err: 'onepour: dist/ is not built yet; run "npm run build" in its folder first.\n',
  });

  expect(run('scripts/ready.mjs')).toEqual({ code: 0, out: '', err: 'onepour: building …\n' });
  expect(run('bin/onepour.js').out).toBe('42');
  expect(readFileSync(join(folder, 'dist/types/engine/index.d.ts'), 'utf8')).toContain('answer: number');
  expect(readFileSync(join(folder, 'dist/web/answer.html'), 'utf8')).toMatch(/src="\/assets\/answer-\w+\.js"/);
  expect(run('scripts/ready.mjs')).toEqual({ code: 0, out: '', err: '' });

  writeFileSync(join(folder, 'src/engine/index.ts'), 'export const answer: number = 43;\n');
  expect(run('scripts/ready.mjs').err).toBe('onepour: building …\n');
  expect(run('bin/onepour.js').out).toBe('43');

  writeFileSync(join(folder, 'src/engine/index.ts'), "export const answer: number = 'text';\n");
  const broken = run('scripts/ready.mjs');
  expect(broken.err).toMatch(/TS2322[\s\S]*onepour: the build failed, see above\.\n$/);
  expect(broken.code).toBe(1);

  const lock = join(folder, 'package-lock.json');
  writeFileSync(
    lock,
    readFileSync(lock, 'utf8').replace(/("node_modules\/zod": \{\s*"version": )"[^"]+"/, '$1"0.0.1"'),
  );
  const lacking = run('scripts/ready.mjs');
  expect(lacking.err).toContain('onepour: node_modules/zod is not 0.0.1; installing packages as locked');
  expect(lacking.err).toContain('onepour: cannot run npm');
  expect(lacking.code).toBe(1);
});
