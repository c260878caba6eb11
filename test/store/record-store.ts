import { createHash, randomBytes } from 'node:crypto';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { hashLogLine, LOG_START } from '../../src/records/log-line.ts';
import type { Person } from '../../src/records/person.ts';
import type { LogRow } from '../../src/store/record-store.ts';
import type { Store } from '../../src/store/store.ts';
import { hashOf, idOf, makeDevice, pieceOf, writeMany } from './devices.ts';
import { sampleFile } from './edits.ts';
import { done, type StorePlace } from './job-store.ts';

/** Every line of the log. */
export async function readWholeLog(store: Store): Promise<LogRow[]> {
  const lines: LogRow[] = [];
  for (;;) {
    const page = await store.readLog(lines.at(-1)?.number ?? 0);
    if (page.length === 0) return lines;
    lines.push(...page);
  }
}

/** The log as its texts say that it must be, each line worked anew from its text and the line before. */
export function expectSoundLog(lines: readonly LogRow[]): void {
  let before = LOG_START;
  const wanted = lines.map(({ text, receivedAt }, index): LogRow => {
    const { job, id, piece, item, kind, device, chain } = JSON.parse(text);
    const hash = hashOf(text);
    before = hashOf(`${before}\n${job}\n${hash}`);
    const from = { device, deviceNumber: chain.number, previous: chain.previous };
    const columns = { number: index + 1, job, id, piece, item, kind, ...from };
    return { ...columns, hash, logHash: before, text, receivedAt };
  });
  expect(lines).toEqual(wanted);
}

const setter: Person = { id: 'demosetter01', name: 'N. Nobody', roles: ['setter', 'checker'], registration: null };

