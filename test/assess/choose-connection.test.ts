import { describe, expect, it } from 'vitest';
import { findStrongerClasses } from '../../src/assess/choose/stronger-bolts.ts';
import { sampleCastIn, sampleConnection, sampleFixture, samplePanel } from '../job/sample-job.ts';
import { choose, loads, makeItem, namesOf, whyNot } from './choosing.ts';

const F16 = makeItem('F16', 103);
const castIns = [sampleCastIn('1', 900, 500), sampleCastIn('2', 1100, 500)];

describe('what is tried', () => {
  // A cone of embedment h carries about h^1.5: 60 kN that fail at 96 mm pass at 133 mm.
  const heavy = sampleConnection({ actions: loads({ N_kN: 60 }) });
  const items = [F16, makeItem('F16-75', 75), makeItem('F16-140', 140)];

  it('is every insert of the catalogue in all places, and each is ranked or has its reason', () => {
    const choice = choose({ items, connections: [heavy] });
    expect(choice.before).toMatchObject({ mark: 'C1', state: 'fails', governing: { mode: 'concrete-cone' } });
    expect(choice).toMatchObject({ outcome: 'chosen', present: ['F16'] });
    expect(namesOf(choice.ranked)).toEqual(['F16-140']);
    expect(choice.ranked[0]!.ratio).toBeLessThan(1);
    expect(namesOf(choice.rejected)).toEqual(['F16', 'F16-75']);
    for (const { why, ratio, governing } of choice.rejected) {
      expect(why).toBe('fails');
      expect(ratio).toBeGreaterThan(1);
      expect(governing).toEqual({ mode: 'concrete-cone', combination: 'wind' });
    }
  });

  it('takes no more checks than the catalogue has inserts', () => {
    expect(choose({ items, connections: [heavy] }).checks).toBe(items.length);
    const many = Array.from({ length: 40 }, (_, i) => makeItem(`G${i}`, 80 + i));
    expect(choose({ items: [F16, ...many], connections: [heavy] }).checks).toBe(41);
  });

  it('says that none passes', () => {
    expect(choose({ connections: [sampleConnection({ actions: loads({ N_kN: 500 }) })] })).toMatchObject({
      outcome: 'none passes',
      ranked: [],
    });
  });

  it('puts a connection that passes as it stands first, whatever is cheaper', () => {
    const cheap = makeItem('F16-101', 101, { price: { amount: 0.1, currency: 'EUR' } });
    const { ranked } = choose({ items: [cheap, F16] });
    expect(namesOf(ranked)).toEqual(['F16', 'F16-101']);
    expect(ranked.map(({ isAsDesigned }) => isAsDesigned)).toEqual([true, false]);
  });

  it('makes a mixed group one of a single type', () => {
    const mixed = [castIns[0]!, sampleCastIn('2', 1100, 500, { item: 'F16-75' })];
    const choice = choose({ items: items.slice(0, 2), castIns: mixed });
    expect(choice.before).toMatchObject({
      state: 'not covered',
      reasons: [expect.stringContaining('mixed types')],
    });
    expect(choice.present).toEqual(['F16', 'F16-75']);
    expect(namesOf(choice.ranked)).toEqual(['F16', 'F16-75']);
  });
});

describe('no choice', () => {
  it('without an action', () => {
    expect(choose({ connections: [sampleConnection({ actions: { kind: 'none' } })] })).toMatchObject({
      outcome: 'no action',
      ranked: [],
      rejected: [],
    });
  });

  it('for inserts of another role', () => {
    const rated = makeItem('B16', 103, {
      ratedLoads: [{ role: 'brace', load_kN: 20, document: 'Invented card', conditions: 'any' }],
    });
    const braces = ['1', '2'].map((id, i) => sampleCastIn(id, 900 + 200 * i, 500, { role: 'brace', item: 'B16' }));
    expect(choose({ items: [F16, rated], castIns: braces }).outcome).toBe('other role');
  });

  it('where no rule covers the use or the concrete', () => {
    const seismic = choose({ connections: [sampleConnection({ uses: ['seismic'] })] });
    expect(seismic).toMatchObject({ outcome: 'never covered', checks: 1 });
    expect(seismic.before.reasons.join()).toContain('seismic');
    const concretes = [{ id: 'C40', strength28_MPa: 40, lightweight: true }];
    expect(choose({ concretes }).outcome).toBe('never covered');
  });
});

