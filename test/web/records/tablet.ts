import type { Browser, BrowserContext, Page } from 'playwright-core';
import { writeCanonical } from '../../../src/job/canonical.ts';
import { foldPiece } from '../../../src/records/fold/fold-piece.ts';
import { namePiece } from '../../../src/records/name-piece.ts';
import { readRecord, type StoredRecord } from '../../../src/records/record-text.ts';
import { checkDeviceChains } from '../../../src/records/verify/check-device-chains.ts';
import type { Finding } from '../../../src/records/verify/finding.ts';
import type { SyncState } from '../../../src/web/records/record-device.ts';
import { bringIn } from '../harness/bring-in.ts';
import type { OfficeServer } from '../harness/office-server.ts';
import type * as pageSide from './tablet-page.ts';
import type { Contents, TabletPage } from './tablet-page.ts';
import { tellState } from './tell-state.ts';

export const CHECKER = 'demochecker1';
export const QA = 'demoquality1';

/** What `bringIn` and `start` put on the page. */
interface Brought {
  readonly brought: typeof pageSide;
  tablet: TabletPage;
}

/** A tablet of its own: one browser context with a page that has records and no screens. */
export class Tablet {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly #address: string;

  private constructor(page: Page, address: string) {
    this.page = page;
    this.context = page.context();
    this.#address = address;
  }

  /** @param script runs before the scripts of each page */
  static async open(browser: Browser, server: OfficeServer, script?: () => void): Promise<Tablet> {
    const context = await browser.newContext();
    if (script !== undefined) await context.addInitScript(script);
    // Given without the network, so that it is there when the network is not.
    await context.route('**/tablet', (route) =>
      route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>tablet</title>' }),
    );
    return Tablet.#show(context, server.address);
  }

  static async #show(context: BrowserContext, address: string): Promise<Tablet> {
    const tablet = new Tablet(await context.newPage(), address);
    await tablet.load();
    return tablet;
  }

  /** Another tab of the same browser. */
  openBeside(): Promise<Tablet> {
    return Tablet.#show(this.context, this.#address);
  }

  /** Loads the page, anew where it was loaded. */
  async load(): Promise<void> {
    await this.page.goto(`${this.#address}/tablet`);
    await bringIn(this.page, 'test/web/records/tablet-page.ts', 'brought');
  }

  async start(job: string | null = null, person: string | null = null, isNewer = false): Promise<this> {
    await this.page.evaluate(
      async ([id, who, newer]) => {
        const global = globalThis as unknown as Brought;
        global.tablet = await global.brought.startTablet(id, who, newer);
      },
      [job, person, isNewer] as const,
    );
    return this;
  }

  /** Everything on its disk. */
  copyOut(): Promise<Contents> {
    return this.page.evaluate(() => (globalThis as unknown as Brought).brought.copyOut());
  }

  copyIn(contents: Contents): Promise<void> {
    // As text: what lies in a database may be of any depth for the compiler.
    return this.page.evaluate(
      (text) => (globalThis as unknown as Brought).brought.copyIn(JSON.parse(text)),
      JSON.stringify(contents),
    );
  }

  /** Calls something of the tablet on its page. */
  run<T, A>(act: (tablet: TabletPage, given: A) => T | Promise<T>, given: A): Promise<T> {
    return this.page.evaluate(
      ([source, value]) => {
        const { tablet } = globalThis as unknown as Brought;
        // A function that the test wrote, sent as its text.
        const called = new Function(`return (${source})`)() as (tablet: TabletPage, given: A) => T;
        return called(tablet, value as A);
      },
      [act.toString(), given] as const,
    ) as Promise<T>;
  }

  sync(): Promise<SyncState> {
    return this.run((tablet) => tablet.sync(), null);
  }

  look(piece: string, item: string, isRight = true): Promise<string> {
    return this.run((tablet, [of, at, right]) => tablet.look(of, at, right), [piece, item, isRight] as const);
  }

  states(pieces: readonly string[]): Promise<string> {
    return this.run((tablet, ids) => tablet.states(ids), pieces);
  }

  syncNow(): Promise<void> {
    return this.run((tablet) => tablet.device.syncNow(), null);
  }
}

/** The demo job of the server. */
export async function findJob(server: OfficeServer): Promise<string> {
  const { jobs } = (await (await fetch(`${server.address}/api/jobs`)).json()) as { jobs: { id: string }[] };
  return jobs[0]!.id;
}

/** Everything that the server has of a job, as it was sent. */
export async function listStored(server: OfficeServer, job: string): Promise<readonly StoredRecord[]> {
  const stored: StoredRecord[] = [];
  for (let after = 0; ; ) {
    const answer = await fetch(`${server.address}/api/jobs/${job}/records?after=${after}`);
    const { records, isAll } = (await answer.json()) as { records: { number: number; text: string }[]; isAll: boolean };
    for (const { text } of records) {
      const read = readRecord(text);
      if (!read.ok) throw new Error(`the server keeps a text that is no record: ${read.why}`);
      stored.push(read.stored);
    }
    if (isAll) return stored;
    after = records.at(-1)!.number;
  }
}

/** What the server's records say of pieces, as `Tablet.states` tells it. */
export async function foldStored(server: OfficeServer, job: string, pieces: readonly string[]): Promise<string> {
  const records = (await listStored(server, job)).map(({ record }) => record);
  return writeCanonical(pieces.map((piece) => tellState(foldPiece(piece, records))));
}

/** The id of a casting of a panel that is only there for a test. */
export const pieceOf = (job: string, serial: string) => namePiece(job, 'panel-of-a-test', serial);

/** How the devices' chains stand, by the check that `onepour verify` makes. */
export function checkChains(stored: readonly StoredRecord[]): readonly Finding[] {
  const links = stored.map(({ record, hash }, place) => {
    const { device, id, piece, typedAt } = record;
    const { number, previous } = record.chain;
    return { device, number, previous, hash, at: { line: place + 1, id, device, number, piece, typedAt } };
  });
  return checkDeviceChains(links, true);
}
