/** From the least to the greatest value that must be reckoned with [mm]. */
export interface Span {
  readonly least: number;
  readonly greatest: number;
}

/** What moves the top of an insert on a chair from its reckoned place [mm]. */
export interface StackMovements {
  /** How far chair legs press into the form. Lowers the top. */
  readonly chairSink: Span;
  /** How far the form gives way under wet concrete: the chair goes down with it, the screeded face does not. Lowers the top. */
  readonly formSag: Span;
  /** How far the screed board bends down between its rails: it takes the face down with it. Brings the top nearer to the face. */
  readonly screedDeflection: Span;
  /** What the panel is thicker (+) or thinner (−) than drawn. */
  readonly thicknessDeviation: Span;
}

/** A foot-down insert under the trowelled face, to be put on a chair from stock. Lengths mm. */
export interface StackQuestion {
  readonly thickness: number;
  readonly insertLength: number;
  /** The top is aimed this far below the trowelled face, for the cap. */
  readonly aim: number;
  /** How far below the face the top may lie; a top above the face is never allowed, whatever stands here. */
  readonly allowed: Span;
  readonly chairs: readonly number[];
  readonly movements: StackMovements;
}

/** What becomes of the insert on one chair. */
export interface StackedChair {
  readonly chair: number;
  /** Top below the trowelled face; negative: above it. */
  readonly topBelowFace: Span;
  readonly verdict: 'fits' | 'proud' | 'too deep' | 'too shallow';
}

/** The chair to take, and what else would do. */
export interface StackAnswer {
  /** The height that meets the aim in the middle of the movements. */
  readonly chairNeeded: number;
  /** The best of the stock; it fits only where its verdict says so. */
  readonly chosen: StackedChair;
  /** The rest of the stock, the nearest to the aim first. */
  readonly others: readonly StackedChair[];
  /** Chair heights that fit whatever moves; null: the movements are wider than what is allowed, no height does. */
  readonly fittingChairs: Span | null;
  /** Insert lengths that would fit on each chair of the stock, the lowest chair first; null as above, or no length above 0. */
  readonly fittingLengths: readonly { readonly chair: number; readonly lengths: Span | null }[];
  /** Thickness over which the chosen chair keeps its top within what is allowed; null as above. */
  readonly thicknessRange: Span | null;
}

/** Lengths that lie this close together [mm] are the same: rounding in floating point. */
const ROUNDING = 1e-9;

/** Nothing moves but the chair, which sinks by a known length [mm]. */
export function sinkOnly(sink: number): StackMovements {
  const still: Span = { least: 0, greatest: 0 };
  return {
    chairSink: { least: sink, greatest: sink },
    formSag: still,
    screedDeflection: still,
    thicknessDeviation: still,
  };
}

/**
 * How far all movements together lower the top of the insert against the trowelled face [mm].
 *
 * Common practice, by adding up the section: top below face = thickness + deviation + sag − screed − (chair − sink) − length.
 */
export function sumMovements(movements: StackMovements): Span {
  const { chairSink, formSag, screedDeflection, thicknessDeviation } = movements;
  return {
    least: chairSink.least + formSag.least + thicknessDeviation.least - screedDeflection.greatest,
    greatest: chairSink.greatest + formSag.greatest + thicknessDeviation.greatest - screedDeflection.least,
  };
}

/**
 * Chooses a chair from stock: one that fits whatever moves, nearest to the aim; of two as near the lower, which is never proud. Where
 * none fits: the nearest that is never proud; where all may be, the nearest.
 *
 * @example 180 − (84 − 0) − 95 = 1 mm below the face: chairs 75, 80, 84, 90, aim 1, allowed 0 to 3 → 84, good for 179 to 182 mm.
 * @throws Error when there is no chair to choose from
 */
export function chooseChair(question: StackQuestion): StackAnswer {
  const { thickness, insertLength, aim, chairs } = question;
  const moved = sumMovements(question.movements);
  const allowed: Span = { least: Math.max(0, question.allowed.least), greatest: question.allowed.greatest };
  const middle = (moved.least + moved.greatest) / 2;
  const chairNeeded = thickness - insertLength - aim + middle;

  const stacked = chairs.map((chair): StackedChair => {
    const still = thickness - chair - insertLength;
    const topBelowFace: Span = { least: still + moved.least, greatest: still + moved.greatest };
    return { chair, topBelowFace, verdict: judgeTop(topBelowFace, allowed) };
  });
  const rank = ({ verdict }: StackedChair) => (verdict === 'fits' ? 0 : verdict === 'proud' ? 2 : 1);
  const distance = ({ chair }: StackedChair) => Math.abs(chair - chairNeeded);
  const byAim = (a: StackedChair, b: StackedChair) => {
    const apart = distance(a) - distance(b);
    return Math.abs(apart) > ROUNDING ? apart : a.chair - b.chair;
  };
  const [chosen] = [...stacked].sort((a, b) => rank(a) - rank(b) || byAim(a, b));
  if (chosen === undefined) throw new Error('no chairs given, expected at least one height');

  // What is left for thickness − chair − length when every movement must stay within what is allowed.
  const room = spanOf(allowed.least - moved.least, allowed.greatest - moved.greatest);
  return {
    chairNeeded,
    chosen,
    others: stacked.filter((one) => one !== chosen).sort(byAim),
    fittingChairs: room && takeFrom(thickness - insertLength, room),
    fittingLengths: [...chairs]
      .sort((a, b) => a - b)
      .map((chair) => ({ chair, lengths: room && takeFrom(thickness - chair, room) })),
    thicknessRange: room && {
      least: chosen.chair + insertLength + room.least,
      greatest: chosen.chair + insertLength + room.greatest,
    },
  };
}

function judgeTop(top: Span, allowed: Span): StackedChair['verdict'] {
  if (top.least < -ROUNDING) return 'proud';
  if (top.least < allowed.least - ROUNDING) return 'too shallow';
  return top.greatest > allowed.greatest + ROUNDING ? 'too deep' : 'fits';
}

function spanOf(least: number, greatest: number): Span | null {
  return greatest < least - ROUNDING ? null : { least, greatest };
}

/** What makes up `whole` beside a rest within `room`; null where nothing above 0 does. */
function takeFrom(whole: number, room: Span): Span | null {
  const greatest = whole - room.least;
  return greatest > ROUNDING ? { least: Math.max(0, whole - room.greatest), greatest } : null;
}
