import { takeMiddle } from './timing.mjs';

/**
 * The chance that a plate goes on, against plain Monte Carlo whose plates are drawn one by one and decided by the quickest question that hole-fit answers.
 *
 * How many plates it would take for the standard error that ours states is p (1 − p)/SE²; a few ten thousand of them are drawn, for the time of one and for
 * agreement within three standard errors of both, where a case is not too rare to be met. Seeds are fixed. Two round holes have a closed form without error;
 * there the rays are measured that biased ones would take.
 */

const PLATES = 20_000;
const ROUNDS = 3;
const EFFORT = { seed: 1, enough: 1e-4, most: 512 };

const rectangle = (width, height) => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];
const rows = (count, spacing, apart) =>
  Array.from({ length: count }, (_, i) => [spacing * Math.floor(i / 2), i % 2 === 0 ? 0 : apart]);
const slots = (length, ...which) => ({ length, which });

/** Name, places, slack [mm], standard deviation [mm], slots: from easy to hard, chances from 0.2 to 0.9999. */
const CASES = [
  ['2 holes, even', rectangle(200, 100).slice(0, 2), 1, 1.05, null],
  ['2 holes, easy', rectangle(150, 100).slice(0, 2), 2, 0.8, null],
  ['2 holes, hard', rectangle(300, 100).slice(0, 2), 1, 2.5, null],
  ['2 holes, one slotted', rectangle(200, 100).slice(0, 2), 1, 2, slots(6, 1)],
  ['3 holes, even', rectangle(200, 120).slice(0, 3), 1, 0.9, null],
  ['3 holes, easy', rectangle(200, 120).slice(0, 3), 2, 0.65, null],
  ['3 holes, hard', rectangle(200, 120).slice(0, 3), 1, 1.4, null],
  ['3 in a line', rows(6, 150, 0).filter((_, i) => i % 2 === 0), 1, 0.8, null],
  ['4 holes, even', rectangle(200, 100), 1, 0.8, null],
  ['4 holes, likely', rectangle(200, 100), 1.5, 0.75, null],
  ['4 holes, easy', rectangle(300, 300), 2, 0.55, null],
  ['4 holes, hard', rectangle(200, 100), 1, 1.05, null],
  ['4 holes, a small plate', rectangle(60, 60), 2, 1.4, null],
  ['4 holes, two slotted', rectangle(200, 100), 1, 0.7, slots(10, 1, 2)],
  ['4 holes, all slotted', rectangle(200, 100), 1, 0.9, slots(20, 0, 1, 2, 3)],
  ['5 holes', [...rectangle(200, 200), [100, 100]], 1, 0.7, null],
  ['6 holes, even', rows(6, 120, 150), 1, 0.65, null],
  ['6 holes, easy', rows(6, 120, 150), 2, 0.55, null],
  ['8 holes, even', rows(8, 100, 150), 1, 0.6, null],
  ['8 holes, easy', rows(8, 100, 150), 2, 0.55, null],
].map(([name, places, slack, sigma, slotted]) => ({
  name,
  holes: places.map((at, i) => ({
    at,
    slack,
    slot: slotted?.which.includes(i) ? slotted.length : 0,
    angle: 0,
    sigma,
  })),
}));

/** @returns a row a case: { name, chance, standardError, ours_us, plates, peer_us, ratio, agrees } */
export function benchClearanceProbability(parts) {
  return CASES.map(({ name, holes }) => {
    const isClosed = parts.findChance(holes, EFFORT).standardError === 0;
    const find = isClosed ? parts.findFitChance : parts.findChance;
    const ask = () => find(holes, EFFORT);
    const { fits, misses, standardError } = ask();
    const plates = (fits * misses) / standardError ** 2;
    const rounds = Array.from({ length: ROUNDS }, (_, round) => {
      const ours = time(ask);
      let met = 0;
      const peer = time(() => {
        met = drawPlates(parts, holes, round + 1);
      });
      return { ours, peer: (peer / PLATES) * plates, met };
    });
    const drawn = rounds.reduce((sum, { met }) => sum + met, 0) / (ROUNDS * PLATES);
    const error = Math.hypot(standardError, Math.sqrt((fits * misses) / (ROUNDS * PLATES)));
    return {
      ...{ name, chance: fits, standardError, plates },
      ours_us: takeMiddle(rounds.map(({ ours }) => ours)),
      peer_us: takeMiddle(rounds.map(({ peer }) => peer)),
      ratio: takeMiddle(rounds.map(({ ours, peer }) => peer / ours)),
      agrees: Math.abs(drawn - fits) < 3 * error,
    };
  });
}

function drawPlates(parts, holes, seed) {
  const random = makeRandom(seed);
  const fit = parts.prepareHoles(holes);
  const bolts = new Float64Array(2 * holes.length);
  let met = 0;
  for (let plate = 0; plate < PLATES; plate += 1) {
    for (let i = 0; i < holes.length; i += 1) {
      const { at, sigma } = holes[i];
      const size = sigma * Math.sqrt(-2 * Math.log(random()));
      const angle = 2 * Math.PI * random();
      bolts[2 * i] = at[0] + size * Math.cos(angle);
      bolts[2 * i + 1] = at[1] + size * Math.sin(angle);
    }
    if (fit.decide(bolts)) met += 1;
  }
  return met;
}

function time(run) {
  const start = performance.now();
  run();
  return (performance.now() - start) * 1000;
}

/** A mixed counter (splitmix32), so that every run sees the same plates. */
function makeRandom(seed) {
  let state = Math.imul(seed, 0x9e3779b9) | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    return (((mixed ^ (mixed >>> 15)) >>> 0) + 0.5) / 2 ** 32;
  };
}
