import * as z from 'zod';
import { explainAnchorage, prepare } from '../engine/checks/anchorage.ts';
import type { GroupActions } from '../engine/checks/anchorage-group.ts';
import { findLargest, type LargestLoad, scaleActions, shareEqually } from '../engine/checks/carries-at-most.ts';
import type { AnchorageResult, GoverningMode } from '../engine/checks/result.ts';
import { actionsField, findActionFaults, findGroupFaults, groupFields } from './anchorage-input.ts';
import { anchorageOutput, writeAnchorage } from './anchorage-output.ts';
import { numberIn } from './fields.ts';
import { listAssumptions, readActions, readGroup, tellByKey } from './read-group.ts';

const N_PER_KN = 1000;

const part = (what: string) => numberIn(-1e6, 1e6, '', what);

const direction = z
  .strictObject({
    N: part('the share of the tension'),
    Vx: part('the share of the shear along x'),
    Vy: part('the share of the shear along y'),
  })
  .refine(({ N, Vx, Vy }) => N !== 0 || Vx !== 0 || Vy !== 0, {
    error: 'N, Vx and Vy are all 0, expected at least one that is not',
  });

/** Schema of the input: that of `anchorage`, with a direction in place of its actions, or with actions to be multiplied. */
const input = z
  .strictObject({
    calc: z.literal('carries-at-most'),
    ...groupFields,
    direction: direction.optional(),
    actions: actionsField.optional(),
  })
  .superRefine((value, context) => {
    const { direction, actions, compression } = value;
    const faults = [
      ...findGroupFaults(value),
      ...(actions === undefined ? [] : findActionFaults(value.positions, actions)),
    ];
    if (direction === undefined && actions === undefined)
      faults.push({ path: ['direction'], message: 'expected direction { N, Vx, Vy }, or actions to be multiplied' });
    if (direction !== undefined && actions !== undefined)
      faults.push({ path: ['direction'], message: 'actions are given too, expected only one of the two' });
    if (direction !== undefined && compression !== undefined)
      faults.push({ path: ['compression'], message: 'a direction has no size that goes with it, expected actions' });
    for (const { path, message } of faults) context.addIssue({ code: 'custom', path: [...path], message });
  });

const output = z.strictObject({
  standard: z.string(),
  largest_kN: z.number().nullable(),
  N_kN: z.number().nullable(),
  Vx_kN: z.number().nullable(),
  Vy_kN: z.number().nullable(),
  perInsert_kN: z.number().nullable(),
  multiplier: z.number().nullable().optional(),
  governing: z.strictObject({ mode: z.string(), clause: z.string() }).nullable(),
  verdict: z.enum(['pass', 'fail', 'not covered']).nullable(),
  notes: z.array(z.string()),
  atLargest: anchorageOutput.optional(),
});

type Input = z.infer<typeof input>;
type Output = z.infer<typeof output>;

/** One kN in all, in the direction. */
function readDirection(given: Input, { N, Vx, Vy }: NonNullable<Input['direction']>): GroupActions {
  const unit = N_PER_KN / Math.hypot(N, Vx, Vy);
  return shareEqually(readGroup(given), { N: N * unit, Vx: Vx * unit, Vy: Vy * unit });
}

/** The clause of what governs: of the interaction, or of the most used row of that mode. */
function findClause({ rows, interaction }: AnchorageResult, mode: GoverningMode): string {
  const ratioOf = ({ ratio }: { readonly ratio: number | null }) => ratio ?? 0;
  const own = [
    ...rows.filter((row) => row.applies && row.mode === mode),
    ...interaction.filter(({ kind }) => mode === `interaction-${kind}`),
  ];
  return own.reduce((a, b) => (ratioOf(b) > ratioOf(a) ? b : a)).clause;
}

/** Sizes of a combination [kN]: of the resultant on the group with its parts, and of the largest force on one insert. */
function measure({ inserts }: GroupActions) {
  let [N, Vx, Vy, perInsert] = [0, 0, 0, 0];
  for (const force of inserts) {
    N += force.N / N_PER_KN;
    Vx += force.Vx / N_PER_KN;
    Vy += force.Vy / N_PER_KN;
    perInsert = Math.max(perInsert, Math.hypot(force.N, force.Vx, force.Vy) / N_PER_KN);
  }
  return { largest_kN: Math.hypot(N, Vx, Vy), N_kN: N, Vx_kN: Vx, Vy_kN: Vy, perInsert_kN: perInsert };
}

const NO_SIZE = { largest_kN: null, N_kN: null, Vx_kN: null, Vy_kN: null, perInsert_kN: null };

function writeNotes(given: Input, { multiplier, verdict, uncovered }: LargestLoad): string[] {
  const count = given.positions.length;
  const what =
    given.direction === undefined
      ? 'the actions times `multiplier`; largest_kN is the size of their resultant, sqrt(N^2 + Vx^2 + Vy^2)'
      : `largest_kN is the size of the load on the whole group, sqrt(N^2 + Vx^2 + Vy^2)${count > 1 ? `, shared equally by its ${count} inserts` : ''}`;
  return [
    ...(multiplier === null ? ['nothing computed here limits a load in this direction'] : [what]),
    ...(multiplier === 0 ? ['nothing resists a load in this direction'] : []),
    ...(verdict === 'not covered' ? ['outside the scope: a number to be judged, never a pass'] : []),
    ...uncovered,
    ...listAssumptions(given),
  ];
}

/**
 * The largest load in a direction, or the largest multiple of actions, that the full check lets pass.
 * @throws CalcError where the group cannot be computed or the actions are all zero
 */
function run(given: Input, keepsSteps: boolean): Output {
  return tellByKey(() => {
    const group = readGroup(given);
    const actions =
      given.direction === undefined ? readActions(given, given.actions!) : readDirection(given, given.direction);
    const prepared = prepare(group);
    const found = findLargest(prepared, actions);
    const { multiplier, mode, verdict } = found;
    // Where nothing resists, the load that was tried shows what fails.
    const explained = explainAnchorage(prepared, scaleActions(actions, multiplier || 1), keepsSteps);
    return {
      standard: explained.document,
      ...(multiplier === null ? NO_SIZE : measure(scaleActions(actions, multiplier))),
      ...(given.actions === undefined ? {} : { multiplier }),
      governing: mode === null ? null : { mode, clause: findClause(explained, mode) },
      verdict,
      notes: writeNotes(given, found),
      ...(keepsSteps ? { atLargest: writeAnchorage(explained, [], true) } : {}),
    };
  });
}

export const carriesAtMostCalc = {
  name: 'carries-at-most',
  gives: 'the largest load in a direction that a group of cast-in inserts carries',
  input,
  output,
  run,
};
