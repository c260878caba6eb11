// Writes demo/job.json: the boat store at Saltmarsh Quay, an invented job with an invented catalogue.
//   node demo/make-demo.mjs
// Loads stand in one table below, by connection, so that they are easy to change.

import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Design loads [kN, kNm] in the axes of the plate: name, N (pulling out), Vx, Vy, then Mx, My, T if any. */
const loads = {
  C01: [['wind out', 24, 3, -16], ['wind in', -12, 3, -16]],
  C02: [['wind out', 90, 0, 0], ['wind in', -15, 2, -14]],
  C03: [['wind out', 14, 0, -6]],
  C05: [['wind out', 32, 6, -18], ['roof thrust', 8, 14, -18]],
  C06: [['wind out', 28, 4, -15, 1.2, 0, 0]],
  C07: [['wind out', 12, 2, -8]],
  C09: [['rafter', 0, 40, 10], ['wind out', 20, 6, -10]],
  C10: [['wind out', 26, 0, -12]],
  C11: [['tie', 10, 2, -3]],
  C12: [['hand rail', 9, 0, -4]],
  C13: [['lamp', 2, 0, -1.5]],
  C14: [['canopy', 12, 0, -9, 1.0, 0, 0]],
  C15: [['floor', 20, 0, -24], ['floor and wind', 26, 5, -20]],
  C16: [['floor', 15, 0, -22, 0.8, 0, 0]],
  C17: [['wind out', 10, 3, -5]],
  C18: [['wind out', 22, 8, -10]],
  C19: [['wind out', 30, 4, -16]],
  C20: [['bracket', 66, 0, 0]],
  C21: [['guard rail', 5, 3, -2]],
  C22: [['parapet tie', 8, 6, 0]],
  C23: [['parapet tie', 7, 0, 14]],
  C24: [['wind out', 34, 4, -12]],
  C25: [['wind out', 18, 2, -9]],
  C26: [['quake', 16, 12, -9]],
  C27: [['wind out', 12, 0, -6]],
  C28: [['wind out', 9, 0, -5]],
  C29: [['beam', 18, 4, -26]],
  C30: [['beam', 12, 0, -30, 0, 0.8, 0]],
  C31: [['brace frame', 35, 8.5, -26, 3.3, 2.25, 0]],
  C32: [['wind out', 20, 3, -10]],
  C33: [['wind out', 9, 0, -5]],
  C34: [['sign', 5, 0, -3]],
  C35: [['gangway', 30, 12, -40], ['gangway swing', 12, 30, -20, 0, 0, 1.5]],
  C36: [['wind out', 24, 4, -12]],
  C37: [['fender', 0, 155, -8]],
  C38: [['hand rail', 12, 0, -6, 1.6, 0, 0]],
  C39: [['cable', 3, 1, 0]],
  C40: [['davit', 0, -7.3, -3.2]],
};

/** What only single resistances are asked of: N, V [kN] for each insert. */
const required = { C04: [8, 6] };

/** Documents of this catalogue are for EN 1992-4; some say more. */
const doc = (number, standard = 'EN 1992-4') => ({ document: `Invented assessment TW-${number} (no real document)`, standard });
const ferruleSteel = { ultimate_MPa: 510, yield_MPa: 355, elongation_percent: 18, areaReduction_percent: 40 };
const stainlessSteel = { ultimate_MPa: 600, yield_MPa: 300, elongation_percent: 30, areaReduction_percent: 45 };

function ferrule(id, thread, size, more = {}) {
  const { length, body, foot, footThickness, threadDepth, hole } = size;
  return {
    id,
    name: more.name ?? `Ferrule ${thread}, ${length} long, round foot`,
    thread,
    length_mm: length,
    embedment_mm: length - footThickness,
    foot: { kind: 'diameter', diameter_mm: foot, thickness_mm: footThickness, isFullHead: true },
    bodyDiameter_mm: body,
    crossHole: hole === null ? null : { diameter_mm: hole, fromFoot_mm: 16, boreThere_mm: 0 },
    threadDepth_mm: threadDepth,
    threadStartsBelowTop_mm: 0,
    steel: ferruleSteel,
    finish: 'galvanised',
    coating_um: 55,
    threadClass: '6AZ',
    boltFinishes: ['plain', 'zinc', 'galvanised'],
    maxTorque_Nm: { M12: 40, M16: 80, M20: 160, M24: 260 }[thread],
    tested: [],
    qualification: doc(id),
    ratedLoads: [],
    crossBar: hole === null ? null : { diameter_mm: hole - 2, length_mm: 300 },
    splitting: null,
    pryOutFactor: null,
    price: { amount: Math.round(length * body) / 400, currency: 'EUR' },
    leadTime_days: 14,
    ...more,
  };
}

