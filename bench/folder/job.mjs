/** A job of panels with ten inserts each, all in one pour: a group of four in the trowelled face, a pair in the mould face, four in edges. */

const WAYS = [
  { id: 'TOP', name: 'Hung from a bridging bar', method: 'bridging bar' },
  { id: 'FORM', name: 'Stick-on plate', method: 'stick-on plate', parts: [{ part: 'PL', count: 1 }] },
  {
    id: 'SIDE',
    name: 'Bolt through the side form',
    method: 'through the side form',
    parts: [{ part: 'SB', count: 1 }],
  },
];
const PARTS = [
  { id: 'PL', name: 'Fixing plate M16', kind: 'fixing plate', thread: 'M16', reusable: true, lossPerUse: 0.2 },
  { id: 'SB', name: 'Bolt for the side form M16', kind: 'side form bolt', thread: 'M16', reusable: true },
];

/**
 * @param demo the demo job file as plain JSON, for its library
 * @param count how many panels
 * @returns a job file as plain JSON, its pour named "all"
 */
export function makeFolderJob(demo, count) {
  const { job, library } = demo;
  const marks = Array.from({ length: count }, (_, i) => `W${i + 1}`);
  const item = library.catalogue.items.find(({ id }) => id === 'F16-103').id;
  const [bed] = library.yard.beds;
  return {
    ...demo,
    library: {
      ...library,
      holding: { ...library.holding, parts: PARTS, ways: WAYS },
      yard: { ...library.yard, beds: [{ ...bed, width_mm: 5000 }] },
    },
    job: {
      ...job,
      panels: marks.map((mark, i) => ({
        key: `p-${mark}`,
        mark,
        concrete: job.concretes[0].id,
        drawnFace: i % 2 === 0 ? 'outside' : 'inside',
        faceDown: 'outside',
        outline_mm: [
          [0, 0],
          [4000 + 10 * (i % 50), 0],
          [4000 + 10 * (i % 50), 3000],
          [0, 3000],
        ],
        openings_mm:
          i % 3 === 0
            ? [
                [
                  [1500, 800],
                  [2500, 800],
                  [2500, 2000],
                  [1500, 2000],
                ],
              ]
            : [],
        thickness_mm: 180,
      })),
      castIns: marks.flatMap((mark, i) =>
        listPlaces(i).map((place, k) => ({
          key: `i-${mark}-${k}`,
          id: String(k + 1),
          panel: mark,
          role: 'fixing',
          item,
          ...place,
        })),
      ),
      connections: marks.map((mark) => ({
        key: `c-${mark}`,
        mark: `C-${mark}`,
        panel: mark,
        face: 'inside',
        origin_mm: [700, 2400],
        detail: null,
        fixture: null,
        inserts: ['1', '2', '3', '4'].map((insert) => ({ insert, hole: null })),
        actions: { kind: 'none' },
      })),
      pours: [{ id: 'all', bed: bed.id, date: '2026-12-14', pieces: marks.map((panel) => ({ panel, serial: '1' })) }],
    },
  };
}

function listPlaces(i) {
  const shift = 7 * (i % 13);
  const top = [
    [600, 2300],
    [800, 2300],
    [600, 2500],
    [800, 2500],
  ].map(([x, y]) => ({ face: 'inside', x_mm: x + shift, y_mm: y, holding: 'TOP' }));
  const form = [
    [3200, 500],
    [3400, 500],
  ].map(([x, y]) => ({ face: 'outside', x_mm: x + shift, y_mm: y, holding: 'FORM' }));
  const side = [0, 1, 2, 3].map((edge) => ({ face: 'edge', edge, x_mm: 900 + shift, y_mm: 90, holding: 'SIDE' }));
  return [...top, ...form, ...side];
}
