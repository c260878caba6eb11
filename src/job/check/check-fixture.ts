import type { Point } from '../../engine/geometry/point.ts';
import { isInside } from '../../engine/geometry/region.ts';
import { findThread } from '../../engine/hardware/threads.ts';
import type { Connection } from '../documents/connection.ts';
import type { Fixture } from '../documents/fixture.ts';
import type { DocumentFault } from '../fault.ts';
import { findMisfit } from '../hole-misfit.ts';
import type { Entry, Path } from '../sift.ts';
import { prepareArea } from './check-panels.ts';
import type { ConnectionParts } from './connection-parts.ts';
import { faultAt } from './fault-at.ts';

/** How far a plate goes in its own axes. */
function describeReach(outline: readonly Point[]): string {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  return `which goes from (${Math.min(...xs)}, ${Math.min(...ys)}) to (${Math.max(...xs)}, ${Math.max(...ys)})`;
}

/** A plate by itself: a simple outline, holes in it, each hole named once. */
export function checkFixture(path: Path, fixture: Fixture): DocumentFault[] {
  const faults: DocumentFault[] = [];
  const plate = prepareArea(path, 'outline_mm', fixture.outline_mm, []);
  if ('fault' in plate) faults.push(plate.fault);
  if (fixture.attachment_mm !== null) {
    const attachment = prepareArea(path, 'attachment_mm', fixture.attachment_mm, []);
    if ('fault' in attachment) faults.push(attachment.fault);
  }
  fixture.holes.forEach((hole, i) => {
    const [x, y] = hole.at_mm;
    if ('region' in plate && !isInside(plate.region, x, y)) {
      faults.push(
        faultAt(
          [...path, 'holes', i, 'at_mm'],
          hole.at_mm,
          'a place in the plate',
          `hole ${hole.id} at (${x}, ${y}) lies outside the plate, ${describeReach(fixture.outline_mm)}; expected within it`,
        ),
      );
    }
    if (fixture.holes.findIndex((other) => other.id === hole.id) !== i) {
      faults.push(faultAt([...path, 'holes', i, 'id'], hole.id, 'each hole once', `hole ${hole.id} is given twice`));
    }
  });
  return faults;
}

/** Each insert has its own hole, wide enough and where the insert is. */
export function checkHolePlaces({ value: connection }: Entry<Connection>, parts: ConnectionParts): DocumentFault[] {
  const { fixture, panel } = parts;
  if (fixture === null) return [];
  const faults: DocumentFault[] = [];
  const ids = fixture.holes.map((hole) => hole.id);
  const used = new Set<string>();
  for (const { path: insertPath, hole: holeId, castIn, item } of parts.inserts) {
    const hole = fixture.holes.find((candidate) => candidate.id === holeId);
    if (hole === undefined) {
      const text = `insert ${castIn.id} is put into hole ${holeId ?? '(none)'}, which the plate does not have; expected one of ${ids.join(', ')}`;
      faults.push(faultAt([...insertPath, 'hole'], holeId, `one of ${ids.join(', ')}`, text));
      continue;
    }
    if (used.has(hole.id))
      faults.push(faultAt([...insertPath, 'hole'], hole.id, 'a hole of its own', `hole ${hole.id} has two inserts`));
    used.add(hole.id);
    if (item === undefined || panel === undefined) continue;
    const d = findThread(item.thread).diameter;
    if (hole.diameter_mm < d) {
      faults.push(
        faultAt(
          [...insertPath, 'hole'],
          hole.diameter_mm,
          `at least ${d} mm`,
          `a bolt ${item.thread} does not pass hole ${hole.id} of ${hole.diameter_mm} mm`,
        ),
      );
      continue;
    }
    const isOnFace = castIn.face === connection.face && castIn.edge === connection.edge;
    const isThere =
      connection.face !== 'edge' || (connection.edge !== null && connection.edge < panel.outline_mm.length);
    if (!isOnFace || !isThere) continue;
    const { bolt, misfit } = findMisfit(panel, connection, hole, [castIn.x_mm, castIn.y_mm], d);
    if (misfit === 0) continue;
    const where = bolt.map((v) => Math.round(v * 10) / 10).join(', ');
    const text = `insert ${castIn.id} lies at (${where}) in the axes of the plate, hole ${hole.id} at (${hole.at_mm.join(', ')}): the bolt misses the hole by ${misfit.toFixed(1)} mm`;
    faults.push(faultAt([...insertPath, 'hole'], hole.id, 'a hole where the insert is', text));
  }
  return faults;
}
