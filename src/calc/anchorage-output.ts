import * as z from 'zod';
import type { AnchorageResult, Row } from '../engine/checks/result.ts';
import { writeStep } from '../engine/checks/write-step.ts';
import { toJsonNumber } from './json-number.ts';

const N_PER_KN = 1000;
const RAD_PER_DEG = Math.PI / 180;

const optionalNumber = z.number().nullable();
const stepOutput = z.strictObject({
  symbol: z.string(),
  unit: z.string(),
  formula: z.string(),
  numbers: z.string(),
  result: z.number(),
  clause: z.string(),
});

/** Schema of `anchorage`'s output. */
export const anchorageOutput = z.strictObject({
  standard: z.string(),
  modes: z.array(
    z.strictObject({
      mode: z.string(),
      part: z.string().optional(),
      applies: z.boolean(),
      inserts: z.array(z.string()),
      edge: z
        .strictObject({ from: z.tuple([z.number(), z.number()]), to: z.tuple([z.number(), z.number()]) })
        .optional(),
      basic_kN: optionalNumber,
      factors: z.record(z.string(), z.number()),
      characteristic_kN: optionalNumber,
      safety: optionalNumber,
      design_kN: optionalNumber,
      action_kN: optionalNumber,
      ratio: optionalNumber,
      ratioTogether: z.number().optional(),
      hefUsed_mm: z.number().optional(),
      c1Used_mm: z.number().optional(),
      direction_deg: z.number().optional(),
      clause: z.string(),
      notes: z.array(z.string()),
      steps: z.array(stepOutput).optional(),
    }),
  ),
  interaction: z.array(
    z.strictObject({
      kind: z.enum(['steel', 'concrete', 'all']),
      ratio: optionalNumber,
      clause: z.string(),
      steps: z.array(stepOutput).optional(),
    }),
  ),
  governing: z.strictObject({ mode: z.string(), ratio: optionalNumber }).nullable(),
  verdict: z.enum(['pass', 'fail', 'not covered']).nullable(),
  notes: z.array(z.string()),
});

/** The answer of `anchorage`. */
export type AnchorageOutput = z.infer<typeof anchorageOutput>;

const toKN = (value: number | null) => (value === null ? null : value / N_PER_KN);

function writeRow(row: Row, keepsSteps: boolean): AnchorageOutput['modes'][number] {
  const isEndless = row.ratio === Number.POSITIVE_INFINITY;
  const written: AnchorageOutput['modes'][number] = {
    mode: row.mode,
    applies: row.applies,
    inserts: row.inserts.slice(),
    basic_kN: toKN(row.basic),
    factors: row.factors,
    characteristic_kN: toKN(row.characteristic),
    safety: row.safety,
    design_kN: toKN(row.design),
    action_kN: toKN(row.action),
    ratio: toJsonNumber(row.ratio),
    clause: row.clause,
    notes: isEndless ? [...row.notes, 'nothing is left to resist this load'] : row.notes.slice(),
  };
  // Keys that a row may lack are added one by one: copies by spread cost more than the whole check of the row.
  if (row.part !== null) written.part = row.part;
  if (row.ratioTogether !== null && Number.isFinite(row.ratioTogether)) written.ratioTogether = row.ratioTogether;
  if (row.edge !== null)
    written.edge = { from: [row.edge.from[0], row.edge.from[1]], to: [row.edge.to[0], row.edge.to[1]] };
  if (row.embedmentUsed !== null) written.hefUsed_mm = row.embedmentUsed;
  if (row.edgeUsed !== null) written.c1Used_mm = row.edgeUsed;
  if (row.direction !== null) written.direction_deg = row.direction / RAD_PER_DEG;
  if (keepsSteps) written.steps = row.steps.map(writeStep);
  return written;
}

/**
 * An engine result in the contract's shape: kN, degrees, units in the keys.
 * @param assumed sentences about what was not given
 * @param keepsSteps whether rows carry their steps
 */
export function writeAnchorage(
  result: AnchorageResult,
  assumed: readonly string[],
  keepsSteps: boolean,
): AnchorageOutput {
  return {
    standard: result.document,
    modes: result.rows.map((row) => writeRow(row, keepsSteps)),
    interaction: result.interaction.map(({ kind, ratio, clause, steps }) => ({
      kind,
      ratio: toJsonNumber(ratio),
      clause,
      ...(keepsSteps ? { steps: steps.map(writeStep) } : {}),
    })),
    governing:
      result.governing === null ? null : { mode: result.governing.mode, ratio: toJsonNumber(result.governing.ratio) },
    verdict: result.verdict,
    notes: [...result.uncovered, ...result.notes, ...assumed],
  };
}
