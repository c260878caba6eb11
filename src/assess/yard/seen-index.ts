import { findSeenBy } from '../../records/fold/find-seen-later.ts';
import { orderRecords } from '../../records/fold/order-records.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import type { FactRecord } from '../../records/record.ts';

/** Which record of a piece has seen which, be it through others. */
export interface SeenIndex {
  /** Of some records those that no other of them has seen, in the order of their ids. */
  standing<Kind extends FactRecord>(records: readonly Kind[]): readonly Kind[];
  hasSeen(later: FactRecord, earlier: FactRecord): boolean;
  /** Everything that its writer knew, withdrawn records too. */
  knownTo(record: FactRecord): readonly FactRecord[];
}

/** Makes the index of one piece; what a record has seen is found when it is first asked for. */
export function indexSeen({ history }: Pick<PieceState, 'history'>): SeenIndex {
  const ordered = orderRecords(new Map(history.map((record) => [record.id, record])));
  const places = new Map(ordered.records.map(({ id }, place) => [id, place]));
  const found = new Map<string, Uint8Array | null>();
  const seenBy = ({ id }: FactRecord) => {
    const had = found.get(id);
    if (had !== undefined) return had;
    const place = places.get(id);
    const made = place === undefined ? null : findSeenBy(ordered, place);
    found.set(id, made);
    return made;
  };
  const hasSeen = (later: FactRecord, earlier: FactRecord) => {
    const place = places.get(earlier.id);
    return place !== undefined && seenBy(later)?.[place] === 1;
  };
  return {
    hasSeen,
    standing: (records) =>
      (records.length < 2
        ? [...records]
        : records.filter((one) => !records.some((other) => other !== one && hasSeen(other, one)))
      ).sort((a, b) => (a.id < b.id ? -1 : 1)),
    knownTo: (record) => {
      const seen = seenBy(record);
      return seen === null ? [] : ordered.records.filter((_, place) => seen[place] === 1);
    },
  };
}