describe('an insert that does not fit', () => {
  it('is too long for the panel, 180 mm, or leaves less cover than the 20 mm of the rules', () => {
    const choice = choose({
      items: [F16, makeItem('F16-180', 180), makeItem('F16-161', 161), makeItem('F16-160', 160)],
    });
    expect(whyNot(choice, 'F16-180')).toMatch(/^does not fit: F16-180, 180 mm long, reaches through the panel/);
    expect(whyNot(choice, 'F16-161')).toMatch(/^does not fit: .*leaves 19 mm of cover behind the foot.* 20 mm$/);
    expect(whyNot(choice, 'F16-160')).toBe('passes');
    expect(choice.rejected.every(({ ratio }) => ratio === null)).toBe(true);
  });

  // 10 mm below the face, 150 mm long in 180 mm: 20 mm are left.
  it('leaves less cover by its recess', () => {
    const sunk = castIns.map((castIn) => ({ ...castIn, recess_mm: 10 }));
    const choice = choose({ castIns: sunk, items: [F16, makeItem('F16-151', 151), makeItem('F16-150', 150)] });
    expect(whyNot(choice, 'F16-151')).toContain('leaves 19 mm of cover behind the foot');
    expect(whyNot(choice, 'F16-150')).toBe('passes');
  });

  it('has its foot in another layer', () => {
    const layers = [
      { kind: 'structural', thickness_mm: 120 },
      { kind: 'insulation', thickness_mm: 60 },
    ];
    const choice = choose({ panels: [samplePanel({ layers })], items: [F16, makeItem('F16-125', 125)] });
    expect(whyNot(choice, 'F16-125')).toContain('in the layer insulation');
  });

  // The neighbour stands 40 mm from insert 1, with a body of 24 mm: a body of 60 mm would need (60 + 24)/2 = 42 mm.
  it('would stand in its neighbour', () => {
    const beside = [...castIns, sampleCastIn('3', 860, 500)];
    const thick = (id: string, body: number) =>
      makeItem(id, 110, {
        bodyDiameter_mm: body,
        foot: { kind: 'diameter', diameter_mm: 90, thickness_mm: 7, isFullHead: true },
      });
    const choice = choose({ castIns: beside, items: [F16, thick('F16-60', 60), thick('F16-56', 56)] });
    expect(whyNot(choice, 'F16-60')).toContain('F16-60, 60 mm thick, in place of insert 1 would stand in insert 3');
    expect(whyNot(choice, 'F16-56')).toBe('passes');
  });

  it('takes no bolts of the finish, the thread or the class that the connection has', () => {
    const stainless = makeItem('F16-S', 103, { boltFinishes: ['stainless'], finish: 'stainless', threadClass: '6H' });
    const M12 = makeItem('F12', 103, { thread: 'M12' });
    const items = [F16, stainless, M12];
    expect(whyNot(choose({ items }), 'F16-S')).toContain('class 8.8 are not stainless; F16-S takes: stainless');
    const given = choose({ items, connections: [sampleConnection({ boltFinish: 'zinc', boltThread: 'M16' })] });
    expect(whyNot(given, 'F12')).toContain('a bolt M16 does not fit F12, thread M12');
    const other = [F16, makeItem('F16-H', 103, { boltFinishes: ['plain'], threadClass: '6H' })];
    const zinc = choose({ items: other, connections: [sampleConnection({ boltFinish: 'zinc' })] });
    expect(whyNot(zinc, 'F16-H')).toContain('a zinc bolt does not go into F16-H');
    const A4 = makeItem('F16-A', 103, { boltFinishes: ['stainless', 'zinc'] });
    const bolts = sampleConnection({ boltClass: 'A4-70' });
    expect(
      whyNot(
        choose({ items: [A4, F16], connections: [bolts], castIns: castIns.map((c) => ({ ...c, item: 'F16-A' })) }),
        'F16',
      ),
    ).toContain('class A4-70 are stainless; F16 takes: zinc, galvanised');
  });

  it('has too little thread for the engagement that is given', () => {
    const short = makeItem('F16-T', 103, { threadDepth_mm: 20 });
    const choice = choose({ items: [F16, short], connections: [sampleConnection({ engagement_mm: 30 })] });
    expect(whyNot(choice, 'F16-T')).toContain('an engagement of 30 mm is more than the thread of F16-T, 20 mm deep');
  });

  it('does not go through the holes, or they are too wide for it to share a shear', () => {
    const items = [
      F16,
      makeItem('F20', 103, { thread: 'M20', bodyDiameter_mm: 30 }),
      makeItem('F12', 103, { thread: 'M12' }),
    ];
    const choice = choose({ items });
    expect(whyNot(choice, 'F20')).toBe('does not fit: a bolt M20 does not pass hole 1 of 18 mm');
    expect(whyNot(choice, 'F12')).toContain('hole 1 of 18 mm is wider than 14 mm');
  });

  it('is rated for another role, unless the job uses it as a fixing', () => {
    const rated = makeItem('B16', 103, {
      ratedLoads: [{ role: 'brace', load_kN: 20, document: 'Invented card', conditions: 'any' }],
    });
    const items = [F16, rated];
    expect(whyNot(choose({ items }), 'B16')).toMatch(/^other role: its maker rates it for brace/);
    const brace = sampleCastIn('B', 3000, 2000, { role: 'brace', item: 'B16' });
    expect(whyNot(choose({ items, castIns: [...castIns, brace] }), 'B16')).toMatch(/^other role/);
    const fixing = sampleCastIn('B', 3000, 2000, { item: 'B16' });
    expect(whyNot(choose({ items, castIns: [...castIns, fixing] }), 'B16')).toBe('passes');
  });

  it('has no qualification document: not covered, with its ratio', () => {
    const choice = choose({ items: [F16, makeItem('F16-N', 110, { qualification: null })] });
    expect(whyNot(choice, 'F16-N')).toMatch(/^not covered: the insert has no qualification document/);
    expect(choice.rejected[0]!.ratio).toBeLessThan(1);
  });
});

