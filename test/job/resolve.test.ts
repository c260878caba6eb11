import { describe, expect, it } from 'vitest';
import { faultsOf, mustResolve, resolveFirst } from './read.ts';
import {
  type Json,
  type SampleParts,
  sampleCastIn,
  sampleConnection,
  sampleFixture,
  sampleItem,
  sampleJob,
  samplePanel,
} from './sample-job.ts';

const resolve = (parts: SampleParts = {}) => mustResolve(sampleJob(parts));
const positionsOf = (parts: SampleParts) => resolve(parts).group.positions.map(({ x, y }) => [x, y]);
const inside = (changes: Json = {}) => ({
  castIns: [
    sampleCastIn('1', 1100, 500, { face: 'inside', ...changes }),
    sampleCastIn('2', 900, 500, { face: 'inside', ...changes }),
  ],
});

describe('a connection on the drawn face', () => {
  const resolved = resolve();
  it('keeps the coordinates of the drawing and brings units to N, mm, MPa', () => {
    expect(resolved.group.positions).toEqual([
      { id: '1', x: 900, y: 500 },
      { id: '2', x: 1100, y: 500 },
    ]);
    expect(resolved.group.concrete).toEqual({ strength: 40, cracked: true, lightweightFactor: 1 });
    expect(resolved.group.member.thickness).toBe(180);
    expect(resolved.group.insert).toMatchObject({
      embedment: 96,
      shaftDiameter: 24,
      foot: { kind: 'diameter', diameter: 46, thickness: 7 },
    });
    expect(resolved.actions).toEqual({
      kind: 'loads',
      combinations: [{ name: 'wind', action: { at: [1000, 500], N: 10_000, Vx: 2000, Vy: -5000, Mx: 0, My: 0, T: 0 } }],
    });
  });
  // Hand calculation: f_cm = 48, E_cm = 22 000 · 4.8^0.3 = 22 000 · 1.60091 = 35 220 MPa (Table 3.1 prints 35 GPa); 200 000/35 220 = 5.6786.
  it('gives the plate to the fixture solver', () => {
    expect(resolved.plate!.modularRatio).toBeCloseTo(5.6785, 3);
    expect(resolved.plate).toMatchObject({ thickness: 15, yield: 235, attachment: null });
    expect(resolved.plate!.outline[0]).toEqual([850, 450]);
    expect(resolved.plate!.bolts.map(({ id, x, y, takesShear }) => ({ id, x, y, takesShear }))).toEqual([
      { id: '1', x: 900, y: 500, takesShear: true },
      { id: '2', x: 1100, y: 500, takesShear: true },
    ]);
    expect(resolved.plate!.bolts[0]!.stressArea).toBeCloseTo(156.67, 2);
  });
  it('names every default taken', () => {
    expect(resolved.assumptions).toEqual([
      'cracked concrete assumed (rules rul)',
      'concrete at 28 days: f_ck = 40 MPa',
      'bolt finish not given: one that F16 takes (zinc, galvanised)',
      'bolts engage 16 mm of full thread: to be made sure of on site',
      'reinforcement not given: taken as dense at the surface, none along edges, not limiting cracks',
      'no lever arm: steel fixture directly on the concrete',
      'a life of 50 years is wanted (EN 1990, Table 2.1, category 4)',
    ]);
    expect(resolved.notCovered).toEqual([]);
  });
});

describe('a connection on the other face', () => {
  // By hand: the panel is 4000 wide, so drawn x = 1100 is 2900 from the left as one stands before the inside face.
  const parts = { ...inside(), connections: [sampleConnection({ face: 'inside' })] };
  it('is the mirror image, with the plate and its loads as seen from in front', () => {
    expect(positionsOf(parts)).toEqual([
      [2900, 500],
      [3100, 500],
    ]);
    const { plate, actions } = resolve(parts);
    expect(plate!.outline[0]).toEqual([2850, 450]);
    expect(actions).toMatchObject({ combinations: [{ action: { at: [3000, 500], Vx: 2000, Vy: -5000 } }] });
  });
  it('mirrors outline and openings as well', () => {
    const openings_mm = [
      [
        [500, 1000],
        [1500, 1000],
        [1500, 2000],
        [500, 2000],
      ],
    ];
    const { member } = resolve({ ...parts, panels: [samplePanel({ openings_mm })] }).group;
    expect(member.openings[0]!.map(([x]) => x)).toEqual([3500, 2500, 2500, 3500]);
    expect(member.outline!.map(([x]) => x)).toEqual([4000, 0, 0, 4000]);
  });
});