const m12 = { length: 70, body: 18, foot: 36, footThickness: 6, threadDepth: 28, hole: 8 };
const m16 = { length: 103, body: 24, foot: 46, footThickness: 7, threadDepth: 38, hole: 10 };
const m16short = { ...m16, length: 75 };
const m16long = { ...m16, length: 140, foot: 50 };
const m20 = { length: 138, body: 30, foot: 58, footThickness: 8, threadDepth: 46, hole: 12 };
const m20short = { ...m20, length: 95 };
const m24 = { length: 170, body: 36, foot: 70, footThickness: 10, threadDepth: 54, hole: 14 };

const catalogue = {
  format: 'onepour-catalogue',
  version: 1,
  id: 'tidewater-yard',
  edition: '2',
  name: 'House list of an invented yard; no real maker, no real product',
  items: [
    ferrule('F12-70', 'M12', m12, { finish: 'zinc', coating_um: 8, threadClass: '6H', boltFinishes: ['plain', 'zinc'], splitting: { criticalEdge_mm: 170, minimumThickness_mm: 100 } }),
    ferrule('F16-75', 'M16', m16short, { price: { amount: 4.2, currency: 'EUR' } }),
    ferrule('F16-103', 'M16', m16, { qualification: doc('F16-103', 'EN 1992-4, AS 5216, ACI 318-19'), leastEdge_mm: 60, leastSpacing_mm: 100, leastThickness_mm: 130, splitting: { criticalEdge_mm: 260, minimumThickness_mm: 140 } }),
    ferrule('F16-103-S', 'M16', m16, { name: 'Ferrule M16, 103 long, stainless', finish: 'stainless', coating_um: 0, threadClass: '6H', boltFinishes: ['stainless'], steel: stainlessSteel, leadTime_days: 42 }),
    ferrule('F16-103-N', 'M16', m16, { name: 'Ferrule M16, 103 long, without an assessment', qualification: null }),
    ferrule('F16-103-P', 'M16', { ...m16, foot: 27, footThickness: 7 }, { name: 'Ferrule M16, small foot', price: { amount: 5.1, currency: 'EUR' } }),
    ferrule('F16-120', 'M16', { ...m16, length: 120 }, { price: { amount: 7.9, currency: 'EUR' } }),
    ferrule('F16-140', 'M16', m16long, { price: { amount: 9.8, currency: 'EUR' }, leadTime_days: 28 }),
    ferrule('F20-95', 'M20', m20short, { price: null, leadTime_days: null }),
    ferrule('F20-138', 'M20', m20, {
      tested: [{ mode: 'thread', characteristic_kN: 170, partialFactor: null, fromStrength_MPa: null, report: 'TW-R-114 (invented)', standard: 'in-house', conditions: 'engagement 20 mm, galvanised bolt' }],
    }),
    ferrule('F20-138-T', 'M20', { ...m20, body: 26 }, {
      name: 'Ferrule M20, 138 long, thin wall',
      price: { amount: 8.4, currency: 'EUR' },
      tested: [{ mode: 'thread', characteristic_kN: 120, partialFactor: null, fromStrength_MPa: null, report: 'TW-R-121 (invented)', standard: 'in-house', conditions: 'engagement 20 mm, galvanised bolt' }],
    }),
    ferrule('F24-170', 'M24', m24, { leadTime_days: 35 }),
    ferrule('B20-138', 'M20', m20, {
      name: 'Brace insert M20, marked B',
      ratedLoads: [{ role: 'brace', load_kN: 20, document: 'Invented brace card TW-B1', conditions: 'f_ck at least 20 MPa, any direction' }],
    }),
  ],
};

