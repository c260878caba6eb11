// Makes the project ready to run: right Node, packages as locked, sources built. Does nothing when all is well.
// Runs before start, test and bench. Names given as arguments are folders with packages of their own (bench).
// No dependencies: it must run in a fresh clone.

import { spawnSync } from 'node:child_process';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isBuilt } from './lib/built.mjs';
import { findInstallFault } from './lib/installed.mjs';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const OLDEST_NODE = 20;

function stop(line) {
  process.stderr.write(`onepour: ${line}\n`);
  process.exit(1);
}

/** Runs a program with its output on standard error, so that standard output stays the caller's. */
function run(command, args, options) {
  const done = spawnSync(command, args, { stdio: ['ignore', 2, 2], ...options });
  if (done.error) stop(`cannot run ${command}: ${done.error.message}`);
  return done.status ?? 1;
}

function install(folder) {
  const args = ['ci', '--include=dev'];
  const npm = process.env.npm_execpath;
  // npm names its own script while it runs us; outside npm the program of that name on the path is taken.
  if (npm !== undefined && basename(npm) === 'npm-cli.js')
    return run(process.execPath, [npm, ...args], { cwd: folder });
  return run('npm', args, { cwd: folder, shell: process.platform === 'win32' });
}

if (Number.parseInt(process.versions.node, 10) < OLDEST_NODE) {
  stop(`Node ${OLDEST_NODE} or newer is needed, this is ${process.version}.`);
}

for (const folder of [ROOT, ...process.argv.slice(2).map((name) => join(ROOT, name))]) {
  const fault = findInstallFault(folder);
  if (fault === null) continue;
  process.stderr.write(`onepour: ${fault}; installing packages as locked …\n`);
  if (install(folder) !== 0)
    stop('"npm ci --include=dev" failed, see above. It needs the package registry or a filled cache.');
  const left = findInstallFault(folder);
  if (left !== null) stop(`after "npm ci --include=dev" still: ${left}.`);
}

if (!isBuilt(ROOT)) {
  process.stderr.write('onepour: building …\n');
  if (run(process.execPath, [join(ROOT, 'scripts', 'build.mjs')], { cwd: ROOT }) !== 0)
    stop('the build failed, see above.');
}
