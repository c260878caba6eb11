import { describe, expect, it } from 'vitest';
import { findRemedies } from '../../src/assess/remedies/find-remedies.ts';
import { frameOf } from '../../src/job/face-frame.ts';
import { tellMove } from '../../src/say/move-words.ts';
import { writerOf } from '../../src/say/quantities.ts';
import { tellDeed, tellVain } from '../../src/say/remedy-words.ts';
import { demo } from '../job/edit/demo.ts';

const metric = writerOf('metric');

/** Connection, panel and the remedies of a mark of the demo job, as one stands in front of its face. */
function look(mark: string) {
  const connection = demo.job.connections.find((one) => one.mark === mark)!;
  const panel = demo.job.panels.find((one) => one.mark === connection.panel)!;
  const frame = frameOf(panel, connection);
  const sight = { face: connection.face, isMirrored: frame.isMirrored };
  return { connection, frame, sight, found: findRemedies(demo, mark) };
}

describe('what would make a connection pass, in words', () => {
  it('says right and left as one stands in front of the face', () => {
    // C02 is on the inside of a panel drawn from outside, 100 mm from the side that is on the right from inside.
    const { connection, frame, sight, found } = look('C02');
    const { deed, change } = found.remedies.find(({ kind }) => kind === 'move')!;
    expect(tellDeed(deed, sight, metric)).toBe(
      'move it 20 mm left, seen from the front of the inside face, away from the edge on its right (100 mm, then 120 mm)',
    );
    const [before] = frame.toFace(connection.origin_mm);
    const [after] = frame.toFace(change.connections[0]!.set.origin_mm!);
    expect(after - before).toBe(-20);
    expect(tellDeed(deed, { ...sight, isMirrored: false }, metric)).toBe(
      'move it 20 mm right, away from the edge on its left (100 mm, then 120 mm)',
    );
  });

  it('is in the units of the person, whatever is changed', () => {
    const { sight, found } = look('C02');
    const written = [
      ...found.remedies.map(({ deed }) => tellDeed(deed, sight, writerOf('US'))),
      ...found.inVain.map((vain) => tellVain(vain, sight, writerOf('US'))),
    ];
    expect(written.length).toBeGreaterThan(3);
    expect(written.filter((text) => /\d (mm|MPa|kN)\b/.test(text))).toEqual([]);
    expect(written.some((text) => text.includes('psi'))).toBe(true);
    expect(written.some((text) => / in[ ,)]/.test(text))).toBe(true);
  });

  it('goes along an edge as its documents give places, and names no axis that it does not move along', () => {
    const onEdge = { face: 'edge 2', isMirrored: true };
    expect(tellMove({ dx: -15, dy: 5 }, onEdge, metric)).toBe(
      '15 mm back along the edge and 5 mm away from the outside face',
    );
    expect(tellMove({ dx: 0, dy: -40 }, { face: 'inside', isMirrored: true }, metric)).toBe('40 mm down');
  });
});
