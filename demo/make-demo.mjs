// Writes demo/job.json: the boat store at Saltmarsh Quay, an invented job with an invented catalogue; and demo/job-rev-a.json, the same job as it
// was issued before. The command itself makes the handed partner, so build first:
//   node scripts/ready.mjs && node demo/make-demo.mjs
// What the job is made of lies in demo/make/: loads, catalogue, plates, and the yard with its ways of holding.

import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { catalogue } from './make/catalogue.mjs';
import { loads, required } from './make/loads.mjs';
import { details, patterns } from './make/plates.mjs';
import { holding, rules, yard } from './make/yard.mjs';

/** Bars both ways near both faces; those that stand on the others have their cover over them. `through`: a point that bars pass. */
const mesh = (through = [50, 50], more = {}) => ({
  bars: ['outside', 'inside'].flatMap((face) =>
    [0, 90].map((direction_deg) => ({
      face,
      direction_deg,
      diameter_mm: 8,
      spacing_mm: 200,
      cover_mm: direction_deg === 0 ? 35 : 43,
      kind: 'bars',
      through_mm: through,
      endCover_mm: null,
      ...more,
    })),
  ),
  edge: 'bar',
  stirrupSpacing_mm: null,
  limitsCrackWidth: true,
  yield_MPa: 500,
});
const box = (w, h) => [[0, 0], [w, 0], [w, h], [0, h]];
const hole = (x, y, w, h) => [[x, y], [x + w, y], [x + w, y + h], [x, y + h]];

let keys = 0;
const newKey = (kind) => `sq-${kind}-${String((++keys * 7919) % 99991).padStart(5, '0')}`;

function panel(mark, outline_mm, thickness_mm, more = {}) {
  return {
    key: newKey('p'),
    mark,
    concrete: 'C40',
    drawnFace: 'outside',
    faceDown: 'outside',
    inForm: { turn_deg: 0, datum: 'bottom-left' },
    handedOf: null,
    outline_mm,
    openings_mm: [],
    thickness_mm,
    layers: [],
    zones: [],
    edges: [],
    reinforcement: mesh(),
    ...more,
  };
}

const panels = [
  panel('P01', box(6000, 3200), 180, { openings_mm: [hole(2000, 900, 1800, 1400)] }),
  panel('P02', box(4800, 3200), 180, { inForm: { turn_deg: 0, datum: 'bottom-right' } }),
  panel('P03', [[0, 0], [5200, 0], [5200, 2200], [0, 3600]], 180),
  panel('P04', box(4000, 2800), 100, { reinforcement: null }),
  panel('P05', box(5000, 3000), 300, {
    layers: [{ kind: 'outer skin', thickness_mm: 70 }, { kind: 'insulation', thickness_mm: 80 }, { kind: 'structural', thickness_mm: 150 }],
  }),
  panel('P06', [[0, 0], [5600, 0], [5600, 1400], [2400, 1400], [2400, 3600], [0, 3600]], 200, { concrete: 'C50' }),
  panel('P07', box(3600, 3000), 200, { concrete: 'C50', inForm: { turn_deg: 180, datum: 'bottom-left' } }),
  panel('P08', box(4800, 3200), 180, { drawnFace: 'inside' }),
  panel('P09', box(600, 3400), 250, { concrete: 'C50', inForm: { turn_deg: 90, datum: 'top-left' } }),
  panel('P10', box(4200, 3000), 200, {
    zones: [{ name: 'Rebate for the sliding door', outline_mm: hole(2600, 200, 1200, 2400), layers: [{ kind: 'structural', thickness_mm: 140 }], behindOutside_mm: 0 }],
    reinforcement: mesh(null),
  }),
  panel('P11', box(7200, 1200), 220, {
    concrete: 'C50',
    edges: [{ edge: 2, batter_deg: 5 }],
    reinforcement: {
      ...mesh(),
      bars: [
        ...mesh().bars,
        { face: 'inside', direction_deg: 0, diameter_mm: 12.5, spacing_mm: 400, cover_mm: 60, kind: 'strand', through_mm: [0, 200], endCover_mm: 0 },
      ],
    },
  }),
  panel('P12', box(5000, 900), 150, { reinforcement: mesh([200, 100], { kind: 'mesh' }) }),
  panel('P13', box(5400, 3000), 200, { concrete: 'C50', inForm: { turn_deg: 0, datum: 'bottom-left' } }),
];

