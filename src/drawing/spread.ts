/**
 * Moves places along a line apart until each is `pitch` from the next, with the least sum of squared moves; their order stays. Solved exactly by
 * pooling neighbours that violate it (isotonic regression; Robertson, Wright, Dykstra, Order Restricted Statistical Inference, 1988, 1.2).
 *
 * @param places in rising order [mm]
 * @param pitch least distance [mm]
 * @param from least place allowed [mm]
 * @param to greatest place allowed [mm]; it must leave room: to − from ≥ (n − 1) × pitch
 * @returns the places in the same order
 */
export function spreadPlaces(places: readonly number[], pitch: number, from: number, to: number): readonly number[] {
  // With k × pitch taken off, "a pitch apart" becomes "not falling".
  const pools: { sum: number; count: number }[] = [];
  for (const [k, place] of places.entries()) {
    let pool = { sum: place - k * pitch, count: 1 };
    for (let last = pools.at(-1); last !== undefined && last.sum / last.count >= pool.sum / pool.count; ) {
      pool = { sum: pool.sum + last.sum, count: pool.count + last.count };
      pools.pop();
      last = pools.at(-1);
    }
    pools.push(pool);
  }
  const most = to - (places.length - 1) * pitch;
  const means = pools.flatMap(({ sum, count }) => new Array<number>(count).fill(sum / count));
  return means.map((mean, k) => Math.min(Math.max(mean, from), most) + k * pitch);
}
