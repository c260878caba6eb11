/** A force of the engine [N] as kN with one decimal, small ones with two. */
export function showForce(newton: number | null): string {
  if (newton === null) return '-';
  if (!Number.isFinite(newton)) return 'unlimited';
  const kN = newton / 1000;
  return kN.toFixed(Math.abs(kN) < 10 ? 2 : 1);
}

/** Rounding of the engine around a ratio of 1, as of its search for a largest load. */
const ROUNDING = 1e-9;

/** A ratio above this is told as that: its digits say nothing more. */
const FAR_ABOVE = 10;
/** A ratio above this is most likely a wrong unit. */
const BEYOND_BELIEF = 1000;

/** A load ratio in per cent of the resistance, never rounded across 100; far above it without digits. */
export function showRatio(ratio: number | null): string {
  if (ratio === null) return '-';
  if (!Number.isFinite(ratio)) return 'no resistance';
  if (Math.abs(ratio - 1) <= ROUNDING) return '100 %';
  if (ratio > FAR_ABOVE) return ratio > BEYOND_BELIEF ? '> 1000 % (units?)' : '> 1000 %';
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