const castIns = [];
const connections = [];
const inserts = {};
const numberIn = (mark) => {
  inserts[mark] = (inserts[mark] ?? 0) + 1;
  return String(inserts[mark]);
};

function turn([x, y], deg) {
  const a = (deg * Math.PI) / 180;
  const round = (v) => Math.round(v * 1e6) / 1e6;
  return [round(x * Math.cos(a) - y * Math.sin(a)), round(x * Math.sin(a) + y * Math.cos(a))];
}

/** From the axes of a plate on its face to the coordinates in which cast-in items are given (see the documents' own words). */
function toDrawing(p, face, edge, origin, local, turn_deg) {
  const [dx, dy] = turn(local, turn_deg);
  if (face === 'edge') return [origin[0] + dx, origin[1] + (p.drawnFace === 'outside' ? -dy : dy)];
  return [origin[0] + (face === p.drawnFace ? dx : -dx), origin[1] + dy];
}

/**
 * A connection with its inserts: one for each hole of its pattern. `items`: one type, or one for each hole; `bar`: direction of the bars through
 * them, and their length where it is not the maker's.
 */
function connect(mark, panelMark, face, origin_mm, pattern, items, more = {}) {
  const { edge = null, turn_deg = 0, holding: held, bar = null, detail = null, holes, ...rest } = more;
  const p = panels.find((candidate) => candidate.mark === panelMark);
  const { recess_mm } = holding.ways.find((way) => way.id === held);
  const fixture = { ...patterns[pattern], ...(holes ? { holes: patterns[pattern].holes.map((h) => ({ ...h, ...holes })) } : {}) };
  const used = fixture.holes.map((h, i) => {
    const [x_mm, y_mm] = toDrawing(p, face, edge, origin_mm, h.at_mm, turn_deg);
    const id = numberIn(panelMark);
    const item = Array.isArray(items) ? items[i] : items;
    castIns.push({
      key: newKey('i'),
      id,
      panel: panelMark,
      role: 'fixing',
      item,
      description: null,
      face,
      edge,
      x_mm,
      y_mm,
      recess_mm,
      holding: held,
      // Where bars along x would meet each other or stick out, the designer turns them.
      crossBar: bar === null ? null : { direction_deg: bar[0], diameter_mm: null, length_mm: bar[1] ?? null },
      size: null,
      tolerance_mm: null,
    });
    return { insert: id, hole: h.id };
  });
  const combination = ([name, N_kN, Vx_kN, Vy_kN, Mx_kNm = 0, My_kNm = 0, T_kNm = 0]) => ({ name, N_kN, Vx_kN, Vy_kN, Mx_kNm, My_kNm, T_kNm, at_mm: [0, 0] });
  const actions = loads[mark]
    ? { kind: 'loads', combinations: loads[mark].map(combination) }
    : required[mark]
      ? { kind: 'required', N_kN: required[mark][0], V_kN: required[mark][1] }
      : { kind: 'none' };
  connections.push({
    key: newKey('c'),
    mark,
    panel: panelMark,
    face,
    edge,
    origin_mm,
    turn_deg,
    detail,
    fixture: detail === null ? fixture : null,
    inserts: used,
    packers_mm: 0,
    isFilled: false,
    isHeldAgainstTurning: false,
    boltThread: null,
    boltClass: '8.8',
    boltFinish: null,
    engagement_mm: null,
    cracked: null,
    age_days: null,
    hangers: [],
    hairpins: [],
    uses: [],
    actions,
    ...rest,
  });
}

/** A cast-in item of another role. */
function other(panelMark, role, face, x_mm, y_mm, description, more = {}) {
  castIns.push({
    key: newKey('i'),
    id: numberIn(panelMark),
    panel: panelMark,
    role,
    item: null,
    description,
    face,
    edge: null,
    x_mm,
    y_mm,
    recess_mm: 0,
    holding: null,
    crossBar: null,
    size: null,
    tolerance_mm: null,
    ...more,
  });
}

const M16 = 'F16-103';
const M12 = 'F12-70';
const M20 = 'F20-138';

