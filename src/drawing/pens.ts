/** How one kind of line is drawn. Widths and dashes in mm on paper, whatever the scale of what is drawn. */
export interface PenStyle {
  readonly width: number;
  /** Drawn and left out by turns, starting with drawn; empty: a full line. */
  readonly dash: readonly number[];
  readonly tone: Tone;
}

export type Tone = 'black' | 'grey';

export type PenName = 'thick' | 'medium' | 'thin' | 'hair' | 'dashed' | 'dash-dot' | 'faint';

/**
 * Every kind of line there is. Widths are steps of the series of ISO 128 (0,13 0,18 0,25 0,35 0,5 0,7 mm; recalled), so that they stay apart
 * on a copy of a copy.
 */
export const PENS: Readonly<Record<PenName, PenStyle>> = {
  thick: { width: 0.7, dash: [], tone: 'black' },
  medium: { width: 0.35, dash: [], tone: 'black' },
  thin: { width: 0.25, dash: [], tone: 'black' },
  hair: { width: 0.13, dash: [], tone: 'black' },
  // Hidden edges.
  dashed: { width: 0.25, dash: [3, 1.5], tone: 'black' },
  // Middle lines and axes.
  'dash-dot': { width: 0.18, dash: [7, 1.2, 0.6, 1.2], tone: 'black' },
  // What is there but not meant: bars beside inserts, the bed.
  faint: { width: 0.25, dash: [], tone: 'grey' },
};

/** Greys of a drawing, 0 black to 1 white; none so light that a worn printer loses it. */
export const TONES: Readonly<Record<Tone, number>> = { black: 0, grey: 0.45 };

/** Fills: a grey from 0 black to 1 white. Hatching is drawn with lines. */
export const FILL_GREYS = { black: 0, grey: 0.78, light: 0.92, white: 1 } as const;

/** Distance of hatching lines, across them [mm on paper]. */
export const HATCH_SPACING = 1.6;