describe('what a rank rests on', () => {
  const items = [F16, makeItem('F16-75', 75, { price: { amount: 2.5, currency: 'EUR' }, leadTime_days: 10 })];

  it('counts other inserts of the kind in the panel and the job, not its own', () => {
    const panels = [samplePanel(), samplePanel({ key: 'p2', mark: 'P2' })];
    const others = [
      sampleCastIn('3', 3000, 2000, { item: 'F16-75' }),
      sampleCastIn('4', 3500, 2000),
      { ...sampleCastIn('1', 3000, 2000), key: 'p2-1', panel: 'P2' },
    ];
    const { ranked } = choose({ panels, items, castIns: [...castIns, ...others] });
    expect(ranked.map(({ item, inPanel, inJob }) => [item.id, inPanel, inJob])).toEqual([
      ['F16', 1, 2],
      ['F16-75', 1, 1],
    ]);
  });

  it('names look-alikes: same thread, other length, in the same panel and not of its own', () => {
    const alike = (castIn: ReturnType<typeof sampleCastIn>) =>
      choose({
        panels: [samplePanel(), samplePanel({ key: 'p2', mark: 'P2' })],
        items: [...items, makeItem('F12-90', 90, { thread: 'M12' })],
        castIns: [...castIns, castIn],
      }).ranked.map(({ item, lookAlikes }) => [item.id, lookAlikes]);
    expect(alike(sampleCastIn('3', 3000, 2000))).toContainEqual(['F16-75', ['F16']]);
    expect(alike(sampleCastIn('3', 3000, 2000, { item: 'F12-90' }))).toContainEqual(['F16-75', []]);
    expect(alike({ ...sampleCastIn('3', 3000, 2000), panel: 'P2' })).toContainEqual(['F16-75', []]);
  });

  it('costs the price of each times how many there are', () => {
    const { ranked } = choose({ items });
    expect(ranked.map(({ cost }) => cost)).toEqual([null, { amount: 5, currency: 'EUR' }]);
  });

  it('is had by the pour, or not', () => {
    const delivery = (daysToPour: number | null) => choose({ items }, { daysToPour }).ranked[1]!.delivery.kind;
    expect([delivery(10), delivery(9), delivery(null)]).toEqual(['in time', 'late', 'not asked']);
  });

  it('notes a finish with less zinc, a standard detail that asks for another, cover that is short', () => {
    const zinc = makeItem('F16-Z', 110, { finish: 'zinc', coating_um: 8, threadClass: '6H' });
    const detail = { id: 'T1', name: 'Bracket', fixture: sampleFixture(), item: 'F16' };
    const connections = [sampleConnection({ fixture: null, detail: 'T1' })];
    const { ranked } = choose({ items: [F16, zinc], details: [detail], connections });
    expect(ranked[0]!.notes).toEqual([]);
    expect(ranked[1]!.notes).toEqual([
      expect.stringContaining('finish zinc (8 µm) in place of galvanised (55 µm)'),
      'standard detail T1 asks for F16',
    ]);
    const rules = { cover: { behindFoot_mm: 100 } };
    expect(choose({ rules }).ranked[0]!.notes).toEqual(['77 mm of cover behind the foot; the rules ask for 100 mm']);
  });
});