// P01: a wall with a window.
connect('C01', 'P01', 'inside', [700, 2600], 'Q200', M16, { detail: 'T1', holding: 'BOARD16' });
connect('C02', 'P01', 'inside', [4000, 1800], 'Q200', M16, { holding: 'BRIDGE16', bar: [90] }); // beside the window: the cone is cut
connect('C03', 'P01', 'inside', [5200, 2600], 'A200', M16, { holding: 'CHAIR16' });
connect('C04', 'P01', 'outside', [1000, 400], 'A140', M12, { detail: 'T2', holding: 'NAIL12', bar: [90], isFilled: true }); // only required resistances
// P02: a plain wall.
connect('C05', 'P02', 'inside', [700, 2600], 'Q200', M16, { holding: 'BOARD16' });
connect('C06', 'P02', 'inside', [4100, 2600], 'Q200', M16, { holding: 'BOARD16-10', isFilled: true });
connect('C07', 'P02', 'inside', [2400, 1600], 'U200', M16, { holding: 'CHAIR16' });
connect('C08', 'P02', 'outside', [2400, 400], 'A200', M16, { holding: 'FORMER16', isFilled: true }); // no action given
// P03: a gable with a skew edge.
connect('C09', 'P03', 'inside', [2600, 2760], 'Q150', M16, { turn_deg: 15, holding: 'BRIDGE16', bar: [165, 120] }); // shear toward the skew edge
connect('C10', 'P03', 'inside', [1000, 1600], 'Q200', M16, { holding: 'BOARD16' });
connect('C11', 'P03', 'inside', [4200, 800], 'S', M16, { holding: 'CHAIR16' });
// P04: a thin panel, reinforcement not known.
connect('C12', 'P04', 'inside', [400, 1400], 'A200', 'F16-75', { holding: 'BRIDGE16' }); // no splitting values, no bars known
connect('C13', 'P04', 'inside', [2000, 2000], 'S12', M12, { holding: 'BRIDGE12' });
connect('C14', 'P04', 'outside', [3200, 1400], 'Q120', M12, { holding: 'BOARD12', bar: [45] });
// P05: a sandwich; only the inner leaf carries.
connect('C15', 'P05', 'inside', [800, 2400], 'Q200', M16, { holding: 'BRIDGE16' });
connect('C16', 'P05', 'inside', [4200, 2400], 'Q200', M16, { holding: 'BOARD16' });
connect('C17', 'P05', 'inside', [2500, 600], 'A200', M16, { holding: 'BRIDGE16' });
// P06: an L.
connect('C18', 'P06', 'inside', [2150, 1650], 'Q200', M16, { holding: 'BRIDGE16' }); // near the inner corner
connect('C19', 'P06', 'inside', [900, 2900], 'Q200', M16, { holding: 'BOARD16' });
connect('C20', 'P06', 'outside', [4400, 800], 'H200', 'F16-103-P', { holding: 'NAIL16', isFilled: true }); // small foot, high pull
connect('C21', 'P06', 'inside', [5200, 700], 'S', M16, { holding: 'CHAIR16' });
// P07: inserts in the top edge.
connect('C22', 'P07', 'edge', [900, 100], 'A200', M16, { edge: 2, holding: 'SIDE16' });
connect('C23', 'P07', 'edge', [2700, 100], 'A200', M16, { edge: 2, holding: 'SIDE16' }); // shear toward the face, 100 mm away
connect('C24', 'P07', 'inside', [1800, 1500], 'Q240', M20, { holding: 'BRIDGE20' });
// P08: four that the rules do not cover, in one way or another.
connect('C25', 'P08', 'inside', [800, 2600], 'Q200', [M16, M16, 'F16-75', 'F16-75'], { holding: 'CAGE16' }); // mixed types
connect('C26', 'P08', 'inside', [4000, 2600], 'Q200', M16, { uses: ['seismic'], holding: 'BOARD16' });
connect('C27', 'P08', 'outside', [2400, 1600], 'A200', 'F16-103-N', { holding: 'MAGNET16', isFilled: true }); // no assessment
connect('C28', 'P08', 'inside', [2400, 600], 'A200', M16, { holes: { diameter_mm: 22 }, holding: 'CHAIR16' }); // holes too wide to share shear
// P09: a pier.
connect('C29', 'P09', 'inside', [300, 3000], 'Q200', M16, { holding: 'CAGE16' });
connect('C30', 'P09', 'inside', [300, 2000], 'Q200', 'F16-103-S', { boltClass: 'A4-70', boltFinish: 'stainless', holding: 'CAGE16' });
connect('C31', 'P09', 'outside', [300, 1000], 'B150', M16, { holding: 'BOARD16', bar: [45] }); // pull and shear together, too much
// P10: a wall with a rebate.
connect('C32', 'P10', 'inside', [900, 2400], 'Q200', M16, { holding: 'BOARD16' });
connect('C33', 'P10', 'inside', [3200, 2000], 'A200', M16, { holding: 'BRIDGE16' });
connect('C34', 'P10', 'inside', [3900, 2800], 'S', M16, { holding: 'CHAIR16' });
// P11: a spandrel.
connect('C35', 'P11', 'inside', [1500, 600], 'X', M20, { holding: 'BRIDGE20', bar: [45] });
connect('C36', 'P11', 'outside', [5600, 600], 'Q200', M16, { packers_mm: 10, holding: 'STICK16' }); // bolts bend over the packers
connect('C37', 'P11', 'inside', [3600, 600], 'Q240', 'F20-138-T', { holding: 'BRIDGE20' }); // thin-walled bodies, sheared off at the face
// P12: a parapet.
connect('C38', 'P12', 'inside', [800, 600], 'Q120', M12, { holding: 'BRIDGE12', bar: [45] });
connect('C39', 'P12', 'inside', [2500, 450], 'S12', M12, { holding: 'CHAIR12' });
connect('C40', 'P12', 'inside', [4940, 450], 'S', M16, { holding: 'BRIDGE16', bar: [90] }); // 60 mm from the end
// P13: twenty inserts in both faces and two edges; its handed partner P13-H is made from it.
connect('C41', 'P13', 'inside', [700, 2300], 'Q200', M16, { holding: 'BOARD16', detail: 'T1' });
connect('C42', 'P13', 'inside', [4700, 2300], 'Q200', M16, { holding: 'BOARD16', detail: 'T1' });
connect('C43', 'P13', 'inside', [2500, 700], 'ARM', M16, { holding: 'CHAIR16' }); // a bracket with a left and a right
connect('C44', 'P13', 'inside', [3700, 1700], 'S', M16, { holding: 'CHAIR16' });
connect('C45', 'P13', 'outside', [2100, 2100], 'U200', M16, { holding: 'MAGNET16', isFilled: true });
connect('C46', 'P13', 'outside', [3300, 2500], 'S12', M12, { holding: 'MAGNET12', isFilled: true });
connect('C47', 'P13', 'edge', [1500, 100], 'A200', M16, { edge: 2, holding: 'SIDE16' });
connect('C48', 'P13', 'edge', [1200, 100], 'A200', M16, { edge: 1, holding: 'SIDE16' });
connect('C49', 'P13', 'inside', [1500, 1300], 'S20', M20, { holding: 'BRIDGE20' });
connect('C50', 'P13', 'inside', [4100, 900], 'S24', 'F24-170', { holding: 'BRIDGE24', bar: [90] });

