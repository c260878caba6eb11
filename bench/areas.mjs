/**
 * Exact areas of groups of squares on a panel, against polygon-clipping, a general polygon library.
 *
 * The library does it the natural way: the union of the squares, cut by the panel; with sight, from every square the
 * shadow of each side that faces the insert is taken away, then the union of what is left. Before a case is timed its area
 * must be the same by both to 1e-9.
 */

const HALF = 144; // 1.5 × an embedment of 96 mm
const TURN = Math.PI / 6;

const PLAIN = {
  outline: [
    [0, 0],
    [3000, 0],
    [3000, 2400],
    [0, 2400],
  ],
  openings: [],
};
const SKEW = {
  outline: [
    [0, 0],
    [3000, 260],
    [2700, 2400],
    [-150, 2200],
  ],
  openings: [],
};
const HOLED = {
  outline: PLAIN.outline,
  openings: [
    [
      [420, 100],
      [520, 100],
      [520, 330],
      [420, 330],
    ],
    [
      [1500, 1200],
      [2300, 1200],
      [2300, 2000],
      [1500, 2000],
    ],
  ],
};
const FACES = { rectangle: PLAIN, skew: SKEW, holed: HOLED };

const PATTERNS = {
  1: [[120, 130]],
  2: [
    [120, 130],
    [320, 140],
  ],
  4: [
    [120, 130],
    [320, 130],
    [120, 330],
    [320, 330],
  ],
  9: [0, 1, 2].flatMap((i) => [0, 1, 2].map((j) => [110 + 130 * i, 120 + 110 * j])),
};

/**
 * @param polygonClipping the library's namespace
 * @param geometry the built engine's `prepareRegion`, `squaresArea`, `groupArea`, `visibleSquaresArea`
 * @returns rows { name, ratio, target, ours_us, peer_us }: times of one area, and how many times faster ours is
 */
export async function benchAreas(polygonClipping, geometry) {
  const rows = [];
  for (const [faceName, face] of Object.entries(FACES)) {
    for (const [count, points] of Object.entries(PATTERNS)) {
      const axes = count % 2 === 1 ? [Math.cos(TURN), Math.sin(TURN)] : [1, 0];
      const region = geometry.prepareRegion(face.outline, face.openings);
      const xs = Float64Array.from(points, (p) => p[0]);
      const ys = Float64Array.from(points, (p) => p[1]);
      const shapes = { ...makeShapes(face, points, axes), points };
      const name = `${count} square${count === '1' ? '' : 's'} on a ${faceName} panel`;
      rows.push(
        compare(
          `${name}, without sight`,
          60,
          () => geometry.squaresArea(region, xs, ys, HALF, axes[0], axes[1]),
          () => clipPlain(polygonClipping, shapes),
        ),
        compare(
          `${name}, with sight`,
          5,
          () => geometry.groupArea(region, xs, ys, HALF, axes[0], axes[1]),
          () => clipSight(polygonClipping, shapes),
        ),
      );
    }
  }
  return rows;
}

function makeShapes(face, points, [ux, uy]) {
  const panel = [face.outline, ...face.openings].map(close);
  const squares = points.map(([x, y]) => [
    close(
      [
        [-1, -1],
        [1, -1],
        [1, 1],
        [-1, 1],
      ].map(([u, v]) => [x + HALF * (u * ux - v * uy), y + HALF * (u * uy + v * ux)]),
    ),
  ]);
  return { panel, squares };
}

function close(ring) {
  return [...ring, ring[0]];
}

function clipPlain(polygonClipping, { panel, squares }) {
  return measure(polygonClipping.intersection(polygonClipping.union(squares[0], ...squares.slice(1)), panel));
}

function clipSight(polygonClipping, { panel, squares, points }) {
  const seen = squares.map((square, i) => polygonClipping.difference(square, ...castShadows(panel, points[i])));
  return measure(polygonClipping.union(seen[0], ...seen.slice(1)));
}

function castShadows(panel, [px, py]) {
  const shadows = [];
  const throwOut = ([x, y]) => {
    const far = 1e5 / Math.hypot(x - px, y - py);
    return [px + far * (x - px), py + far * (y - py)];
  };
  panel.forEach((ring, r) => {
    const sense = Math.sign(twice(ring)) * (r === 0 ? 1 : -1);
    for (let k = 0; k + 1 < ring.length; k++) {
      const [a, b] = [ring[k], ring[k + 1]];
      if (sense * ((a[0] - px) * (b[1] - py) - (a[1] - py) * (b[0] - px)) <= 0) continue;
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const t = ((px - a[0]) * dx + (py - a[1]) * dy) / (dx * dx + dy * dy);
      const parts = t > 0.001 && t < 0.999 ? [a, [a[0] + t * dx, a[1] + t * dy], b] : [a, b];
      for (let m = 0; m + 1 < parts.length; m++) {
        shadows.push([close([parts[m], parts[m + 1], throwOut(parts[m + 1]), throwOut(parts[m])])]);
      }
    }
  });
  return shadows;
}

function twice(ring) {
  let sum = 0;
  for (let i = 0; i + 1 < ring.length; i++) sum += ring[i][0] * ring[i + 1][1] - ring[i][1] * ring[i + 1][0];
  return sum;
}

function measure(polygons) {
  let area = 0;
  for (const rings of polygons) {
    rings.forEach((ring, r) => {
      area += ((r === 0 ? 1 : -1) * Math.abs(twice(ring))) / 2;
    });
  }
  return area;
}

function compare(name, target, ours, peers) {
  const [mine, theirs] = [ours(), peers()];
  if (!(Math.abs(mine / theirs - 1) <= 1e-9)) {
    throw new Error(`${name}: the areas differ, ours ${mine} mm², the library's ${theirs} mm²; expected 1e-9`);
  }
  const [oursUs, peerUs] = timeBoth(ours, peers);
  return { name, ratio: peerUs / oursUs, target, ours_us: oursUs, peer_us: peerUs };
}

/** Least time of one call [µs], in turns, so that a busy moment of the machine strikes both. */
function timeBoth(ours, peers) {
  const calls = [ours, peers].map((run) => ({ run, count: countCalls(run), least: Number.POSITIVE_INFINITY }));
  for (let round = 0; round < 12; round++) {
    for (const call of calls) call.least = Math.min(call.least, timeCalls(call.run, call.count) / call.count);
  }
  return calls.map((call) => call.least);
}

/** As many calls as take some 4 ms, after warming up. */
function countCalls(run) {
  let count = 1;
  while (timeCalls(run, count) < 4000) count *= 2;
  return count;
}

function timeCalls(run, count) {
  const start = performance.now();
  let sum = 0;
  for (let i = 0; i < count; i++) sum += run();
  const us = (performance.now() - start) * 1000;
  if (!Number.isFinite(sum)) throw new Error(`an area is ${sum}`);
  return us;
}
