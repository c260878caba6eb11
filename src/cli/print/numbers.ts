/** A force of the engine [N] as kN with one decimal, small ones with two. */
export function showForce(newton: number | null): string {
  if (newton === null) return '-';
  if (!Number.isFinite(newton)) return 'unlimited';
  const kN = newton / 1000;
  return kN.toFixed(Math.abs(kN) < 10 ? 2 : 1);
}

/** Rounding of the engine around a ratio of 1, as of its search for a largest load. */
const ROUNDING = 1e-9;

/** A load ratio in per cent of the resistance, never rounded across 100. */
export function showRatio(ratio: number | null): string {
  if (ratio === null) return '-';
  if (!Number.isFinite(ratio)) return 'no resistance';
  if (Math.abs(ratio - 1) <= ROUNDING) return '100 %';
  const percent = 100 * ratio;
  const rounded = Math.round(percent);
  if (percent > 100 && rounded === 100) return '100.1 %';
  if (percent < 100 && rounded === 100) return '99.9 %';
  return `${rounded} %`;
}

/** A largest load of the engine [N] as kN, rounded down: what is printed must hold. */
export function showLimit(newton: number | null): string {
  if (newton === null) return '-';
  const kN = (newton / 1000) * (1 + ROUNDING);
  const decimals = kN < 10 ? 2 : 1;
  return (Math.floor(kN * 10 ** decimals) / 10 ** decimals).toFixed(decimals);
}
