import type { Region } from '../../geometry/region.ts';
import type { Block, Cylinder, Solid, Vector } from '../../geometry/solid.ts';

/** What of a cast-in item takes room: the three parts of an insert, or the whole of anything else. */
export type ClashPartName = 'body' | 'foot' | 'cross bar' | 'item';

export interface ClashPart {
  readonly name: ClashPartName;
  readonly solid: Solid;
}

/** Something cast into the panel. Coordinates: x and y of the drawn face, z the depth below the outside face [mm]. */
export interface ClashItem {
  readonly id: string;
  readonly parts: readonly ClashPart[];
  /** Concrete that it keeps to the sides of the panel and of openings, and to the large faces where a remedy would bring it nearer [mm]; 0: it must only not stick out. */
  readonly cover: number;
  /** How far it may be off its place along each of its two directions [mm]; 0: it stays where it is. */
  readonly tolerance: number;
  /** The directions of its face, unit vectors. */
  readonly directions: readonly [Vector, Vector];
  /** The side (`ClashSide.index`) that its body comes out of; null for items of the large faces. */
  readonly throughSide: number | null;
  /** Where and about which unit vector its cross bar turns; null where it has none. */
  readonly turning: { readonly centre: Vector; readonly about: Vector } | null;
}

/** Loose bars can be shifted; a mesh is one piece; a prestressing strand stays where it is. */
export type BarKind = 'bars' | 'mesh' | 'strand';

/** One straight bar of a layer, end to end. */
export interface ClashBar {
  readonly id: string;
  readonly layer: string;
  readonly kind: BarKind;
  readonly solid: Cylinder;
  /** Unit vector on the face, square to the bar: the way it is shifted. */
  readonly across: Vector;
  /** From bar to bar of its layer [mm]. */
  readonly spacing: number;
  /** Concrete that it keeps to the sides [mm]. */
  readonly endCover: number;
}

/** A side of the outline or of an opening, over the thickness of the panel, in pieces. */
export interface ClashSide {
  /** Its place in `Region.sides`. */
  readonly index: number;
  readonly ring: 'outline' | number;
  readonly pieces: readonly Block[];
}

/** A panel with everything that may meet in it. */
export interface ClashScene {
  readonly items: readonly ClashItem[];
  readonly bars: readonly ClashBar[];
  readonly region: Region;
  readonly sides: readonly ClashSide[];
  /** [mm] */
  readonly thickness: number;
}

/** What has to be kept free [mm]. */
export interface ClashRules {
  /**
   * Between an insert and a bar, another insert or another item; the cross bar may touch bars, because it is tied to them. 5 mm is common
   * practice: room for mortar all round.
   */
  readonly clearance: number;
}

/** What meets an item. */
export type ClashOther =
  | { readonly kind: 'bar'; readonly bar: number }
  | { readonly kind: 'item'; readonly item: number; readonly part: number }
  | { readonly kind: 'side'; readonly side: number };

/** A part of an item that is nearer to something than it may be. Numbers are places in the lists of the scene. */
export interface Clash {
  readonly item: number;
  readonly part: number;
  readonly other: ClashOther;
  /** [mm]; 0: they overlap (or touch, where that is not allowed), or the item lies outside the concrete. */
  readonly clearance: number;
  /** [mm] */
  readonly needed: number;
}
