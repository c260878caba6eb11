import { describe, expect, it } from 'vitest';
import { adviseFinish, type FinishQuestion } from '../../../src/engine/material/finish-advice.ts';

const question: FinishQuestion = {
  finish: 'galvanised',
  coating: 55,
  thread: 16,
  category: 'C5',
  exposure: 'XS1',
  wanted: 50,
  grade: null,
  site: null,
};
const advise = (changes: Partial<FinishQuestion>) => adviseFinish({ ...question, ...changes });
const site: FinishQuestion['site'] = {
  chlorides: { kind: 'distances', sea: 0.5, saltedRoad: Number.POSITIVE_INFINITY, isMildCoast: false },
  sulphurDioxide: 5,
  washing: 'rain',
};

describe('advice on zinc', () => {
  // By hand: 55/8.4 = 6.5, 55/4.2 = 13.1; 8/4.2 = 1.9 and 8/2.1 = 3.8; 55/0.7 = 78.6 years.
  it('tells how long it lasts and what is wanted', () => {
    expect(advise({})).toMatchObject({ verdict: 'falls short', stainless: null });
    expect(advise({}).sentences[0]).toBe(
      'hot-dip galvanising of 55 µm lasts 6.5 to 13 years in C5 where air reaches it (ISO 9223); 50 years are wanted: take stainless steel, or keep air and water off',
    );
    expect(advise({ category: 'C2' })).toMatchObject({
      verdict: 'lasts',
      life: { shortest: expect.closeTo(78.57, 2) },
    });
    expect(advise({ category: 'C2' }).sentences[0]).not.toContain('take stainless');
    expect(advise({ category: 'C3' }).verdict).toBe('may fall short');
    expect(advise({ category: 'C3' }).sentences[0]).toContain('50 years are wanted and may not be reached');
    expect(advise({ finish: 'zinc', coating: 8, category: 'C4' }).sentences[0]).toContain(
      'zinc plating of 8 µm (a batch averages 7 to 10 µm) lasts 1.9 to 3.8 years in C4',
    );
  });

  it('doubts a thickness that does not fit how it is put on', () => {
    expect(advise({}).sentences).toHaveLength(1);
    expect(advise({ coating: 39 }).sentences[1]).toContain(
      'less zinc than ISO 1461 asks of a galvanised thread (40 µm',
    );
    expect(advise({ coating: 40 }).sentences).toHaveLength(1);
    expect(advise({ coating: 30, thread: 6 }).sentences).toHaveLength(1);
    expect(advise({ finish: 'zinc', coating: 29 }).sentences[1]).toContain('is it galvanised?');
    expect(advise({ finish: 'zinc', coating: 28 }).sentences).toHaveLength(1);
  });
});

describe('advice on plain steel', () => {
  it('lasts in C1 only', () => {
    expect(advise({ finish: 'plain', coating: 0, category: 'C1' })).toMatchObject({ verdict: 'lasts', life: null });
    const outdoors = advise({ finish: 'plain', coating: 0, category: 'C3' });
    expect(outdoors.verdict).toBe('falls short');
    expect(outdoors.sentences[0]).toContain('25 to 50 µm a year in C3');
  });
});

describe('advice on stainless steel', () => {
  const stainless = { finish: 'stainless', coating: 0 } as const;

  it('asks for the site where it is harsh or salty', () => {
    expect(advise({ ...stainless, category: 'C3', exposure: 'XC4' })).toMatchObject({ verdict: 'lasts' });
    expect(advise({ ...stainless, category: 'C4', exposure: 'XC4' }).verdict).toBe('not known');
    expect(advise({ ...stainless, category: 'C2', exposure: 'XD1' }).sentences[0]).toContain('C2 with salt (XD1)');
  });

  // 0.5 km from the sea, washed: −7, class III, 1.4401 (stainless-grade.test.ts).
  it('names the class and judges the grade where both are known', () => {
    expect(advise({ ...stainless, site })).toMatchObject({ verdict: 'not known', stainless: { factor: -7 } });
    expect(advise({ ...stainless, site, grade: '1.4401' })).toMatchObject({ verdict: 'lasts' });
    const short = advise({ ...stainless, site, grade: '1.4301' });
    expect(short.verdict).toBe('falls short');
    expect(short.sentences[0]).toBe(
      'corrosion resistance factor -7, class III: at least 1.4401 (EN 1993-1-4, Annex A); 1.4301 is not enough',
    );
  });
});
