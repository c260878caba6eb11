/**
 * How far an axis has moved aside after a length along it, when it is tilted [mm].
 *
 * Source: geometry. Example: an insert 103 mm long at 5° has its foot 103 · sin 5° = 9.0 mm aside.
 * @param tilt off square [rad]
 * @param length along the axis [mm]
 */
export function findAsideAlongAxis(tilt: number, length: number): number {
  return length * Math.sin(tilt);
}

/**
 * How far an axis has moved aside at a distance from its start measured square to the face [mm].
 *
 * Source: geometry. Example: 1.81° at a plate 30 mm in front of the face: 30 · tan 1.81° = 0.95 mm.
 * @param tilt off square [rad]
 * @param distance square to the face [mm]
 */
export function findAsideAtDistance(tilt: number, distance: number): number {
  return distance * Math.tan(tilt);
}
