import { findThread } from '../../engine/hardware/threads.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { findMisfit } from '../../job/hole-misfit.ts';
import type { JobIndex } from '../../job/job-index.ts';
import type { ClashRemedy } from './clash-report.ts';

/** Whether the bolt of an insert, moved so, would miss the hole of a plate that stays where it is: by the rule that the job is checked by. */
export function missesHole(
  index: JobIndex,
  panel: Panel,
  { id, dx_mm, dy_mm }: Extract<ClashRemedy, { kind: 'move' }>,
): boolean {
  const castIn = index.castIn(panel.mark, id);
  const item = castIn === undefined || castIn.item === null ? undefined : index.items.get(castIn.item);
  if (castIn === undefined || item === undefined) return false;
  const { diameter } = findThread(item.thread);
  return index.connectionsOf(panel.mark).some((connection) => {
    const fixture = index.fixtureOf(connection);
    return connection.inserts.some(({ insert, hole: wanted }) => {
      const hole = insert === id ? fixture?.holes.find((one) => one.id === wanted) : undefined;
      if (hole === undefined) return false;
      return findMisfit(panel, connection, hole, [castIn.x_mm + dx_mm, castIn.y_mm + dy_mm], diameter).misfit > 0;
    });
  });
}
