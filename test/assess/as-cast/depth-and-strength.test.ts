import { describe, expect, it } from 'vitest';
import { listOff } from '../../../src/assess/as-cast/judge-insert.ts';
import { cylinderFromCube } from '../../../src/engine/material/cube-strength.ts';
import type { KindAndBody } from '../../../src/records/record.ts';
import { castOf, connectionOf, reportOff, reportOn, surveyed } from './casts.ts';

/** C41 of P13: four bolts M16, no. 12 to 15; its assemblies aim at a top 3 mm below a trowelled face, flush with a mould face. */
const ALL = [12, 13, 14, 15] as const;

function topOf(number: number): number {
  // An insert surveyed without a depth off is as deep as it was aimed at: found by asking for depth 0.
  const { inserts } = reportOff('P13', { [number]: { depth: 0 } });
  const { depth, depthOff } = inserts.find(({ item }) => item.number === number)!.place!;
  return depth! - depthOff!;
}

function remedyOf(offs: Parameters<typeof reportOff>[1], kind: string) {
  const found = connectionOf(reportOff('P13', offs), 'C41');
  return { found, remedy: found.remedies.find((one) => one.kind === kind)! };
}

describe('depth', () => {
  it('a top that lies above its face, too little to be sure of it, is never told as a negative depth below', () => {
    const { context, plan } = castOf('P13').sample;
    const { index } = context;
    const { items, panel } = plan.setOut;
    const item = items.find(({ number }) => number === 12)!;
    const place = { dx: 0, dy: 0, depth: -2.3, depthOff: -5.3, depthSigma: 3, tilt: null };
    expect(listOff(index, panel, item, place)).toEqual([
      'its top lies 2.3 mm above the face, 5.3 mm less deep than aimed at; ±5 mm is allowed',
    ]);
    expect(listOff(index, panel, item, { ...place, depth: 2.3, depthOff: -0.7 })).toEqual([]);
  });

  it('a recess beyond its tolerance lengthens the lever arm by itself, so that shear takes more of the bolt', () => {
    // The hollow adds its depth to e_1 (section "recess of depth t" of the trade's practice: the lever arm of the bolt grows by t).
    const top = topOf(12);
    const [ten, twenty] = [10, 20].map(
      (deeper) => remedyOf({ 12: { depth: top + deeper } }, 'packers or other bolts').remedy,
    );
    const flush = connectionOf(reportOff('P13', {}), 'C41').before.ratio!;
    expect(ten!.ratio!).toBeGreaterThan(flush);
    expect(twenty!.ratio!).toBeGreaterThan(ten!.ratio!);
    expect(ten!.words).toBe('Bolt of no. 12 longer by 10 mm.');
  });

  it('bolts of the designed length do not reach into an insert that lies too deep', () => {
    const { found, remedy } = remedyOf({ 12: { depth: topOf(12) + 8 } }, 'as is');
    expect(remedy.verdict).toBe('does not work');
    // One diameter of thread is asked for: 16 mm, less the 8 mm that it lies too deep.
    expect(remedy.why).toContain('bolts of the designed length engage 8 mm in no. 12, at least 16 mm is needed');
    expect(found.state).toBe('needs a remedy');
    const longer = found.remedies[0]!;
    expect(longer.kind).toBe('packers or other bolts');
    expect(longer.act).toBe('decide on site');
  });

  it('a top out of the face takes packers over it, and the plate never lies on it', () => {
    const { remedy } = remedyOf({ 12: { depth: -3.4 } }, 'as is');
    expect(remedy.verdict).toBe('does not work');
    expect(remedy.why[0]).toContain('does not lie on the concrete');
    const packed = remedyOf({ 12: { depth: -3.4 } }, 'packers or other bolts').remedy;
    expect(packed.change.packers_mm).toBe(4);
    expect(packed.connection.packers_mm).toBe(4);
    expect(packed.ratio!).toBeGreaterThan(remedy.ratio!);
  });

  it('a top out of the face stands under its plate without a bolt too', () => {
    const { remedies } = connectionOf(reportOff('P13', { 12: { depth: -6 } }), 'C41');
    const fewer = remedies.find(({ kind }) => kind === 'fewer inserts')!;
    expect(fewer.change.unused).toHaveLength(1);
    expect(fewer.change.packers_mm).toBe(6);
  });

  it('a foot that came nearer to the face carries less, by the depth that is left', () => {
    const [none, ten] = [0, 10].map((out) =>
      remedyOf(Object.fromEntries(ALL.map((n) => [n, { depth: -out }])), 'as is'),
    );
    expect(ten!.remedy.ratio!).toBeGreaterThan(none!.remedy.ratio!);
  });

  it('a bolt that leans goes aside at its plate: 3 mm over 95 mm are 1.81°, 0.95 mm in 30 mm', () => {
    const insert = reportOff('P13', { 12: { tilt: 3 } }).inserts.find(({ item }) => item.number === 12)!;
    expect(insert.place!.tilt!.total).toBeCloseTo(1.81, 2);
    const found = connectionOf(reportOff('P13', { 12: { tilt: 3 } }), 'C41');
    const asIs = found.remedies.find(({ kind }) => kind === 'as is')!;
    const thickness = found.remedies[0]!.connection.fixture?.thickness_mm ?? plateThickness(found.connection.detail!);
    // In the middle of the plate it stands aside by t/2 · tan, and takes t · tan more of the hole: 1 mm − t · tan in all.
    expect(asIs.clearance!.margin).toBeCloseTo(1 - thickness * Math.tan((1.8096 * Math.PI) / 180), 3);
  });

  it('leaning by more than 1 in 20 it is for the design engineer, and nothing works unseen', () => {
    const { remedies, members } = connectionOf(reportOff('P13', { 12: { tilt: 6 } }), 'C41');
    expect(members.some(({ why }) => why.join().includes('leans by'))).toBe(true);
    for (const one of remedies.filter(({ change }) => change.unused.length === 0))
      expect(one.verdict).not.toBe('works');
    expect(remedies.every(({ act }) => act === 'change the design')).toBe(true);
    expect(remedies.find(({ kind }) => kind === 'fewer inserts')!.verdict).toBe('works');
  });
});

