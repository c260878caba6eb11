import * as z from 'zod';
import { chooseChair, type Span, type StackAnswer, type StackedChair, sinkOnly } from '../engine/form/chair-stack.ts';
import { IGNORED_KEYS, numberAbove0, numberIn } from './fields.ts';

const length = (what: string) => numberAbove0(10_000, 'mm', what);
/** Figures behind the point of what is given back [mm]: less than these is rounding in floating point. */
const FIGURES = 9;
const tidy = (value: number) => Number(value.toFixed(FIGURES)) + 0;

const input = z
  .strictObject({
    calc: z.literal('chair-stack'),
    ...IGNORED_KEYS,
    panelThickness_mm: length('the thickness of the panel'),
    insertLength_mm: length('the length of the insert, foot to top'),
    aimBelowFace_mm: numberIn(0, 1000, 'mm', 'how far below the trowelled face the top is aimed'),
    allowedBelowFace_mm: z.tuple(
      [
        numberIn(-1000, 1000, 'mm', 'the least the top may lie below the face'),
        numberIn(0, 1000, 'mm', 'the most the top may lie below the face'),
      ],
      { error: 'expected [least, most] in mm that the top may lie below the trowelled face' },
    ),
    chairSink_mm: numberIn(0, 1000, 'mm', 'how far the chair sinks into the form'),
    chairHeights_mm: z
      .array(length('the height of a chair'), { error: 'expected a list of chair heights in mm' })
      .min(1, { error: 'expected at least one chair height' }),
  })
  .superRefine((given, context) => {
    const refuse = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message });
    const { panelThickness_mm, insertLength_mm, aimBelowFace_mm, chairSink_mm, chairHeights_mm } = given;
    const [least, most] = given.allowedBelowFace_mm;
    if (least > most)
      refuse(['allowedBelowFace_mm'], `${least} mm is more than ${most} mm, expected [least, most] below the face`);
    else if (aimBelowFace_mm < least || aimBelowFace_mm > most)
      refuse(['aimBelowFace_mm'], `${aimBelowFace_mm} mm is not allowed, expected ${Math.max(0, least)} to ${most} mm`);
    if (insertLength_mm >= panelThickness_mm)
      refuse(
        ['insertLength_mm'],
        `${insertLength_mm} mm leaves no room for a chair, expected less than the thickness of ${panelThickness_mm} mm`,
      );
    chairHeights_mm.forEach((height, i) => {
      if (chairHeights_mm.indexOf(height) < i)
        refuse(['chairHeights_mm', i], `${height} mm stands there twice, expected each height once`);
      if (height <= chairSink_mm)
        refuse(
          ['chairHeights_mm', i],
          `${height} mm sinks in whole, expected more than chairSink_mm ${chairSink_mm} mm`,
        );
    });
  });

const output = z.strictObject({
  chairNeeded_mm: z.number(),
  chair_mm: z.number(),
  topBelowFace_mm: z.number(),
  ok: z.boolean(),
  alternatives: z.array(z.strictObject({ chair_mm: z.number(), topBelowFace_mm: z.number() })),
  thicknessRange_mm: z.tuple([z.number(), z.number()]),
  notes: z.array(z.string()),
});

/** The chair for a foot-down insert, as the contract gives it. Nothing moves but the chair by its sink, so a top is one number. */
function run(given: z.infer<typeof input>): z.infer<typeof output> {
  const [least, most] = given.allowedBelowFace_mm;
  const answer = chooseChair({
    thickness: given.panelThickness_mm,
    insertLength: given.insertLength_mm,
    aim: given.aimBelowFace_mm,
    allowed: { least, greatest: most },
    chairs: given.chairHeights_mm,
    movements: sinkOnly(given.chairSink_mm),
  });
  const { chosen, others, thicknessRange } = answer;
  return {
    chairNeeded_mm: tidy(answer.chairNeeded),
    chair_mm: chosen.chair,
    topBelowFace_mm: topOf(chosen),
    ok: chosen.verdict === 'fits',
    alternatives: others.map((one) => ({ chair_mm: one.chair, topBelowFace_mm: topOf(one) })),
    // One known sink is never wider than what is allowed, so there is a range.
    thicknessRange_mm: [tidy(thicknessRange!.least), tidy(thicknessRange!.greatest)],
    notes: describe(answer, given.allowedBelowFace_mm),
  };
}

const topOf = ({ topBelowFace }: StackedChair) => tidy(topBelowFace.least);
const writeSpan = ({ least, greatest }: Span) =>
  tidy(least) === tidy(greatest) ? `${tidy(least)} mm` : `${tidy(least)} to ${tidy(greatest)} mm`;

function describe(
  { chosen, others, chairNeeded, fittingChairs, fittingLengths }: StackAnswer,
  [least, most]: readonly [number, number],
): string[] {
  const notes: string[] = [];
  if (least < 0) notes.push(`allowed from ${least} mm is counted from 0: a top above the face is never allowed`);
  if (chairNeeded <= 0) notes.push('no room for a chair under this insert: a shorter insert is needed');
  if (chosen.verdict !== 'fits') {
    const top = topOf(chosen);
    const where = top < 0 ? `${-top} mm above the face` : `${top} mm below the face`;
    notes.push(
      `no chair of the stock fits: the best, ${chosen.chair} mm, puts the top ${where}, allowed ${Math.max(0, least)} to ${most} mm below it`,
    );
    if (fittingChairs !== null) notes.push(`chairs of ${writeSpan(fittingChairs)} would fit`);
    for (const { chair, lengths } of fittingLengths)
      if (lengths !== null) notes.push(`on the chair of ${chair} mm an insert of ${writeSpan(lengths)} would fit`);
  }
  const proud = others.filter(({ verdict }) => verdict === 'proud').map(({ chair }) => chair);
  if (proud.length > 0) notes.push(`never ${proud.join(', ')} mm: the top would stand above the face`);
  return notes;
}

/** The calculation `chair-stack` of the contract. */
export const chairStackCalc = {
  name: 'chair-stack',
  gives: 'the chair under a foot-down insert, and how far its top lies below the trowelled face',
  input,
  output,
  run,
} as const;