const room = (diameter_mm, depth_mm) => ({ size: { kind: 'round', diameter_mm, depth_mm } });
for (const mark of ['P01', 'P02', 'P08']) {
  other(mark, 'lifting', 'inside', 1300, 3000, 'Lifting unit by others, with its own plan', { ...room(50, 120), tolerance_mm: 20 });
  other(mark, 'lifting', 'inside', 4300, 3000, 'Lifting unit by others, with its own plan', { ...room(50, 120), tolerance_mm: 20 });
}
other('P02', 'brace', 'inside', 2400, 2300, null, { item: 'B20-138', holding: 'BRIDGE20' });
other('P08', 'brace', 'outside', 2400, 2300, null, { item: 'B20-138', holding: 'MAGNET20', recess_mm: 10 });
other('P06', 'duct', 'inside', 1200, 800, 'Grout tube 60', room(60, 200));
other('P11', 'plate', 'inside', 6600, 600, 'Weld plate 150 × 150', { size: { kind: 'box', width_mm: 150, height_mm: 150, depth_mm: 100 } });
other('P05', 'tie', 'inside', 2500, 1500, 'Leaf tie', room(12, 250));
other('P12', 'other', 'inside', 1600, 200, 'Rain spout', room(50, 150));

const job = {
  project: {
    name: 'Boat store, Saltmarsh Quay (invented)',
    number: 'SQ-17',
    designEngineer: null,
    remarks: ['Everything here is invented: place, yard, products and documents. Several connections are made to fail.'],
  },
  pins: Object.fromEntries(Object.entries({ catalogue, details, holding, rules, yard }).map(([name, d]) => [name, { id: d.id, edition: d.edition }])),
  revision: { letter: 'B', status: 'for construction', date: '2026-11-27' },
  concretes: [
    { id: 'C40', name: 'C40/50, white cement', strength28_MPa: 40, ages: [{ age_days: 7, strength_MPa: 30 }], lightweight: false },
    { id: 'C50', name: 'C50/60', strength28_MPa: 50, ages: [{ age_days: 7, strength_MPa: 38 }], lightweight: false },
  ],
  panels,
  castIns,
  connections,
  pours: [],
};

