/** ISO metric threads with coarse pitch that this engine knows. */
export type ThreadName = 'M6' | 'M8' | 'M10' | 'M12' | 'M14' | 'M16' | 'M18' | 'M20' | 'M22' | 'M24';

/** A thread: basic sizes of its profile and the limits of a normal bolt in a normal nut thread. Lengths mm, areas mm². */
export interface Thread {
  readonly name: ThreadName;
  /** Nominal diameter d. */
  readonly diameter: number;
  readonly pitch: number;
  /** Basic pitch diameter d2 = D2. */
  readonly pitchDiameter: number;
  /** Basic minor diameter of the internal thread, D1. */
  readonly internalMinor: number;
  /** Minor diameter of the external thread at the rounded root, d3. */
  readonly externalMinor: number;
  /** Tensile stress area A_s. */
  readonly stressArea: number;
  /** Sizes of a bolt of class 6g before coating: least outside diameter, least and greatest pitch diameter. */
  readonly bolt6g: { readonly outsideMin: number; readonly pitchMin: number; readonly pitchMax: number };
  /** Greatest sizes of an internal thread of class 6H: minor and pitch diameter. */
  readonly internal6H: { readonly minorMax: number; readonly pitchMax: number };
}

interface ThreadRow {
  readonly diameter: number;
  readonly pitch: number;
  /** Fundamental deviation es of 6g, below nominal [µm]. */
  readonly es: number;
  /** Tolerances of grade 6 [µm]: outside and pitch diameter of the bolt, minor and pitch diameter of the internal thread. */
  readonly Td: number;
  readonly Td2: number;
  readonly TD1: number;
  readonly TD2: number;
}

/**
 * Pitches: ISO 262 (coarse). Deviations and tolerances: ISO 965-1, grade 6, normal engagement. Recalled; confirmed for
 * M10 by published 6g/6H limits and for M10, M12, M16, M20, M24 by the strip areas that follow from them (see the tests).
 */
const rows: Readonly<Record<ThreadName, ThreadRow>> = {
  M6: { diameter: 6, pitch: 1, es: 26, Td: 180, Td2: 112, TD1: 236, TD2: 150 },
  M8: { diameter: 8, pitch: 1.25, es: 28, Td: 212, Td2: 118, TD1: 265, TD2: 160 },
  M10: { diameter: 10, pitch: 1.5, es: 32, Td: 236, Td2: 132, TD1: 300, TD2: 180 },
  M12: { diameter: 12, pitch: 1.75, es: 34, Td: 265, Td2: 150, TD1: 335, TD2: 200 },
  M14: { diameter: 14, pitch: 2, es: 38, Td: 280, Td2: 160, TD1: 375, TD2: 212 },
  M16: { diameter: 16, pitch: 2, es: 38, Td: 280, Td2: 160, TD1: 375, TD2: 212 },
  M18: { diameter: 18, pitch: 2.5, es: 42, Td: 335, Td2: 170, TD1: 450, TD2: 224 },
  M20: { diameter: 20, pitch: 2.5, es: 42, Td: 335, Td2: 170, TD1: 450, TD2: 224 },
  M22: { diameter: 22, pitch: 2.5, es: 42, Td: 335, Td2: 170, TD1: 450, TD2: 224 },
  M24: { diameter: 24, pitch: 3, es: 48, Td: 375, Td2: 200, TD1: 500, TD2: 265 },
};

/** Sharp height of the ISO profile over the pitch: H = P √3/2 (ISO 68-1). */
const SHARP_HEIGHT = Math.sqrt(3) / 2;
const MICROMETRE = 0.001;

/** ISO 965-1 limits are given in whole micrometres. */
function roundToMicrometre(length: number): number {
  return Math.round(length / MICROMETRE) * MICROMETRE;
}

function makeThread(name: ThreadName): Thread {
  const { diameter: d, pitch, es, Td, Td2, TD1, TD2 } = rows[name];
  const H = SHARP_HEIGHT * pitch;
  const d2 = d - (3 / 4) * H;
  const D1 = d - (5 / 4) * H;
  const d3 = d2 - (2 / 3) * H;
  return {
    name,
    diameter: d,
    pitch,
    pitchDiameter: d2,
    internalMinor: D1,
    externalMinor: d3,
    stressArea: (Math.PI / 4) * ((d2 + d3) / 2) ** 2,
    bolt6g: {
      outsideMin: d - (es + Td) * MICROMETRE,
      pitchMin: roundToMicrometre(d2) - (es + Td2) * MICROMETRE,
      pitchMax: roundToMicrometre(d2) - es * MICROMETRE,
    },
    internal6H: {
      minorMax: roundToMicrometre(D1) + TD1 * MICROMETRE,
      pitchMax: roundToMicrometre(d2) + TD2 * MICROMETRE,
    },
  };
}

const threads: Readonly<Record<ThreadName, Thread>> = {
  M6: makeThread('M6'),
  M8: makeThread('M8'),
  M10: makeThread('M10'),
  M12: makeThread('M12'),
  M14: makeThread('M14'),
  M16: makeThread('M16'),
  M18: makeThread('M18'),
  M20: makeThread('M20'),
  M22: makeThread('M22'),
  M24: makeThread('M24'),
};

/** Names of the threads known here, smallest first. */
export const threadNames = [
  'M6',
  'M8',
  'M10',
  'M12',
  'M14',
  'M16',
  'M18',
  'M20',
  'M22',
  'M24',
] as const satisfies readonly ThreadName[];

/**
 * Gives a metric coarse thread: basic sizes by ISO 724 (profile of ISO 68-1), d3 and the stress area
 * A_s = π/4 ((d2 + d3)/2)² by ISO 898-1, limits of 6g and 6H by ISO 965-1. Lengths mm, area mm².
 * Example: M16 has d2 = 14.701, D1 = 13.835, A_s = 156.67.
 */
export function findThread(name: ThreadName): Thread {
  return threads[name];
}
