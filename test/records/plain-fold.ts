import type { FactRecord } from '../../src/records/record.ts';
import { slotOf } from '../../src/records/slots.ts';

/** The rules of the fold once more, slow and straight from their words: what the quick one is held against. Honest records only. */
export class PlainFold {
  readonly #records: ReadonlyMap<string, FactRecord>;

  constructor(records: readonly FactRecord[]) {
    this.#records = new Map(records.map((record) => [record.id, record]));
  }

  ancestors(id: string): ReadonlySet<string> {
    const found = new Set<string>();
    const own = this.#records.get(id);
    const visit = (record: FactRecord | undefined): void => {
      for (const seen of record?.seen ?? []) {
        const other = this.#records.get(seen);
        if (other === undefined || other.piece !== own?.piece || found.has(seen)) continue;
        found.add(seen);
        visit(other);
      }
    };
    visit(own);
    return found;
  }

  isWithdrawn(id: string, among: ReadonlySet<string> = new Set(this.#records.keys())): boolean {
    const piece = this.#records.get(id)?.piece;
    return [...this.#records.values()].some(
      (other) =>
        among.has(other.id) &&
        other.piece === piece &&
        other.kind === 'correction' &&
        other.body.of === id &&
        !this.isWithdrawn(other.id, among),
    );
  }

  /** Ids of the latest of a slot. */
  latest(of: FactRecord): readonly string[] {
    const slot = [...this.#records.values()].filter(
      (other) =>
        other.piece === of.piece &&
        other.item === of.item &&
        slotOf(other) === slotOf(of) &&
        !this.isWithdrawn(other.id),
    );
    const seen = new Set(slot.flatMap(({ id }) => [...this.ancestors(id)]));
    return slot
      .map(({ id }) => id)
      .filter((id) => !seen.has(id))
      .sort();
  }

  /** Ids of the latest of an insert or of the piece itself. */
  heads(piece: string, item: string | null): readonly string[] {
    const all = [...this.#records.values()].filter((other) => other.piece === piece && other.item === item);
    const seen = new Set(all.flatMap(({ id }) => [...this.ancestors(id)]));
    return all
      .map(({ id }) => id)
      .filter((id) => !seen.has(id))
      .sort();
  }
}