/** Plates by name: half width, half height, thickness, and the holes by id. Steel S235. */
const plateSteel = 235;
function plate(width, height, thickness, bolt, holes, attachment) {
  const box = (w, h) => [[-w / 2, -h / 2], [w / 2, -h / 2], [w / 2, h / 2], [-w / 2, h / 2]];
  return {
    outline_mm: box(width, height),
    thickness_mm: thickness,
    yield_MPa: plateSteel,
    holes: holes.map(([x, y, more], i) => ({ id: String(i + 1), at_mm: [x, y], diameter_mm: bolt + 2, slot_mm: 0, slotAngle_deg: 0, takesShear: true, ...more })),
    attachment_mm: box(...attachment),
  };
}
const quad = (s, t = s) => [[-s / 2, t / 2], [s / 2, t / 2], [-s / 2, -t / 2], [s / 2, -t / 2]];
const pairAcross = (s) => [[-s / 2, 0], [s / 2, 0]];
const pairUp = (s) => [[0, s / 2], [0, -s / 2]];
const six = [[-150, 100], [0, 100], [150, 100], [-150, -100], [0, -100], [150, -100]];

const patterns = {
  Q200: plate(300, 300, 20, 16, quad(200), [140, 140]),
  Q150: plate(240, 240, 18, 16, quad(150), [110, 110]),
  B150: plate(240, 240, 25, 16, quad(150), [110, 110]),
  Q120: plate(190, 190, 12, 12, quad(120), [80, 80]),
  Q240: plate(340, 340, 25, 20, quad(240), [180, 180]),
  A200: plate(290, 100, 15, 16, pairAcross(200), [110, 80]),
  H200: plate(290, 120, 30, 16, pairAcross(200), [150, 110]),
  A140: plate(210, 80, 12, 12, pairAcross(140), [80, 60]),
  U200: plate(100, 290, 15, 16, pairUp(200), [80, 110]),
  S: plate(110, 110, 12, 16, [[0, 0]], [60, 60]),
  S12: plate(90, 90, 10, 12, [[0, 0]], [50, 50]),
  X: plate(420, 320, 25, 20, six, [280, 180]),
};
const bolt = { stress: '8.8' };

const details = {
  format: 'onepour-details',
  version: 1,
  id: 'tidewater-details',
  edition: '1',
  name: 'Standard details of the invented yard',
  details: [
    { id: 'T1', name: 'Cladding bracket, four bolts M16', fixture: patterns.Q200, item: 'F16-103' },
    { id: 'T2', name: 'Hand rail foot, two bolts M12', fixture: patterns.A140, item: 'F12-70' },
  ],
};

const holding = {
  format: 'onepour-holding-parts',
  version: 1,
  id: 'tidewater-holding',
  edition: '1',
  name: 'Holding parts of the invented yard',
  parts: [
    { id: 'PL16', name: 'Fixing plate M16, nailed or glued', kind: 'fixing plate', thread: 'M16', height_mm: 10, recess_mm: 10, reusable: true },
    { id: 'CH', name: 'Chair, adjustable', kind: 'chair', thread: null, height_mm: 75, recess_mm: 0, reusable: false },
    { id: 'SB16', name: 'Bolt through the side form, M16', kind: 'side form bolt', thread: 'M16', height_mm: null, recess_mm: 0, reusable: true },
    { id: 'CAP16', name: 'Cap M16', kind: 'cap', thread: 'M16', height_mm: null, recess_mm: 0, reusable: true },
  ],
};

const rules = {
  format: 'onepour-rules',
  version: 1,
  id: 'saltmarsh-rules',
  edition: '1',
  name: 'EN 1992-4 with recommended values, open coast',
  standard: 'EN 1992-4',
  partialFactors: { concrete: 1.5, steelTension: null, steelShear: null },
  cover: { behindFoot_mm: 25 },
  tolerances: { position_mm: 5, level_mm: 3 },
  exposure: 'XS1',
  environment: 'C5',
  defaults: { cracked: true, engagement_d: 1, boltClass: '8.8' },
  statements: ['An invented job for trying out; nobody builds from it.'],
};

