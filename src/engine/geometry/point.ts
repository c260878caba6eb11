/** A point of a face, [x, y] in mm: x right, y up, seen from in front of the face. */
export type Point = readonly [x: number, y: number];

/** A simple polygon: at least three corners, not closed (the last joins the first), either way round. */
export type Polygon = readonly Point[];
