import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { ROOT } from '../cli/run-command.ts';

/** A running office, as the shell command starts it. */
export interface OfficeProcess {
  readonly child: ChildProcess;
  readonly address: string;
  /** Everything that it printed so far. */
  readonly printed: () => string;
  /** Ends it and waits until it is gone; gives its exit code, null where a signal ended it. */
  readonly end: (signal: 'SIGINT' | 'SIGTERM' | 'SIGKILL') => Promise<number | null>;
}

/** Runs what follows with a longest length for the files that it writes, in blocks as the shell counts them (512 or 1024 bytes). */
const WITH_LIMIT = 'ulimit -f "$0" && exec "$@"';

/**
 * Starts the built command and waits until it says where it is.
 * @param longestFile the system takes no longer file of it [blocks of the shell]; left out: as long as the disk takes
 * @throws Error with what it printed when it ends instead
 */
export async function startOffice(args: readonly string[], longestFile?: number): Promise<OfficeProcess> {
  const command = [process.execPath, join(ROOT, 'bin/onepour.js'), 'office', ...args];
  const [program = '', ...rest] =
    longestFile === undefined ? command : ['sh', '-c', WITH_LIMIT, `${longestFile}`, ...command];
  const child = spawn(program, rest, { stdio: ['ignore', 'pipe', 'pipe'] });
  let printed = '';
  const address = await new Promise<string>((resolve, reject) => {
    const add = (chunk: string) => {
      printed += chunk;
      const found = /Onepour office: (https?:\/\/\S+)/.exec(printed)?.[1];
      if (found !== undefined) resolve(found);
    };
    child.stdout.setEncoding('utf8').on('data', add);
    child.stderr.setEncoding('utf8').on('data', add);
    child.on('close', (code) => reject(new Error(`ended with ${code}: ${printed}`)));
  });
  const end = async (signal: 'SIGINT' | 'SIGTERM' | 'SIGKILL') => {
    const closed = once(child, 'close');
    child.kill(signal);
    const [code] = await closed;
    return code as number | null;
  };
  return { child, address, printed: () => printed, end };
}
