import { afterEach, beforeEach, expect, vi } from 'vitest';
import { messages } from '../../../src/web/office/state/messages.ts';
import { JobSession } from '../../../src/web/office/state/session.ts';
import { sampleFile } from '../../store/edits.ts';
import { HeldServer } from './held-server.ts';
import { device, page } from './memory-outbox.ts';

/** What the tests of one file work with: one job on a real server, and pages without a browser. */
export interface Pages {
  readonly server: HeldServer;
  readonly id: string;
  open(): Promise<JobSession>;
  /** Opens the job again as a page that was loaded anew does; nothing more comes of the one before. */
  reload(session: JobSession): Promise<JobSession>;
  /** Page and server have the same job. */
  agree(session: JobSession): Promise<void>;
}

/** Long enough for the device to have what was given to it. */
export const aMoment = () => new Promise<void>((resolve) => setTimeout(resolve, 20));

/** A server for each test, and pages that end with it. The file of the tests puts `MemoryOutbox` and `editors` in place of what a browser gives. */
export function usePages(): Pages {
  const now: { server?: HeldServer; id: string } = { id: '' };
  const sessions: JobSession[] = [];
  const getServer = () => {
    if (now.server === undefined) throw new Error('the server is not started; expected inside a test');
    return now.server;
  };
  const open = async () => {
    const session = await JobSession.open(now.id);
    if (typeof session === 'string') throw new Error(`the job was not opened: ${session}`);
    sessions.push(session);
    return session;
  };

  beforeEach(async () => {
    now.server = await HeldServer.start();
    now.id = await now.server.create(sampleFile());
    vi.stubGlobal('fetch', now.server.fetch);
    const events = new EventTarget();
    vi.stubGlobal('addEventListener', events.addEventListener.bind(events));
    vi.stubGlobal('removeEventListener', events.removeEventListener.bind(events));
    vi.stubGlobal('dispatchEvent', events.dispatchEvent.bind(events));
    Object.assign(page, { editor: 'a', open: new Set() });
    device.edits.clear();
    device.isBroken = false;
    messages.value = [];
  });

  afterEach(async () => {
    getServer().isAway = true;
    for (const session of sessions.splice(0)) session.close();
    await aMoment();
    vi.unstubAllGlobals();
    await getServer().end();
  });

  return {
    get server() {
      return getServer();
    },
    get id() {
      return now.id;
    },
    open,
    reload: async (session) => {
      const server = getServer();
      const wasAway = server.isAway;
      server.isAway = true;
      session.close();
      await aMoment();
      server.isAway = wasAway;
      return open();
    },
    agree: async (session) => {
      await isSaved(session);
      const { version, file } = await getServer().read(now.id);
      expect(session.saver.version).toBe(version);
      expect(session.file).toEqual(file);
    },
  };
}

export const renumber = (session: JobSession, number: string) =>
  session.commit(`number ${number}`, ({ job }) => {
    job.project.number = number;
  });

export const numberOf = (session: JobSession) => session.file.job.project.number;

export const isSaved = (session: JobSession) =>
  expect.poll(() => session.saver.saving.value.kind, { timeout: 5000 }).toBe('saved');

export const isInConflict = (session: JobSession) =>
  expect.poll(() => session.conflict.value?.kept, { timeout: 5000 }).toBe('on the server');

/** The lines that the person was told. */
export const told = () => messages.value.map(({ text }) => text).join('\n');