const folder = dirname(fileURLToPath(import.meta.url));
const library = { catalogue, details, holding, rules, yard };
const asFile = (of) => ({ format: 'onepour-job', version: 4, job: of, library });

/** The job with the handed partner of a panel, made by the command itself; what it makes stands at the end. */
function addPartner(of, mark, partner) {
  const scratch = mkdtempSync(join(tmpdir(), 'onepour-demo-'));
  try {
    const [plain, made] = ['plain.json', 'made.json'].map((name) => join(scratch, name));
    writeFileSync(plain, JSON.stringify(asFile(of)));
    execFileSync(process.execPath, [join(folder, '..', 'bin', 'onepour.js'), 'handed', plain, mark, partner, '--out', made]);
    const { job: whole } = JSON.parse(readFileSync(made, 'utf8'));
    return {
      ...of,
      panels: [...of.panels, ...whole.panels.filter((p) => p.mark === partner)],
      castIns: [...of.castIns, ...whole.castIns.filter((c) => c.panel === partner)],
      connections: [...of.connections, ...whole.connections.filter((c) => c.panel === partner)],
    };
  } finally {
    rmSync(scratch, { recursive: true });
  }
}

const piece = (mark, serial, along_mm, revision = null) => ({ panel: mark, serial, revision, along_mm });
const pours = [
  {
    id: 'T12',
    bed: 'B1',
    date: '2026-12-14',
    strengthAtStrip_MPa: 15,
    remarks: ['P02 was planned by revision A: to show what a mixed pour says.'],
    pieces: [piece('P01', '1', 500), piece('P02', '1', 7000, 'A'), piece('P03', '1', 12300), piece('P10', '1', 18000)],
  },
  {
    id: 'T13',
    bed: 'B2',
    date: '2026-12-16',
    strengthAtStrip_MPa: 18,
    remarks: [],
    pieces: [piece('P13', '1', 500), piece('P13-H', '1', 6500), piece('P08', '1', 12500), piece('P11', '1', 18000)],
  },
  {
    id: 'T14',
    bed: 'B1',
    date: '2027-01-06',
    strengthAtStrip_MPa: 15,
    remarks: ['P12 twice: one design, two pieces.'],
    pieces: [piece('P04', '1', 500), piece('P12', '1', 5000), piece('P12', '2', 10500), piece('P07', '1', 16000), piece('P09', '1', 20500)],
  },
];

/** The job as it was issued before: two inserts stood 40 mm lower, one type was another, the handed partner was not there. */
function makeRevisionA() {
  const moved = new Set(connections.find(({ mark }) => mark === 'C07').inserts.map(({ insert }) => insert));
  const lower = 40;
  return {
    ...job,
    revision: { letter: 'A', status: 'for approval', date: '2026-11-02' },
    castIns: castIns.map((castIn) => {
      if (castIn.panel === 'P02' && moved.has(castIn.id)) return { ...castIn, y_mm: castIn.y_mm - lower };
      return castIn.panel === 'P03' && castIn.id === '9' ? { ...castIn, item: 'F16-75' } : castIn;
    }),
    connections: connections.map((connection) =>
      connection.mark === 'C07' ? { ...connection, origin_mm: [connection.origin_mm[0], connection.origin_mm[1] - lower] } : connection,
    ),
    pours: pours.map((pour) => ({ ...pour, pieces: pour.pieces.filter(({ panel: mark }) => mark !== 'P13-H') })),
  };
}

const whole = { ...addPartner(job, 'P13', 'P13-H'), pours };
writeFileSync(join(folder, 'job.json'), `${JSON.stringify(asFile(whole), null, 1)}\n`);
writeFileSync(join(folder, 'job-rev-a.json'), `${JSON.stringify(asFile(makeRevisionA()))}\n`);
