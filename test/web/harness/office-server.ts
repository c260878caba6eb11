import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = dirname(dirname(dirname(dirname(fileURLToPath(import.meta.url)))));
const ADDRESS = /http:\/\/127\.0\.0\.1:(\d+)\//;
const START_MS = 20_000;
/** Its file, and what its program keeps beside it, begin so. */
const STORE = 'office.db';

/** The real server on a copy of what was built, so that a build meanwhile changes nothing, with its data in a folder of its own. */
export class OfficeServer {
  readonly folder: string;
  readonly #hasDemo: boolean;
  #child: ChildProcess | null = null;
  #port = 0;

  private constructor(hasDemo: boolean) {
    if (!existsSync(join(ROOT, 'dist', 'web', 'assets.json')))
      throw new Error('dist/web/ is not built; run "npm run build" first');
    this.#hasDemo = hasDemo;
    this.folder = mkdtempSync(join(tmpdir(), 'onepour-office-'));
    cpSync(join(ROOT, 'dist'), join(this.folder, 'dist'), { recursive: true });
    for (const name of ['node_modules', 'demo', 'package.json'])
      symlinkSync(join(ROOT, name), join(this.folder, name), name === 'node_modules' ? 'junction' : null);
  }

  /** @param hasDemo whether an empty store gets the demo job */
  static async start(hasDemo: boolean): Promise<OfficeServer> {
    const server = new OfficeServer(hasDemo);
    await server.restart();
    return server;
  }

  /** Such as `http://127.0.0.1:40123`. */
  get address(): string {
    return `http://127.0.0.1:${this.#port}`;
  }

  /** The folder of what was built. */
  get web(): string {
    return join(this.folder, 'dist', 'web');
  }

  /** Starts it, at the same address where it ran before. */
  async restart(): Promise<void> {
    if (this.#child !== null) throw new Error('the server runs already; expected `stop` or `kill` before');
    const store = join(this.folder, STORE);
    const args = ['office', '--port', String(this.#port), '--store', store, ...(this.#hasDemo ? ['--demo'] : [])];
    const child = spawn(process.execPath, [join(this.folder, 'dist', 'cli.js'), ...args], {
      cwd: this.folder,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    this.#child = child;
    this.#port = await readPort(child);
  }

  /** Asks it to end, as Ctrl+C does, and waits. */
  stop(): Promise<void> {
    return this.#end('SIGTERM');
  }

  /** Ends it at once, as a power cut does. */
  kill(): Promise<void> {
    return this.#end('SIGKILL');
  }

  /** It takes connections and answers nothing, as a line that is there and carries nothing; the answer ends that. */
  freeze(): () => void {
    const child = this.#child;
    child?.kill('SIGSTOP');
    return () => child?.kill('SIGCONT');
  }

  /** Copies the store of a server that does not run; the answer stops it and puts the copy back in its place. */
  copyStore(): () => Promise<void> {
    if (this.#child !== null) throw new Error('the server runs; expected `stop` before its store is copied');
    const copy = join(this.folder, 'store-copy');
    const listStore = (folder: string) => readdirSync(folder).filter((name) => name.startsWith(STORE));
    mkdirSync(copy);
    for (const name of listStore(this.folder)) cpSync(join(this.folder, name), join(copy, name));
    return async () => {
      await this.stop();
      for (const name of listStore(this.folder)) rmSync(join(this.folder, name));
      for (const name of listStore(copy)) cpSync(join(copy, name), join(this.folder, name));
    };
  }

  async remove(): Promise<void> {
    await this.stop();
    rmSync(this.folder, { recursive: true, force: true });
  }

  async #end(signal: 'SIGTERM' | 'SIGKILL'): Promise<void> {
    const child = this.#child;
    this.#child = null;
    if (child === null || child.exitCode !== null || child.signalCode !== null) return;
    const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
    child.kill(signal);
    // A server that does not end when it is asked to must not outlive the test.
    const late = setTimeout(() => child.kill('SIGKILL'), 5_000);
    await ended;
    clearTimeout(late);
  }
}

/** The port that the server names on its first lines. */
function readPort(child: ChildProcess): Promise<number> {
  return new Promise((resolve, reject) => {
    let said = '';
    const fail = (why: string) => {
      clearTimeout(late);
      child.kill('SIGKILL');
      reject(new Error(`the office did not start: ${why}\n${said.trim()}`));
    };
    const late = setTimeout(() => fail(`no address within ${START_MS} ms`), START_MS);
    child.stderr!.setEncoding('utf8').on('data', (text: string) => {
      said += text;
    });
    child.stdout!.setEncoding('utf8').on('data', (text: string) => {
      said += text;
      const found = ADDRESS.exec(said);
      if (found === null) return;
      clearTimeout(late);
      resolve(Number(found[1]));
    });
    child.once('error', (error) => fail(error.message));
    child.once('exit', (code) => fail(`it ended with code ${code}`));
  });
}
