import type { InsertProperties } from '../checks/anchorage-group.ts';
import type { Clause, Sink } from './clause.ts';

/**
 * Bearing area of an insert's foot: as given, or of its diameter less the body, which counts up to 6 t_h + d where the thickness
 * is known.
 * @param clause the document's rule, a function of (d_h, the limit, d)
 * @returns the area [mm²]
 */
export function measureBearing({ foot, shaftDiameter }: InsertProperties, clause: Clause, sink: Sink | null): number {
  if (foot.kind === 'area') {
    sink?.quantity(clause.symbol, foot.area, 'mm2', 'bearing area as given');
    return foot.area;
  }
  const limit = foot.thickness === null ? Number.POSITIVE_INFINITY : 6 * foot.thickness + shaftDiameter;
  const value = clause.fn(foot.diameter, limit, shaftDiameter);
  if (foot.thickness !== null) sink?.quantity('d_h_max', limit, 'mm', '6 t_h + d');
  sink?.step(clause, [foot.diameter, limit, shaftDiameter], value);
  return value;
}
