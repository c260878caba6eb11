import { existsSync, readFileSync } from 'node:fs';
import { readExport } from '../records/export.ts';
import { checkExport } from '../records/verify/check-export.ts';
import type { WrittenHead } from '../records/verify/check-lines.ts';
import type { Finding } from '../records/verify/finding.ts';
import { type FindingNames, tellFinding } from '../say/finding-words.ts';
import { countOf } from '../say/part-words.ts';
import { StoreError } from '../store/job-store.ts';
import { openSqliteStore } from '../store/sqlite/open-sqlite.ts';
import { EXIT, UsageError } from './exit-codes.ts';
import { type VerifiedStore, verifyStore } from './verify-store.ts';

export interface VerifyFlags {
  readonly store: string;
  readonly file?: string;
  readonly head?: string;
  readonly json?: boolean;
}

/** What is printed: what was looked at, what was found, what remains to be done. */
interface Page {
  readonly looked: string;
  readonly findings: readonly Finding[];
  readonly names: FindingNames;
  readonly head: WrittenHead | null;
  readonly last: readonly string[];
}

/** So many digits of a hash tell it from any other that a person could make. */
const LEAST_DIGITS = 12;

function readHead(text: string | undefined): WrittenHead | null {
  if (text === undefined) return null;
  const parts = /^(\d{1,15}):([0-9a-f]{12,64})$/.exec(text.trim().toLowerCase());
  if (parts !== null && Number(parts[1]) > 0) return { number: Number(parts[1]), hash: parts[2]! };
  throw new UsageError(
    `--head "${text}": expected NUMBER:HASH as it was printed, at least ${LEAST_DIGITS} digits of the hash`,
  );
}

async function readStore(path: string, head: WrittenHead | null): Promise<VerifiedStore> {
  if (!existsSync(path)) throw new UsageError(`${path} is not there: name the store with --store FILE`);
  const store = await openSqliteStore(path).catch((error: unknown) => {
    if (error instanceof StoreError) throw new UsageError(error.message);
    throw error;
  });
  try {
    return await verifyStore(store, head);
  } finally {
    await store.close();
  }
}

async function lookAtStore(path: string, head: WrittenHead | null): Promise<Page> {
  const found = await readStore(path, head);
  const { records, jobs, devices, photos } = found;
  const end = found.head;
  return {
    looked: `${path}: ${countOf(records, 'record')} of ${countOf(jobs, 'job')} and ${countOf(devices, 'device')}, ${countOf(photos, 'photo')}`,
    findings: found.findings,
    names: { piece: (id) => found.pieces.get(id) ?? null, lines: 'log' },
    head: end,
    last:
      end === null
        ? ['The log has no record yet.']
        : [
            `Head: ${end.number}:${end.hash}`,
            'Write it down where nobody who has the store can change it. With --head it tells later whether anything up to here was changed;',
            'without it nothing tells that records were taken off the end, or that all hashes were made anew.',
          ],
  };
}

function lookAtFile(path: string): Page {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    throw new UsageError(`${path} cannot be read: ${error instanceof Error ? error.message : error}`);
  }
  const read = readExport(text);
  if (!read.ok) throw new UsageError(`${path}: ${read.why}`);
  const { job, device, texts } = read.value;
  return {
    looked: `${path}: ${countOf(texts.length, 'text')} of job ${job}, written by device ${device}`,
    findings: checkExport(read.value),
    names: { piece: () => null, lines: 'file' },
    head: null,
    last: ['The last record of each device is held by no other: a change of it shows in no file.'],
  };
}

/** Looks whether records are as they were written, in a store or in a file of unsent ones. */
export async function runVerify(flags: VerifyFlags): Promise<number> {
  const head = readHead(flags.head);
  if (flags.file !== undefined && head !== null)
    throw new UsageError('--head is of the log of a store: it cannot be asked of a file of unsent records');
  const page = flags.file === undefined ? await lookAtStore(flags.store, head) : lookAtFile(flags.file);
  const lines = page.findings.map((finding) => tellFinding(finding, page.names));
  if (flags.json === true) {
    const findings = page.findings.map((finding, index) => ({ ...finding, words: lines[index] }));
    process.stdout.write(`${JSON.stringify({ looked: page.looked, findings, head: page.head }, null, 2)}\n`);
  } else {
    const count = lines.length === 0 ? 'Nothing found.' : `${countOf(lines.length, 'finding')}:`;
    process.stdout.write(`${[page.looked, count, ...lines, ...page.last].join('\n')}\n`);
  }
  return lines.length === 0 ? EXIT.pass : EXIT.notPassed;
}
