import { findEdition } from '../../engine/standards/editions.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import type { Connection } from '../documents/connection.ts';
import { describeFrame } from '../face-frame.ts';
import type { JobIndex } from '../job-index.ts';
import { type ConnectionSeat, gatherItems, gatherParts, seatConnection } from './connection-seat.ts';
import { findCoverBehind } from './cover-behind.ts';
import { durabilityWarnings, lifeAssumptions } from './durability.ts';
import { type FilledSeat, fillSeat, findGoverningInsert, ownHardware } from './fill-seat.ts';
import type { Resolution } from './resolved-connection.ts';

/** Concrete left behind each foot, where the rules ask for more. */
function coverWarnings(seat: ConnectionSeat, items: readonly CatalogueItem[]): string[] {
  const wanted = seat.rules.cover.behindFoot_mm;
  return seat.castIns.flatMap((castIn, i) => {
    const left = findCoverBehind(seat.panel, castIn, items[i]!);
    return left === null || left >= wanted
      ? []
      : [`insert ${castIn.id}: ${left} mm of cover behind the foot; the rules ask for ${wanted} mm`];
  });
}

/** Each default and choice that was taken, in words. */
function listAssumptions(
  seat: ConnectionSeat,
  { item, bolt, engagement, steel, local }: FilledSeat,
  isMixed: boolean,
): string[] {
  const { connection, rules } = seat;
  return [
    ...(connection.cracked === null
      ? [`${rules.defaults.cracked ? 'cracked' : 'uncracked'} concrete assumed (rules ${rules.id})`]
      : []),
    ...(!findEdition(rules.standard).takesPartialFactors
      ? [`strength reduction factors φ of ${rules.standard}; the partial factors of the rules are not used`]
      : []),
    ...seat.concrete.assumptions,
    ...(connection.boltClass === null ? [`bolts of class ${bolt.propertyClass} assumed (rules ${rules.id})`] : []),
    ...(connection.boltFinish === null
      ? [`bolt finish not given: one that ${item.id} takes (${item.boltFinishes.join(', ')})`]
      : []),
    ...(bolt.elongation === null || item.steel.elongation_percent === null
      ? ['elongation A5 not known: steel taken as brittle']
      : []),
    ...(connection.engagement_mm === null
      ? [`bolts engage ${engagement} mm of full thread: to be made sure of on site`]
      : []),
    ...(isMixed ? [`inserts of different types: all computed as ${item.id}, the one with the least embedment`] : []),
    ...local.assumptions,
    ...seat.reinforcement.assumptions,
    ...seat.leverArmFor(item.thread).assumptions,
    ...steel.assumptions,
  ];
}

/**
 * A seat with inserts in it as the engine takes it: units converted once, positions on its own face seen from the front, every
 * default named.
 * @param items one an insert, in the connection's order
 */
function resolveSeat(seat: ConnectionSeat, items: readonly CatalogueItem[]): Resolution {
  const { connection, panel, face } = seat;
  const { item: counted, uses, isMixed } = findGoverningInsert(seat, items);
  const filled = fillSeat(seat, counted, ownHardware(seat), uses);
  const head = { mark: connection.mark, panel: panel.mark, face };
  if ('ok' in filled) return { kind: 'unresolved', ...head, reasons: filled.reasons };
  const { item, bolt, engagement, group, notCovered } = filled;
  return {
    kind: 'resolved',
    ...head,
    group,
    plate: seat.plateFor(item.thread),
    actions: seat.actions,
    source: {
      coordinates: describeFrame(panel, connection),
      item,
      bolt,
      engagement,
      castIns: seat.castIns,
      connection,
    },
    assumptions: [...listAssumptions(seat, filled, isMixed), ...lifeAssumptions(items)],
    notCovered,
    warnings: [...coverWarnings(seat, items), ...durabilityWarnings(seat, items)],
  };
}

/**
 * One connection of a job as the engine takes it. The job must have been read by `readJobDocument`.
 * @throws Error when the job holds a reference that nothing has (reading refuses such a job)
 */
export function resolveConnection(index: JobIndex, connection: Connection): Resolution {
  const parts = gatherParts(index, connection);
  return resolveSeat(seatConnection(parts), gatherItems(index, parts));
}
