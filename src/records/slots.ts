import type { FactRecord } from './record.ts';

/**
 * What a record answers: of several records of one slot the latest counts. Null: it stands beside the others (photos, comments, dockets, results, lots, surveys, pull tests)
 * or acts on others (corrections).
 */
export function slotOf(record: FactRecord): string | null {
  switch (record.kind) {
    case 'piece-started':
      return 'started';
    case 're-marked':
      return 'mark';
    case 'scrapped':
      return 'scrapped';
    case 'located':
      return 'location';
    case 'form-checked':
      return 'form';
    case 'placed':
      return `sight ${record.body.stage}`;
    case 'measured':
      return `place ${record.body.stage}`;
    case 'decision':
      return 'decision';
    case 'cleared':
    case 'held':
    case 'override':
      return 'clearance';
    case 'poured':
      return 'poured';
    case 'screed-checked':
      return 'screed';
    case 'stripped':
      return 'stripped';
    case 'uncovered':
      return 'uncovered';
    case 'cap':
      return 'cap';
    case 'remedy-decided':
      return `remedy ${record.body.connection}`;
    case 'delivered':
      return 'delivery';
    case 'offered':
      return `offered ${record.body.connection}`;
    case 'tightened':
      return `tightened ${record.body.connection}`;
    case 'sealed':
      return 'sealed';
    case 'proof-planned':
      return 'proof plan';
    case 'photo':
    case 'comment':
    case 'correction':
    case 'strength-result':
    case 'lot-taken':
    case 'docket':
    case 'surveyed':
    case 'proof-loaded':
      return null;
  }
}

/** Kinds that decide about the whole piece: what the writer knew of every insert belongs to them. */
export function decidesPiece({ kind }: Pick<FactRecord, 'kind'>): boolean {
  return kind === 'cleared' || kind === 'held' || kind === 'override' || kind === 'poured';
}
