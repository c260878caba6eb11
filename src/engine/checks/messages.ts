/**
 * Every sentence a result may carry, in one place. Braces hold the values. A note tells what was assumed or chosen; an
 * uncovered sentence tells why the answer cannot be a pass.
 */
export const MESSAGES = {
  'strength-range':
    'f_ck {value} MPa is outside {low} to {high} MPa, the range of {document}; use a concrete inside it or another method',
  'strength-high': "f'c {value} MPa is above {high} MPa, the highest that {document} covers; use a concrete below it",
  'embedment-range': 'embedment {value} mm is below {low} mm, the smallest that {document} covers; use a longer insert',
  lightweight: 'lightweight concrete (factor {value}) is not covered by {document}',
  'no-qualification':
    'the insert has no qualification document for {document}; ask its maker, or treat it as not covered',
  'other-qualification':
    'the insert has no qualification document for {document}, only for {standard}; ask its maker, or treat it as not covered',
  'partial-head': 'the foot is not a full circumferential head; its pull-out and blow-out need a test report',
  'partial-head-blow-out': 'the foot is not a full circumferential head: side-face blow-out is not covered',
  'steel-strength': '{part}: f_uk {value} MPa is above {high} MPa, the highest that {document} covers',
  'stands-out': 'insert {insert}: {value} mm wide, {edge} mm from an edge: it would stand out of the concrete',
  'no-steel-part': 'no steel part is given that carries {load}: its steel is not checked',
  'uncovered-use': '{use}: no rule of this program covers it; a licensed engineer must decide',
  'compressed-insert': 'insert {insert} is pressed by {value} kN; concrete in front of the foot is not computed',
  'splitting-unknown':
    'splitting needs c_cr,sp and h_min of the product document (edge {edge}, thickness {thickness} mm)',
  'splitting-thin': 'member {value} mm thick, below h_min {low} mm of the product document; use a thicker member',
  'sharp-corner': 'the corner of {angle} degrees beside this edge is below 90 degrees: not covered by the code',
  'torsion-pair':
    'two inserts in torsion with overlapping edge bodies: 0.8 of the resistance (recalled, confirm against print)',
  'spacing-over-three': 'squares are turned {angle} degrees, the direction of least area',
  'three-edges': 'three or more near edges: embedment reduced from {from} to {to} mm',
  'thin-and-narrow': 'thin and narrow member: edge distance reduced from {from} to {to} mm',
  shadow: 'an opening or re-entrant corner hides part of the concrete; only what each insert sees is counted',
  'front-row': 'front row: inserts within 1.1 of the smallest edge distance (common practice), c1 = {value} mm',
  'side-goes-on': 'insert stands beside the end of this side; the side is taken as going on',
  'beyond-corner':
    'an insert stands beyond the outward corner that ends this side: no distance to the corner is counted, only the body from there on',
  'row-behind': 'a row behind another, checked because it carries more by itself than the row before it',
  'no-edge-near': 'no edge within {value} mm',
  'no-edge': 'no edge in sight',
  'far-edge': 'edge {value} mm away is beyond max(10 h_ef, 60 d) = {limit} mm',
  'no-tension': 'no tension on any insert',
  'no-shear': 'no shear on any insert',
  'away-from-edge': 'the shear acts away from this edge',
  'blow-out-far': 'no edge within {factor} h_ef = {value} mm of a tensioned insert',
  'splitting-by-distances':
    'not computed: the document keeps splitting away by least spacings, edge distances and thicknesses (17.9), which are checked apart',
  'splitting-released': 'not needed: cracked values are used and reinforcement limits the crack width',
  'splitting-far': 'not needed: edges at least {value} mm away and the member thick enough',
  'opposite-shears': 'shears act in opposite directions: each insert alone, with a virtual edge at half the spacing',
  'stirrups-stated': 'stirrup spacing not given: taken as stated, at most {limit} mm',
  'stirrups-wide': 'stirrups at {value} mm are wider than {limit} mm: only the bar along the edge is counted',
  'bar-stirrups-uncracked': 'edge reinforcement counts only in cracked concrete',
  'bar-stirrups-spacing': 'stirrups at {value} mm are wider than min(100 mm, 2 c1) = {limit} mm: not counted',
  'bar-stirrups-stated': 'stirrup spacing not given: taken as stated, at most min(100 mm, 2 c1) = {limit} mm',
  'lever-arm-uncovered': 'stand-off of {value} mm: {document} gives no rule for bolts that bend',
  'no-lever-arm': 'no stand-off given: shear taken without lever arm',
  'lever-arm-interaction':
    'with a lever arm the bending resistance of the steel that bends carries the tension; no steel interaction for it',
  'plain-shear-cap': 'the lever arm is so short that the shear resistance without lever arm is the lower: it counts',
  'no-steel-left': 'the tension uses up the steel; nothing is left for bending',
  tested: 'from test report {report}',
  'tested-strength': 'test report {report} holds from f_ck {value} MPa; the formula is used instead',
  'ductility-unknown': 'elongation or reduction of area not given: steel taken as brittle',
  'compression-factor': 'compression under the fixture counted through psi_M',
  'replaced-by-bars': 'taken up by supplementary reinforcement; the concrete alone would reach {ratio}',
  'bars-weaker': 'the concrete alone resists at least as much as the bars; the bars are not counted',
  'bars-shared':
    'the bars are not counted: {count} groups of inserts break out apart, and whose bars they are is not given',
  'bar-ignored': 'bar {index} is not counted: {reason}',
  'bars-uncovered':
    'bars in place of the concrete are not computed by this document: they count for nothing here (their development length is for the design engineer)',
  'edge-parts': 'counts together with the part {other}, both ratios squared and added (the code is silent)',
  'part-toward': 'part of the shear toward the edge, all of it on the front row',
  'part-along': 'part of the shear along the edge: twice the resistance, no corner factor',
  'blow-out-unequal': 'the code has no factor for unequal tension in a row: none is taken',
  'cross-bar': 'a cross bar adds nothing to these resistances',
  'eccentricity-axes': 'eccentricity on both axes of the squares, the two factors multiplied',
  'dense-surface': 'dense surface reinforcement: shell factor counted',
} as const;

/** Key of a message. */
export type MessageCode = keyof typeof MESSAGES;

/** Each message cut at its braces: texts at even places, the names of values at odd ones. */
const PIECES: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries(MESSAGES).map(([code, text]) => [code, text.split(/[{}]/)]),
);

/** Writes a message with its values; numbers come already rounded for people. */
export function writeMessage(code: MessageCode, values: Readonly<Record<string, string | number>> = {}): string {
  const pieces = PIECES.get(code)!;
  let text = pieces[0]!;
  for (let k = 1; k < pieces.length; k += 2) text += `${values[pieces[k]!]}${pieces[k + 1]!}`;
  return text;
}

/** A length, force or factor for a sentence: at most one decimal, no trailing zero. */
export function roundForText(value: number, decimals = 1): number {
  const scale = 10 ** decimals;
  return Math.round(value * scale) / scale;
}
