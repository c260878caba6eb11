/**
 * Equilibrium of rigid plates: time of one plate and the worst residual over 10,000 random ones.
 *
 * The residual is summed again here, from the forces that the engine gives. Every plate can be balanced, since it has a bolt
 * inside its hull; one- and two-bolt plates in tension just off the bolts, which bear on a sliver, are a kind of their own.
 */

const COUNT = 10_000;
const ROUNDS = 5;
const TARGET_US = 10;

/**
 * @param fixture the built engine's `solvePlate` and `solveFixture`
 * @returns rows { name, ours_us, target_us, worstResidual, solved, count }: average time of one plate
 */
export async function benchPlates(fixture) {
  return [
    measure(fixture, 'one to eight bolts, any action', 11, (random) => makeAny(random)),
    measure(fixture, 'one bolt, eccentric tension', 12, (random) => makeSliver(random, 1)),
    measure(fixture, 'two bolts, eccentric tension', 13, (random) => makeSliver(random, 2)),
    measure(fixture, 'all kinds, with shear shares', 14, makeMixed, solveWhole),
  ];
}

function measure(fixture, name, seed, make, solve = solveNormal) {
  const random = seedRandom(seed);
  const cases = Array.from({ length: COUNT }, () => make(random));
  let solved = 0;
  let worstResidual = 0;
  for (const given of cases) {
    const residual = sumUp(given, solve(fixture, given));
    if (residual < 1e-9) solved += 1;
    worstResidual = Math.max(worstResidual, residual);
  }
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round += 1) {
    const start = performance.now();
    for (const given of cases) solve(fixture, given);
    best = Math.min(best, performance.now() - start);
  }
  return { name, ours_us: (best * 1000) / COUNT, target_us: TARGET_US, worstResidual, solved, count: COUNT };
}

const solveNormal = (fixture, { plate, bolts, action }) => fixture.solvePlate(plate, 7, bolts, action);

function solveWhole(fixture, { plate, bolts, action }) {
  const forces = fixture.solveFixture(plate, 7, bolts, { at: [0, 0], Vx: 1000, Vy: -2000, T: 3e5, ...action });
  return { boltTensions: forces.bolts.map(({ N }) => N), compression: forces.compression };
}

/** What is left over of ΣN, ΣN·y, Σ−N·x about the plate's middle, relative to the action there. */
function sumUp({ middle, length, bolts, action }, { boltTensions, compression }) {
  const mx = action.Mx - action.N * middle[1];
  const my = action.My + action.N * middle[0];
  const size = Math.max(Math.abs(action.N), Math.abs(mx) / length, Math.abs(my) / length);
  const rest = [-action.N, -mx / length, -my / length];
  const add = (force, x, y) => {
    rest[0] += force;
    rest[1] += (force * (y - middle[1])) / length;
    rest[2] -= (force * (x - middle[0])) / length;
  };
  bolts.forEach((bolt, i) => {
    add(boltTensions[i], bolt.x, bolt.y);
  });
  if (compression !== null) add(-compression.force, ...compression.at);
  return Math.max(...rest.map(Math.abs)) / size;
}

/** A plate somewhere on a face, turned: a rectangle, an L or a triangle, with bolts at least a twentieth inside. */
function makePlate(random, boltCount) {
  const width = 60 + 400 * random();
  const height = 60 + 400 * random();
  const shapes = [
    [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ],
    [
      [0, 0],
      [width, 0],
      [width, 0.4 * height],
      [0.5 * width, 0.4 * height],
      [0.5 * width, height],
      [0, height],
    ],
    [
      [0, 0],
      [width, 0],
      [0.3 * width, height],
    ],
  ];
  const shape = shapes[Math.floor(3 * random())];
  const angle = 2 * Math.PI * random();
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [left, bottom] = [3000 * random(), 3000 * random()];
  const move = (x, y) => [left + cos * x - sin * y, bottom + sin * x + cos * y];
  const bolts = Array.from({ length: boltCount }, () => {
    // Inside the lower part of all three shapes.
    const v = 0.05 + 0.3 * random();
    const u = 0.35 * v + 0.05 + (0.9 - 1.05 * v) * random();
    const [x, y] = move(u * width, v * height);
    return { id: 'A', x, y, stressArea: 50 + 500 * random(), takesShear: true };
  });
  const plate = shape.map(([x, y]) => move(x, y));
  const xs = plate.map(([x]) => x);
  const ys = plate.map(([, y]) => y);
  const middle = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
  const length = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)) / 2;
  return { plate, bolts, middle, length };
}

/** Tension, compression or none, with moments as of an eccentricity up to two plates; about the origin. */
function makeAny(random, fewest = 1) {
  const given = makePlate(random, fewest + Math.floor((9 - fewest) * random()));
  const { middle, length } = given;
  const N = [-1, 0, 1][Math.floor(3 * random())] * 1e5 * random();
  const arm = 4e5 * length * random();
  return {
    ...given,
    action: {
      N,
      Mx: N * middle[1] + arm * (random() - 0.5),
      My: -N * middle[0] + arm * (random() - 0.5),
    },
  };
}

/** Tension from a tenth of the plate down to a ten-millionth off the first bolt, or off the line through two. */
function makeSliver(random, boltCount) {
  const given = makePlate(random, boltCount);
  const [first, second = first] = given.bolts;
  const share = random();
  const off = 0.1 * given.length * 10 ** (-6 * random());
  const angle = 2 * Math.PI * random();
  const x = first.x + share * (second.x - first.x) + off * Math.cos(angle);
  const y = first.y + share * (second.y - first.y) + off * Math.sin(angle);
  const N = 1e3 + 1e5 * random();
  return { ...given, action: { N, Mx: N * y, My: -N * x } };
}

const makeMixed = (random) => (random() < 0.5 ? makeAny(random, 2) : makeSliver(random, 2));

/** A linear congruential generator (constants of Numerical Recipes), so that every run sees the same plates. */
function seedRandom(seed) {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
