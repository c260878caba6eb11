import type { Kysely } from 'kysely';
import type { YardJob } from '../../wire/records.ts';
import type { Access } from '../access.ts';
import type { RecordRow, Tables } from '../tables.ts';

type Link = Pick<RecordRow, 'device' | 'device_number' | 'previous' | 'hash'>;

interface Fork {
  readonly device: string;
  readonly number: number;
}

function groupBy<Value, Key>(values: readonly Value[], keyOf: (value: Value) => Key): Map<Key, Value[]> {
  const groups = new Map<Key, Value[]>();
  for (const value of values) {
    const group = groups.get(keyOf(value));
    if (group === undefined) groups.set(keyOf(value), [value]);
    else group.push(value);
  }
  return groups;
}

/**
 * Numbers of one device under which it wrote two texts: both are there, or the next record says the hash of another one than is there. A number
 * that is not there tells nothing.
 * @param links of the device, with those beside the numbers
 * @param numbers those that are looked at
 */
function findForks(device: string, links: readonly Link[], numbers: Iterable<number>): Fork[] {
  const byNumber = groupBy(links, ({ device_number }) => device_number);
  const isFork = (number: number): boolean => {
    const hashes = new Set((byNumber.get(number) ?? []).map(({ hash }) => hash));
    if (hashes.size !== 1) return hashes.size > 1;
    return (byNumber.get(number + 1) ?? []).some(({ previous }) => previous === null || !hashes.has(previous));
  };
  return [...numbers].filter(isFork).map((number) => ({ device, number }));
}

/** Looks at the chains that new records are part of, and notes the forks. The records are stored already; runs in their transaction. */
export async function noteForks(db: Kysely<Tables>, fresh: readonly Link[], now: string): Promise<void> {
  for (const [device, links] of groupBy(fresh, (link) => link.device)) {
    const numbers = new Set(links.flatMap(({ device_number }) => [device_number - 1, device_number]));
    const near = new Set([...numbers].flatMap((number) => [number, number + 1]));
    const stored = await db
      .selectFrom('records')
      .select(['device', 'device_number', 'previous', 'hash'])
      .where('device', '=', device)
      .where('device_number', 'in', [...near])
      .execute();
    const forks = findForks(device, stored, numbers);
    if (forks.length === 0) continue;
    await db
      .insertInto('forks')
      .values(forks.map((fork) => ({ ...fork, found_at: now })))
      .onConflict((conflict) => conflict.doNothing())
      .execute();
  }
}

/** Which of these devices wrote two texts under one number, ever. */
export async function findForked(db: Kysely<Tables>, devices: readonly string[]): Promise<string[]> {
  if (devices.length === 0) return [];
  const rows = await db
    .selectFrom('forks')
    .select('device')
    .distinct()
    .where('device', 'in', devices)
    .orderBy('device')
    .execute();
  return rows.map(({ device }) => device);
}

/** See RecordStore. */
export async function listForks({ db }: Access, job: string): Promise<YardJob['forks']> {
  return db
    .selectFrom('forks')
    .select(['device', 'number'])
    .where(({ exists, selectFrom }) =>
      exists(
        selectFrom('records')
          .select('records.number')
          .whereRef('records.device', '=', 'forks.device')
          .where('records.job', '=', job),
      ),
    )
    .orderBy('device')
    .orderBy('number')
    .execute();
}
