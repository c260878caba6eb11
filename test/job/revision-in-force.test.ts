import { describe, expect, it } from 'vitest';
import type { Revision } from '../../src/job/documents/pour.ts';
import { findRevisionInForce } from '../../src/job/revision-in-force.ts';

const STATUS: Readonly<Record<string, Revision['status']>> = {
  c: 'for construction',
  v: 'void',
  p: 'preliminary',
  a: 'for approval',
};

/** Which of the issued ones is in force: its place, by a letter a status. */
function find(issued: string): number | null {
  const found = findRevisionInForce([...issued].map((letter, place) => ({ status: STATUS[letter]!, place })));
  return found?.place ?? null;
}

describe('the revision in force', () => {
  it('is the last one that was issued for construction', () => {
    expect(find('c')).toBe(0);
    expect(find('acc')).toBe(2);
  });

  it('stays when another is issued for approval or as preliminary', () => {
    expect(find('cap')).toBe(0);
    expect(find('ccpaa')).toBe(1);
  });

  it('is none once a void one was issued, whatever stood before or is asked for since', () => {
    for (const issued of ['v', 'cv', 'ccvp', 'cva']) expect(find(issued)).toBeNull();
  });

  it('is again one that is issued for construction after a void one', () => {
    expect(find('cvc')).toBe(2);
    expect(find('cvcp')).toBe(2);
  });

  it('is none where none was ever for construction', () => {
    for (const issued of ['', 'a', 'pap']) expect(find(issued)).toBeNull();
  });
});
