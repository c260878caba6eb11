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

  // By hand (strength-at-age.test.ts of the engine): 24.8 to 31.3 MPa at 7 days.
  it.each([
    [30, 'tested 30 MPa lies within the 24.8 to 31.3 MPa'],
    [20, 'tested 20 MPa lies below the 24.8 to 31.3 MPa'],
    [35, 'tested 35 MPa lies above the 24.8 to 31.3 MPa'],
  ])('says how a tested %d MPa looks beside it', (tested_MPa, words) => {
    const { notes } = calculate({ ...good, tested_MPa }) as { notes: string[] };
    expect(notes.at(-1)).toContain(words);
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
    expect(calculate(good)).toEqual({ ...frame, index_degC_h: 720, equivalentAge_hours: 36 });
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
    ).toEqual({ ...frame, index_degC_h: null, equivalentAge_hours: expect.closeTo(24 * 2.405615, 3) });
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