function plateThickness(detail: string): number {
  const { index } = castOf('P13').sample.context;
  return index.details.get(detail)!.fixture!.thickness_mm;
}

const result = (specimen: 'cylinder' | 'cube', values_MPa: number[], days = 28): KindAndBody => ({
  kind: 'strength-result',
  body: { specimen, age_hours: days * 24, values_MPa, report: null },
});

function strengthWith(...results: readonly KindAndBody[]) {
  return castWith('P13', results);
}

function castWith(mark: string, results: readonly KindAndBody[]) {
  const tablet = castOf(mark);
  tablet.write('checker', null, surveyed(tablet.sample, {}));
  for (const one of results) tablet.write('qa', null, one);
  return reportOn(tablet.sample, tablet.known.values());
}

describe('strength', () => {
  it('turns cubes into cylinders by the pairs of the classes', () => {
    // C30/37 and C35/45 of EN 206; between them straight: 41 is half way.
    expect(cylinderFromCube(37)).toBe(30);
    expect(cylinderFromCube(45)).toBe(35);
    expect(cylinderFromCube(41)).toBe(32.5);
    expect(cylinderFromCube(5)).toBe(4);
    expect(cylinderFromCube(150)).toBe(100);
  });

  it('is never above the design, and the lowest result where that is less', () => {
    const design = strengthWith().strength;
    expect(design.from).toBe('design');
    const strong = strengthWith(result('cylinder', [60, 70, 58])).strength;
    expect([strong.cylinder_MPa, strong.from]).toEqual([design.cylinder_MPa, 'design']);
    const weak = strengthWith(result('cylinder', [52, 44.5, 55]), result('cube', [60, 57])).strength;
    // A cube of 57 MPa lies between C45/55 and C50/60: 47 MPa, more than the cylinder of 44.5.
    expect([weak.cylinder_MPa, weak.from]).toEqual([44.5, 'measured']);
    expect(weak.words).toContain('common practice');
  });

  it('of younger specimens is not that of the class', () => {
    const young = strengthWith(result('cylinder', [22], 1)).strength;
    expect(young.from).toBe('design');
    expect(young.words).toContain('not counted');
  });

  it('that is weaker is used: a connection may then fail that passed', () => {
    const ratioAt = (report: ReturnType<typeof strengthWith>) =>
      connectionOf(report, 'C41').remedies.find(({ kind }) => kind === 'as is')!.ratio!;
    expect(ratioAt(strengthWith(result('cylinder', [20])))).toBeGreaterThan(ratioAt(strengthWith()));
    // C04 of P01 is used to 60 % at 40 MPa; its cone carries with the root of the strength, so that at 12.1 MPa it is beyond 100 %.
    const weak = connectionOf(castWith('P01', [result('cylinder', [12.1])]), 'C04');
    expect(weak.before.state).toBe('passes');
    expect(weak.state).toBe('needs a remedy');
    expect(weak.remedies.some(({ verdict }) => verdict === 'works')).toBe(false);
  });
});