describe('a turned plate', () => {
  // By hand: a quarter turn counter-clockwise carries plate x to panel y: holes at (1000, 400) and (1000, 600);
  // Vx = 2 → Vy = 2, Vy = −5 → Vx = 5; Mx = 1 kNm → My = 1e6 N mm.
  const parts = {
    castIns: [sampleCastIn('1', 1000, 400), sampleCastIn('2', 1000, 600)],
    connections: [
      sampleConnection({
        turn_deg: 90,
        fixture: sampleFixture({
          holes: [
            { id: '1', at_mm: [-100, 0], diameter_mm: 18, slot_mm: 20, slotAngle_deg: 0 },
            { id: '2', at_mm: [100, 0], diameter_mm: 18, takesShear: false },
          ],
        }),
        actions: {
          kind: 'loads',
          combinations: [{ name: 'w', N_kN: 0, Vx_kN: 2, Vy_kN: -5, Mx_kNm: 1, T_kNm: 0.5, at_mm: [10, 0] }],
        },
      }),
    ],
  };
  it('turns outline, loads and slots with it', () => {
    const { plate, actions } = resolve(parts);
    expect(plate!.outline[0]).toEqual([1050, 350]);
    expect(actions).toEqual({
      kind: 'loads',
      combinations: [{ name: 'w', action: { at: [1000, 510], N: 0, Vx: 5000, Vy: 2000, Mx: 0, My: 1e6, T: 5e5 } }],
    });
    // A slot along plate x lies along panel y; shear is taken across it, along panel x (either way).
    const [slotted, free] = plate!.bolts.map((b) => b.takesShear);
    expect(slotted).toEqual({ onlyAlong: [-1, 0] });
    expect(free).toBe(false);
  });
  it('turns loops that serve an edge', () => {
    const hairpin = {
      diameter_mm: 10,
      legs: 2,
      distance_mm: 20,
      anchorageInside_mm: 80,
      anchorageOutside_mm: 300,
      yield_MPa: 500,
      hooked: true,
      goodBond: true,
      toward_deg: 0,
      depth_mm: 40,
    };
    const [connection] = parts.connections;
    const { group } = resolve({ ...parts, connections: [{ ...connection, hairpins: [hairpin], hangers: [] }] });
    expect(group.hairpins[0]).toMatchObject({ toward: Math.PI / 2, depth: 40, anchorageInside: 80 });
    expect(group.reinforcement.supplementary).toBe(true);
  });
});

