import type { Finding, RecordPlace } from './finding.ts';

/** A photo that a record refers to. */
export interface PhotoNamed {
  readonly photo: string;
  readonly at: RecordPlace;
}

/**
 * Looks at the bytes of every photo that records refer to.
 * @param hashPhoto SHA-256 of the bytes that lie under a name; null: none do
 */
export async function checkPhotos(
  named: readonly PhotoNamed[],
  hashPhoto: (photo: string) => Promise<string | null>,
): Promise<readonly Finding[]> {
  const findings: Finding[] = [];
  for (const { photo, at } of named) {
    const found = await hashPhoto(photo);
    if (found === null) findings.push({ kind: 'photo missing', at, photo });
    else if (found !== photo) findings.push({ kind: 'photo changed', at, photo, found });
  }
  return findings;
}
