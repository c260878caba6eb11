import { describe, expect, it } from 'vitest';
import { takeOffPanel } from '../../../src/assess/parts/take-off.ts';
import { findNeededEngagement, proveThread, reportStripped } from '../../../src/assess/yard/after-stripping.ts';
import { foldPiece } from '../../../src/records/fold/fold-piece.ts';
import type { BodyOf, KindAndBody } from '../../../src/records/record.ts';
import { tellPartBack } from '../../../src/say/piece-words.ts';
import { demoFile, PieceTablet, pieceOf } from './yard-sample.ts';

const sample = pieceOf(demoFile(), 'P12', '1');

function uncovered(changes: Partial<BodyOf<'uncovered'>> = {}): KindAndBody {
  const all = { plateOff: true, mortarOut: true, thread: true, turns: null, capBack: true, note: null };
  return { kind: 'uncovered', body: { ...all, ...changes } };
}

function reportOf(tablet: PieceTablet) {
  return reportStripped(sample.context, sample.plan, foldPiece(sample.plan.piece, tablet.known.values()));
}

describe('a thread tried by hand', () => {
  // Turns times pitch: M16 has 2 mm, M12 1.75 mm (ISO 261).
  it.each([
    ['M16', 6, 16, 12, false],
    ['M16', 7.5, 16, 15, false],
    ['M16', 8, 16, 16, true],
    ['M12', 6, 12, 10.5, false],
    ['M12', 7, 12, 12.25, true],
  ] as const)('%s, %s turns, %s mm needed: %s mm, %s', (thread, turns, needed, engagement, isEnough) => {
    expect(proveThread(thread, turns, needed)).toEqual({ thread, turns, engagement, needed, isEnough });
  });
  it('needs what its connection asks, else what the rules say in diameters', () => {
    const [first, second] = sample.plan.setOut.items;
    expect([first!, second!].map((item) => findNeededEngagement(sample.context.index, 'P12', item))).toEqual([16, 12]);
    const asked = pieceOf(
      demoFile((file) => ({
        ...file,
        job: {
          ...file.job,
          connections: file.job.connections.map((one) => (one.mark === 'C40' ? { ...one, engagement_mm: 22 } : one)),
        },
      })),
      'P12',
      '1',
    );
    expect(findNeededEngagement(asked.context.index, 'P12', asked.plan.setOut.items[0]!)).toBe(22);
  });
});

describe('what came out of the form', () => {
  it('is not known before somebody looked', () => {
    const report = reportOf(new PieceTablet(1, sample));
    expect([report.isStripped, report.isOpenedUp]).toEqual([false, false]);
    expect(report.parts.length).toBeGreaterThan(0);
    expect(report.parts.every(({ back }) => back === null)).toBe(true);
    expect(report.inserts.flatMap(({ faults }) => faults)).toEqual([]);
  });
  it('is counted against what the set-out takes of what is used again', () => {
    const tablet = new PieceTablet(1, sample);
    const out = takeOffPanel(sample.plan.setOut).lines.filter(({ kind }) => kind.reuse !== null);
    const plates = out.map(({ kind, count }, place) => ({
      part: kind.id,
      out: count,
      back: count - (place === 0 ? 1 : 0),
    }));
    tablet.write('setter', null, { kind: 'stripped', body: { plates: [...plates, { part: 'odd', out: 2, back: 2 }] } });
    const { parts, isStripped } = reportOf(tablet);
    expect(isStripped).toBe(true);
    expect(parts.map(({ part, out: taken, back }) => [part, taken, back])).toEqual([
      ...plates.map(({ part, out: taken, back }) => [part, taken, back]),
      ['odd', 2, 2],
    ]);
    expect(tellPartBack(parts[0]!)).toMatch(/: \d+ out, \d+ back, 1 missing$/);
    expect(tellPartBack(parts.at(-1)!)).toBe('odd: all 2 back');
  });
  it('is as it must be by one record, but for the inserts that somebody named', () => {
    const tablet = new PieceTablet(1, sample);
    tablet.write('setter', null, uncovered());
    tablet.write('setter', 1, uncovered({ mortarOut: false, turns: 6 }));
    tablet.write('setter', 2, uncovered({ turns: 7 }));
    const { inserts, isOpenedUp } = reportOf(tablet);
    expect(isOpenedUp).toBe(true);
    expect(inserts.map(({ item, faults }) => [item.number, faults.length])).toEqual([
      [1, 2],
      [2, 0],
      [4, 0],
      [5, 0],
      [6, 0],
      [7, 0],
    ]);
    expect(inserts[0]?.faults).toEqual([
      'mortar is in it',
      'M16: 6 turns are 12 mm of thread, 16 mm needed: clean it by hand and try again, never tap a galvanised thread; else the design engineer decides',
    ]);
  });
  it('counts the fewest turns where two counted, and the worse of two looks', () => {
    const [one, other] = [new PieceTablet(1, sample), new PieceTablet(2, sample)];
    one.write('setter', 1, uncovered({ turns: 8, plateOff: false }));
    other.write('checker', 1, uncovered({ turns: 6 }));
    one.learn(other);
    const [first] = reportOf(one).inserts;
    expect(first).toMatchObject({ proof: { turns: 6, isEnough: false } });
    expect(first?.faults[0]).toBe('its plate is still on');
  });
  it('has its caps back when somebody brings one', () => {
    const tablet = new PieceTablet(1, sample);
    tablet.write('setter', 1, uncovered({ capBack: false }));
    expect(reportOf(tablet).inserts[0]?.faults).toEqual(['its cap is not back in']);
    tablet.write('setter', 1, { kind: 'cap', body: { is: 'back in' } });
    expect(reportOf(tablet).inserts[0]?.faults).toEqual([]);
    tablet.write('setter', 1, { kind: 'cap', body: { is: 'missing' } });
    expect(reportOf(tablet).inserts[0]).toMatchObject({ cap: 'missing', faults: ['its cap is not back in'] });
    tablet.write('setter', 2, { kind: 'cap', body: { is: 'missing' } });
    expect(reportOf(tablet).inserts[1]?.faults).toEqual(['its cap is missing']);
  });
});
