import { signal } from '@preact/signals';
import { beforeEach, describe, expect, it } from 'vitest';
import { foldPiece } from '../../../src/records/fold/fold-piece.ts';
import type { FactRecord } from '../../../src/records/record.ts';
import type { OpenPiece } from '../../../src/web/pieces/read-piece.ts';
import type { WriteDraft } from '../../../src/web/records/record-device.ts';
import { findUndo } from '../../../src/web/yard/state/find-undo.ts';
import { WalkSession } from '../../../src/web/yard/state/walk/walk-session.ts';
import { demoFile, PieceTablet, pieceOf, type SamplePiece } from '../../assess/yard/yard-sample.ts';

const FILE = demoFile();

/** A walk of P13 on a device in memory: what it writes is known at once, as on a tablet. */
class Walk {
  readonly sample: SamplePiece;
  readonly tablet: PieceTablet;
  readonly session: WalkSession;
  /** Nothing can be written while it is set. */
  fault: string | null = null;

  constructor(stage: 1 | 2, sample = pieceOf(FILE, 'P13', '1'), tablet = new PieceTablet(1, sample)) {
    this.sample = sample;
    this.tablet = tablet;
    const id = '1'.padStart(16, 'd');
    this.session = new WalkSession({
      stage,
      device: { id: signal(id), writeAll: (drafts) => this.#write(drafts) },
      read: () => this.read(),
    });
  }

  async #write(drafts: readonly WriteDraft[]): Promise<readonly FactRecord[]> {
    if (this.fault !== null) throw new Error(this.fault);
    const { items } = this.sample.plan.setOut;
    return drafts.map((draft) => {
      const item = items.find(({ castIn }) => castIn.key === draft.item);
      const { kind, body } = draft;
      // One of the kinds with its own body, as the draft has them.
      const record = this.tablet.write('checker', item?.number ?? null, { kind, body } as never, 0);
      const linked = { ...record, chain: { number: this.tablet.written.length, previous: 'a'.repeat(64) } };
      this.tablet.known.set(record.id, linked);
      return linked;
    });
  }

  read(): OpenPiece {
    const { context, head, plan } = this.sample;
    const state = foldPiece(plan.piece, this.tablet.known.values());
    return { id: plan.piece, head, plan, context, state, report: this.tablet.report() };
  }

  /** Types what the tape shows where all is in its place, until no digits are asked for. */
  async tape(off = 0): Promise<void> {
    for (let step = this.session.step.value; step.kind === 'tape'; step = this.session.step.value) {
      const { number, axes, typed } = step;
      const item = this.sample.plan.setOut.items.find((one) => one.number === number)!;
      await this.session.type(Math.round(item.taped[axes[typed.length] === 'x' ? 0 : 1]) + off);
      off = 0;
    }
  }

  /** What the key would take back. */
  undoable(): readonly FactRecord[] {
    return findUndo(this.read().state, '1'.padStart(16, 'd'));
  }

  kinds(): readonly string[] {
    return this.tablet.written.map(({ kind }) => kind);
  }
}

let walk: Walk;

beforeEach(() => {
  walk = new Walk(1);
});

describe('a walk', () => {
  it('begins the piece with its first record, and only then', async () => {
    await walk.session.seeAll();
    await walk.tape();
    expect(walk.kinds().filter((kind) => kind === 'piece-started')).toEqual(['piece-started']);
    expect(walk.kinds()[0]).toBe('piece-started');
  });

  it('goes round with one entry a stop and the digits that are asked for, and ends', async () => {
    const stops = walk.session.stops().length;
    for (let k = 0; k < stops; k += 1) {
      expect(walk.session.step.value.kind).toBe('look');
      await walk.session.seeAll();
      await walk.tape();
    }
    expect(walk.session.step.value.kind).toBe('end');
    expect(walk.read().report.counts[1]).toEqual({ done: 7, left: 0, out: 0 });
  });

  it('stays at an insert that is off, and goes on when it is left', async () => {
    await walk.session.seeAll();
    const step = walk.session.step.value;
    if (step.kind !== 'tape') throw new Error('digits are asked for at the first stop of P13');
    await walk.tape(31);
    expect(walk.session.step.value).toEqual({ kind: 'answer', number: step.number });
    walk.session.goOn();
    expect(walk.session.step.value.kind).not.toBe('answer');
    expect(walk.read().report.counts[1].out).toBe(1);
  });

  it('keeps the others of a stop to be looked at when one differs, and asks no digits of what is wrong', async () => {
    const [first] = walk.session.stops();
    const members = first!.stop.members.map(({ number }) => number);
    expect(members.length).toBeGreaterThan(1);
    await walk.session.takeDifference(members[0]!, { type: false, face: true, firm: true, note: null });
    const after = walk.session.stops()[0]!;
    expect(after.unseen.map(({ number }) => number)).toEqual(members.slice(1));
    expect(after.wrong.map(({ number }) => number)).toEqual([members[0]]);
    expect(after.asks.some(({ number }) => number === members[0])).toBe(false);
    walk.session.goOn();
    await walk.session.seeAll();
    expect(walk.read().report.inserts.find(({ item }) => item.number === members[0])?.state).toBe('out');
  });

  it('takes back all that one tap wrote, once, and then what was before it', async () => {
    await walk.session.seeAll();
    const seen = walk.undoable();
    expect(seen.length).toBe(walk.session.stops()[0]!.stop.members.length);
    await walk.session.undo();
    expect(walk.session.stops()[0]!.unseen.length).toBe(seen.length);
    expect(walk.session.step.value.kind).toBe('look');
    expect(walk.session.said.value).toEqual({ kind: 'taken back', count: seen.length });
    // The beginning of the piece is not taken back by a key.
    expect(walk.undoable()).toEqual([]);
    await walk.session.undo();
    expect(walk.kinds().filter((kind) => kind === 'correction').length).toBe(seen.length);
  });

  it('says that nothing was written down, and loses nothing', async () => {
    walk.fault = 'No room on this device.';
    await walk.session.seeAll();
    expect(walk.session.fault.value).toBe('No room on this device.');
    expect(walk.session.step.value.kind).toBe('look');
    walk.fault = null;
    await walk.session.seeAll();
    expect(walk.session.fault.value).toBeNull();
  });

  it('writes once for two taps at once', async () => {
    await Promise.all([walk.session.seeAll(), walk.session.seeAll()]);
    const members = walk.session.stops()[0]!.stop.members.length;
    expect(walk.kinds().filter((kind) => kind === 'placed').length).toBe(members);
  });

  it('measures by choice with lengths left out, and writes nothing when all are', async () => {
    const number = walk.session.stops()[0]!.stop.members[0]!.number;
    walk.session.measure(number);
    for (let k = 0; k < 3; k += 1) await walk.session.type(null);
    expect(walk.kinds()).toEqual([]);
    walk.session.measure(number);
    await walk.session.type(null);
    await walk.session.type(null);
    await walk.session.type(2);
    const last = walk.tablet.written.at(-1);
    expect(last?.kind === 'measured' && last.body).toMatchObject({ x_mm: null, y_mm: null, level_mm: 2 });
  });

  it('goes on where it was after a reload', async () => {
    await walk.session.seeAll();
    await walk.tape();
    const again = new Walk(1, walk.sample, walk.tablet);
    expect(again.session.at.value).toBe(1);
    expect(again.session.step.value.kind).toBe('look');
  });
});
