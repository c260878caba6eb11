import type { Capacities, Capacity, CapacityLine, StatedCapacity } from '../assess/capacities.ts';

// JSON's own units: kN, so that every key says what it holds.
const toKN = (newton: number | null) => (newton === null ? null : newton / 1000);

function writeCapacity({ direction, total, perInsert, mode, reasons }: Capacity): object {
  return {
    load: direction === null ? 'tension' : 'shear',
    ...(direction === null ? {} : { toward: direction.name, edge_mm: direction.edge }),
    largest_kN: toKN(total),
    perInsert_kN: toKN(perInsert),
    governing: mode,
    covered: reasons.length === 0,
  };
}

function writeStated({ combination, times, tension, shear, mode, reasons, why }: StatedCapacity): object {
  return {
    combination,
    times,
    tensionPerInsert_kN: toKN(tension),
    shearPerInsert_kN: toKN(shear),
    governing: mode,
    covered: reasons.length === 0,
    ...(why === null ? {} : { reason: why }),
  };
}

/** What a connection carries at most, as JSON. */
export function writeCapacities({ group, stated, inserts, reasons }: Capacities): object {
  return {
    group: group.map(writeCapacity),
    stated: stated.map(writeStated),
    inserts: inserts.map(({ id, capacities }) => ({ id, carries: capacities.map(writeCapacity) })),
    notCovered: reasons,
  };
}

/** The line of a list as JSON. */
export function writeCapacityLine({ tension, toward, along, reasons }: CapacityLine): object {
  return {
    tension: writeCapacity(tension),
    toward: writeCapacity(toward),
    along: writeCapacity(along),
    notCovered: reasons,
  };
}