const mesh = (spacing = 200) => ({
  bars: ['outside', 'inside'].flatMap((face) => [0, 90].map((direction_deg) => ({ face, direction_deg, diameter_mm: 8, spacing_mm: spacing, cover_mm: 35 }))),
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
  panel('P02', box(4800, 3200), 180),
  panel('P03', [[0, 0], [5200, 0], [5200, 2200], [0, 3600]], 180),
  panel('P04', box(4000, 2800), 100, { reinforcement: null }),
  panel('P05', box(5000, 3000), 300, {
    layers: [{ kind: 'outer skin', thickness_mm: 70 }, { kind: 'insulation', thickness_mm: 80 }, { kind: 'structural', thickness_mm: 150 }],
  }),
  panel('P06', [[0, 0], [5600, 0], [5600, 1400], [2400, 1400], [2400, 3600], [0, 3600]], 200, { concrete: 'C50' }),
  panel('P07', box(3600, 3000), 200, { concrete: 'C50' }),
  panel('P08', box(4800, 3200), 180, { drawnFace: 'inside' }),
  panel('P09', box(600, 3400), 250, { concrete: 'C50' }),
  panel('P10', box(4200, 3000), 200, {
    zones: [{ name: 'Rebate for the sliding door', outline_mm: hole(2600, 200, 1200, 2400), layers: [{ kind: 'structural', thickness_mm: 140 }], behindOutside_mm: 0 }],
  }),
  panel('P11', box(7200, 1200), 220, { concrete: 'C50', edges: [{ edge: 2, batter_deg: 5 }] }),
  panel('P12', box(5000, 900), 150),
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

/** A connection with its inserts: one for each hole of its pattern. `items`: one type, or one for each hole. */
function connect(mark, panelMark, face, origin_mm, pattern, items, more = {}) {
  const { edge = null, turn_deg = 0, recess_mm = 0, holding: held = null, detail = null, holes, ...rest } = more;
  const p = panels.find((candidate) => candidate.mark === panelMark);
  const fixture = { ...patterns[pattern], ...(holes ? { holes: patterns[pattern].holes.map((h) => ({ ...h, ...holes })) } : {}) };
  const used = fixture.holes.map((h, i) => {
    const [x_mm, y_mm] = toDrawing(p, face, edge, origin_mm, h.at_mm, turn_deg);
    const id = numberIn(panelMark);
    const item = Array.isArray(items) ? items[i] : items;
    castIns.push({ key: newKey('i'), id, panel: panelMark, role: 'fixing', item, description: null, face, edge, x_mm, y_mm, recess_mm, holding: held });
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
    boltClass: bolt.stress,
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
function other(panelMark, role, face, x_mm, y_mm, description, item = null) {
  castIns.push({ key: newKey('i'), id: numberIn(panelMark), panel: panelMark, role, item, description, face, edge: null, x_mm, y_mm, recess_mm: 0, holding: null });
}

const M16 = 'F16-103';
const M12 = 'F12-70';
const M20 = 'F20-138';

// P01: a wall with a window.
connect('C01', 'P01', 'inside', [700, 2600], 'Q200', M16, { detail: 'T1' });
connect('C02', 'P01', 'inside', [4000, 1800], 'Q200', M16); // beside the window: the cone is cut
connect('C03', 'P01', 'inside', [5200, 2600], 'A200', M16);
connect('C04', 'P01', 'outside', [1000, 400], 'A140', M12, { detail: 'T2' }); // only required resistances
// P02: a plain wall.
connect('C05', 'P02', 'inside', [700, 2600], 'Q200', M16);
connect('C06', 'P02', 'inside', [4100, 2600], 'Q200', M16, { recess_mm: 10, holding: 'PL16', isFilled: true });
connect('C07', 'P02', 'inside', [2400, 1600], 'U200', M16);
connect('C08', 'P02', 'outside', [2400, 400], 'A200', M16); // no action given
// P03: a gable with a skew edge.
connect('C09', 'P03', 'inside', [2600, 2760], 'Q150', M16, { turn_deg: 15 }); // shear toward the skew edge
connect('C10', 'P03', 'inside', [1000, 1600], 'Q200', M16);
connect('C11', 'P03', 'inside', [4200, 800], 'S', M16);
// P04: a thin panel, reinforcement not known.
connect('C12', 'P04', 'inside', [400, 1400], 'A200', 'F16-75'); // no splitting values, no bars known
connect('C13', 'P04', 'inside', [2000, 2000], 'S12', M12);
connect('C14', 'P04', 'outside', [3200, 1400], 'Q120', M12);
// P05: a sandwich; only the inner leaf carries.
connect('C15', 'P05', 'inside', [800, 2400], 'Q200', M16);
connect('C16', 'P05', 'inside', [4200, 2400], 'Q200', M16);
connect('C17', 'P05', 'inside', [2500, 600], 'A200', M16);
// P06: an L.
connect('C18', 'P06', 'inside', [2150, 1650], 'Q200', M16); // near the inner corner
connect('C19', 'P06', 'inside', [900, 2900], 'Q200', M16);
connect('C20', 'P06', 'outside', [4400, 800], 'H200', 'F16-103-P'); // small foot, high pull
connect('C21', 'P06', 'inside', [5200, 700], 'S', M16);
// P07: inserts in the top edge.
connect('C22', 'P07', 'edge', [900, 100], 'A200', M16, { edge: 2 });
connect('C23', 'P07', 'edge', [2700, 100], 'A200', M16, { edge: 2, holding: 'SB16' }); // shear toward the face, 100 mm away
connect('C24', 'P07', 'inside', [1800, 1500], 'Q240', M20);
// P08: four that the rules do not cover, in one way or another.
connect('C25', 'P08', 'inside', [800, 2600], 'Q200', [M16, M16, 'F16-75', 'F16-75']); // mixed types
connect('C26', 'P08', 'inside', [4000, 2600], 'Q200', M16, { uses: ['seismic'] });
connect('C27', 'P08', 'outside', [2400, 1600], 'A200', 'F16-103-N'); // no assessment
connect('C28', 'P08', 'inside', [2400, 600], 'A200', M16, { holes: { diameter_mm: 22 } }); // holes too wide to share shear
// P09: a pier.
connect('C29', 'P09', 'inside', [300, 3000], 'Q200', M16);
connect('C30', 'P09', 'inside', [300, 2000], 'Q200', 'F16-103-S', { boltClass: 'A4-70', boltFinish: 'stainless' });
connect('C31', 'P09', 'outside', [300, 1000], 'B150', M16); // pull and shear together, too much
// P10: a wall with a rebate.
connect('C32', 'P10', 'inside', [900, 2400], 'Q200', M16);
connect('C33', 'P10', 'inside', [3200, 2000], 'A200', M16);
connect('C34', 'P10', 'inside', [3900, 2800], 'S', M16);
// P11: a spandrel.
connect('C35', 'P11', 'inside', [1500, 600], 'X', M20);
connect('C36', 'P11', 'outside', [5600, 600], 'Q200', M16, { packers_mm: 10 }); // bolts bend over the packers
connect('C37', 'P11', 'inside', [3600, 600], 'Q240', 'F20-138-T'); // thin-walled bodies, sheared off at the face
// P12: a parapet.
connect('C38', 'P12', 'inside', [800, 600], 'Q120', M12);
connect('C39', 'P12', 'inside', [2500, 450], 'S12', M12);
connect('C40', 'P12', 'inside', [4940, 450], 'S', M16); // 60 mm from the end

for (const mark of ['P01', 'P02', 'P08']) {
  other(mark, 'lifting', 'inside', 1300, 3000, 'Lifting unit by others, with its own plan');
  other(mark, 'lifting', 'inside', 4300, 3000, 'Lifting unit by others, with its own plan');
}
other('P02', 'brace', 'inside', 2400, 2300, null, 'B20-138');
other('P08', 'brace', 'outside', 2400, 2300, null, 'B20-138');
other('P06', 'duct', 'inside', 1200, 800, 'Grout tube 60');
other('P11', 'plate', 'inside', 6600, 600, 'Weld plate 150 × 150');
other('P05', 'tie', 'inside', 2500, 1500, 'Leaf tie');
other('P12', 'other', 'inside', 1600, 300, 'Rain spout');

const job = {
  project: {
    name: 'Boat store, Saltmarsh Quay (invented)',
    number: 'SQ-17',
    designEngineer: null,
    remarks: ['Everything here is invented: place, yard, products and documents. Several connections are made to fail.'],
  },
  pins: Object.fromEntries(Object.entries({ catalogue, details, holding, rules }).map(([name, d]) => [name, { id: d.id, edition: d.edition }])),
  concretes: [
    { id: 'C40', name: 'C40/50, white cement', strength28_MPa: 40, ages: [{ age_days: 7, strength_MPa: 30 }], lightweight: false },
    { id: 'C50', name: 'C50/60', strength28_MPa: 50, ages: [{ age_days: 7, strength_MPa: 38 }], lightweight: false },
  ],
  panels,
  castIns,
  connections,
};

const file = join(dirname(fileURLToPath(import.meta.url)), 'job.json');
writeFileSync(file, `${JSON.stringify({ format: 'onepour-job', version: 1, job, library: { catalogue, details, holding, rules } }, null, 1)}\n`);