/** What every store of records must do, whichever database is behind it. */
export function describeRecordStore(name: string, makePlace: () => StorePlace): void {
  describe(`${name}: records`, () => {
    let place: StorePlace;
    let store: Store;
    let job: string;
    const AT = '2026-11-30T09:00:00.000Z';
    const open = () => place.open(() => new Date(AT));
    beforeEach(async () => {
      place = makePlace();
      store = await open();
      job = (await store.createJob(sampleFile())).id;
    });
    afterEach(async () => {
      await store.close();
      place.clear();
    });
    const reopen = async () => {
      await store.close();
      store = await open();
    };
    const take = (texts: readonly string[], to = job) => done(store.takeRecords(to, texts));
    const list = (after = 0, pieces: readonly string[] | null = null) => done(store.listRecords(job, after, pieces));
    const states = ({ took }: Awaited<ReturnType<typeof take>>) => took.map(({ state }) => state);

    it('takes texts, numbers them in one log and gives them back as they came', async () => {
      const device = makeDevice('a');
      const texts = writeMany(device, job, 3);
      const answer = await take(texts);
      const logHashes: string[] = [];
      for (const text of texts) logHashes.push(hashLogLine(logHashes.at(-1) ?? LOG_START, job, hashOf(text)));
      expect(answer).toEqual({
        took: [1, 2, 3].map((number) => ({ id: idOf(`a ${number}`), state: 'stored', number, why: null })),
        forks: [],
        head: { number: 3, hash: logHashes[2] },
      });
      await reopen();
      const records = texts.map((text, index) => ({ number: index + 1, text }));
      expect(await list()).toEqual({ records, isAll: true, head: answer.head });
      expect((await list(2)).records).toEqual(records.slice(2));
      expect(await store.readHead()).toEqual(answer.head);
      const lines = await readWholeLog(store);
      expectSoundLog(lines);
      expect(lines.map(({ logHash, receivedAt }) => [logHash, receivedAt])).toEqual(
        logHashes.map((hash) => [hash, AT]),
      );
    });

    it('has a head with no hash while nothing was recorded', async () => {
      expect(await store.readHead()).toEqual({ number: 0, hash: null });
      expect(await list()).toEqual({ records: [], isAll: true, head: { number: 0, hash: null } });
      expect(await store.readLog(0)).toEqual([]);
    });

    it('counts once what is sent again, whole or in part, in one call or in two', async () => {
      const texts = writeMany(makeDevice('a'), job, 4);
      const first = await take(texts.slice(0, 3));
      expect(await take(texts.slice(0, 3))).toEqual({
        ...first,
        took: first.took.map((took) => ({ ...took, state: 'had' })),
      });
      const again = await take([texts[1]!, texts[3]!, texts[3]!]);
      expect(again.took.map(({ state, number }) => [state, number])).toEqual([
        ['had', 2],
        ['stored', 4],
        ['had', 4],
      ]);
      expect((await list()).records.map(({ text }) => text)).toEqual(texts);
      expect(await store.listAsides(job)).toEqual([]);
    });

    it('keeps another text under a known id aside, once, and reports it', async () => {
      const device = makeDevice('a');
      const text = device.write(job);
      const other = text.replace('Ø 12', 'Ø 13');
      await take([text]);
      const why = 'the id stands for another text already, number 1 of the log';
      const aside = { id: idOf('a 1'), state: 'aside', number: null, why };
      for (const _ of [1, 2]) expect((await take([other])).took).toEqual([aside]);
      expect((await take([text, other])).took.map(({ state }) => state)).toEqual(['had', 'aside']);
      expect((await list()).records).toEqual([{ number: 1, text }]);
      const kept = { id: idOf('a 1'), piece: pieceOf('one'), why, text: other, at: AT };
      expect(await store.listAsides(job)).toEqual([kept]);
      await reopen();
      expect(await store.listAsides(job)).toEqual([kept]);
    });

    it('tells two texts of one id apart that come in one call', async () => {
      const text = makeDevice('a').write(job);
      expect(states(await take([text, text.replace('Ø 12', 'Ø 13')]))).toEqual(['stored', 'aside']);
    });

    it('keeps aside what it does not understand, byte for byte, with as much as can be said of it', async () => {
      const text = makeDevice('a').write(job);
      const newer = text.replace('"kind":"comment"', '"kind":"of a newer program"');
      const strange = [newer, '', 'no JSON \u0000 at all', '[1]', `"${'\ud800'}"`, `${text.slice(0, -1)},"x":1}`];
      const { took } = await take([...strange, text]);
      expect(took.map(({ id, state }) => [id, state])).toEqual([
        [idOf('a 1'), 'aside'],
        [null, 'aside'],
        [null, 'aside'],
        [null, 'aside'],
        [null, 'aside'],
        [idOf('a 1'), 'aside'],
        [idOf('a 1'), 'stored'],
      ]);
      for (const { why, state } of took) expect(why === null).toBe(state === 'stored');
      await take(strange);
      const kept = await store.listAsides(job);
      expect(kept.map((aside) => aside.text).sort()).toEqual([...strange].sort());
      expect(kept.find((aside) => aside.text === newer)).toMatchObject({ id: idOf('a 1'), piece: pieceOf('one') });
    });

    it('keeps a text aside that half a sign would change, though it is a record else', async () => {
      const text = makeDevice('a').write(job).replace('writes', `wri\ud800tes`);
      const { took } = await take([text]);
      expect(took).toMatchObject([{ state: 'aside', why: expect.stringContaining('half of a sign') }]);
      expect(await store.listAsides(job)).toMatchObject([{ text }]);
    });

    it('keeps a record of another job aside in the one that it came to', async () => {
      const other = (await store.createJob(sampleFile())).id;
      const text = makeDevice('a').write(other);
      const { took } = await take([text]);
      expect(took).toMatchObject([
        { state: 'aside', why: `the record is of job ${other}, and came as one of job ${job}` },
      ]);
      expect(states(await take([text], other))).toEqual(['stored']);
      expect((await list()).records).toEqual([]);
      expect(await store.listAsides(other)).toEqual([]);
    });

    it('takes records in any order, with gaps, and tells no fork of it', async () => {
      const texts = writeMany(makeDevice('a'), job, 6);
      for (const index of [5, 2, 3, 0, 4])
        expect(await take([texts[index]!])).toMatchObject({ took: [{ state: 'stored' }], forks: [] });
      expect(await store.listForks(job)).toEqual([]);
      expect((await take([texts[1]!])).forks).toEqual([]);
      expectSoundLog(await readWholeLog(store));
    });

    it('tells a copied tablet by a number with two texts, keeps both, and tells it again', async () => {
      const tablet = makeDevice('a');
      const before = writeMany(tablet, job, 2);
      const copy = tablet.copy('b');
      const [mine, theirs] = [tablet.write(job), copy.write(job)];
      expect((await take([...before, mine])).forks).toEqual([]);
      for (const state of ['stored', 'had'])
        expect(await take([theirs])).toMatchObject({ took: [{ state }], forks: [tablet.id] });
      expect((await take([mine])).forks).toEqual([tablet.id]);
      expect(await store.listForks(job)).toEqual([{ device: tablet.id, number: 3 }]);
      expect((await list()).records).toHaveLength(4);
      // What another tablet sends says nothing of it.
      expect((await take([makeDevice('c').write(job)])).forks).toEqual([]);
    });

    it('tells a copied tablet in one call, and by what follows a text that never came', async () => {
      const tablet = makeDevice('a');
      const copy = tablet.copy('b');
      expect((await take([tablet.write(job), copy.write(job)])).forks).toEqual([tablet.id]);
      const other = makeDevice('d');
      const twin = other.copy('e');
      await take([other.write(job)]);
      twin.write(job);
      expect((await take([twin.write(job)])).forks).toEqual([other.id]);
      const late = makeDevice('f');
      const third = late.copy('g');
      const first = late.write(job);
      third.write(job);
      expect((await take([third.write(job)])).forks).toEqual([]);
      expect((await take([first])).forks).toEqual([late.id]);
      expect((await store.listForks(job)).map(({ device }) => device).sort()).toEqual(
        [tablet.id, other.id, late.id].sort(),
      );
    });

    it('lists the forks of the tablets of a job alone', async () => {
      const other = (await store.createJob(sampleFile())).id;
      const tablet = makeDevice('a');
      const copy = tablet.copy('b');
      await take([tablet.write(other), copy.write(other)], other);
      await take([makeDevice('c').write(job)]);
      expect(await store.listForks(job)).toEqual([]);
      expect(await store.listForks(other)).toEqual([{ device: tablet.id, number: 1 }]);
    });

    it('gives 500 at once, of all pieces or of some', async () => {
      const device = makeDevice('a');
      const [one, two, three] = ['one', 'two', 'three'].map(pieceOf);
      const texts = Array.from({ length: 1002 }, (_, index) =>
        device.write(job, { piece: [one, two, three][index % 3]! }),
      );
      for (let at = 0; at < texts.length; at += 500) await take(texts.slice(at, at + 500));
      const pages = [await list(), await list(500), await list(1000)];
      expect(pages.map(({ records, isAll }) => [records.length, isAll])).toEqual([
        [500, false],
        [500, false],
        [2, true],
      ]);
      expect(pages.flatMap(({ records }) => records.map(({ text }) => text))).toEqual(texts);
      const some = await list(10, [one!, three!]);
      expect(some).toMatchObject({ isAll: false });
      expect(some.records.map(({ number }) => number)).toEqual(
        texts
          .map((_, index) => index + 1)
          .filter((number) => number > 10 && number % 3 !== 2)
          .slice(0, 500),
      );
      expect(await list(502)).toMatchObject({ isAll: true, records: { length: 500 } });
    });

    it('numbers all jobs in one log', async () => {
      const other = (await store.createJob(sampleFile())).id;
      const device = makeDevice('a');
      await take([device.write(job)]);
      await take([device.write(other)], other);
      await take([device.write(job)]);
      expect((await list()).records.map(({ number }) => number)).toEqual([1, 3]);
      expect((await done(store.listRecords(other, 0, null))).head).toMatchObject({ number: 3 });
      expectSoundLog(await readWholeLog(store));
    });

    it('gives each number once when many send at the same time', async () => {
      const devices = Array.from({ length: 12 }, (_, index) => makeDevice(`t${index}`));
      const batches = devices.map((device) => writeMany(device, job, 7));
      const answers = await Promise.all(batches.map((texts) => take(texts)));
      const numbers = answers.flatMap(({ took }) => took.map(({ number }) => number!));
      expect(numbers.sort((a, b) => a - b)).toEqual(Array.from({ length: 84 }, (_, index) => index + 1));
      expectSoundLog(await readWholeLog(store));
    });

    it('takes what comes late for a removed job, and gives nothing of one', async () => {
      await done(store.removeJob(job));
      expect(states(await take([makeDevice('a').write(job)]))).toEqual(['stored']);
      expect(await store.listRecords(job, 0, null)).toEqual({ kind: 'absent', isRemoved: true });
      await done(store.restoreJob(job));
      expect((await list()).records).toHaveLength(1);
      const absent = { kind: 'absent', isRemoved: false };
      expect(await store.takeRecords('nnnnnnnnnnnn', [makeDevice('b').write('nnnnnnnnnnnn')])).toEqual(absent);
      expect(await store.listRecords('nnnnnnnnnnnn', 0, null)).toEqual(absent);
      expect(await store.readJobHead('nnnnnnnnnnnn')).toEqual(absent);
      expect(await done(store.readJobHead(job))).toMatchObject({ id: job, name: 'Sample' });
      expect(await store.readHead()).toMatchObject({ number: 1 });
    });

    it('ends with the same records however they are cut into calls, repeated and mixed', async () => {
      const step = fc.record({ from: fc.nat(11), count: fc.integer({ min: 1, max: 5 }) });
      let round = 0;
      await fc.assert(
        fc.asyncProperty(fc.array(step, { maxLength: 8 }), async (calls) => {
          round += 1;
          const id = (await store.createJob(sampleFile())).id;
          const texts = ['p', 'q'].flatMap((label) => writeMany(makeDevice(`${label}${round}`), id, 6));
          for (const { from, count } of calls) await take(texts.slice(from, from + count), id);
          const { took, forks } = await take(texts, id);
          expect(new Set(took.map(({ number }) => number)).size).toBe(12);
          expect(forks).toEqual([]);
          const { records } = await done(store.listRecords(id, 0, null));
          expect(records.map(({ text }) => text).sort()).toEqual([...texts].sort());
        }),
        { numRuns: 40 },
      );
      expectSoundLog(await readWholeLog(store));
    });

    it('adds people, changes them and erases a name, and the records stay', async () => {
      const text = makeDevice('a').write(job);
      await take([text]);
      expect(await store.listPeople()).toEqual([]);
      const qa: Person = { id: 'demoengineer', name: 'E', roles: ['design engineer'], registration: 'no. 1' };
      expect(await store.savePerson(setter)).toEqual([setter]);
      expect(await store.savePerson(qa)).toEqual([qa, setter]);
      const erased = { ...setter, name: null, roles: [] };
      expect(await store.savePerson(erased)).toEqual([qa, erased]);
      await reopen();
      expect(await store.listPeople()).toEqual([qa, erased]);
      expect((await list()).records).toEqual([{ number: 1, text }]);
    });

    it('keeps photos under their hash', async () => {
      const bytes = new Uint8Array(randomBytes(3000));
      const hash = createHash('sha256').update(bytes).digest('hex');
      const none = hashOf('no photo');
      expect(await store.openPhoto(hash)).toBeNull();
      expect(await store.heldPhotos([hash, none])).toEqual([]);
      const photo = { hash, type: 'image/webp', bytes };
      expect(await store.keepPhoto(photo)).toEqual({ isNew: true });
      expect(await store.keepPhoto(photo)).toEqual({ isNew: false });
      await reopen();
      const opened = await store.openPhoto(hash);
      expect({ ...opened, bytes: new Uint8Array(opened!.bytes) }).toEqual(photo);
      expect(await store.heldPhotos([none, hash])).toEqual([hash]);
      await expect(store.keepPhoto({ ...photo, hash: none })).rejects.toThrow(/the bytes of photo .* have the hash/);
      expect(await store.heldPhotos([none])).toEqual([]);
    });
  });
}
