import { describe, expect, it } from 'vitest';
import { calculate, describeCalculation } from '../../src/calc/calculation.ts';

const frame = { contract: 1, engine: expect.any(String) };

describe('strength-at-age', () => {
  const good = { calc: 'strength-at-age', model: 'EN 1992-1-1', cement: 'N', strength28_MPa: 40, age_days: 7 };

  // By hand: β = exp(0.25 (1 − 2)) = 0.778801; 48 · β = 37.3824; − 8 = 29.3824.
  it('answers in the keys of the contract', () => {
    const result = calculate({ ...good, id: 1, source: 'x', note: null, expect: {} });
    expect(result).toEqual({
      ...frame,
      ratio: expect.closeTo(0.778801, 6),
      meanStrength_MPa: expect.closeTo(37.3824, 4),
      characteristicStrength_MPa: expect.closeTo(29.3824, 4),
      notes: [expect.stringContaining('20 °C')],
    });
  });

  it('gives null and asks for a test up to 3 days', () => {
    expect(calculate({ ...good, age_days: 2 })).toMatchObject({
      characteristicStrength_MPa: null,
      notes: [expect.stringContaining('needs a test'), expect.any(String)],
    });
  });

  // By hand: 7/(4 + 0.85 · 7) = 0.703518 · 40 = 28.1407.
  it('has no mean strength by ACI 209', () => {
    expect(calculate({ ...good, model: 'ACI 209', cement: 'ACI type I moist' })).toMatchObject({
      ratio: expect.closeTo(0.703518, 6),
      meanStrength_MPa: null,
      characteristicStrength_MPa: expect.closeTo(28.1407, 4),
    });
  });

  // By hand (strength-at-age.test.ts of the engine): means 32.8 to 39.3 MPa at 7 days; f_ck(t) is 8 MPa less.
  it.each([
    [36, 'lies within the mean strengths 32.8 to 39.3 MPa', 'f_ck(t) = 28 MPa'],
    [30, 'lies below the mean strengths 32.8 to 39.3 MPa', 'f_ck(t) = 22 MPa'],
    [50, 'lies above the mean strengths 32.8 to 39.3 MPa', 'f_ck(t) = 40 MPa'],
    [7.5, 'lies below', 'no characteristic strength is left'],
  ])('says how a tested mean of %d MPa looks beside it', (tested_MPa, words, follows) => {
    const { notes } = calculate({ ...good, tested_MPa }) as { notes: string[] };
    expect(notes.at(-2)).toContain(`tested ${tested_MPa} MPa, taken as the mean of cylinders`);
    expect(notes.at(-2)).toContain(words);
    expect(notes.at(-1)).toContain(follows);
  });
  it('speaks of one day and of several', () => {
    const notesAt = (age_days: number) =>
      (calculate({ ...good, age_days, tested_MPa: 12 }) as { notes: string[] }).notes.join('\n');
    expect(notesAt(1)).toMatch(/^1 day: up to 3 days/);
    expect(notesAt(1)).toMatch(/give at 1 day$/m);
    expect(notesAt(1)).toMatch(/up to 3 days f_ck\(t\) follows from the scatter of the tests/);
    expect(notesAt(2)).toMatch(/^2 days: up to 3 days/);
  });
});

