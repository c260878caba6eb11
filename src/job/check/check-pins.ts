import { lookUp } from '../explain-issue.ts';
import type { DocumentFault } from '../fault.ts';
import { faultAt } from './fault-at.ts';

const pinned = ['catalogue', 'details', 'holding', 'rules', 'yard'] as const;

/** The library documents in a job file must be those that the job pins, or an issued job would change its answers. */
export function checkPins(document: unknown): DocumentFault[] {
  return pinned.flatMap((name) =>
    (['id', 'edition'] as const).flatMap((key) => {
      const path = ['job', 'pins', name, key];
      const wanted = lookUp(document, path);
      const held = lookUp(document, ['library', name, key]);
      if (typeof wanted !== 'string' || typeof held !== 'string' || wanted === held) return [];
      return [
        faultAt(
          path,
          wanted,
          held,
          `the job pins ${name} ${key} ${wanted}, but the file holds ${held}; expected the pinned one`,
        ),
      ];
    }),
  );
}
