import type { Kysely } from 'kysely';
import { StoreError } from './job-store.ts';
import type { Tables } from './tables.ts';

type Step = (db: Kysely<Tables>) => Promise<void>;

async function makeTables(db: Kysely<Tables>): Promise<void> {
  const { schema } = db;
  await schema
    .createTable('jobs')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('version', 'integer', (column) => column.notNull())
    .addColumn('saved_at', 'text', (column) => column.notNull())
    .addColumn('created_at', 'text', (column) => column.notNull())
    .addColumn('removed_at', 'text')
    .addColumn('shape', 'integer', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('number', 'text')
    .addColumn('panels', 'integer', (column) => column.notNull())
    .addColumn('connections', 'integer', (column) => column.notNull())
    .addColumn('revision', 'text')
    .addColumn('issued', 'text')
    .execute();
  await schema
    .createTable('edits')
    .addColumn('job', 'text', (column) => column.notNull().references('jobs.id'))
    .addColumn('version', 'integer', (column) => column.notNull())
    .addColumn('edit_id', 'text', (column) => column.notNull())
    .addColumn('editor', 'text', (column) => column.notNull())
    .addColumn('saved_at', 'text', (column) => column.notNull())
    .addColumn('body', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('edits_of_job', ['job', 'version'])
    .addUniqueConstraint('edit_once', ['job', 'edit_id'])
    .execute();
  await schema
    .createTable('copies')
    .addColumn('job', 'text', (column) => column.notNull().references('jobs.id'))
    .addColumn('version', 'integer', (column) => column.notNull())
    .addColumn('body', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('copies_of_job', ['job', 'version'])
    .execute();
  await schema
    .createTable('issues')
    .addColumn('job', 'text', (column) => column.notNull().references('jobs.id'))
    .addColumn('letter', 'text', (column) => column.notNull())
    .addColumn('version', 'integer', (column) => column.notNull())
    .addColumn('issued_at', 'text', (column) => column.notNull())
    .addColumn('fingerprint', 'text', (column) => column.notNull())
    .addColumn('transmittal', 'text', (column) => column.notNull())
    .addColumn('body', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('issues_of_job', ['job', 'letter'])
    .execute();
  await schema
    .createTable('kept')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('job', 'text', (column) => column.notNull().references('jobs.id'))
    .addColumn('base', 'integer', (column) => column.notNull())
    .addColumn('editor', 'text', (column) => column.notNull())
    .addColumn('reason', 'text', (column) => column.notNull())
    .addColumn('kept_at', 'text', (column) => column.notNull())
    .addColumn('body', 'text', (column) => column.notNull())
    .execute();
  await schema.createIndex('kept_of_job').on('kept').column('job').execute();
}

async function makeRecordTables(db: Kysely<Tables>): Promise<void> {
  const { schema } = db;
  await schema
    .createTable('records')
    .addColumn('number', 'integer', (column) => column.primaryKey())
    .addColumn('job', 'text', (column) => column.notNull().references('jobs.id'))
    .addColumn('id', 'text', (column) => column.notNull().unique())
    .addColumn('piece', 'text', (column) => column.notNull())
    .addColumn('item', 'text')
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('device', 'text', (column) => column.notNull())
    .addColumn('device_number', 'integer', (column) => column.notNull())
    .addColumn('previous', 'text')
    .addColumn('hash', 'text', (column) => column.notNull())
    .addColumn('log_hash', 'text', (column) => column.notNull())
    .addColumn('text', 'text', (column) => column.notNull())
    .addColumn('received_at', 'text', (column) => column.notNull())
    .execute();
  await schema.createIndex('records_of_job').on('records').columns(['job', 'number']).execute();
  await schema.createIndex('records_of_piece').on('records').columns(['job', 'piece', 'number']).execute();
  // Not unique: a copied tablet writes a number again, and what it wrote is kept.
  await schema.createIndex('records_of_device').on('records').columns(['device', 'device_number']).execute();
  await schema
    .createTable('asides')
    .addColumn('job', 'text', (column) => column.notNull().references('jobs.id'))
    .addColumn('hash', 'text', (column) => column.notNull())
    .addColumn('id', 'text')
    .addColumn('piece', 'text')
    .addColumn('why', 'text', (column) => column.notNull())
    .addColumn('body', 'text', (column) => column.notNull())
    .addColumn('at', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('aside_once', ['job', 'hash'])
    .execute();
  await schema
    .createTable('forks')
    .addColumn('device', 'text', (column) => column.notNull())
    .addColumn('number', 'integer', (column) => column.notNull())
    .addColumn('found_at', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('fork_once', ['device', 'number'])
    .execute();
  await schema
    .createTable('people')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('name', 'text')
    .addColumn('roles', 'text', (column) => column.notNull())
    .addColumn('registration', 'text')
    .execute();
}

/** Changes of the tables, in the order in which they came. They only add; one that was shipped is never edited. */
const STEPS: readonly Step[] = [makeTables, makeRecordTables];

/**
 * Brings the tables up to date, all steps or none.
 * @throws StoreError when a newer program made them
 */
export async function takeSteps(db: Kysely<Tables>, now: string): Promise<void> {
  await db.schema
    .createTable('steps')
    .ifNotExists()
    .addColumn('number', 'integer', (column) => column.primaryKey())
    .addColumn('done_at', 'text', (column) => column.notNull())
    .execute();
  await db.transaction().execute(async (all) => {
    const rows = await all.selectFrom('steps').select('number').execute();
    const done = Math.max(0, ...rows.map(({ number }) => number));
    if (done > STEPS.length)
      throw new StoreError(
        `the data were made by a newer version of Onepour (step ${done}; this one knows ${STEPS.length})`,
      );
    for (const [index, step] of STEPS.entries()) {
      if (index < done) continue;
      await step(all);
      await all
        .insertInto('steps')
        .values({ number: index + 1, done_at: now })
        .execute();
    }
  });
}
