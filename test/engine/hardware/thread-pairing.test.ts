import { describe, expect, it } from 'vitest';
import { findCoatingRoom, judgePair, type Pairing } from '../../../src/engine/hardware/thread-pairing.ts';
import { findThread, threadNames } from '../../../src/engine/hardware/threads.ts';

const FINISHES = ['plain', 'zinc', 'galvanised', 'stainless'] as const;
const CLASSES = ['6H', '6AZ', '6AX'] as const;

const judge = (changes: Partial<Pairing>) =>
  judgePair({
    thread: findThread('M16'),
    insertClass: '6H',
    insertFinish: 'zinc',
    boltFinish: 'zinc',
    boltCoating: null,
    ...changes,
  });

describe('which bolt goes into which thread', () => {
  // ISO 10684 and AS/NZS 1214: a galvanised bolt needs an oversize thread; everything else goes in.
  it('refuses a galvanised bolt in 6H only', () => {
    const refused = FINISHES.flatMap((boltFinish) =>
      CLASSES.flatMap((insertClass) =>
        FINISHES.flatMap((insertFinish) =>
          judge({ boltFinish, insertClass, insertFinish }).isAllowed ? [] : [`${boltFinish} in ${insertClass}`],
        ),
      ),
    );
    expect([...new Set(refused)]).toEqual(['galvanised in 6H']);
  });
  it('says what to take instead and never to tap again', () => {
    const [first] = judge({ boltFinish: 'galvanised' }).notes;
    expect(first).toMatch(/needs an insert tapped oversize, 6AZ or 6AX; never tap the insert again/);
    expect(judge({ insertFinish: 'galvanised' }).notes.join()).toMatch(/takes no galvanised bolt; never tap/);
  });
  it('names play, room for zinc and lowered loads where they are', () => {
    expect(judge({ insertClass: '6AZ' }).notes).toEqual([
      expect.stringMatching(/a zinc bolt sits loosely in 6AZ, tapped 0\.340 mm/),
    ]);
    expect(judge({ insertClass: '6AZ', boltFinish: 'galvanised' }).notes).toEqual([
      expect.stringMatching(/0\.340 mm oversize leaves room for 94 µm/),
    ]);
    const small = { insertClass: '6AZ', boltFinish: 'galvanised' } as const;
    expect(judge({ ...small, thread: findThread('M10') }).notes.join()).toMatch(/galvanised M10 .* Annex A/);
    expect(judge({ ...small, thread: findThread('M12') }).notes.join()).not.toMatch(/Annex A/);
    expect(judge({}).notes).toEqual([]);
  });
  it('names contact of metals and the seizing of stainless threads', () => {
    const notes = (boltFinish: Pairing['boltFinish'], insertFinish: Pairing['insertFinish']) =>
      judge({ boltFinish, insertFinish }).notes.join('; ');
    expect(notes('stainless', 'zinc')).toMatch(/zinc around the bolt is used up/);
    expect(notes('stainless', 'galvanised')).toMatch(/zinc around the bolt is used up/);
    expect(notes('zinc', 'stainless')).toMatch(/loses its zinc first/);
    expect(notes('plain', 'stainless')).toMatch(/rusts faster/);
    for (const insertFinish of FINISHES)
      expect(notes('stainless', insertFinish)).toMatch(/lubricate it, .* no power tool/);
    expect(notes('stainless', 'stainless')).not.toMatch(/used up/);
    expect(notes('zinc', 'galvanised')).not.toMatch(/lubricate|used up/);
  });
});

describe('room for a coating', () => {
  // By hand: 6g leaves es = 38 µm at M16, a quarter of it 9.5 µm; 6AZ adds 340: 94.5; 6AX 420: 114.5. M10: 32/4 = 8 (the limit of ISO 4042
  // for M10 and M12 in 6g).
  it('is a quarter of the play of the pitch diameters', () => {
    const room = CLASSES.map((c) => findCoatingRoom(findThread('M16'), c) * 1000);
    // The limits of ISO 965 are whole micrometres, the basic diameter is not.
    for (const [i, micrometres] of [9.5, 94.5, 114.5].entries())
      expect(Math.abs(room[i]! - micrometres)).toBeLessThan(0.15);
    expect(Math.abs(findCoatingRoom(findThread('M10'), '6H') * 1000 - 8)).toBeLessThan(0.15);
  });
  it('refuses a coating that is thicker', () => {
    expect(judge({ boltCoating: 0.008 }).isAllowed).toBe(true);
    const thick = judge({ boltCoating: 0.012 });
    expect(thick.isAllowed).toBe(false);
    expect(thick.notes[0]).toMatch(/a coating of 12 µm on the bolt binds: M16 6H leaves room for 9 µm/);
    expect(judge({ boltCoating: 0.012, insertClass: '6AZ' }).isAllowed).toBe(true);
  });
  // ISO 10684: galvanised threads carry 40 to 60 µm at least; every oversize thread takes 50.
  it('is enough for galvanising in every oversize thread', () => {
    for (const name of threadNames)
      for (const c of ['6AZ', '6AX'] as const) expect(findCoatingRoom(findThread(name), c)).toBeGreaterThan(0.05);
  });
});
