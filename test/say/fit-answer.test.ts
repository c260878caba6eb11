import { describe, expect, it } from 'vitest';
import type { Remedy } from '../../src/assess/as-cast/as-cast-report.ts';
import { answerFit, pickFit } from '../../src/say/fit-answer.ts';
import { tellAsCast, tellClearanceLeft, tellPlateMove } from '../../src/say/fit-words.ts';
import { answerConnection } from '../../src/web/pieces/as-cast/plate-subject.ts';
import { castOf, connectionOf, type Offs, reportOff, reportOn, surveyed } from '../assess/as-cast/casts.ts';

const { sample } = castOf('P01');
const ask = (mark: string, offs: Offs) => answerConnection(sample, connectionOf(reportOff('P01', offs), mark));
const length = (mm: number) => `${Number(mm.toFixed(1))} mm`;
const move = (dx_mm: number, dy_mm: number, turn_deg = 0): Remedy['change']['move'] => ({ dx_mm, dy_mm, turn_deg });
const FACE = { face: 'inside', turn_deg: 0 } as const;

describe('a movement as one makes it', () => {
  const panel = { drawnFace: 'outside' } as const;

  it('is told left and right, up and down, as one stands before the plate', () => {
    expect(tellPlateMove(move(4, -2), FACE, panel, length)).toBe('4 mm to the right and 2 mm down');
    expect(tellPlateMove(move(-4, 0, 0.3), FACE, panel, length)).toBe(
      '4 mm to the left, turned 0.3° counter-clockwise',
    );
    expect(tellPlateMove(move(0, 0, -0.3), FACE, panel, length)).toBe('turned 0.3° clockwise');
    expect(tellPlateMove(move(0.01, 0), FACE, panel, length)).toBeNull();
    expect(tellPlateMove(null, FACE, panel, length)).toBeNull();
  });

  it('turns with the plate: its own x may point up', () => {
    expect(tellPlateMove(move(4, 0), { ...FACE, turn_deg: 90 }, panel, length)).toBe('4 mm up');
  });

  it('in an edge goes toward or away from the drawn face', () => {
    expect(tellPlateMove(move(0, 3), { face: 'edge', turn_deg: 0 }, panel, length)).toBe(
      '3 mm toward the outside face',
    );
  });
});

describe('what is left', () => {
  const change = { move: move(1, 0), holes: [], washer_mm: null, unused: [], packers_mm: null };

  it('promises no better movement only of a plate that was moved to its best', () => {
    const clearance = { margin: 2.34, provenWithin: 1e-7 };
    expect(tellClearanceLeft({ clearance, change }, length)).toBe(
      '2.3 mm left around the tightest bolt; no other movement is better by more than 0.001 mm',
    );
    expect(tellClearanceLeft({ clearance, change: { ...change, move: null } }, length)).toBe(
      '2.3 mm left around the tightest bolt; the plate lies as drawn',
    );
    expect(tellClearanceLeft({ clearance: { margin: -1, provenWithin: 0.0042 }, change }, length)).toBe(
      '1 mm missing at the tightest hole; no other movement is better by more than 0.005 mm',
    );
    expect(tellClearanceLeft({ clearance: null, change }, length)).toBeNull();
  });
});

