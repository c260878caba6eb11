// The invented yard of the demo job: its beds, its ways of holding inserts in the form, its rules.

const part = (id, name, kind, more = {}) => ({
  id,
  name,
  kind,
  thread: null,
  height_mm: null,
  reusable: false,
  lossPerUse: 0,
  turnRound_days: 1,
  packSize: 1,
  leadTime_days: 7,
  ...more,
});
const used = (share) => ({ reusable: true, lossPerUse: share });

const threads = ['M12', 'M16', 'M20', 'M24'];
const size = (thread) => thread.slice(1);

/** Chairs cut to height in the yard: thickness of the panels less the inserts, less 3 mm for the screed. */
const chairHeights = [74, 77, 94];

const parts = [
  ...threads.flatMap((thread) => [
    part(`NP${size(thread)}`, `Nail-on fixing plate ${thread}`, 'fixing plate', { thread, height_mm: 10, ...used(0.2), packSize: 50 }),
    part(`SP${size(thread)}`, `Stick-on fixing plate ${thread}`, 'fixing plate', { thread, height_mm: 3, packSize: 25 }),
    part(`MG${size(thread)}`, `Magnet with stud ${thread}`, 'magnet', { thread, height_mm: 10, ...used(0.02), leadTime_days: 30 }),
    part(`RF${size(thread)}`, `Rubber recess former ${thread}`, 'recess former', { thread, height_mm: 15, ...used(0.05) }),
    part(`SB${size(thread)}`, `Bolt and nut through the side form ${thread}`, 'side form bolt', { thread, ...used(0.05), packSize: 20 }),
    part(`HB${size(thread)}`, `Hanging bolt ${thread} for the bridging bar`, 'screw', { thread, ...used(0.05), packSize: 20 }),
    part(`CAP${size(thread)}`, `Cap, screwed in flush, ${thread}`, 'cap', { thread, ...used(0.2), packSize: 100 }),
  ]),
  part('NAIL40', 'Nail 2.8 × 40', 'nail', { packSize: 500 }),
  part('SCREW50', 'Screw 5 × 50', 'screw', { packSize: 200, ...used(0.1) }),
  part('PAD', 'Gluing pad for stick-on plates', 'pad', { packSize: 50 }),
  part('BAR-U', 'Bridging bar, channel 80, 4 m', 'bridging bar', { ...used(0), turnRound_days: 1 }),
  part('BOARD', 'Template board, drilled for its group', 'template board', { ...used(0.01), leadTime_days: 3 }),
  part('CONE16', 'Cone 10 under the template board, M16', 'recess former', { thread: 'M16', height_mm: 10, ...used(0.05), packSize: 20 }),
  part('WIRE', 'Tie wire 1.4, cut 300', 'tie wire', { packSize: 1000 }),
  ...chairHeights.map((height_mm) => part(`CH${height_mm}`, `Chair ${height_mm} high`, 'chair', { height_mm, packSize: 25, leadTime_days: 5 })),
];

const one = (id, count = 1, per = 'insert') => ({ part: id, count, per });
const way = (id, name, method, thread, needed, more = {}) => ({
  id,
  name,
  method,
  thread,
  recess_mm: 0,
  recessWidth_mm: null,
  parts: needed,
  chairs: [],
  chairSink_mm: 0,
  scatter: null,
  ...more,
});

