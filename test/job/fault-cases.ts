import {
  type Json,
  type SampleParts,
  sampleCastIn,
  sampleConnection,
  sampleFixture,
  sampleItem,
  samplePanel,
} from './sample-job.ts';

const openings = [
  [
    [800, 400],
    [1000, 400],
    [1000, 600],
    [800, 600],
  ],
];
const sandwich = [
  { kind: 'outer skin', thickness_mm: 70 },
  { kind: 'insulation', thickness_mm: 80 },
  { kind: 'structural', thickness_mm: 150 },
];
const two = [sampleCastIn('1', 900, 500), sampleCastIn('2', 1100, 500)];
const edgeTwo = (changes: Json) => [
  sampleCastIn('1', 900, 90, { face: 'edge', edge: 0, ...changes }),
  sampleCastIn('2', 1100, 90, { face: 'edge', edge: 0 }),
];
const onEdge = sampleConnection({ face: 'edge', edge: 0, origin_mm: [1000, 90] });

/** A way of holding by one plate, with changes. */
const held = (id: string, changes: Json): SampleParts => ({
  parts: [{ id: 'P', name: 'Plate', kind: 'fixing plate', height_mm: 10, reusable: true }],
  ways: [{ id, name: 'Plate', method: 'stick-on plate', parts: [{ part: 'P', count: 1 }], ...changes }],
});

