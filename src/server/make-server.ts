import helmet from '@fastify/helmet';
import { type FastifyInstance, fastify } from 'fastify';
import type { Store } from '../store/store.ts';
import { addApi } from './api.ts';
import type { Certificate } from './certificate.ts';
import { cutOffWhenClosing } from './closing.ts';
import { wordFaults } from './faults.ts';
import { guard } from './guard.ts';
import { addScreens } from './screens.ts';

/** A job of 5,000 inserts is about 4 MB. */
const BODY_LIMIT = 32 * 1024 * 1024;

/** Scripts, styles and workers from files of this server alone; nothing inline, no other site, in no frame. */
const CONTENT_POLICY = {
  'default-src': ["'self'"],
  'base-uri': ["'none'"],
  'connect-src': ["'self'"],
  'font-src': ["'self'"],
  'form-action': ["'self'"],
  'frame-ancestors': ["'none'"],
  'img-src': ["'self'", 'data:', 'blob:'],
  'object-src': ["'none'"],
  'script-src': ["'self'"],
  'style-src': ["'self'"],
  'worker-src': ["'self'"],
};

export interface ServerOptions {
  readonly store: Store;
  /** Folder of the built screens. */
  readonly webFolder: string;
  /** Names under which the server answers, see `listNames`. */
  readonly names: ReadonlySet<string>;
  /** Null: plain HTTP. */
  readonly certificate: Pick<Certificate, 'cert' | 'key'> | null;
  /** Where a fault of the server itself is told, one text each. */
  readonly tell: (line: string) => void;
}

/** The server, not yet listening. Closing it leaves the store open. */
export async function makeServer(options: ServerOptions): Promise<FastifyInstance> {
  const { store, webFolder, names, certificate, tell } = options;
  const app: FastifyInstance = fastify({
    https: certificate === null ? null : { cert: certificate.cert, key: certificate.key },
    bodyLimit: BODY_LIMIT,
    forceCloseConnections: 'idle',
    return503OnClosing: false,
    routerOptions: { maxParamLength: 200 },
  });
  // Only JSON: a form of another site can send plain text without being asked about it.
  app.removeContentTypeParser('text/plain');
  cutOffWhenClosing(app);
  guard(app, names, certificate === null ? 'http' : 'https');
  await app.register(helmet, {
    contentSecurityPolicy: { useDefaults: false, directives: CONTENT_POLICY },
    // A browser would hold to HTTPS for months, under names that may speak plain HTTP again tomorrow, and for every other port of this machine.
    strictTransportSecurity: false,
  });
  wordFaults(app, tell);
  await addApi(app, store);
  await addScreens(app, webFolder);
  return app;
}
