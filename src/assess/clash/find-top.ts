import type { Region } from '../../engine/geometry/region.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Panel } from '../../job/documents/panel.ts';
import type { Bed } from '../../job/documents/yard.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { askAssembly } from '../set-out/assembly-question.ts';
import { findStack } from '../set-out/find-stack.ts';
import { findHoldingSite } from '../set-out/holding-site.ts';

/**
 * How far the top of a cast-in item lies below its own face [mm]: of an insert with a way of holding as its stack has it, since chair, cap and what
 * is aimed at decide that; of anything else the recess of the job.
 * @param bed that it is cast on; null: none is named
 * @param region the panel's outline with its openings, where it is at hand
 */
export function findTop(index: JobIndex, panel: Panel, castIn: CastIn, bed: Bed | null, region?: Region): number {
  const question = askAssembly(index, panel, castIn, bed);
  if (question === null) return castIn.recess_mm;
  return findStack(question, findHoldingSite(question, region)).top;
}