describe('the section at the inserts', () => {
  it('takes the recess off the thickness, leaves the embedment, and gives the bolt a lever arm', () => {
    const recessed = [sampleCastIn('1', 900, 500, { recess_mm: 12 }), sampleCastIn('2', 1100, 500)];
    const { group, assumptions } = resolve({ castIns: recessed });
    expect(group.member.thickness).toBe(168);
    expect(group.insert.embedment).toBe(96);
    // By hand: 0.5 · 16 + 15/2 + 12 = 27.5 mm; W = π/32 · 14.1236³ = 276.6 mm³.
    expect(group.leverArm!.length).toBeCloseTo(27.5, 9);
    expect(group.leverArm!.sectionModulus).toBeCloseTo(276.6, 1);
    expect(group.leverArm!.restraint).toBe(1);
    expect(assumptions.some((a) => a.startsWith('recess of 12 mm'))).toBe(true);
  });
  it('fills the hollow when the connection says so', () => {
    const castIns = [sampleCastIn('1', 900, 500, { recess_mm: 12 }), sampleCastIn('2', 1100, 500, { recess_mm: 12 })];
    expect(resolve({ castIns, connections: [sampleConnection({ isFilled: true })] }).group.leverArm).toBeNull();
  });
  it('adds packers to the lever arm, not thin mortar', () => {
    const arm = (changes: Json) => resolve({ connections: [sampleConnection(changes)] }).group.leverArm;
    expect(arm({ packers_mm: 10 })!.length).toBeCloseTo(0.5 * 16 + 7.5 + 10, 9);
    expect(arm({ packers_mm: 10, isHeldAgainstTurning: true })!.restraint).toBe(2);
    expect(arm({ packers_mm: 8, isFilled: true })).toBeNull();
    expect(arm({ packers_mm: 9, isFilled: true })!.length).toBeCloseTo(0.5 * 16 + 7.5 + 9, 9);
  });
  it('takes the structural layer of a sandwich from its own side', () => {
    const layers = [
      { kind: 'outer skin', thickness_mm: 70 },
      { kind: 'insulation', thickness_mm: 80 },
      { kind: 'structural', thickness_mm: 150 },
    ];
    const panels = [samplePanel({ thickness_mm: 300, layers })];
    expect(
      resolve({ panels, ...inside(), connections: [sampleConnection({ face: 'inside' })] }).group.member.thickness,
    ).toBe(150);
  });
  it('does not compute an insert that starts in another layer', () => {
    const layers = [
      { kind: 'outer skin', thickness_mm: 20 },
      { kind: 'structural', thickness_mm: 160 },
    ];
    expect(resolveFirst(sampleJob({ panels: [samplePanel({ layers })] }))).toMatchObject({
      kind: 'unresolved',
      reasons: [
        'insert 1: the outside face is of the layer outer skin there, so the insert does not start in structural concrete',
      ],
    });
  });
  // By hand: 1.5 h_ef = 144 mm, 1.5 times the 500 mm to the nearest edge = 750 mm; the rebate begins 740 or 760 mm beside insert 2.
  it.each([
    [1840, 150],
    [1860, 180],
  ])(
    'takes the thickness of a rebate within reach of cone or edge body (begins at x = %d: %d mm)',
    (from, thickness) => {
      const outline_mm = [
        [from, 0],
        [3000, 0],
        [3000, 3000],
        [from, 3000],
      ];
      const zones = [{ name: 'rebate', outline_mm, layers: [{ kind: 'structural', thickness_mm: 150 }] }];
      expect(resolve({ panels: [samplePanel({ zones })] }).group.member.thickness).toBe(thickness);
    },
  );
  // By hand: a rib of 240 mm stands out 60 mm on the inside, from x = 800; insert 1 at 900 is 100 mm from its border, so the panel
  // beside it (180 mm, 60 mm lower on the inside face) counts. From the outside the face is level. A step counts up to the
  // 500 mm to the nearest edge, a thickness up to 750 mm: not the border at 800 mm from insert 1.
  it('sees the panel beside a rib, and a step of the face itself as a free edge that is not covered', () => {
    const outline_mm = [
      [800, 0],
      [3500, 0],
      [3500, 3000],
      [800, 3000],
    ];
    const zones = [{ name: 'rib', outline_mm, layers: [{ kind: 'structural', thickness_mm: 240 }] }];
    const panels = [samplePanel({ zones })];
    const outside = resolve({ panels });
    expect([outside.group.member.thickness, outside.notCovered]).toEqual([180, []]);
    const within = resolve({ panels, ...inside(), connections: [sampleConnection({ face: 'inside' })] });
    expect(within.notCovered).toEqual([
      'insert 1: the inside face steps back by 60 mm within 500 mm, a free edge that the outline does not have',
      'insert 2: the inside face steps back by 60 mm within 500 mm, a free edge that the outline does not have',
    ]);
    const far = resolve({
      panels: [
        samplePanel({
          zones: [
            {
              ...zones[0],
              outline_mm: [
                [100, 0],
                [3500, 0],
                [3500, 3000],
                [100, 3000],
              ],
            },
          ],
        }),
      ],
    });
    expect(far.group.member.thickness).toBe(240);
  });
  // By hand: a thicker foot of the panel, up to y = 900; its lower border is the panel's own edge, 100 mm away, and no step.
  it('takes no step from a border that is the edge of the panel', () => {
    const zones = [
      {
        name: 'foot',
        outline_mm: [
          [0, 0],
          [4000, 0],
          [4000, 900],
          [0, 900],
        ],
        layers: [{ kind: 'structural', thickness_mm: 220 }],
      },
    ];
    const castIns = [sampleCastIn('1', 900, 100), sampleCastIn('2', 1100, 100)];
    expect(
      resolve({
        panels: [samplePanel({ zones })],
        castIns,
        connections: [sampleConnection({ origin_mm: [1000, 100] })],
      }).group.member.thickness,
    ).toBe(220);
  });
  it('warns of little cover behind the foot', () => {
    const { warnings } = resolve({ panels: [samplePanel({ thickness_mm: 120 })] });
    expect(warnings.filter((text) => text.startsWith('insert '))).toEqual(
      [1, 2].map((id) => `insert ${id}: 17 mm of cover behind the foot; the rules ask for 20 mm`),
    );
  });
});

