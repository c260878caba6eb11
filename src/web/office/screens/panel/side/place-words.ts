import type { NearDistance } from '../../../../../drawing/screen/near-distances.ts';
import type { SightKind } from '../../../../../drawing/screen/panel-sight.ts';
import type { CastIn } from '../../../../../job/documents/cast-in.ts';

/** Distances to the edges by where they go, as the panel is looked at. */
export const SIDES: Readonly<Record<NearDistance['toward'], string>> = {
  left: 'to the left',
  right: 'to the right',
  below: 'below',
  above: 'above',
};

/** What the two coordinates of a place are called. */
export function nameCoordinates({ face, edge }: CastIn, kind: SightKind): readonly [string, string] {
  if (face === 'edge') return [`Along edge ${edge}`, 'From the outside face'];
  const from = kind === 'form' ? 'from the datum' : 'as drawn';
  return [`x ${from}`, `y ${from}`];
}
