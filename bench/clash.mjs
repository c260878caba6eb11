import { takeMiddle } from './timing.mjs';

/**
 * Clashes of 1,000 inserts with 20,000 bars on one floor of 100 panels' worth, against the loop over all pairs with the same
 * distances (which looks first at the boxes around two solids, then at their axes, before it measures).
 *
 * Before anything is timed both must find the same clashes. All-pairs takes seconds, so it runs once a round; ours as often as takes
 * a fair time.
 */

const INSERTS = 1_000;
const BARS = 20_000;
const ROUNDS = 3;
const OURS_A_ROUND = 10;
const PANELS_X = 10;
const PANELS_Y = 10;
const [LENGTH, HEIGHT] = [6_000, 3_000];
const GAP = 500;
const THICKNESS = 180;
/** So close that a panel has its 200 bars. */
const SPACING = 87;

/** @returns { inserts, bars, clashes, ours_us, peer_us, ratio } */
export function benchClash(parts) {
  const scene = makeScene(parts);
  const rules = { clearance: 5 };
  const ours = () => parts.findClashes(scene, rules);
  const peer = () => findByAllPairs(parts, scene, rules);
  const found = ours();
  refuseOther(found, peer());
  const rounds = Array.from({ length: ROUNDS }, () => ({
    ours: time(() => {
      for (let i = 0; i < OURS_A_ROUND; i++) ours();
    }, OURS_A_ROUND),
    peer: time(peer, 1),
  }));
  return {
    inserts: scene.items.length,
    bars: scene.bars.length,
    clashes: found.length,
    ours_us: takeMiddle(rounds.map((round) => round.ours)),
    peer_us: takeMiddle(rounds.map((round) => round.peer)),
    ratio: takeMiddle(rounds.map((round) => round.peer / round.ours)),
  };
}

/** Panels of 6 × 3 m side by side, each with bars both ways on two faces and ten inserts; one outline around all of them. */
function makeScene(parts) {
  const bars = [];
  const items = [];
  const perPanel = BARS / (PANELS_X * PANELS_Y);
  const random = makeRandom(7);
  for (let row = 0; row < PANELS_Y; row++) {
    for (let column = 0; column < PANELS_X; column++) {
      const [x, y] = [column * (LENGTH + GAP), row * (HEIGHT + GAP)];
      const outline = [
        [x, y],
        [x + LENGTH, y],
        [x + LENGTH, y + HEIGHT],
        [x, y + HEIGHT],
      ];
      const region = parts.prepareRegion(outline, []);
      const layer = { kind: 'bars', diameter: 9, spacing: SPACING, through: [x + 40, y + 40], endCover: 20 };
      const own = [35, 145].flatMap((depth) => [
        ...parts.layOutBars({ ...layer, id: `${row}-${column}-${depth}-x`, direction: 0, depth }, region),
        ...parts.layOutBars(
          { ...layer, id: `${row}-${column}-${depth}-y`, direction: Math.PI / 2, depth: depth + 9 },
          region,
        ),
      ]);
      bars.push(...own.slice(0, perPanel));
      for (let i = 0; i < INSERTS / (PANELS_X * PANELS_Y); i++) {
        items.push(
          makeInsert(
            parts,
            `${row}-${column}-${i}`,
            x + 200 + random() * (LENGTH - 400),
            y + 200 + random() * (HEIGHT - 400),
            random(),
          ),
        );
      }
    }
  }
  const width = PANELS_X * (LENGTH + GAP);
  const height = PANELS_Y * (HEIGHT + GAP);
  const region = parts.prepareRegion(
    [
      [-GAP, -GAP],
      [width, -GAP],
      [width, height],
      [-GAP, height],
    ],
    [],
  );
  if (bars.length !== BARS || items.length !== INSERTS)
    throw new Error(`the scene has ${bars.length} bars and ${items.length} inserts; expected ${BARS} and ${INSERTS}`);
  return { items, bars, region, sides: parts.makeSides(region, THICKNESS, () => 0), thickness: THICKNESS };
}

function makeInsert(parts, id, x, y, turn) {
  const angle = Math.round(turn * 36) * (Math.PI / 36);
  const [u, v] = [120 * Math.cos(angle), 120 * Math.sin(angle)];
  return {
    id,
    parts: [
      { name: 'body', solid: parts.makeCylinder([x, y, 5], [x, y, 90], 11) },
      { name: 'foot', solid: parts.makeCylinder([x, y, 90], [x, y, 98], 20) },
      { name: 'cross bar', solid: parts.makeCylinder([x - u, y - v, 70], [x + u, y + v, 70], 6) },
    ],
    cover: 20,
    tolerance: 5,
    directions: [
      [1, 0, 0],
      [0, 1, 0],
    ],
    throughSide: null,
    turning: { centre: [x, y, 70], about: [0, 0, 1] },
  };
}

function findByAllPairs({ compareWithBar, compareItems, compareWithSides, compareClashes }, scene, rules) {
  const { items, bars, sides } = scene;
  const found = [];
  for (let item = 0; item < items.length; item++) {
    for (let bar = 0; bar < bars.length; bar++) found.push(...compareWithBar(scene, rules, item, bar));
    for (let other = item + 1; other < items.length; other++) found.push(...compareItems(scene, rules, item, other));
    found.push(...compareWithSides(scene, item, sides));
  }
  return found.sort(compareClashes);
}

function refuseOther(ours, peers) {
  if (ours.length === 0) throw new Error('the scene has no clash; expected some, to compare');
  if (JSON.stringify(ours) !== JSON.stringify(peers))
    throw new Error(`${ours.length} clashes by cells, ${peers.length} by all pairs; expected the same ones`);
}

function time(run, calls) {
  const start = performance.now();
  run();
  return ((performance.now() - start) * 1000) / calls;
}

/** Numbers between 0 and 1, the same in every run. */
function makeRandom(seed) {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296;
  };
}
