import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openPhotoFiles } from '../../src/store/photos/photo-files.ts';
import { DiskFullError } from '../../src/store/record-store.ts';
import { hashOf } from './devices.ts';

describe('the files of photos', () => {
  let folder: string;
  let photos: string;
  const bytes = new TextEncoder().encode('a photo, as far as files know');
  const hash = hashOf(bytes);
  const inner = hash.slice(0, 2);
  const photo = { hash, type: 'image/png', bytes };
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'onepour-photos-'));
    photos = join(folder, 'photos');
  });
  afterEach(() => {
    vi.restoreAllMocks();
    rmSync(folder, { recursive: true, force: true });
  });

  /** The names in the photo's folder whenever something is brought to disk. */
  const watchSyncs = async (): Promise<string[][]> => {
    const handle = await open(folder);
    const kind = Object.getPrototypeOf(handle) as { sync: () => Promise<void> };
    await handle.close();
    const seen: string[][] = [];
    const { sync } = kind;
    vi.spyOn(kind, 'sync').mockImplementation(function (this: typeof kind) {
      seen.push(readdirSync(join(photos, inner)));
      return sync.call(this);
    });
    return seen;
  };

  it('are brought to disk under another name first, then named, then their folder is brought to disk', async () => {
    const files = await openPhotoFiles(photos);
    const seen = await watchSyncs();
    await files.keep(photo);
    const underWay = [expect.stringMatching(/^[0-9a-f]{16}\.part$/)];
    // The folders above, which are new; the file; its folder.
    expect(seen).toEqual([[], [], underWay, [`${hash}.png`]]);
  });

  it('are not said to be there before their folder is on disk, though another call has named them', async () => {
    const files = await openPhotoFiles(photos);
    await files.keep(photo);
    const seen = await watchSyncs();
    expect(await files.keep(photo)).toEqual({ isNew: false });
    expect(seen).toEqual([[`${hash}.png`]]);
  });

  it('loses what a process that was killed had under way, and brings to disk what it had named', async () => {
    mkdirSync(join(photos, inner), { recursive: true });
    for (const name of [`${hash}.png`, '0123456789abcdef.part']) writeFileSync(join(photos, inner, name), bytes);
    const seen = await watchSyncs();
    const files = await openPhotoFiles(photos);
    expect(seen).toEqual([[`${hash}.png`]]);
    expect(await files.held([hash])).toEqual([hash]);
  });

  it('leaves nothing of a photo that it cannot keep', async () => {
    const files = await openPhotoFiles(photos);
    await expect(files.keep({ ...photo, type: 'image/gif' })).rejects.toThrow(
      'a photo of type image/gif: expected image/jpeg, image/webp, image/png',
    );
    await expect(files.keep({ ...photo, hash: hashOf('other') })).rejects.toThrow(/have the hash/);
    expect(await files.held([hash, hashOf('other')])).toEqual([]);
    expect(await files.keep(photo)).toEqual({ isNew: true });
  });

  it('says that there is no room, and leaves nothing half-written', async () => {
    const files = await openPhotoFiles(photos);
    const handle = await open(folder);
    const kind = Object.getPrototypeOf(handle) as { writeFile: () => Promise<void> };
    await handle.close();
    // A disk can be filled by its owner alone; this is what the system says of one.
    vi.spyOn(kind, 'writeFile').mockRejectedValueOnce(Object.assign(new Error('no space left'), { code: 'ENOSPC' }));
    await expect(files.keep(photo)).rejects.toThrow(DiskFullError);
    expect(readdirSync(join(photos, inner))).toEqual([]);
    expect(await files.keep(photo)).toEqual({ isNew: true });
  });

  it('makes no folder before the first photo', async () => {
    await openPhotoFiles(photos);
    expect(readdirSync(folder)).toEqual([]);
  });
});
