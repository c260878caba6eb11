// The inserts of the demo job: a catalogue that nobody sells.

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
    crossBar: hole === null ? null : { diameter_mm: hole - 2, length_mm: { M12: 160, M16: 160, M20: 200, M24: 240 }[thread] },
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

export const catalogue = {
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