describe('holes made to suit', () => {
  const F20 = makeItem('F20', 110, { thread: 'M20', bodyDiameter_mm: 32 });
  const F24 = makeItem('F24', 110, { thread: 'M24', bodyDiameter_mm: 40 });
  const drills = { drills: true };

  // EN 1992-4, Table 6.1: 22 mm for M20, 14 mm for M12; drilling makes no hole smaller.
  it('let another thread in, at the widest over which its bolts share a shear', () => {
    const items = [F16, F20, makeItem('F12', 103, { thread: 'M12' })];
    const choice = choose({ items }, drills);
    expect(choice.ranked.map(({ item, changes }) => [item.id, changes.holes])).toEqual([
      ['F16', null],
      ['F20', { ids: ['1', '2'], from: [18, 18], to: 22 }],
    ]);
    expect(whyNot(choice, 'F12')).toBe(
      'does not fit: a new plate with holes 14 mm (now 18) would be needed: drilling makes holes larger only',
    );
  });

  it('do not cure holes that are too wide for the thread that is there: that takes a new plate', () => {
    const holes = ['1', '2'].map((id, i) => ({ id, at_mm: [200 * i - 100, 0], diameter_mm: 22 }));
    const connections = [sampleConnection({ fixture: sampleFixture({ holes }) })];
    expect(whyNot(choose({ connections }), 'F16')).toContain('wider than 18 mm');
    const choice = choose({ connections }, drills);
    expect(choice.before.state).toBe('not covered');
    expect(choice.ranked).toEqual([]);
    expect(whyNot(choice, 'F16')).toContain('a new plate with holes 18 mm (now 22)');
  });

  // EN 1993-1-8, Table 3.3: 1.2 d_0 to the edge, here 30 mm: M20 wants 26.4 mm, M24 31.2 mm; 2.2 d_0 = 57.2 mm to the next hole.
  it('need room in the plate', () => {
    const plate = (at: number, width: number) =>
      sampleConnection({
        fixture: sampleFixture({
          outline_mm: [
            [-at - width, -50],
            [at + width, -50],
            [at + width, 50],
            [-at - width, 50],
          ],
          holes: ['1', '2'].map((id, i) => ({ id, at_mm: [(2 * i - 1) * at, 0], diameter_mm: 18 })),
        }),
      });
    const edge = choose({ items: [F16, F20, F24], connections: [plate(100, 30)] }, drills);
    expect(whyNot(edge, 'F20')).toBe('passes');
    expect(whyNot(edge, 'F24')).toContain(
      'hole 1 made 26 mm would stand 30 mm from the edge of the plate; at least 31.2 mm',
    );
    const near = [sampleCastIn('1', 972, 500), sampleCastIn('2', 1028, 500)];
    const next = choose({ items: [F16, F20, F24], castIns: near, connections: [plate(28, 50)] }, drills);
    expect(whyNot(next, 'F24')).toContain('would stand 56 mm from hole 2; at least 57.2 mm');
    expect(whyNot(next, 'F20')).not.toContain('hole');
  });

  it('take a bolt thread that is given with them', () => {
    const connections = [sampleConnection({ boltThread: 'M16' })];
    expect(whyNot(choose({ items: [F16, F20], connections }), 'F20')).toContain('a bolt M16 does not fit');
    const found = choose({ items: [F16, F20], connections }, drills).ranked[1]!;
    expect(found.changes).toMatchObject({ boltThread: { from: 'M16', to: 'M20' }, holes: { to: 22 } });
  });

  it('leave a detail that others share as it is: the plate becomes one of its own', () => {
    const detail = { id: 'T1', name: 'Bracket', fixture: sampleFixture(), item: null };
    const connections = [sampleConnection({ fixture: null, detail: 'T1' })];
    const { ranked } = choose({ items: [F16, F20], details: [detail], connections }, drills);
    expect(ranked[1]!.consequences).toEqual([expect.stringContaining('no longer that of detail T1')]);
  });
});

