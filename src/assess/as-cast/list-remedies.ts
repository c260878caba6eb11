import type { Remedy } from './as-cast-report.ts';
import type { RemedyQuestion } from './attempt.ts';
import { refuseRemedy } from './complete-remedy.ts';
import { tryFewerInserts } from './fewer-inserts.ts';
import { tryPlateChanges } from './plate-changes.ts';
import { tryAsIs, tryMove, tryPackers } from './site-remedies.ts';

function giveUp(question: RemedyQuestion): Remedy {
  return {
    ...refuseRemedy(question, 'not usable', 'Not usable: do not load it.', [
      'nothing is hung from it, braced or held by it; the design engineer decides how the panel is fixed instead, or whether it is cast anew',
    ]),
    conditions: [
      'mark it on the panel, and take its plate and bolts out of the kit',
      'hold the panel by its braces until another fixing is designed and made',
    ],
  };
}

/** Least change first. */
const BY_CHANGE: readonly Remedy['kind'][] = [
  'as is',
  'plate moved',
  'packers or other bolts',
  'holes slotted',
  'holes enlarged',
  'plate drilled anew',
  'fewer inserts',
  'not usable',
];

/**
 * What may be done about a connection, side by side: those that work and that somebody on site may decide first, then by how little they change; giving it up comes last.
 */
export function listRemedies(question: RemedyQuestion): readonly Remedy[] {
  const all = [
    tryAsIs(question),
    tryMove(question),
    tryPackers(question),
    ...tryPlateChanges(question),
    tryFewerInserts(question),
  ];
  const isOnSite = ({ act }: Remedy) => (act === 'decide on site' ? 0 : 1);
  const place = ({ kind }: Remedy) => BY_CHANGE.indexOf(kind);
  return [...all.sort((a, b) => isOnSite(a) - isOnSite(b) || place(a) - place(b)), giveUp(question)];
}
