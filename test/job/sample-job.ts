/** A small job file as plain JSON, for tests that change one thing in it: one panel, one catalogue item, one connection of two inserts. */

export type Json = Record<string, unknown>;

export function sampleItem(changes: Json = {}): Json {
  return {
    id: 'F16',
    name: 'Ferrule M16',
    thread: 'M16',
    length_mm: 103,
    embedment_mm: 96,
    foot: { kind: 'diameter', diameter_mm: 46, thickness_mm: 7, isFullHead: true },
    bodyDiameter_mm: 24,
    crossHole: { diameter_mm: 10, fromFoot_mm: 14, boreThere_mm: 0 },
    threadDepth_mm: 40,
    threadStartsBelowTop_mm: 0,
    steel: { ultimate_MPa: 510, yield_MPa: 355, elongation_percent: 18, areaReduction_percent: null },
    finish: 'galvanised',
    coating_um: 55,
    threadClass: '6AZ',
    boltFinishes: ['zinc', 'galvanised'],
    maxTorque_Nm: 80,
    qualification: { document: 'Invented', standard: 'EN 1992-4' },
    ...changes,
  };
}

export function samplePanel(changes: Json = {}): Json {
  return {
    key: 'p1',
    mark: 'P1',
    concrete: 'C40',
    drawnFace: 'outside',
    faceDown: 'outside',
    outline_mm: [
      [0, 0],
      [4000, 0],
      [4000, 3000],
      [0, 3000],
    ],
    thickness_mm: 180,
    ...changes,
  };
}

export function sampleCastIn(id: string, x_mm: number, y_mm: number, changes: Json = {}): Json {
  return { key: `i${id}`, id, panel: 'P1', role: 'fixing', item: 'F16', face: 'outside', x_mm, y_mm, ...changes };
}

export function sampleFixture(changes: Json = {}): Json {
  return {
    outline_mm: [
      [-150, -50],
      [150, -50],
      [150, 50],
      [-150, 50],
    ],
    thickness_mm: 15,
    yield_MPa: 235,
    holes: [
      { id: '1', at_mm: [-100, 0], diameter_mm: 18 },
      { id: '2', at_mm: [100, 0], diameter_mm: 18 },
    ],
    ...changes,
  };
}

export function sampleConnection(changes: Json = {}): Json {
  return {
    key: 'c1',
    mark: 'C1',
    panel: 'P1',
    face: 'outside',
    origin_mm: [1000, 500],
    fixture: sampleFixture(),
    inserts: [
      { insert: '1', hole: '1' },
      { insert: '2', hole: '2' },
    ],
    boltClass: '8.8',
    actions: { kind: 'loads', combinations: [{ name: 'wind', N_kN: 10, Vx_kN: 2, Vy_kN: -5 }] },
    ...changes,
  };
}

export interface SampleParts {
  readonly items?: readonly Json[];
  readonly details?: readonly Json[];
  readonly panels?: readonly Json[];
  readonly castIns?: readonly Json[];
  readonly connections?: readonly Json[];
  readonly concretes?: readonly Json[];
  readonly rules?: Json;
  readonly parts?: readonly Json[];
  readonly ways?: readonly Json[];
  readonly beds?: readonly Json[];
  readonly pours?: readonly Json[];
  readonly revision?: Json;
  readonly yard?: Json;
}

export function sampleBed(changes: Json = {}): Json {
  return {
    id: 'B1',
    name: 'Bed 1',
    form: 'timber',
    sideForm: 'timber',
    length_mm: 20000,
    width_mm: 4000,
    names: { start: 'fixed stop end', finish: 'loose stop end', railA: 'wall rail', railB: 'gangway rail' },
    ...changes,
  };
}

export function samplePour(changes: Json = {}): Json {
  return { id: 'T1', bed: 'B1', date: '2026-12-14', pieces: [{ panel: 'P1', serial: '1', along_mm: 500 }], ...changes };
}

export function sampleJob(parts: SampleParts = {}): Json {
  const head = (format: string, id: string) => ({ format, version: 1, id, edition: '1', name: id });
  const pin = (id: string) => ({ id, edition: '1' });
  return {
    format: 'onepour-job',
    version: 4,
    job: {
      project: { name: 'Sample' },
      pins: { catalogue: pin('cat'), details: pin('det'), holding: pin('hold'), rules: pin('rul'), yard: pin('yar') },
      revision: parts.revision ?? null,
      concretes: parts.concretes ?? [{ id: 'C40', strength28_MPa: 40, ages: [{ age_days: 7, strength_MPa: 28 }] }],
      panels: parts.panels ?? [samplePanel()],
      castIns: parts.castIns ?? [sampleCastIn('1', 900, 500), sampleCastIn('2', 1100, 500)],
      connections: parts.connections ?? [sampleConnection()],
      pours: parts.pours ?? [],
    },
    library: {
      catalogue: { ...head('onepour-catalogue', 'cat'), items: parts.items ?? [sampleItem()] },
      details: { ...head('onepour-details', 'det'), details: parts.details ?? [] },
      holding: { ...head('onepour-holding-parts', 'hold'), parts: parts.parts ?? [], ways: parts.ways ?? [] },
      rules: {
        ...head('onepour-rules', 'rul'),
        standard: 'EN 1992-4',
        partialFactors: { concrete: 1.5, steelTension: null, steelShear: null },
        cover: { behindFoot_mm: 20 },
        tolerances: { position_mm: 5, level_mm: 3 },
        exposure: 'XC4',
        environment: 'C3',
        defaults: { cracked: true, engagement_d: 1, boltClass: '8.8' },
        ...parts.rules,
      },
      yard: {
        ...head('onepour-yard', 'yar'),
        tapeClass: 'II',
        spares: { share: 0.05, atLeast: 1 },
        beds: parts.beds ?? [],
        ...parts.yard,
      },
    },
  };
}
