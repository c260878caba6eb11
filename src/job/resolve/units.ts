/** Force [kN] → [N]. */
export function toNewton(force_kN: number): number {
  return force_kN * 1000;
}

/** Moment [kNm] → [N mm]. */
export function toNewtonMillimetre(moment_kNm: number): number {
  return moment_kNm * 1e6;
}

/** Angle [degrees] → [rad]. */
export function toRadian(angle_deg: number): number {
  return (angle_deg * Math.PI) / 180;
}
