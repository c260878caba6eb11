import type { Person } from '../../records/person.ts';
import type { Access } from '../access.ts';

/** See RecordStore. */
export async function listPeople({ db }: Pick<Access, 'db'>): Promise<readonly Person[]> {
  const rows = await db.selectFrom('people').selectAll().orderBy('id').execute();
  return rows.map(({ roles, ...person }) => ({ ...person, roles: JSON.parse(roles) }));
}

/** See RecordStore. */
export async function savePerson(
  { db }: Access,
  { id, name, roles, registration }: Person,
): Promise<readonly Person[]> {
  const row = { name, roles: JSON.stringify(roles), registration };
  return db.transaction().execute(async (all) => {
    await all
      .insertInto('people')
      .values({ id, ...row })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
      .execute();
    return listPeople({ db: all });
  });
}
