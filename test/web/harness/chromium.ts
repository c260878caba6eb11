import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, chromium } from 'playwright-core';

/** A browser's program and what it needs around it. */
interface Program {
  readonly path: string;
  readonly env: Readonly<Record<string, string>>;
}

const require = createRequire(import.meta.url);

const INSTALLED = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];
const ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/**
 * The Chromium that `ONEPOUR_CHROMIUM` names, else an installed one, else the one that travels in a package.
 * @throws Error when the named one is not there, or none can be had
 */
function findChromium(): Program {
  const named = process.env.ONEPOUR_CHROMIUM;
  if (named !== undefined && named !== '') {
    if (!existsSync(named)) throw new Error(`ONEPOUR_CHROMIUM names ${named}, which is not there`);
    return { path: named, env: {} };
  }
  const installed = INSTALLED.find((path) => existsSync(path));
  return installed === undefined ? unpackChromium() : { path: installed, env: {} };
}

/**
 * Unpacks the packaged Chromium with its own libraries and fonts, once a machine and version. Unpacked beside and then put in place: two tests that
 * start at once never see half of it.
 */
function unpackChromium(): Program {
  const entry = pathToFileURL(require.resolve('@sparticuz/chromium')).href;
  const { version } = JSON.parse(readFileSync(new URL('../../package.json', entry), 'utf8')) as { version: string };
  const folder = join(tmpdir(), `onepour-chromium-${version}`);
  if (!existsSync(folder)) {
    const made = mkdtempSync(`${folder}-`);
    const box = join(made, 'box');
    mkdirSync(box);
    try {
      runUnpacking(entry, box);
      renameSync(box, folder);
    } catch (error) {
      if (!existsSync(folder)) throw error;
    } finally {
      rmSync(made, { recursive: true, force: true });
    }
  }
  const libraries = [join(folder, 'al2023', 'lib'), process.env.LD_LIBRARY_PATH].filter(Boolean).join(':');
  return {
    path: join(folder, 'chromium'),
    env: { LD_LIBRARY_PATH: libraries, FONTCONFIG_PATH: join(folder, 'fonts') },
  };
}

/** The package looks at its environment while it is imported, and unpacks into the temporary folder: so in a process of its own. */
function runUnpacking(entry: string, box: string): void {
  const script = `const { default: chromium } = await import(${JSON.stringify(entry)}); await chromium.executablePath();`;
  const done = spawnSync(process.execPath, ['--input-type=module', '-e', script], {
    env: { ...process.env, TMPDIR: box, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs20.x' },
    encoding: 'utf8',
  });
  if (done.status !== 0 || !existsSync(join(box, 'chromium')))
    throw new Error(
      `no browser: the packaged Chromium did not unpack (${done.stderr.trim().split('\n')[0]}); set ONEPOUR_CHROMIUM`,
    );
}

/**
 * Starts one browser without a window. Rejects with one line when none can be had.
 * @param more arguments beside the usual ones
 */
export async function launchChromium(more: readonly string[] = []): Promise<Browser> {
  const { path, env } = findChromium();
  try {
    return await chromium.launch({ executablePath: path, args: [...ARGS, ...more], env: { ...process.env, ...env } });
  } catch (error) {
    const [line] = String(error).split('\n');
    throw new Error(`no browser: ${path} does not start (${line}); set ONEPOUR_CHROMIUM`);
  }
}