const ways = [
  ...threads.flatMap((thread) => {
    const n = size(thread);
    return [
      way(`NAIL${n}`, `Nail-on plate ${thread}`, 'nail-on plate', thread, [one(`NP${n}`), one('NAIL40', 4)], { recess_mm: 10, recessWidth_mm: 50 }),
      way(`STICK${n}`, `Stick-on plate ${thread}`, 'stick-on plate', thread, [one(`SP${n}`), one('PAD')], { recess_mm: 3, recessWidth_mm: 50 }),
      way(`MAGNET${n}`, `Magnet ${thread}`, 'magnet', thread, [one(`MG${n}`)], { recess_mm: 10, recessWidth_mm: 60 }),
      way(`FORMER${n}`, `Recess former ${thread}`, 'recess former', thread, [one(`RF${n}`), one('SCREW50', 2)], { recess_mm: 15, recessWidth_mm: 70 }),
      way(`SIDE${n}`, `Bolt through the side form ${thread}`, 'through the side form', thread, [one(`SB${n}`)]),
      way(`BRIDGE${n}`, `Hung from a bridging bar ${thread}`, 'bridging bar', thread, [one(`HB${n}`), one('BAR-U', 1, 'group')]),
      way(`CAGE${n}`, `Tied to the cage ${thread}`, 'tied to the cage', thread, [one('WIRE', 4), one(`CAP${n}`)]),
    ];
  }),
  way('BOARD16', 'Template board M16, on a form let flush into it', 'template board', 'M16', [one('BOARD', 1, 'group'), one('HB16')]),
  way('BOARD16-10', 'Template board M16 with cones', 'template board', 'M16', [one('BOARD', 1, 'group'), one('HB16'), one('CONE16')], { recess_mm: 10, recessWidth_mm: 45 }),
  way('BOARD12', 'Template board let flush into the form M12', 'template board', 'M12', [one('BOARD', 1, 'group'), one('HB12')]),
  way('BOARD20', 'Template board M20', 'template board', 'M20', [one('BOARD', 1, 'group'), one('HB20')]),
  ...['M12', 'M16'].map((thread) =>
    way(`CHAIR${size(thread)}`, `On a chair, capped, ${thread}`, 'chair', thread, [one(`CAP${size(thread)}`), one('WIRE', 2)], {
      chairs: chairHeights.map((height) => `CH${height}`),
      chairSink_mm: 1,
    }),
  ),
];

export const holding = {
  format: 'onepour-holding-parts',
  version: 1,
  id: 'tidewater-holding',
  edition: '2',
  name: 'Holding parts of the invented yard',
  parts,
  ways,
};

export const yard = {
  format: 'onepour-yard',
  version: 1,
  id: 'tidewater-yard-beds',
  edition: '1',
  name: 'Yard of the invented firm, hall by the slipway',
  tapeClass: 'II',
  spares: { share: 0.05, atLeast: 1 },
  beds: [
    {
      id: 'B1',
      name: 'Bed 1',
      form: 'timber',
      sideForm: 'timber',
      length_mm: 26000,
      width_mm: 4000,
      names: { start: 'fixed stop end', finish: 'loose stop end', railA: 'wall rail', railB: 'gangway rail' },
      north_deg: 90,
      sag_mm: 1,
      screedDeflection_mm: 1,
    },
    {
      id: 'B2',
      name: 'Bed 2',
      form: 'steel',
      sideForm: 'steel',
      length_mm: 28000,
      width_mm: 3800,
      names: { start: 'gate stop end', finish: 'crane stop end', railA: 'slipway rail', railB: 'store rail' },
      north_deg: -90,
      sag_mm: 0,
      screedDeflection_mm: 1,
    },
  ],
  contacts: [
    { role: 'Foreman', name: 'A. Nobody (invented)', phone: '000 0001' },
    { role: 'Design engineer', name: 'B. Nobody (invented)', phone: '000 0002' },
    { role: 'Drawing office', name: 'C. Nobody (invented)', phone: '000 0003' },
  ],
};

export const rules = {
  format: 'onepour-rules',
  version: 1,
  id: 'saltmarsh-rules',
  edition: '2',
  name: 'EN 1992-4 with recommended values, open coast',
  standard: 'EN 1992-4',
  partialFactors: { concrete: 1.5, steelTension: null, steelShear: null },
  cover: { behindFoot_mm: 25 },
  tolerances: { position_mm: 5, level_mm: 5, thickness_mm: 2, form_mm: 3 },
  acceptance: { position_mm: 8, level_mm: 8, setBy: 'B. Nobody (invented)' },
  belowFace: { aim_mm: 3, most_mm: 8 },
  clearance_mm: 5,
  exposure: 'XS1',
  environment: 'C5',
  defaults: { cracked: true, engagement_d: 1, boltClass: '8.8' },
  statements: ['An invented job for trying out; nobody builds from it.'],
};
