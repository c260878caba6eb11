import type { CertificateFiles } from '../server/certificate.ts';
import { OfficeError } from '../server/office-error.ts';
import { startOffice } from '../server/start-office.ts';
import type { Store } from '../store/store.ts';
import { EXIT, UsageError } from './exit-codes.ts';
import { fromRoot } from './from-root.ts';
import { loadJob } from './load-job.ts';
import { addDemo } from './office-demo.ts';

export interface OfficeFlags {
  readonly port?: string;
  readonly host: string;
  readonly store: string;
  readonly demo?: boolean;
  readonly certificate?: string;
  readonly key?: string;
}

const LOOPBACK = new Set(['127.0.0.1', 'localhost', '::1']);

function readPort(text: string | undefined): number | null {
  if (text === undefined) return null;
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  if (port >= 0 && port <= 65_535) return port;
  throw new UsageError(`--port "${text}": expected a number from 0 to 65535, 0 for any that is free`);
}

function pairFiles({ certificate, key }: OfficeFlags): CertificateFiles | null {
  if (certificate === undefined && key === undefined) return null;
  if (certificate !== undefined && key !== undefined) return { certificate, key };
  throw new UsageError(
    certificate === undefined
      ? '--key without --certificate: for HTTPS both are needed'
      : '--certificate without --key: for HTTPS both are needed',
  );
}

async function prepareDemo(store: Store): Promise<void> {
  const [earlier, later] = ['demo/job-rev-a.json', 'demo/job.json'].map((path) => loadJob(fromRoot(path)).file);
  if (earlier !== undefined && later !== undefined) await addDemo(store, earlier, later, new Date());
}

/** Waits for Ctrl+C, or for the word of whoever started the process. */
function waitForEnd(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
}

/** Runs the office until it is stopped. */
export async function runOffice(flags: OfficeFlags): Promise<number> {
  const { port, host, store, demo } = flags;
  const tell = (line: string) => process.stderr.write(`onepour office: ${line}\n`);
  const office = await startOffice({
    storePath: store,
    host,
    port: readPort(port),
    certificate: pairFiles(flags),
    webFolder: fromRoot('dist/web'),
    prepare: demo === true ? prepareDemo : async () => {},
    tell,
  }).catch((error: unknown) => {
    if (error instanceof OfficeError) throw new UsageError(`onepour office: ${error.message}`);
    throw error;
  });
  const end = waitForEnd();
  if (office.takenPort !== null) tell(`port ${office.takenPort} is taken, so this is port ${office.port}`);
  if (!LOOPBACK.has(host)) tell('there are no accounts: whoever reaches this address can read and change every job');
  process.stdout.write(`Onepour office: ${office.address}  jobs are kept in ${store}  stop with Ctrl+C\n`);
  await end;
  await office.stop();
  return EXIT.pass;
}
