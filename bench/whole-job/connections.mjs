/** Connections of a large job: panels of several shapes, one to six inserts, one to three load combinations each. */

const EMBEDMENTS = [70, 96, 120, 150];
const STRENGTHS = [25, 32, 40, 50];
const PATTERNS = [
  [[0, 0]],
  [
    [0, 0],
    [1, 0],
  ],
  [
    [0, 0],
    [1, 0],
    [0, 1],
    [1, 1],
  ],
  [
    [0, 0],
    [1, 0],
    [2, 0],
  ],
  [
    [0, 0],
    [1, 0],
    [2, 0],
    [0, 1],
    [1, 1],
    [2, 1],
  ],
];
const PANELS = [
  {
    outline: [
      [0, 0],
      [3000, 0],
      [3000, 2400],
      [0, 2400],
    ],
    openings: [],
  },
  {
    outline: [
      [0, 0],
      [6000, 0],
      [5600, 3000],
      [0, 3000],
    ],
    openings: [],
  },
  {
    outline: [
      [0, 0],
      [4200, 0],
      [4200, 1400],
      [2600, 1400],
      [2600, 3000],
      [0, 3000],
    ],
    openings: [],
  },
  {
    outline: [
      [0, 0],
      [5000, 0],
      [5000, 3200],
      [0, 3200],
    ],
    openings: [
      [
        [700, 600],
        [1900, 600],
        [1900, 2100],
        [700, 2100],
      ],
    ],
  },
];

/**
 * Connection number `index` of the job; the same number gives the same connection.
 * @returns the group as the engine takes it and its combinations
 */
export function makeConnection(index) {
  const random = seed(index);
  const between = (low, high) => low + (high - low) * random();
  const pick = (list) => list[Math.floor(random() * list.length)];
  const embedment = pick(EMBEDMENTS);
  const panel = pick(PANELS);
  const [x, y] = [between(60, 300), between(60, 220)];
  const [sx, sy] = [between(80, 150), between(80, 150)];
  const positions = pick(PATTERNS).map(([i, j], k) => ({ id: `${k + 1}`, x: x + i * sx, y: y + j * sy }));
  const group = {
    standard: 'EN 1992-4',
    concrete: { strength: pick(STRENGTHS), cracked: random() < 0.7, lightweightFactor: 1 },
    member: { thickness: embedment + between(40, 120), outline: panel.outline, openings: panel.openings },
    reinforcement: {
      denseSurface: false,
      edge: 'none',
      supplementary: false,
      limitsCrackWidth: random() < 0.5,
      stirrupSpacing: null,
    },
    insert: {
      embedment,
      shaftDiameter: 24,
      foot: { kind: 'diameter', diameter: 44, thickness: 6 },
      steelParts: [
        { name: 'bolt', area: 157, ultimate: 800, yield: 640, resists: 'both' },
        { name: 'body', area: 210, ultimate: 690, yield: 550, resists: 'both' },
      ],
      elongation: 14,
      areaReduction: 35,
      qualification: { document: 'bench document', standard: 'EN 1992-4' },
      isFullHead: true,
      tested: [],
    },
    positions,
    leverArm: null,
    splitting: { criticalEdge: 2 * embedment, minimumThickness: embedment + 30 },
    partialFactors: { concrete: 1.5, steelTension: null, steelShear: null },
    pryOutFactor: null,
    hangers: [],
    hairpins: [],
    uncoveredUses: [],
  };
  const combinations = Array.from({ length: 1 + Math.floor(3 * random()) }, () => {
    const angle = between(0, 2 * Math.PI);
    return {
      inserts: positions.map(() => ({
        N: between(-500, 6000),
        Vx: between(800, 2000) * Math.cos(angle),
        Vy: between(800, 2000) * Math.sin(angle),
      })),
      compression: null,
    };
  });
  return { group, combinations };
}

/** Numbers from 0 to 1 that look random and start from a whole number (a 32-bit mix of a counter). */
function seed(start) {
  let state = (start + 1) * 0x9e3779b9;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