describe('the answer at the bracket', () => {
  it('within tolerance: goes on as drawn', () => {
    expect(ask('C03', {})).toMatchObject({ kind: 'good', words: 'Goes on as drawn', remedy: null });
  });

  it('within tolerance, but as designed no pass: it goes on, and that is not green', () => {
    // The demo's C02 fails as designed.
    const { kind, words, more } = ask('C02', {});
    expect(kind).toBe('unsure');
    expect(words).toBe('Goes on as drawn');
    expect(more.join(' ')).toMatch(/As designed its strength FAILS/);
  });

  it('all off the same way: shift it, in whole mm where the holes leave that much; a small turn is left to their play', () => {
    const off = { dx: 7, dy: 3 };
    expect(ask('C01', { 3: off, 4: off, 5: off, 6: off })).toMatchObject({
      kind: 'move',
      words: 'Shift the plate 7 mm to the left and 3 mm up',
      remedy: { kind: 'plate moved', act: 'decide on site' },
    });
    const turned = ask('C01', { 3: off, 4: off, 5: { dx: 6.5, dy: 3 }, 6: { dx: 7, dy: 2 } });
    expect(turned.remedy?.change.move?.turn_deg).not.toBe(0);
    expect(turned.words).toMatch(/^Shift the plate 6\.\d mm to the left and 2\.\d mm up$/);
  });

  it('one off too far: which hole lacks how much, and what not to do', () => {
    const { kind, words, more, remedy } = ask('C03', { 13: { dx: 12, dy: 5 } });
    expect(kind).toBe('wrong');
    // By hand: 200 mm apart, now √(212² + 5²) = 212.06: 12.06 / 2 on each side less 1 mm of play is 5.03, told up.
    expect(words).toMatch(/^Does not go on: hole \d lacks 5\.1 mm$/);
    expect(more.join(' ')).toMatch(/Do not slot, drill or burn a hole.*Ask the design engineer/);
    expect(remedy).toBeNull();
  });

  it('farther off than the limits of the design engineer: it works, and he is asked first', () => {
    const off = { dx: 10, dy: 0 };
    expect(ask('C01', { 3: off, 4: off, 5: off, 6: off })).toMatchObject({
      kind: 'ask',
      words: 'Ask first. Shift the plate 10 mm to the left',
      remedy: { act: 'change the design' },
    });
  });

  it('goes on but is too weak: do not load it, and no hole is blamed', () => {
    const off = { dx: 6, dy: 0 };
    const { kind, words, more } = ask('C02', { 8: off, 9: off, 10: off, 11: off });
    expect(kind).toBe('wrong');
    expect(words).toBe('Does not work where it stands: do not load it');
    expect(more.join(' ')).toMatch(/strength fails/);
  });

  it('strength that nobody knows is never good, though the plate goes on', () => {
    const { plan } = castOf('P02').sample;
    const numbers = plan.setOut.items.filter(({ connection }) => connection === 'C08').map(({ number }) => number);
    const offs = Object.fromEntries(numbers.map((number) => [number, { dx: 7, dy: 0 }]));
    const answer = answerConnection(castOf('P02').sample, connectionOf(reportOff('P02', offs), 'C08'));
    expect(answer.kind).toBe('unsure');
    expect(answer.words).toMatch(/^Shift the plate 7 mm to the right/);
    expect(answer.more.join(' ')).toMatch(/no pass/);
  });

  it('nobody surveyed it: nobody knows', () => {
    const tablet = castOf('P01');
    tablet.write('checker', null, surveyed(tablet.sample, {}, [13]));
    const found = connectionOf(reportOn(tablet.sample, tablet.known.values()), 'C02');
    expect(answerConnection(sample, found)).toMatchObject({ kind: 'unsure', remedy: null });
  });
});

describe('of several ways', () => {
  const moved = ask('C01', { 3: { dx: 7, dy: 3 }, 4: { dx: 7, dy: 3 }, 5: { dx: 7, dy: 3 }, 6: { dx: 7, dy: 3 } })
    .remedy!;

  it('one that may be decided on site comes before one that may not', () => {
    const asked: Remedy = { ...moved, kind: 'packers or other bolts', act: 'change the design' };
    expect(pickFit({ remedies: [asked, moved] })).toBe(moved);
    expect(pickFit({ remedies: [asked] })).toBe(asked);
  });

  it('a turn is told where the holes do not take it up', () => {
    const found = connectionOf(reportOff('P01', { 3: { dx: 7 } }), 'C01');
    const told = (turn_deg: number, margin: number) => {
      const remedy: Remedy = {
        ...moved,
        change: { ...moved.change, move: { dx_mm: -7, dy_mm: 3, turn_deg } },
        clearance: { margin, provenWithin: 0 },
      };
      const as = { ...found, remedies: [remedy], state: 'needs a remedy' } as const;
      return answerFit(as, sample.plan.setOut.panel, { roomAsDrawn: -1, findLacking: () => null }).words;
    };
    // Holes about 140 mm from their middle move 0.25 mm by 0.1°, and 1.2 mm by 0.5°.
    expect(told(0.1, 0.4)).toBe('Shift the plate 7 mm to the left and 3 mm up');
    expect(told(0.5, 0.4)).toBe('Shift the plate 7 mm to the left and 3 mm up, turned 0.5° counter-clockwise');
  });
});

describe('a piece in one line', () => {
  it('counts what is off, what does not go on, what is to be decided', () => {
    expect(tellAsCast(reportOff('P01', { 13: { dx: 12, dy: 5 } }))).toBe(
      '1 of 14 off, 1 plate does not go on, 1 connection to be decided.',
    );
    expect(tellAsCast(reportOff('P01', {}))).toBe('None of 14 off.');
    expect(tellAsCast(reportOn(sample, []))).toBe('Nothing is surveyed: where 14 inserts came out is not known.');
  });
});
