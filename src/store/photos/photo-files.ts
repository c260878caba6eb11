// Photos are files beside the store, named by the SHA-256 of their bytes: PHOTOS/ab/ab12….jpg. A file is written under another name, brought to disk
// and then given its own, so that what has a photo's name is whole.

import { createHash, randomBytes } from 'node:crypto';
import { constants } from 'node:fs';
import { access, mkdir, open, readdir, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { DiskFullError, type StoredPhoto } from '../record-store.ts';

const ENDINGS = { 'image/jpeg': 'jpg', 'image/webp': 'webp', 'image/png': 'png' } as const;
const UNDER_WAY = '.part';

/** What the file system says when it takes no more: no room, over the quota, over the longest file. */
const FULL = new Set(['ENOSPC', 'EDQUOT', 'EFBIG']);

/** The photos of one folder. */
export interface PhotoFiles {
  readonly keep: (photo: StoredPhoto) => Promise<{ readonly isNew: boolean }>;
  readonly open: (hash: string) => Promise<StoredPhoto | null>;
  readonly held: (hashes: readonly string[]) => Promise<readonly string[]>;
}

function isCode(error: unknown, codes: ReadonlySet<string>): boolean {
  return error instanceof Error && 'code' in error && codes.has(String(error.code));
}

/** Brings what a folder holds to disk. Windows keeps its folders itself and opens none. */
async function syncFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, constants.O_RDONLY);
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const handle = await open(path, 'wx');
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

async function isThere(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}

/** Takes away what a process that was killed had under way, and brings to disk what it had named last. */
async function clearUp(folder: string): Promise<void> {
  const names = await readdir(folder).catch((error: unknown) => {
    // The folder is made with the first photo.
    if (isCode(error, new Set(['ENOENT']))) return [];
    throw error;
  });
  for (const name of names) {
    const inner = join(folder, name);
    for (const file of await readdir(inner)) if (file.endsWith(UNDER_WAY)) await rm(join(inner, file));
    await syncFolder(inner);
  }
}

/** The photos of a folder, which is made when the first comes. */
export async function openPhotoFiles(folder: string): Promise<PhotoFiles> {
  await clearUp(folder);
  const folderOf = (hash: string) => join(folder, hash.slice(0, 2));
  const find = async (hash: string): Promise<{ readonly path: string; readonly type: string } | null> => {
    for (const [type, ending] of Object.entries(ENDINGS)) {
      const path = join(folderOf(hash), `${hash}.${ending}`);
      if (await isThere(path)) return { path, type };
    }
    return null;
  };
  const write = async ({ hash, type, bytes }: StoredPhoto): Promise<void> => {
    const ending = Object.entries(ENDINGS).find(([known]) => known === type)?.[1];
    if (ending === undefined) throw new Error(`a photo of type ${type}: expected ${Object.keys(ENDINGS).join(', ')}`);
    const inner = folderOf(hash);
    if ((await mkdir(inner, { recursive: true })) !== undefined) {
      await syncFolder(join(folder, '..'));
      await syncFolder(folder);
    }
    const underWay = join(inner, `${randomBytes(8).toString('hex')}${UNDER_WAY}`);
    try {
      await writeWhole(underWay, bytes);
      await rename(underWay, join(inner, `${hash}.${ending}`));
    } catch (error) {
      await rm(underWay, { force: true });
      throw error;
    }
    await syncFolder(inner);
  };
  return {
    keep: async (photo) => {
      const found = createHash('sha256').update(photo.bytes).digest('hex');
      if (found !== photo.hash) throw new Error(`the bytes of photo ${photo.hash} have the hash ${found}`);
      if ((await find(photo.hash)) !== null) {
        // Another call may have named it and not be done with it.
        await syncFolder(folderOf(photo.hash));
        return { isNew: false };
      }
      try {
        await write(photo);
      } catch (error) {
        throw isCode(error, FULL) ? new DiskFullError({ cause: error }) : error;
      }
      return { isNew: true };
    },
    open: async (hash) => {
      const found = await find(hash);
      return found === null ? null : { hash, type: found.type, bytes: await readFile(found.path) };
    },
    held: async (hashes) => {
      const found: string[] = [];
      for (const hash of hashes) if ((await find(hash)) !== null) found.push(hash);
      return found;
    },
  };
}
