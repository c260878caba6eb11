import { expect, test } from 'vitest';
import { makeRecord } from '../../src/records/make-record.ts';
import { readRecord } from '../../src/records/record-text.ts';
import { cleared, held, idOf, JOB, PERSON, PIECE, Tablet } from './writing.ts';

test('records of a device are chained: each holds the hash of the text before it', () => {
  const one = new Tablet(1);
  one.write(held, 0);
  one.write(cleared, 1);
  const [first, second] = one.written;
  expect(first?.record.chain).toStrictEqual({ number: 1, previous: null });
  expect(second?.record.chain).toStrictEqual({ number: 2, previous: first?.hash });
  expect(readRecord(second!.text)).toStrictEqual({ ok: true, stored: second });
});

const context = {
  id: idOf(0, 1),
  seen: [],
  now: '2026-05-04T06:00:00.000Z',
  clock_s: null,
  person: PERSON,
  device: 'dddddddddddddddd',
  app: '1',
  previous: null,
};
const draft = {
  ...held,
  job: JOB,
  piece: PIECE,
  item: null,
  revision: null,
  checkKey: null,
  measuredAt: null,
  measuredBy: null,
};

test('without a time of its own it was measured when it was typed', () => {
  expect(makeRecord(draft, context)).toMatchObject({ measuredAt: context.now, typedAt: context.now });
  const earlier = '2026-05-03T06:00:00.000Z';
  expect(makeRecord({ ...draft, measuredAt: earlier }, context)).toMatchObject({
    measuredAt: earlier,
    typedAt: context.now,
  });
});

test('what is no sound record is not made, and the field is named', () => {
  expect(() => makeRecord({ ...draft, body: { reason: '' } } as typeof draft, context)).toThrow(
    /^held: body\.reason: /,
  );
  expect(() => makeRecord(draft, { ...context, person: 'A. Nobody' })).toThrow(/^held: person: .*12 small letters/);
});
