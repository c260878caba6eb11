import { describe, expect, it } from 'vitest';
import type { AsPlaced, PlacingAnswer } from '../../src/assess/yard/placing-answer.ts';
import { tellPlacing, tellShare, tellSight, WET_SETTING_CAUTION } from '../../src/say/placing-words.ts';
import { planOf } from '../assess/yard/pieces.ts';

const { setOut } = planOf('P13');
const item = setOut.items.find(({ castIn }) => castIn.id === '13')!;
const onBoard = setOut.items.find(({ castIn }) => castIn.id === '1')!;

function asPlaced(more: Partial<AsPlaced> = {}): AsPlaced {
  return {
    connection: 'C45',
    before: { state: 'passes', ratio: 0.7 },
    after: { state: 'passes', ratio: 0.83, why: 'concrete-cone' },
    plate: { kind: 'as designed' },
    findings: [],
    unmeasured: [],
    ...more,
  };
}

function answer(more: Partial<PlacingAnswer> = {}): PlacingAnswer {
  return {
    item,
    advice: 'leave',
    deviation: { x: 9, y: -4, level: null },
    moves: [
      { by: 9, toward: 'toward loose stop end' },
      { by: 4, toward: 'toward wall rail' },
    ],
    asPlaced: asPlaced(),
    findings: [],
    verdict: 'works',
    decides: 'qa',
    ...more,
  };
}

const fails = asPlaced({ after: { state: 'fails', ratio: 1.118, why: 'concrete-edge' } });

describe('the answer to where an insert was found', () => {
  it('says first what to do', () => {
    expect(tellPlacing(answer({ advice: 'good', asPlaced: null, decides: 'nobody asks' }))).toEqual(['Good.']);
    expect(tellPlacing(answer({ advice: 'nothing measured', asPlaced: null }))).toEqual(['Nothing taped yet.']);
    expect(tellPlacing(answer({ advice: 'move' }))).toEqual([
      'Move it 9 mm toward loose stop end, 4 mm toward wall rail.',
      'If it stays: works, 0.83 of what it carries; QA may accept it.',
    ]);
    expect(tellPlacing(answer())).toEqual([
      'Leave it. Computed as placed: works, 0.83 of what it carries; QA may accept it.',
    ]);
  });

  it('holds the piece where it does not work or is not known, and says who decides', () => {
    const worse = { verdict: 'does not work', decides: 'design engineer' } as const;
    expect(tellPlacing(answer({ asPlaced: fails, ...worse }))).toEqual([
      'Leave it, and hold the piece. Computed as placed: does not work: concrete edge in shear, 1.12 of what it carries; the design engineer decides.',
    ]);
    const unchecked = asPlaced({ after: { state: 'strength not checked', ratio: null, why: 'no action given' } });
    expect(tellPlacing(answer({ asPlaced: unchecked, verdict: 'not known', decides: 'design engineer' }))).toEqual([
      'Leave it, and hold the piece. Computed as placed: strength not checked: no action given; the design engineer decides.',
    ]);
    const alone = { asPlaced: null, decides: 'design engineer' } as const;
    expect(tellPlacing(answer({ ...alone, verdict: 'not known' }))[0]).toContain('it belongs to no connection');
    expect(
      tellPlacing(answer({ ...alone, verdict: 'does not work', findings: ['there is no concrete there'] }))[0],
    ).toContain('does not work: there is no concrete there; the design engineer decides');
  });

  it('tells the plate in whole millimetres that are enough', () => {
    const shifted = asPlaced({ plate: { kind: 'shifted', by: 3.2 } });
    expect(tellPlacing(answer({ asPlaced: shifted }))[1]).toBe('The plate goes on when it is shifted 4 mm.');
    const off = asPlaced({ plate: { kind: 'does not go on', lacks: 0.4, hole: '2' } });
    expect(tellPlacing(answer({ asPlaced: off, verdict: 'does not work', decides: 'design engineer' }))).toEqual([
      'Leave it, and hold the piece. Computed as placed: does not work: the plate does not go on, hole 2 lacks 1 mm; the design engineer decides.',
    ]);
  });

  it('does not blame the place for what the design did not do', () => {
    const before = { state: 'fails', ratio: 1.05 } as const;
    const both = answer({ asPlaced: { ...fails, before }, verdict: 'does not work', decides: 'design engineer' });
    expect(tellPlacing(both)).toContain('Connection C45 fails as designed too: that is not the fault of its place.');
    expect(tellPlacing(answer({ asPlaced: asPlaced({ before }), decides: 'design engineer' }))).toContain(
      'Connection C45 fails as designed: that is to be settled first.',
    );
  });

  it('says of which inserts nobody knows, and that a board moves as one', () => {
    const open = asPlaced({ unmeasured: [item.number, 4, 7] });
    expect(tellPlacing(answer({ asPlaced: open }))).toContain('Not taped in full, and taken as drawn: no. 4, 7.');
    const board = tellPlacing(answer({ item: onBoard, advice: 'move', asPlaced: open }));
    expect(board.slice(0, 2)).toEqual([
      'Move the board 9 mm toward loose stop end, 4 mm toward wall rail.',
      'The other inserts of the board go with it: tape them again.',
    ]);
    expect(board.join(' ')).toContain('taken as the board lies: no. 3, 4, 7.');
  });

  it('never calls a wrong type good, nor one in the wrong face or loose', () => {
    const good = answer({ advice: 'good', asPlaced: null, decides: 'nobody asks' });
    const all = { type: true, face: true, firm: true };
    expect(tellPlacing(good, all)).toEqual(['Good.']);
    expect(tellPlacing(good, { ...all, type: false })).toEqual([
      expect.stringMatching(/^Wrong type: .*the design engineer decides\.$/),
    ]);
    expect(tellPlacing(good, { ...all, face: false })[0]).toMatch(/^Wrong face/);
    expect(tellPlacing(good, { ...all, firm: false })).toEqual([
      'Not firm: fasten it, then tape it again.',
      'Its place is good.',
    ]);
  });

  it('says that lifting is not computed, and that a forgotten insert is no cast-in one', () => {
    const lifter = { ...item, castIn: { ...item.castIn, role: 'lifting' as const } };
    expect(tellPlacing(answer({ item: lifter })).join(' ')).toContain('Lifting and bracing are not computed here');
    expect(WET_SETTING_CAUTION).toContain('not a cast-in insert');
    const absent = tellSight({ type: false, face: false, firm: false });
    expect(absent[0]).toMatch(/^It is not there/);
    expect(absent).toContain(WET_SETTING_CAUTION);
    expect(tellSight({ type: false, face: true, firm: true })).not.toContain(WET_SETTING_CAUTION);
    expect(WET_SETTING_CAUTION).toContain('the design engineer decides');
  });
});

describe('numbers in words', () => {
  it('shares are never rounded across 1', () => {
    expect(tellShare(0.826)).toBe('0.83 of what it carries');
    expect(tellShare(0.9999)).toBe('0.99 of what it carries');
    expect(tellShare(1)).toBe('1.00 of what it carries');
    expect(tellShare(1.0001)).toBe('1.01 of what it carries');
    expect(tellShare(12)).toBe('more than 10 times what it carries');
    expect(tellShare(Number.POSITIVE_INFINITY)).toBe('nothing is left of what it carries');
  });
});