/** One thing wrong each: what, the change, and all lines that must come of it. */
export const faultCases: readonly (readonly [string, SampleParts, readonly string[]])[] = [
  [
    'double panel mark',
    { panels: [samplePanel(), samplePanel({ key: 'p2' })] },
    ['job.panels[1].mark: panel P1 is used more than once; each needs its own'],
  ],
  [
    'double key',
    { castIns: [two[0]!, sampleCastIn('2', 1100, 500, { key: 'p1' })] },
    ['job.castIns[1].key: the key p1 is used more than once; each needs its own'],
  ],
  [
    'double insert',
    { castIns: [...two, sampleCastIn('2', 2000, 500, { key: 'x' })] },
    ['job.castIns[2].id: insert 2 of panel P1 is used more than once; each needs its own'],
  ],
  [
    'unknown concrete',
    { panels: [samplePanel({ concrete: 'C4O' })] },
    ['job.panels[0].concrete: there is no concrete C4O; did you mean C40?'],
  ],
  [
    'unknown item',
    { castIns: [two[0]!, sampleCastIn('2', 1100, 500, { item: 'X99' })] },
    ['job.castIns[1].item: there is no catalogue item X99; expected one of F16'],
  ],
  [
    'unknown panel of an insert',
    { castIns: [...two, sampleCastIn('3', 1, 1, { panel: 'P11' })] },
    ['job.castIns[2].panel: there is no panel P11; did you mean P1?'],
  ],
  [
    'unknown insert',
    {
      connections: [
        sampleConnection({
          inserts: [
            { insert: '1', hole: '1' },
            { insert: '7', hole: '2' },
          ],
        }),
      ],
    },
    ['job.connections[0].inserts[1].insert: there is no insert 7 in panel P1; expected one of 1, 2'],
  ],
  [
    'insert outside',
    { castIns: [sampleCastIn('1', 900, 500), sampleCastIn('2', 1100, 500), sampleCastIn('3', 4100, 500)] },
    [
      'job.castIns[2].x_mm: position (4100, 500) lies outside the outline of panel P1; expected a place in the concrete',
    ],
  ],
  [
    'insert in an opening',
    { panels: [samplePanel({ openings_mm: openings })] },
    ['job.castIns[0].x_mm: position (900, 500) lies in opening 1 of panel P1; expected a place in the concrete'],
  ],
  [
    'foot through the panel',
    { panels: [samplePanel({ thickness_mm: 100 })], connections: [] },
    [0, 1].map(
      (i) =>
        `job.castIns[${i}].item: F16, 103 mm long, reaches through the panel, which is 100 mm thick there; expected an insert shorter than 100 mm`,
    ),
  ],
  [
    'recess counts',
    {
      panels: [samplePanel({ thickness_mm: 112 })],
      castIns: [two[0]!, sampleCastIn('2', 1100, 500, { recess_mm: 10 })],
    },
    [
      'job.castIns[1].item: F16, 103 mm long in a recess of 10 mm, reaches through the panel, which is 112 mm thick there; expected an insert shorter than 102 mm',
    ],
  ],
  [
    'foot in the insulation',
    { panels: [samplePanel({ thickness_mm: 300, layers: sandwich })], connections: [] },
    [0, 1].map(
      (i) =>
        `job.castIns[${i}].item: the foot of F16, 103 mm long, stands in the layer insulation; expected it within one structural layer`,
    ),
  ],
  [
    'layers do not add up',
    { panels: [samplePanel({ layers: [{ kind: 'structural', thickness_mm: 170 }] })] },
    ["job.panels[0].layers: the layers add up to 170 mm; expected the panel's thickness of 180 mm"],
  ],
  [
    'crossed outline',
    {
      panels: [
        samplePanel({
          outline_mm: [
            [0, 0],
            [4000, 3000],
            [4000, 0],
            [0, 3000],
          ],
        }),
      ],
    },
    [
      'job.panels[0].outline_mm: outline touches or crosses itself: the side from corner 1 (0, 0) meets the side from corner 3 (4000, 0); expected a simple polygon',
    ],
  ],
  [
    'edge number on a large face',
    { castIns: [two[0]!, sampleCastIn('2', 1100, 500, { edge: 1 })], connections: [] },
    ['job.castIns[1].edge: an insert on the outside face has no edge; expected face "edge", or no edge'],
  ],
  [
    'edge without number',
    { castIns: edgeTwo({ edge: null }), connections: [] },
    ['job.castIns[0].edge: an insert on an edge needs the number of the edge, 0 to 3'],
  ],
  [
    'beyond the edge',
    { castIns: edgeTwo({ x_mm: 4000 }), connections: [] },
    ['job.castIns[0].x_mm: 4000 mm along edge 0 lies beyond its ends; expected between 0 and 4000 mm'],
  ],
  [
    'off the edge',
    { castIns: edgeTwo({ y_mm: 180 }), connections: [] },
    ['job.castIns[0].y_mm: 180 mm from the outside face lies off an edge 180 mm thick; expected between 0 and 180 mm'],
  ],
  [
    'into an opening behind the edge',
    {
      castIns: edgeTwo({}),
      connections: [onEdge],
      panels: [
        samplePanel({
          openings_mm: [
            [
              [850, 100],
              [950, 100],
              [950, 300],
              [850, 300],
            ],
          ],
        }),
      ],
    },
    [
      'job.castIns[0].item: F16 needs 103 mm behind edge 0, where the concrete is 100 mm deep; expected a shorter insert',
    ],
  ],
  // By hand: the foot is 46 mm wide, so the axis needs 23 mm.
  [
    'foot out of the side',
    { castIns: [...two, sampleCastIn('3', 22, 500)] },
    [
      'job.castIns[2].x_mm: F16 is 46 mm wide and would stick out: its axis has 22 mm to the nearest side; expected at least 23 mm',
    ],
  ],
  [
    'foot out of the face beside the edge',
    { castIns: edgeTwo({ y_mm: 160 }), connections: [] },
    [
      'job.castIns[0].x_mm: F16 is 46 mm wide and would stick out: its axis has 20 mm to the nearest side; expected at least 23 mm',
    ],
  ],
  // By hand: bodies of 24 mm need 24 mm from axis to axis.
  [
    'two inserts in one place',
    { castIns: [...two, sampleCastIn('3', 900, 523.9), sampleCastIn('4', 1100, 524)] },
    ['job.castIns[2].x_mm: insert 3 stands in insert 1 of panel P1; expected them apart'],
  ],
  [
    'another recess than the way of holding leaves',
    {
      ...held('PL', { recess_mm: 10 }),
      castIns: [two[0]!, sampleCastIn('2', 1100, 500, { holding: 'PL', recess_mm: 5 })],
    },
    ['job.castIns[1].recess_mm: PL keeps the top 10 mm below the face, the recess says 5 mm; expected 10 mm'],
  ],
  [
    'another face',
    { castIns: [two[0]!, sampleCastIn('2', 1100, 500, { face: 'inside' })] },
    [
      'job.connections[0].inserts[1].insert: insert 2 is on the inside face, connection C1 on the outside face; expected one face',
    ],
  ],
  [
    'brace without rated load',
    { castIns: [...two, sampleCastIn('3', 2000, 500, { role: 'brace' })] },
    [
      "job.castIns[2].role: F16 is a fixing insert and has no rated load for brace with the maker's document; expected an insert rated for brace",
    ],
  ],
  [
    'lifting with a brace rating',
    {
      items: [sampleItem({ ratedLoads: [{ role: 'brace', load_kN: 10, document: 'D', conditions: 'none' }] })],
      castIns: [...two, sampleCastIn('3', 2000, 500, { role: 'lifting' })],
    },
    [
      "job.castIns[2].role: F16 is a fixing insert and has no rated load for lifting with the maker's document; expected an insert rated for lifting",
    ],
  ],
  [
    'fixing without item',
    { castIns: [...two, sampleCastIn('3', 2000, 500, { item: null })] },
    ['job.castIns[2].item: a fixing needs a type of the catalogue'],
  ],
  [
    'duct without a word',
    { castIns: [...two, sampleCastIn('3', 2000, 500, { role: 'duct', item: null })] },
    ['job.castIns[2].description: duct 3 has neither a type of the catalogue nor a description; expected one of them'],
  ],
  [
    'wrong thread',
    { connections: [sampleConnection({ boltThread: 'M20' })] },
    [0, 1].map(() => 'job.connections[0].boltThread: a bolt M20 does not fit F16, thread M16'),
  ],
  [
    'forbidden pair',
    { connections: [sampleConnection({ boltFinish: 'stainless' })] },
    [0, 1].map(
      () =>
        'job.connections[0].boltFinish: a stainless bolt does not go into F16 (thread class 6AZ), which takes: zinc, galvanised',
    ),
  ],
  [
    'too deep an engagement',
    { connections: [sampleConnection({ engagement_mm: 41 })] },
    [0, 1].map(
      () => 'job.connections[0].engagement_mm: an engagement of 41 mm is more than the thread of F16, 40 mm deep',
    ),
  ],
  [
    'two plates',
    { details: [{ id: 'T', name: 'T', fixture: sampleFixture() }], connections: [sampleConnection({ detail: 'T' })] },
    ['job.connections[0].fixture: both a standard detail (T) and a plate of its own; expected one of them'],
  ],
  [
    'loads without a plate',
    {
      connections: [
        sampleConnection({
          fixture: null,
          inserts: [
            { insert: '1', hole: null },
            { insert: '2', hole: null },
          ],
        }),
      ],
    },
    [
      'job.connections[0].fixture: loads are given but no plate that carries them to the inserts; expected a fixture or a standard detail',
    ],
  ],
  [
    'hole elsewhere',
    { connections: [sampleConnection({ origin_mm: [1000, 504] })] },
    [0, 1].map(
      (i) =>
        `job.connections[0].inserts[${i}].hole: insert ${i + 1} lies at (${i === 0 ? -100 : 100}, -4) in the axes of the plate, hole ${i + 1} at (${i === 0 ? -100 : 100}, 0): the bolt misses the hole by 3.0 mm`,
    ),
  ],
  [
    'hole too small',
    {
      connections: [
        sampleConnection({
          fixture: sampleFixture({
            holes: [
              { id: '1', at_mm: [-100, 0], diameter_mm: 14 },
              { id: '2', at_mm: [100, 0], diameter_mm: 18 },
            ],
          }),
        }),
      ],
    },
    ['job.connections[0].inserts[0].hole: a bolt M16 does not pass hole 1 of 14 mm'],
  ],
  [
    'no such hole',
    {
      connections: [
        sampleConnection({
          inserts: [
            { insert: '1', hole: '1' },
            { insert: '2', hole: 'B' },
          ],
        }),
      ],
    },
    [
      'job.connections[0].inserts[1].hole: insert 2 is put into hole B, which the plate does not have; expected one of 1, 2',
    ],
  ],
  [
    'insert used twice',
    { connections: [sampleConnection(), sampleConnection({ key: 'c2', mark: 'C2' })] },
    [0, 1].map(
      (i) =>
        `job.connections[1].inserts[${i}].insert: insert ${i + 1} of panel P1 is already used by connection C1; expected an insert of its own`,
    ),
  ],
  [
    'combination twice',
    {
      connections: [
        sampleConnection({
          actions: { kind: 'loads', combinations: [1, 2].map((N_kN) => ({ name: 'w', N_kN, Vx_kN: 0, Vy_kN: 0 })) },
        }),
      ],
    },
    ['job.connections[0].actions.combinations[1].name: load combination w of connection C1 is given twice'],
  ],
  [
    'unknown age',
    { connections: [sampleConnection({ age_days: 3 })] },
    ['job.connections[0].age_days: no strength of concrete C40 is given for 3 days; expected one of 7, 28 days'],
  ],
  [
    'embedment beyond the insert',
    { items: [sampleItem({ embedment_mm: 97 })] },
    [
      'library.catalogue.items[0].embedment_mm: embedment 97 mm does not fit in an insert of 103 mm with a foot of 7 mm; expected at most 96 mm',
    ],
  ],
  [
    'tested pull-out without strength',
    {
      items: [
        sampleItem({
          tested: [{ mode: 'pull-out', characteristic_kN: 60, report: 'R1', standard: 'S', conditions: 'none' }],
        }),
      ],
    },
    [
      'library.catalogue.items[0].tested[0].fromStrength_MPa: the tested pull-out of report R1 does not say from which concrete strength it holds; expected fromStrength_MPa',
    ],
  ],
  [
    'tested steel with a concrete strength',
    {
      items: [
        sampleItem({
          tested: (['steel-tension', 'thread'] as const).map((mode) => ({
            ...{ mode, characteristic_kN: 90, fromStrength_MPa: 60 },
            ...{ report: 'R1', standard: 'S', conditions: 'none' },
          })),
        }),
      ],
    },
    [
      'library.catalogue.items[0].tested[0].fromStrength_MPa: the test of steel (steel-tension) of report R1 holds whatever the concrete; expected no fromStrength_MPa, found 60 MPa',
      'library.catalogue.items[0].tested[1].fromStrength_MPa: the test of steel (thread) of report R1 holds whatever the concrete; expected no fromStrength_MPa, found 60 MPa',
    ],
  ],
  [
    'negative thickness',
    { panels: [samplePanel({ thickness_mm: -180 })] },
    ['job.panels[0].thickness_mm: -180 is not allowed; expected a number greater than 0 in mm'],
  ],
  [
    'a text for a number',
    { castIns: [two[0]!, sampleCastIn('2', 1100, 500, { x_mm: '1100' })] },
    ['job.castIns[1].x_mm: "1100" is not allowed; expected a number in mm'],
  ],
  [
    'misspelt key',
    { panels: [samplePanel({ opening_mm: [] })] },
    ['job.panels[0].opening_mm: the key opening_mm is not known here; did you mean openings_mm?'],
  ],
  [
    'missing key',
    { panels: [samplePanel({ faceDown: undefined })] },
    ['job.panels[0].faceDown: is missing; expected one of "outside", "inside"'],
  ],
  [
    'unknown kind of action',
    { connections: [sampleConnection({ actions: { kind: 'load' } })] },
    ['job.connections[0].actions.kind: "load" is not allowed; expected one of "loads", "required", "none"'],
  ],
];
