import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Panel } from '../../job/documents/panel.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { resolveConnection } from '../../job/resolve/resolve-connection.ts';
import { assessConnection } from '../assess-connection.ts';
import type { ClashRemedy, StrengthAfter } from './clash-report.ts';

/** What every connection that holds an insert gives now and with the insert moved: the plate and its holes stay where they are. */
export function findStrengthAfter(
  index: JobIndex,
  panel: Panel,
  { id, dx_mm, dy_mm }: Extract<ClashRemedy, { kind: 'move' }>,
): readonly StrengthAfter[] {
  const move = (castIn: CastIn | undefined) =>
    castIn === undefined ? undefined : { ...castIn, x_mm: castIn.x_mm + dx_mm, y_mm: castIn.y_mm + dy_mm };
  const moved: JobIndex = {
    ...index,
    castIn: (mark, wanted) => {
      const found = index.castIn(mark, wanted);
      return mark === panel.mark && wanted === id ? move(found) : found;
    },
  };
  return index
    .connectionsOf(panel.mark)
    .filter(({ inserts }) => inserts.some(({ insert }) => insert === id))
    .map((connection) => {
      const [before, after] = [index, moved].map((one) => assessConnection(resolveConnection(one, connection)));
      return {
        connection: connection.mark,
        before: { state: before!.state, ratio: before!.ratio },
        after: { state: after!.state, ratio: after!.ratio },
      };
    });
}
