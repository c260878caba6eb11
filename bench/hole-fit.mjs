import { takeMiddle } from './timing.mjs';

/**
 * The best movement of plates with eight holes, round and slotted, over bolts that are off, against a plain dense search for the same margin: a grid over
 * turn and shift that is drawn in about its best place until it is as fine as ours is proven.
 *
 * Before anything is timed: no movement of the peer is better than ours by more than its proof, and every proof is within 0.001 mm.
 */

const HOLES = 8;
const PLATES = 401;
/** The peer takes hundreds of times as long: of few plates only. Both numbers are odd, for the middle. */
const PEER_PLATES = 11;
const ROUNDS = 5;
const MOST_UNPROVEN = 0.001;
/** The peer's grid a step, and by how much it is drawn in each time. */
const STEPS = 5;
const DRAWN_IN = 0.6;
const FINE = 0.001;

/** @returns { ours_us, worst_us, unproven, plates, peer_us, ratio } */
export function benchHoleFit(parts) {
  const random = makeRandom(3);
  const plates = Array.from({ length: PLATES }, () => makePlate(random));
  const fit = ({ holes, bolts }) => parts.findHoleFit(holes, bolts);
  const proofs = plates.map((plate) => fit(plate).provenWithin);
  for (const plate of plates.slice(0, PEER_PLATES)) refuseBetter(fit(plate), searchGrid(plate));
  const rounds = Array.from({ length: ROUNDS }, () => {
    const times = plates.map((plate) => time(() => fit(plate)));
    const peers = plates.slice(0, PEER_PLATES).map((plate) => time(() => searchGrid(plate)));
    return { ours: takeMiddle(times), peer: takeMiddle(peers) };
  });
  return {
    plates: PLATES,
    unproven: proofs.filter((proof) => proof > MOST_UNPROVEN).length,
    worstProof: Math.max(...proofs),
    ours_us: takeMiddle(rounds.map(({ ours }) => ours)),
    peer_us: takeMiddle(rounds.map(({ peer }) => peer)),
    ratio: takeMiddle(rounds.map(({ ours, peer }) => peer / ours)),
  };
}

function makePlate(random) {
  const holes = Array.from({ length: HOLES }, () => ({
    at: [400 * (random() - 0.5), 300 * (random() - 0.5)],
    slack: 1 + random(),
    slot: random() < 0.3 ? 20 * random() : 0,
    angle: Math.PI * random(),
  }));
  const bolts = holes.map(({ at: [x, y] }) => [x + 6 * (random() - 0.5), y + 6 * (random() - 0.5)]);
  return { holes, bolts };
}

/** The largest least clearance by grids drawn in. */
function searchGrid({ holes, bolts }) {
  const middle = [0, 1].map((axis) => holes.reduce((sum, { at }) => sum + at[axis], 0) / HOLES);
  let best = { turn: 0, x: 0, y: 0, margin: Number.NEGATIVE_INFINITY };
  let [turning, shifting] = [0.04, 6];
  while (shifting > FINE) {
    const { turn, x, y } = best;
    for (let i = -STEPS; i <= STEPS; i++)
      for (let j = -STEPS; j <= STEPS; j++)
        for (let k = -STEPS; k <= STEPS; k++) {
          const at = [turn + (turning * i) / STEPS, x + (shifting * j) / STEPS, y + (shifting * k) / STEPS];
          const margin = measure(holes, bolts, middle, ...at);
          if (margin > best.margin) best = { turn: at[0], x: at[1], y: at[2], margin };
        }
    turning *= DRAWN_IN;
    shifting *= DRAWN_IN;
  }
  return best.margin;
}

function measure(holes, bolts, [mx, my], turn, sx, sy) {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < holes.length; i++) {
    const { at, slack, slot, angle } = holes[i];
    const bx = bolts[i][0] - mx - sx;
    const by = bolts[i][1] - my - sy;
    const dx = cos * bx + sin * by - at[0] + mx;
    const dy = cos * by - sin * bx - at[1] + my;
    const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
    const along = Math.max(-slot / 2, Math.min(slot / 2, dx * ux + dy * uy));
    least = Math.min(least, slack - Math.hypot(dx - along * ux, dy - along * uy));
  }
  return least;
}

function refuseBetter({ margin, provenWithin }, peer) {
  if (peer > margin + provenWithin + 1e-9)
    throw new Error(`the grid leaves ${peer} mm, ours ${margin} mm proven within ${provenWithin} mm; expected no more`);
}

function time(run) {
  const start = performance.now();
  run();
  return (performance.now() - start) * 1000;
}

/** Numbers between 0 and 1, the same in every run. */
function makeRandom(seed) {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296;
  };
}
