import { describe, expect, it } from 'vitest';
import { lookAt } from '../../../src/drawing/screen/panel-sight.ts';
import { turnToView } from '../../../src/drawing/screen/view-direction.ts';
import type { Panel } from '../../../src/job/documents/panel.ts';
import { readSample } from '../../assess/read-sample.ts';

const sample = readSample({});
const panel: Panel = { ...sample.job.panels[0]!, drawnFace: 'outside', faceDown: 'outside' };

/** As a person says it: which side of the view a direction points to. */
function nameSide(angle: number): string {
  const quarter = Math.round((2 * angle) / Math.PI);
  return ['right', 'top', 'left', 'bottom'][(quarter + 4) % 4]!;
}

const see = (
  face: 'outside' | 'inside',
  kind: 'drawn' | 'form',
  direction: number,
  turn: Panel['inForm']['turn_deg'] = 0,
) => {
  const turned = { ...panel, inForm: { ...panel.inForm, turn_deg: turn } };
  return nameSide(turnToView(turned, { face, edge: null }, lookAt(turned, kind), direction));
};

// Worked by hand: hold a sheet of paper up, turn it about its upright middle line, lay it down.
describe('a direction on a face, in a view of the panel', () => {
  it('is itself on the drawn face, and the other way round on the face behind it', () => {
    expect(see('outside', 'drawn', 0)).toBe('right');
    expect(see('inside', 'drawn', 0)).toBe('left');
    expect(see('inside', 'drawn', Math.PI / 2)).toBe('top');
  });

  it('is seen from above in the form: what lies face down is mirrored, the face that is up is seen from its front', () => {
    expect(see('inside', 'form', 0)).toBe('right');
    expect(see('outside', 'form', 0)).toBe('left');
  });

  it('turns with the panel on the bed', () => {
    expect(see('inside', 'form', 0, 90)).toBe('top');
    expect(see('inside', 'form', Math.PI / 2, 90)).toBe('left');
  });

  it('stays as it is on an edge, which has a view of its own', () => {
    expect(turnToView(panel, { face: 'edge', edge: 1 }, lookAt(panel, 'form'), 0.7)).toBe(0.7);
  });
});