describe('maturity', () => {
  const log = [
    { hours: 0, degC: 20 },
    { hours: 24, degC: 40 },
  ];
  const good = { calc: 'maturity', method: 'Nurse-Saul', datum_degC: 0, reference_degC: 20, log };

  // By hand: 24 · 30 = 720 °C h; over 20 °C: 36 h.
  it('answers by Nurse-Saul in the keys of the contract', () => {
    expect(calculate(good)).toEqual({ ...frame, index_degC_h: 720, equivalentAge_hours: 36, notes: [] });
    expect(calculate({ ...good, datum_degC: -10 })).toMatchObject({ index_degC_h: 960, equivalentAge_hours: 32 });
  });

  // By hand: exp(33500/8.314463 · (1/293.15 − 1/313.15)) = 2.405615 an hour.
  it('answers by Arrhenius without an index, in kJ/mol', () => {
    const steady = log.map((reading) => ({ ...reading, degC: 40 }));
    expect(
      calculate({
        calc: 'maturity',
        method: 'Arrhenius',
        activation_kJ_per_mol: 33.5,
        reference_degC: 20,
        log: steady,
      }),
    ).toEqual({
      ...frame,
      index_degC_h: null,
      equivalentAge_hours: expect.closeTo(24 * 2.405615, 3),
      notes: [],
    });
  });

  it('asks about temperatures that look like °F and about days without a reading', () => {
    const notesOf = (...readings: readonly (readonly [number, number])[]) =>
      (calculate({ ...good, log: readings.map(([hours, degC]) => ({ hours, degC })) }) as { notes: string[] }).notes;
    expect(notesOf([0, 68], [12, 95], [24, 80])).toEqual(['95 °C at 12 h: outside -20 to 80 °C; degC, not °F?']);
    expect(notesOf([0, -21], [24, -20])).toHaveLength(1);
    expect(notesOf([0, 20], [24, 20], [49, 20])).toEqual([
      'no reading from 24 to 49 h: the temperature is taken to run straight over more than 24 h',
    ]);
    expect(notesOf([0, 90], [1, 90], [2, 90], [3, 90], [4, 90])[0]).toMatch(/90 °C at 2 h and 2 more: outside/);
    const arrhenius = {
      ...good,
      method: 'Arrhenius',
      activation_kJ_per_mol: 33.5,
      log: [{ hours: 0, degC: 90 }, log[1]],
    };
    expect((calculate(arrhenius) as { notes: string[] }).notes).toHaveLength(1);
  });

  it('passes over the key of the other method', () => {
    const both = { ...good, activation_kJ_per_mol: 33.5 };
    expect(calculate(both)).toEqual(calculate(good));
    expect(calculate({ ...both, method: 'Arrhenius', datum_degC: 15 })).toEqual(
      calculate({ ...both, method: 'Arrhenius' }),
    );
  });
});

describe('coating-life', () => {
  const good = { calc: 'coating-life', category: 'C4', coating_um: 85 };

  // Published: about 20 to 40 years (H6-09); by hand 85/4.2 = 20.238, 85/2.1 = 40.476.
  it('answers in the keys of the contract', () => {
    expect(calculate(good)).toEqual({
      ...frame,
      years: [expect.closeTo(20.238, 3), expect.closeTo(40.476, 3)],
      rates_um_per_year: [2.1, 4.2],
      notes: [expect.stringContaining('ISO 9223')],
    });
  });

  it('has no longest life in C1, and none without zinc', () => {
    expect(calculate({ ...good, category: 'C1' })).toMatchObject({
      years: [expect.closeTo(850, 6), null],
      notes: [expect.any(String), 'no longest life: the lowest loss of C1 is 0'],
    });
    expect(calculate({ ...good, coating_um: 0 })).toMatchObject({
      years: [0, 0],
      notes: [expect.any(String), 'no zinc: nothing to last'],
    });
  });

  it('asks about a coating given in mm', () => {
    const notesOf = (coating_um: number) => (calculate({ ...good, coating_um }) as { notes: string[] }).notes.join();
    expect(notesOf(0.085)).toMatch(/0\.085 µm of zinc: µm, not mm\?/);
    expect(notesOf(1)).not.toMatch(/not mm/);
    expect(notesOf(0)).not.toMatch(/not mm/);
  });

  it('compares with a wanted life and with ISO 1461 where asked', () => {
    const { notes } = calculate({
      ...good,
      wanted_years: 50,
      galvanised: { kind: 'not centrifuged', size_mm: 8 },
    }) as { notes: string[] };
    expect(notes.slice(1)).toEqual([
      '20 to 40 years beside 50 years wanted: falls short',
      '85 µm is at least the 70 µm that ISO 1461 asks at any place (85 µm on average) of this article',
    ]);
    const thin = calculate({ ...good, coating_um: 30, galvanised: { kind: 'thread', size_mm: 16 } }) as {
      notes: string[];
    };
    expect(thin.notes[1]).toContain('30 µm is less than the 40 µm');
  });
});

it.each(['strength-at-age', 'maturity', 'coating-life'])('%s describes its input and output', (name) => {
  expect(describeCalculation(name)).toMatchObject({ name, input: { type: 'object' }, output: { type: 'object' } });
});