describe('stronger bolts', () => {
  it('are of the same steel, weakest first', () => {
    // Classes by f_uk, then f_yk: ISO 898-1 and ISO 3506-1, nominal values.
    expect(findStrongerClasses('4.6')).toEqual(['5.6', '5.8', '8.8', '10.9']);
    expect(findStrongerClasses('5.8')).toEqual(['8.8', '10.9']);
    expect(findStrongerClasses('10.9')).toEqual([]);
    expect(findStrongerClasses('A4-50')).toEqual(['A4-70', 'A4-80']);
  });

  // Packers of 20 mm: the bolts bend over 0.5 · 16 + 15/2 + 20 = 35.5 mm. M_Rk = 1.2 · W · f_uk, W = π/32 · 14.124³ = 276.6 mm³:
  // V_Rd a bolt of 4.6 = 1.2 · 276.6 · 400/35.5/1.667 = 2.24 kN, of 5.6: 2.80 kN, of 5.8: 1.2 · 276.6 · 500/35.5/1.25 = 3.74 kN.
  const bent = (V_kN: number) =>
    sampleConnection({ packers_mm: 20, boltClass: '4.6', actions: loads({ Vy_kN: -2 * V_kN }) });

  it('are the weakest with which steel no longer governs, only when asked', () => {
    expect(whyNot(choose({ connections: [bent(3.3)] }), 'F16')).toMatch(/^fails/);
    const choice = choose({ connections: [bent(3.3)] }, { strongerBolts: true });
    expect(choice.ranked[0]!.changes.boltClass).toEqual({ from: '4.6', to: '5.8' });
    expect(choose({ connections: [bent(2.6)] }, { strongerBolts: true }).ranked[0]!.changes.boltClass!.to).toBe('5.6');
    expect(choice.checks).toBe(3);
  });

  it('are told where they do not help', () => {
    const { rejected } = choose({ connections: [bent(30)] }, { strongerBolts: true });
    expect(rejected[0]).toMatchObject({ why: 'fails', tried: ['bolts up to 10.9'] });
  });

  it('are not tried where the concrete governs', () => {
    const connections = [sampleConnection({ boltClass: '4.6', actions: loads({ N_kN: 60 }) })];
    const choice = choose({ connections }, { strongerBolts: true });
    expect(choice.rejected[0]).toMatchObject({ governing: { mode: 'concrete-cone' }, tried: [] });
    expect(choice.checks).toBe(1);
  });
});
