// Which way of holding goes where, and on what: common practice, worked out by hand for every method, place and form.

import { describe, expect, it } from 'vitest';
import { findHoldingMethod } from '../../../src/engine/form/holding-methods.ts';
import { build, problemsOf } from './holding-sample.ts';

const PLACES = ['mould face', 'trowelled face', 'edge'] as const;

/** Per place: '' it holds; 'turn' it would the other way up; 'other' another way is needed. */
const practice: Record<string, readonly [mould: string, trowelled: string, edge: string]> = {
  'nail-on plate': ['', 'turn', ''],
  'stick-on plate': ['', 'turn', ''],
  magnet: ['', 'turn', ''],
  'recess former': ['', 'turn', ''],
  'template board': ['', '', 'other'],
  'through the side form': ['other', 'other', ''],
  chair: ['turn', '', 'other'],
  'bridging bar': ['turn', '', 'other'],
  'tied to the cage': ['turn', '', 'other'],
};

/** What a form must be made of for the method to hold; all others hold on both. */
const NEEDS: Record<string, string> = { 'nail-on plate': 'timber', magnet: 'steel' };

describe('a way of holding', () => {
  it('fits its place, or says what to do: every method at every place on every form', () => {
    for (const [method, verdicts] of Object.entries(practice))
      for (const [i, place] of PLACES.entries())
        for (const form of ['timber', 'steel'] as const) {
          const { problems } = build(place, method, { bed: { form, sideForm: form } });
          const kinds = problems.map(({ severity, kind }) => `${severity} ${kind}`);
          const needs = NEEDS[method];
          const expected =
            verdicts[i] === 'turn'
              ? ['error face']
              : verdicts[i] === 'other'
                ? ['error not decided']
                : needs !== undefined && needs !== form
                  ? ['error form material']
                  : [];
          expect([method, place, form, kinds]).toEqual([method, place, form, expected]);
        }
  });

  it('looks at the side forms in an edge, at the bed at the mould face', () => {
    const mixed = { bed: { form: 'steel', sideForm: 'timber' } };
    expect(problemsOf(build('edge', 'nail-on plate', mixed))).toEqual([]);
    expect(problemsOf(build('mould face', 'magnet', mixed))).toEqual([]);
    expect(problemsOf(build('mould face', 'nail-on plate', mixed))).toEqual([
      'error form material: Way (nail-on plate) needs timber, the form of Bed 1 is of steel: nails do not go into steel; choose another way of holding, or another bed',
    ]);
    expect(problemsOf(build('edge', 'magnet', mixed))).toEqual([
      'error form material: Way (magnet) needs steel, the side forms of Bed 1 are of timber: a magnet does not hold on timber; choose another way of holding, or another bed',
    ]);
  });

  it('says what is not known without a bed, where it matters', () => {
    expect(problemsOf(build('mould face', 'nail-on plate', { bed: null }))).toEqual([
      'warning form material: no bed named, form material not known: that it is of timber, which nail-on plate needs, is not known; name the bed in a pour',
    ]);
    expect(problemsOf(build('edge', 'magnet', { bed: null }))[0]).toMatch(/^warning form material: .* of steel/);
    expect(problemsOf(build('mould face', 'stick-on plate', { bed: null }))).toEqual([]);
    // Where the method cannot hold at all, its form does not matter.
    expect(build('trowelled face', 'magnet', { bed: null }).problems.map(({ kind }) => kind)).toEqual(['face']);
  });

  it('tells to turn the panel over, or to choose another way', () => {
    expect(problemsOf(build('mould face', 'chair'))).toEqual([
      'error face: Way (chair) holds at the trowelled face; this insert lies at the mould face: turn the panel over, or choose a way of holding for the mould face',
    ]);
    expect(problemsOf(build('edge', 'bridging bar'))).toEqual([
      'error not decided: Way (bridging bar) holds at the trowelled face; this insert lies in an edge: choose a way of holding for a side form',
    ]);
    expect(problemsOf(build('trowelled face', 'magnet'))).toEqual([
      'error face: Way (magnet) holds at the mould face or a side form; this insert lies at the trowelled face: turn the panel over, or choose a way of holding for the trowelled face',
    ]);
  });

  it('names panel and insert with each finding', () => {
    expect(build('mould face', 'chair').problems[0]).toMatchObject({ panel: 'P1', insert: '1' });
  });

  it('is set before the cage on the form, with the cage under the trowelled face, where it cannot hold too', () => {
    expect(build('mould face', 'template board').stage).toBe(1);
    expect(build('trowelled face', 'template board').stage).toBe(2);
    expect(build('mould face', 'chair').stage).toBe(1);
    expect(build('trowelled face', 'magnet').stage).toBe(2);
    expect(build('edge', 'chair').stage).toBe(1);
  });

  it('brings its parts, per insert and per group, and its lines to tick in their order', () => {
    const parts = [
      { part: 'PLATE', count: 1 },
      { part: 'NAIL', count: 4 },
      { part: 'BOARD', count: 1, per: 'group' },
    ];
    const assembly = build('mould face', 'nail-on plate', { way: { parts } });
    expect(assembly.parts.map(({ part, count, per }) => [part.id, count, per])).toEqual([
      ['PLATE', 1, 'insert'],
      ['NAIL', 4, 'insert'],
      ['BOARD', 1, 'group'],
    ]);
    const { before, after } = findHoldingMethod('nail-on plate');
    expect(assembly.checkLines.slice(0, -1)).toEqual([...before, ...after]);
    expect(() => build('mould face', 'magnet', { way: { parts: [{ part: 'GONE', count: 1 }] } })).toThrow(
      'way of holding WAY: no part GONE among the holding parts',
    );
  });

  it('scatters as the yard measured, else as usual: ±10 at the trowelled face, half of it; ±5 of level', () => {
    expect(build('trowelled face', 'bridging bar').scatter).toEqual({ position: 5, level: 2.5 });
    const scatter = { position_mm: 1.2, level_mm: 0.8 };
    expect(build('trowelled face', 'bridging bar', { way: { scatter } }).scatter).toEqual({
      position: 1.2,
      level: 0.8,
    });
  });
});
