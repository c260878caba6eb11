import { expect, test } from 'vitest';
import { useOffice } from '../harness.ts';
import { CHECKER, findJob, pieceOf, Tablet } from './tablet.ts';

const office = useOffice();

test('what one tap writes stands in the order in which it was said, though it is said at one moment', async () => {
  const job = await findJob(office.server);
  const tablet = await (await Tablet.open(office.browser, office.server)).start(job, CHECKER);
  const ids = await tablet.run((at, of) => at.measureMany(of, 40), pieceOf(job, 'one tap'));
  expect(new Set(ids).size).toBe(40);
  expect([...ids].sort()).toEqual(ids);
  await tablet.context.close();
});
