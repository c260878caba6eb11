import { describe, expect, it } from 'vitest';
import { findLookAlikes } from '../../../src/assess/parts/look-alikes.ts';
import { answerParts } from '../../../src/assess/parts/parts-answer.ts';
import { setOutPanel } from '../../../src/assess/set-out/set-out-panel.ts';
import { type Json, sampleCastIn, sampleItem, samplePanel } from '../../job/sample-job.ts';
import { indexParts } from './parts-job.ts';

const STEEL = { ultimate_MPa: 700, yield_MPa: 450, elongation_percent: 30, areaReduction_percent: null };

/** Look-alikes of a panel with one of each type. */
function lookAlikes(items: readonly Json[], castIns?: readonly Json[]) {
  const index = indexParts({
    items,
    castIns: castIns ?? items.map((item, i) => sampleCastIn(String(i), 500 * (i + 1), 500, { item: item.id })),
    connections: [],
  });
  return findLookAlikes([setOutPanel(index, 'P1', null)]);
}

const item = (id: string, changes: Json = {}) => sampleItem({ id, ...changes });
const otherFoot = { kind: 'diameter', diameter_mm: 60, thickness_mm: 7, isFullHead: true };

// Common practice: the same thread takes the same plate and bolt, so that only length or surface tell two types apart.
describe('look-alikes in one panel', () => {
  it('are one thread in two lengths, with both lengths named', () => {
    const [found, ...others] = lookAlikes([item('LONG', { length_mm: 143, embedment_mm: 136 }), item('SHORT')]);
    expect(others).toEqual([]);
    expect(found).toMatchObject({ ids: ['SHORT', 'LONG'], apartBy: 'length', panels: ['P1'] });
    expect(found!.text).toContain('SHORT (M16 x 103, galvanised) and LONG (M16 x 143, galvanised)');
    expect(found!.text).toContain('same thread, foot, body');
    expect(found!.text).toContain('103 mm and 143 mm');
  });

  it('are one thread and length in two finishes, with both finishes named', () => {
    const stainless = {
      finish: 'stainless',
      coating_um: 0,
      threadClass: '6H',
      boltFinishes: ['stainless'],
      steel: STEEL,
    };
    const [found] = lookAlikes([item('Z'), item('S', stainless)]);
    expect(found).toMatchObject({ apartBy: 'finish' });
    expect(found!.text).toContain('stainless and galvanised');
  });

  it.each([
    ['the foot', { bodyDiameter_mm: 26 }, 'same thread, foot:'],
    ['the body', { foot: otherFoot }, 'same thread, body:'],
  ])('need only have %s alike beside the thread', (_, changes, words) => {
    const [found] = lookAlikes([item('A'), item('B', { length_mm: 143, ...changes })]);
    expect(found!.text).toContain(words);
  });

  it('are those that one plate holds, too', () => {
    const items = [item('A'), item('B', { length_mm: 143, foot: otherFoot, bodyDiameter_mm: 30 })];
    const held = (ways: readonly [string, string]) =>
      lookAlikes(
        items,
        ways.map((holding, i) => sampleCastIn(String(i), 500 * (i + 1), 500, { item: items[i]!.id, holding })),
      );
    expect(held(['NAILED', 'NAILED'])[0]!.text).toContain('same thread, way of holding:');
    expect(held(['NAILED', 'BOARDED'])).toEqual([]);
  });

  it.each([
    ['another thread', { thread: 'M20', length_mm: 143 }],
    ['another length, foot and body', { length_mm: 143, foot: otherFoot, bodyDiameter_mm: 30 }],
    ['the same length and finish', {}],
  ])('are none with %s', (_, changes) => {
    expect(lookAlikes([item('A'), item('B', changes)])).toEqual([]);
  });
});

describe('look-alikes of a pour', () => {
  const items = [item('A'), item('B', { length_mm: 143 })];
  const castIns = [
    sampleCastIn('1', 500, 500, { item: 'A' }),
    sampleCastIn('1', 500, 500, { key: 'k2', panel: 'P2', item: 'B' }),
  ];
  const panels = [samplePanel(), samplePanel({ key: 'p2', mark: 'P2' })];
  const pour = (id: string, ...marks: readonly string[]) => ({
    id,
    bed: 'B1',
    date: '2026-12-14',
    pieces: marks.map((panel) => ({ panel, serial: id })),
  });
  const ask = (pours: readonly Json[]) => {
    const index = indexParts({ items, castIns, panels, connections: [], pours });
    const lists = { stock: null, orders: null, today: '2026-11-25' };
    return answerParts(index, { pour: null, panel: null }, lists).lookAlikes;
  };

  it('meet on its bench though no panel holds both', () => {
    expect(ask([pour('T1', 'P1', 'P2')])).toMatchObject([{ ids: ['A', 'B'], panels: [] }]);
  });

  it('are told once, however many pours they meet in', () => {
    expect(ask([pour('T1', 'P1', 'P2'), pour('T2', 'P1', 'P2')])).toHaveLength(1);
  });

  it('are none where the two are cast apart, or in no pour', () => {
    expect(ask([pour('T1', 'P1'), pour('T2', 'P2')])).toEqual([]);
    expect(ask([])).toEqual([]);
  });
});
