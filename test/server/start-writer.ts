import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { ROOT } from '../cli/run-command.ts';
import { sampleJob } from '../job/sample-job.ts';
import type { OfficeProcess } from './office-process.ts';

/** A process that sends without end and notes what was acknowledged. */
export interface Writer {
  readonly child: ChildProcess;
  readonly notes: string;
  /** Ends it in the midst of what it does. */
  readonly drop: () => void;
  readonly isRunning: () => boolean;
  readonly end: () => Promise<{ readonly sent: number; readonly cut: number; readonly refused: number }>;
}

/**
 * Starts a writer.
 * @param script in this folder; its arguments are the address, the name and the file of its notes
 */
export function startWriter(script: string, address: string, name: string, folder: string): Writer {
  const notes = join(folder, `${name}.txt`);
  const child = spawn(process.execPath, [join(ROOT, 'test/server', script), address, name, notes], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  let printed = '';
  child.stdout.setEncoding('utf8').on('data', (chunk: string) => {
    printed += chunk;
  });
  const end = async () => {
    const closed = once(child, 'close');
    child.stdin.end();
    await closed;
    return JSON.parse(printed);
  };
  return { child, notes, end, drop: () => child.kill('SIGKILL'), isRunning: () => child.exitCode === null };
}

/** What a writer noted: the words of each line. A line that is not whole was not acknowledged to it. */
export function readNotes(notes: string): string[][] {
  if (!existsSync(notes)) return [];
  const lines = readFileSync(notes, 'utf8').split('\n').slice(0, -1);
  return lines.map((line) => line.split(' '));
}

/** Waits until more is acknowledged than before. */
export async function waitForNotes(writers: readonly Writer[], office: OfficeProcess): Promise<void> {
  const count = () => writers.reduce((sum, { notes }) => sum + readNotes(notes).length, 0);
  const [before, start] = [count(), Date.now()];
  while (count() === before) {
    if (Date.now() - start > 20_000) throw new Error(`nothing is saved: ${office.printed()}`);
    await wait(10);
  }
}

/** Puts the sample job into a running office; gives its id. */
export async function createJob({ address }: OfficeProcess): Promise<string> {
  const made = await fetch(`${address}api/jobs`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ file: sampleJob() }),
  });
  // The contract of the call.
  return ((await made.json()) as { id: string }).id;
}
