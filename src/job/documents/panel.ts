import * as z from 'zod';
import { coordinate, key, label, length, lengthOrZero, point, polygon, stress, text } from './values.ts';

/** One layer of the section; layers are listed from the outside face to the inside face. */
const layer = z.strictObject({
  kind: z.enum(['structural', 'outer skin', 'insulation', 'liner', 'cavity']),
  thickness_mm: length,
});

/** A part of the panel with a section of its own: a rebate, a rib, a thicker edge. The last zone listed counts where two overlap. */
const zone = z.strictObject({
  name: text,
  outline_mm: polygon,
  layers: z.array(layer).min(1).readonly(),
  /** How far its outside surface lies behind the panel's outside face. */
  behindOutside_mm: coordinate.default(0),
});

/** A side of the outline, counted from 0: from corner n to the next. Batter: the angle by which it is off square to the face. */
const edge = z.strictObject({ edge: z.int().nonnegative(), batter_deg: z.number().min(-60).max(60) });

/** A layer of bars or one direction of a mesh. */
const bars = z.strictObject({
  face: z.enum(['outside', 'inside']),
  direction_deg: coordinate,
  diameter_mm: length,
  spacing_mm: length,
  cover_mm: lengthOrZero,
  /** Loose bars can be shifted; a mesh is one piece; a prestressing strand stays where it is. */
  kind: z.enum(['bars', 'mesh', 'strand']).default('bars'),
  /** A point of the drawn face that the axis of one bar passes; null: where the bars lie is not known. */
  through_mm: point.nullable().default(null),
  /** Concrete between a bar's end and the side of the panel; null: as over the bar. */
  endCover_mm: lengthOrZero.nullable().default(null),
});

/** How the panel is turned on the bed, seen from above, and the corner of its form that everything is measured from. */
const inForm = z.strictObject({
  /** Counter-clockwise. */
  turn_deg: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]).default(0),
  /** A corner of the panel's extent as it lies, seen from above with the bed's x axis across the page. */
  datum: z.enum(['bottom-left', 'bottom-right', 'top-left', 'top-right']).default('bottom-left'),
});

/** Reinforcement as far as it is known; null on the panel means not known. */
const reinforcement = z.strictObject({
  bars: z.array(bars).readonly(),
  edge: z.enum(['none', 'bar', 'bar-and-stirrups']),
  stirrupSpacing_mm: length.nullable().default(null),
  /** The bars keep cracks within w_k about 0.3 mm. */
  limitsCrackWidth: z.boolean(),
  yield_MPa: stress.default(500),
});

/** A precast panel as designed. Plan coordinates are those of the drawn face, seen from in front of it: x right, y up. */
export const panel = z.strictObject({
  key,
  mark: label,
  concrete: label,
  drawnFace: z.enum(['outside', 'inside']),
  faceDown: z.enum(['outside', 'inside']),
  inForm: inForm.default({ turn_deg: 0, datum: 'bottom-left' }),
  /** The panel that this one is the handed partner of: its mirror image, checked against it. */
  handedOf: label.nullable().default(null),
  outline_mm: polygon,
  openings_mm: z.array(polygon).readonly().default([]),
  thickness_mm: length,
  /** From outside to inside; empty: one structural layer over the whole thickness. */
  layers: z.array(layer).readonly().default([]),
  zones: z.array(zone).readonly().default([]),
  edges: z.array(edge).readonly().default([]),
  reinforcement: reinforcement.nullable().default(null),
});

export type Panel = z.infer<typeof panel>;
export type Layer = z.infer<typeof layer>;
