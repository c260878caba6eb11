import { describe, expect, it } from 'vitest';
import { findMirrorPlace } from '../../../src/engine/form/mirror-axis.ts';
import type { TapedDistance } from '../../../src/engine/form/taped-distance.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';

const toEdge = (from: Point, end: Point): TapedDistance => ({
  to: { kind: 'edge', from, end },
  distance: 1,
  deviation: 1,
});
const toPoint = (at: Point): TapedDistance => ({ to: { kind: 'point', at }, distance: 1, deviation: 1 });

// Mirror images by hand, in lines where they can be read off.
describe('the other place that distances fit', () => {
  it('lies across the line through all points', () => {
    const points = [toPoint([0, 100]), toPoint([0, 100]), toPoint([800, 100]), toPoint([300, 100])];
    expect(findMirrorPlace(points, [400, 30], [500, 900])).toEqual([400, 170]);
    expect(findMirrorPlace(points, [400, 170], [500, -900])).toEqual([400, 30]);
    // In the line x = y the image swaps both.
    const [x, y] = findMirrorPlace([toPoint([0, 0]), toPoint([50, 50])], [300, 100], [0, 10])!;
    expect(x).toBeCloseTo(100, 9);
    expect(y).toBeCloseTo(300, 9);
  });

  it('lies across the line through a point, square to an edge', () => {
    const measured = [toEdge([0, 0], [0, 2000]), toPoint([700, 300])];
    expect(findMirrorPlace(measured, [400, 250], [400, 800])).toEqual([400, 350]);
    expect(findMirrorPlace([...measured, toPoint([900, 300])], [400, 250], [400, 800])).toEqual([400, 350]);
  });

  it('is not asked for on the side of the guess, nor when the guess takes no side', () => {
    const points = [toPoint([0, 0]), toPoint([800, 0])];
    expect(findMirrorPlace(points, [400, 30], [500, 900])).toBeNull();
    expect(findMirrorPlace(points, [400, 30], [500, 0])).toBeNull();
  });

  it('is not there where distances tell both sides apart', () => {
    const guess: Point = [500, 900];
    const at: Point = [400, -30];
    const points = [toPoint([0, 0]), toPoint([800, 0])];
    expect(findMirrorPlace([...points, toPoint([300, 5])], at, guess)).toBeNull();
    expect(findMirrorPlace([...points, toEdge([0, 0], [3000, 0])], at, guess)).toBeNull();
    expect(findMirrorPlace([toEdge([0, 0], [3000, 0]), toEdge([0, 0], [0, 2000])], at, guess)).toBeNull();
    expect(findMirrorPlace([toPoint([0, 0])], at, guess)).toBeNull();
  });
});