describe('inserts in an edge', () => {
  const castIns = [
    sampleCastIn('1', 900, 60, { face: 'edge', edge: 0 }),
    sampleCastIn('2', 1100, 60, { face: 'edge', edge: 0 }),
  ];
  const connections = [sampleConnection({ face: 'edge', edge: 0, origin_mm: [1000, 60] })];
  // By hand: the bottom edge is 4000 long and 180 high, 60 mm from outside is 120 mm up from the inside face; behind lie 3000 mm.
  it('takes the edge as a face of its own with the width of the panel behind it', () => {
    const { group, face } = resolve({ castIns, connections });
    expect(face).toBe('edge 0');
    expect(group.positions.map(({ x, y }) => [x, y])).toEqual([
      [900, 120],
      [1100, 120],
    ]);
    expect(group.member.outline!.map((p) => [...p])).toEqual([
      [0, 180],
      [4000, 180],
      [4000, 0],
      [0, 0],
    ]);
    expect(group.member.thickness).toBeCloseTo(3000, 6);
  });
  it('stops at an opening behind the inserts', () => {
    const openings_mm = [
      [
        [1050, 700],
        [2000, 700],
        [2000, 1500],
        [1050, 1500],
      ],
    ];
    expect(
      resolve({ castIns, connections, panels: [samplePanel({ openings_mm })] }).group.member.thickness,
    ).toBeCloseTo(700, 6);
  });
  // By hand: a skew edge from (4000, 0) to (4000 − 1500, 3000) − the width square to the bottom edge at x = 3700 is 2 · 300 = 600.
  it('measures square to the edge toward a skew side', () => {
    const outline_mm = [
      [0, 0],
      [4000, 0],
      [2500, 3000],
      [0, 3000],
    ];
    const skew = castIns.map((castIn, i) => ({ ...castIn, x_mm: 3500 + 200 * i }));
    const { group } = resolve({
      castIns: skew,
      connections: [{ ...connections[0], origin_mm: [3600, 60] }],
      panels: [samplePanel({ outline_mm })],
    });
    expect(group.member.thickness).toBeCloseTo(600, 6);
  });
  it('keeps to the structural layer of the edge', () => {
    const layers = [
      { kind: 'structural', thickness_mm: 130 },
      { kind: 'insulation', thickness_mm: 50 },
    ];
    const { member } = resolve({ castIns, connections, panels: [samplePanel({ layers })] }).group;
    expect(member.outline!.map(([, y]) => y)).toEqual([180, 180, 50, 50]);
  });
  // By hand: 140 of concrete that begin 40 behind the outside face of 180: from 140 to 0 seen up from the inside face.
  it('takes the concrete of a rebate where it lies, and refuses a place in the air in front of it', () => {
    const outline_mm = [
      [-10, -10],
      [4010, -10],
      [4010, 400],
      [-10, 400],
    ];
    const zones = [
      { name: 'rebate', outline_mm, layers: [{ kind: 'structural', thickness_mm: 140 }], behindOutside_mm: 40 },
    ];
    const panels = [samplePanel({ zones })];
    const at = (y_mm: number) => ({
      castIns: castIns.map((castIn) => ({ ...castIn, y_mm })),
      connections: [{ ...connections[0], origin_mm: [1000, y_mm] }],
      panels,
    });
    expect(resolve(at(110)).group.member.outline!.map(([, y]) => y)).toEqual([140, 140, 0, 0]);
    expect(faultsOf(sampleJob(at(30)))[0]).toContain(
      '30 mm from the outside face lies off an edge 140 mm thick; expected between 40 and 180 mm',
    );
    expect(faultsOf(sampleJob(at(150)))).toEqual([]);
  });
  it('never covers a battered edge', () => {
    const panels = [samplePanel({ edges: [{ edge: 0, batter_deg: 5 }] })];
    expect(resolve({ castIns, connections, panels }).notCovered).toEqual([
      'edge 0 has a batter of 5°: the inserts do not stand square to the edge',
    ]);
  });
});

