import type { FastifyInstance } from 'fastify';
import { StoreError } from '../store/job-store.ts';
import { DiskFullError } from '../store/record-store.ts';
import { openSqliteStore } from '../store/sqlite/open-sqlite.ts';
import type { Store } from '../store/store.ts';
import { type CertificateFiles, readCertificate, tellCertificate } from './certificate.ts';
import { listNames } from './guard.ts';
import { makeServer } from './make-server.ts';
import { OfficeError } from './office-error.ts';

/** The office's own port; where another program has it, the next free one is looked for among so many. */
const USUAL_PORT = 4180;
const PORTS_TRIED = 20;

export interface OfficeOptions {
  /** The file of the store; made where there is none. */
  readonly storePath: string;
  /** The address to listen at. */
  readonly host: string;
  /** Null: the usual one or the next that is free. */
  readonly port: number | null;
  /** Null: plain HTTP. */
  readonly certificate: CertificateFiles | null;
  readonly webFolder: string;
  /** What to do with the store before anybody can call. */
  readonly prepare: (store: Store) => Promise<void>;
  readonly tell: (line: string) => void;
}

/** A running office. */
export interface Office {
  readonly address: string;
  readonly port: number;
  /** The port that was wanted and is taken; null: none. */
  readonly takenPort: number | null;
  /** Ends when all calls under way are answered; the data are whole either way. */
  readonly stop: () => Promise<void>;
}

function isTaken(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
}

function wordListenFault(error: unknown, host: string, port: number): string {
  if (isTaken(error)) return `port ${port} of ${host} is taken; name another with --port, or leave --port out`;
  return `cannot listen at ${host}, port ${port}: ${error instanceof Error ? error.message : error}`;
}

async function listen(app: FastifyInstance, { host, port }: OfficeOptions): Promise<number> {
  const wanted = port ?? USUAL_PORT;
  const tried = port === null ? PORTS_TRIED : 1;
  for (let next = wanted; ; next += 1) {
    try {
      await app.listen({ host, port: next });
      const bound = app.server.address();
      return typeof bound === 'object' && bound !== null ? bound.port : next;
    } catch (error) {
      const isLast = next - wanted + 1 >= tried;
      if (!isTaken(error) || isLast) throw new OfficeError(wordListenFault(error, host, next));
    }
  }
}

async function openStore(path: string): Promise<Store> {
  try {
    return await openSqliteStore(path);
  } catch (error) {
    if (error instanceof StoreError || error instanceof DiskFullError) throw new OfficeError(error.message);
    throw error;
  }
}

/**
 * Opens the store, prepares it and serves it.
 * @throws OfficeError when the store is in use or no store, the port is taken, or the certificate cannot be used
 */
export async function startOffice(options: OfficeOptions): Promise<Office> {
  const { storePath, host, webFolder, prepare, tell } = options;
  const certificate = options.certificate === null ? null : readCertificate(options.certificate);
  const store = await openStore(storePath);
  try {
    await prepare(store);
    const names = listNames(host, certificate?.names);
    const app = await makeServer({ store, webFolder, names, certificate, tell });
    const port = await listen(app, options);
    if (certificate !== null) for (const line of tellCertificate(certificate, new Date())) tell(line);
    return {
      address: `${certificate === null ? 'http' : 'https'}://${host.includes(':') ? `[${host}]` : host}:${port}/`,
      port,
      takenPort: options.port === null && port !== USUAL_PORT ? USUAL_PORT : null,
      stop: async () => {
        await app.close();
        await store.close();
      },
    };
  } catch (error) {
    await store.close();
    throw error;
  }
}
