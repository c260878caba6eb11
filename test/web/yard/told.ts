import type { Page } from 'playwright-core';
import type { PieceReport } from '../../../src/assess/yard/piece-report.ts';
import { reportPiece } from '../../../src/assess/yard/report-piece.ts';
import { writeCanonical } from '../../../src/job/canonical.ts';
import { foldPiece } from '../../../src/records/fold/fold-piece.ts';
import type { FactRecord } from '../../../src/records/record.ts';
import { readRecord, type StoredRecord } from '../../../src/records/record-text.ts';
import type { OfficeServer } from '../harness/office-server.ts';
import { listStored } from '../records/tablet.ts';
import { tellState } from '../records/tell-state.ts';
import { type Eight, MARK, POUR, SERIALS } from './eight.ts';
import type { Hand } from './hand.ts';

/** The states of all pieces of the pour as canonical text, folded here of records from wherever they are kept. */
export function tellStates(eight: Eight, records: readonly FactRecord[]): string {
  return writeCanonical(eight.pieces().map((piece) => tellState(foldPiece(piece, records))));
}

/** What the server's records come to. */
export async function tellServer(server: OfficeServer, eight: Eight): Promise<string> {
  return tellStates(eight, recordsOf(await listStored(server, eight.id)));
}

function recordsOf(stored: readonly StoredRecord[]): readonly FactRecord[] {
  return stored.map(({ record }) => record);
}

/** Every record that lies on a tablet, read off its disk. */
export async function readTablet(page: Page): Promise<readonly FactRecord[]> {
  const texts = await page.evaluate(
    () =>
      new Promise<string[]>((resolve, reject) => {
        const opening = indexedDB.open('onepour-yard');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const asking = opening.result.transaction('records').objectStore('records').getAll();
          asking.onerror = () => reject(asking.error);
          asking.onsuccess = () => {
            opening.result.close();
            resolve((asking.result as { readonly text: string }[]).map(({ text }) => text));
          };
        };
      }),
  );
  return texts.map((text) => {
    const read = readRecord(text);
    if (!read.ok) throw new Error(`the tablet keeps what is no record: ${read.why}`);
    return read.stored.record;
  });
}

/** What a tablet shows. */
interface Shown {
  /** The pour, a row each piece. */
  readonly rows: readonly string[];
  /** Every record in words, of the pieces that both tablets wrote of, and of the one that is marked anew. */
  readonly histories: readonly string[];
}

/** Reads the pour and histories off the screens of a tablet. */
export async function readScreens({ screen, page }: Hand, eight: Eight): Promise<Shown> {
  await screen.goto(`/yard/pour/${POUR}`);
  await page.getByRole('link', { name: /no\. 8/ }).waitFor();
  const listed = page.getByRole('main').getByRole('listitem');
  // Read from the device one after another.
  await page.waitForFunction(() => document.querySelector('main li[aria-busy]') === null);
  const rows = await listed.allTextContents();
  const histories: string[] = [];
  for (const serial of ['2', '3', '6', '7']) {
    await screen.goto(`/yard/piece/${eight.piece(serial)}/history`);
    await page.getByRole('heading', { level: 1, name: /no\. \d/ }).waitFor();
    histories.push((await page.getByRole('main').textContent()) ?? '');
  }
  return { rows, histories };
}

/** What is to be said of each piece of the mark, computed here of the server's records. */
export async function reportAll(server: OfficeServer, eight: Eight): Promise<ReadonlyMap<string, PieceReport>> {
  const records = recordsOf(await listStored(server, eight.id));
  const context = { index: eight.index, revision: eight.revision, people: eight.people };
  return new Map(
    SERIALS.filter((serial) => serial !== '7').map((serial) => {
      const plan = eight.plan(serial);
      return [serial, reportPiece(context, plan, foldPiece(plan.piece, records), { mark: MARK, serial })];
    }),
  );
}