describe('what is never a pass, and what is not asked', () => {
  it('marks mixed types and computes the shortest', () => {
    const items = [sampleItem(), sampleItem({ id: 'F16S', length_mm: 75, embedment_mm: 68, crossHole: null })];
    const castIns = [sampleCastIn('1', 900, 500), sampleCastIn('2', 1100, 500, { item: 'F16S' })];
    const { group, assumptions } = resolve({ items, castIns });
    expect(group.uncoveredUses).toEqual(['mixed types']);
    expect(group.insert.embedment).toBe(68);
    expect(assumptions).toContain('inserts of different types: all computed as F16S, the one with the least embedment');
  });
  it('passes uses on and adds the role', () => {
    const items = [sampleItem({ ratedLoads: [{ role: 'brace', load_kN: 9, document: 'D', conditions: 'none' }] })];
    const castIns = [sampleCastIn('1', 900, 500, { role: 'brace' }), sampleCastIn('2', 1100, 500)];
    expect(
      resolve({ items, castIns, connections: [sampleConnection({ uses: ['seismic'] })] }).group.uncoveredUses,
    ).toEqual(['seismic', 'brace']);
  });
  it('does not cover holes wider than the table that take shear', () => {
    const holes = (changes: Json) => [
      { id: '1', at_mm: [-100, 0], diameter_mm: 19, ...changes },
      { id: '2', at_mm: [100, 0], diameter_mm: 18 },
    ];
    const found = (changes: Json) =>
      resolve({ connections: [sampleConnection({ fixture: sampleFixture({ holes: holes(changes) }) })] }).notCovered;
    expect(found({})).toEqual([
      'hole 1 of 19 mm is wider than 18 mm, up to which bolts M16 share a shear (EN 1992-4, Table 6.1)',
    ]);
    expect(found({ takesShear: false })).toEqual([]);
  });
  it('does not cover lightweight concrete', () => {
    expect(resolve({ concretes: [{ id: 'C40', strength28_MPa: 40, lightweight: true }] }).notCovered).toEqual([
      'lightweight concrete',
    ]);
  });
  it('knows required resistances and no action', () => {
    const actionsOf = (actions: Json) => resolve({ connections: [sampleConnection({ actions })] }).actions;
    expect(actionsOf({ kind: 'required', N_kN: 8, V_kN: 6 })).toEqual({ kind: 'required', N: 8000, V: 6000 });
    expect(actionsOf({ kind: 'none' })).toEqual({ kind: 'none' });
  });
  it('takes the strength at the age that the connection names', () => {
    expect(resolve({ connections: [sampleConnection({ age_days: 7 })] }).group.concrete.strength).toBe(28);
  });
  it('takes plate and holes from a standard detail', () => {
    const details = [{ id: 'T', name: 'T', fixture: sampleFixture() }];
    const { plate } = resolve({ details, connections: [sampleConnection({ detail: 'T', fixture: null })] });
    expect(plate).toEqual(resolve().plate);
  });
});

describe('reinforcement of the panel', () => {
  const bars = (changes: Json) => ({
    face: 'outside',
    direction_deg: 0,
    diameter_mm: 12,
    spacing_mm: 150,
    cover_mm: 30,
    ...changes,
  });
  const dense = (...list: Json[]) =>
    resolve({ panels: [samplePanel({ reinforcement: { bars: list, edge: 'bar', limitsCrackWidth: true } })] }).group
      .reinforcement.denseSurface;
  // EN 1992-4, 7.2.1.4 (recalled): not dense at 150 mm or more, or at 100 mm or more for diameters up to 10 mm; bars of the insert's own face.
  it('is dense where the code says so', () => {
    expect(dense(bars({}))).toBe(false);
    expect(dense(bars({ spacing_mm: 149 }))).toBe(true);
    expect(dense(bars({ spacing_mm: 100, diameter_mm: 10 }))).toBe(false);
    expect(dense(bars({ spacing_mm: 99, diameter_mm: 10 }))).toBe(true);
    expect(dense(bars({ spacing_mm: 99, face: 'inside' }))).toBe(false);
    expect(dense()).toBe(false);
  });
});

// ISO 10684: a galvanised bolt needs an insert tapped oversize.
describe('the pair of bolt and insert thread', () => {
  const reasons = (threadClass: string, boltFinish: string) =>
    resolve({
      items: [sampleItem({ threadClass, boltFinishes: ['zinc', 'galvanised'] })],
      connections: [sampleConnection({ boltFinish })],
    }).notCovered.join();
  it('a galvanised bolt in 6H is never passed; in 6AZ it goes', () => {
    expect(reasons('6H', 'galvanised')).toContain('a galvanised bolt does not go into a thread 6H');
    expect(reasons('6AZ', 'galvanised')).toBe('');
    expect(reasons('6H', 'zinc')).toBe('');
  });
});

describe('a job by ACI 318', () => {
  it('takes none of the partial factors of its rules, and says so', () => {
    const partialFactors = { concrete: 1.2, steelTension: 1, steelShear: 1 };
    const by = (standard: string) => resolve({ rules: { standard, partialFactors } });
    expect(by('ACI 318M-19').group.partialFactors).toEqual({ concrete: null, steelTension: null, steelShear: null });
    expect(by('ACI 318M-19').assumptions.join()).toContain('partial factors of the rules are not used');
    expect(by('AS 5216').group.partialFactors).toEqual(partialFactors);
  });
});
