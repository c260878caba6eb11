import { writeCanonical } from './canonical.ts';
import type { Connection } from './documents/connection.ts';
import type { Rules } from './documents/rules.ts';
import { hashText } from './fingerprint.ts';
import type { JobIndex } from './job-index.ts';

/** What stands for the ± box of a connection's position zone. */
export type BoxStanding =
  /** None was taken over. */
  | { readonly kind: 'none' }
  /** One was, but nobody agreed that it may stand in place of the tolerance. */
  | { readonly kind: 'not agreed' }
  /** What it was computed from is another by now. */
  | { readonly kind: 'outdated' }
  | {
      readonly kind: 'stands';
      readonly within_mm: number;
      readonly agreement: NonNullable<Rules['positionZones']>;
    };

/** Rules that change no zone: names, words, and what is tolerated or may be accepted. */
function tellRules({ id: _, edition, name, statements, tolerances, acceptance, positionZones, ...rest }: Rules) {
  return rest;
}

/**
 * Hash of everything that a connection's position zone is computed from: the connection with its plate, its panel with all that is cast into it, their
 * types and ways of holding, the concrete, the rules. Marks, keys and tolerances are not in it.
 */
export function hashZoneBasis(index: JobIndex, connection: Connection): string {
  const { library } = index.file;
  const { key: _key, mark: _mark, positionBox: _box, detail: _detail, ...asked } = connection;
  const panel = index.panels.get(connection.panel);
  const castIns = index.castInsOf(connection.panel);
  const used = <T extends { readonly id: string }>(list: readonly T[], ids: ReadonlySet<string | null>) =>
    list.filter(({ id }) => ids.has(id));
  const ways = used(library.holding.ways, new Set(castIns.map(({ holding }) => holding)));
  const parts = new Set(ways.flatMap((way) => [...way.parts.map(({ part }) => part), ...way.chairs]));
  return hashText(
    writeCanonical({
      connection: asked,
      fixture: index.fixtureOf(connection),
      panel: panel === undefined ? null : { ...panel, key: '', mark: '', handedOf: null },
      castIns: castIns.map((castIn) => ({ ...castIn, key: '', tolerance_mm: null })),
      concrete: panel === undefined ? null : (index.concretes.get(panel.concrete) ?? null),
      items: used(library.catalogue.items, new Set(castIns.map(({ item }) => item))),
      ways,
      heights: used(library.holding.parts, parts).map(({ id, height_mm }) => ({ id, height_mm })),
      rules: tellRules(library.rules),
    }),
  );
}

/** Whether the ± box that was taken over for a connection stands in place of the tolerance of the rules. */
export function findBoxStanding(index: JobIndex, connection: Connection): BoxStanding {
  const { positionBox } = connection;
  if (positionBox === null) return { kind: 'none' };
  const { positionZones } = index.file.library.rules;
  if (positionZones === null) return { kind: 'not agreed' };
  if (hashZoneBasis(index, connection) !== positionBox.computedFrom) return { kind: 'outdated' };
  return { kind: 'stands', within_mm: positionBox.within_mm, agreement: positionZones };
}
