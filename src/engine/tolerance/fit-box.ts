/** Half the sides of a box about the origin [mm]. */
export interface HalfSides {
  readonly along: number;
  readonly across: number;
}

/** Largest whole number of mm, up to a limit, at which something holds that then holds below; 0: not at 1. */
function climb(holds: (at: number) => boolean, from: number, most: number): number {
  let at = from;
  while (at < most && holds(at + 1)) at += 1;
  return at;
}

/**
 * A box about the origin that lies in a region, in whole mm: the largest as wide as it is high, then as far as it goes along, or across, whichever is more.
 * Its rim is asked at every half mm, what lies inside at every mm.
 * @param most no side is longer than twice this [mm]
 */
export function fitBoxInZone(passes: (x: number, y: number) => boolean, most: number): HalfSides {
  const holds = ({ along, across }: HalfSides) => {
    const isFull = (step: number) => {
      for (let x = -along; x <= along; x += step)
        for (let y = -across; y <= across; y += Math.abs(x) === along ? step : Math.max(step, 1))
          if (!passes(x, y)) return false;
      return true;
    };
    return isFull(1) && isFull(0.5);
  };
  const square = climb((at) => holds({ along: at, across: at }), 0, most);
  if (square === 0) return { along: 0, across: 0 };
  const along = climb((at) => holds({ along: at, across: square }), square, most);
  const across = climb((at) => holds({ along: square, across: at }), square, most);
  return along >= across ? { along, across: square } : { along: square, across };
}
