import { findUsualBed } from '../../../src/assess/set-out/find-usual-bed.ts';
import type { SetOutItem } from '../../../src/assess/set-out/set-out.ts';
import type { PiecePlan } from '../../../src/assess/yard/piece-plan.ts';
import type { FoundPlace } from '../../../src/assess/yard/placing-answer.ts';
import { planPiece } from '../../../src/assess/yard/plan-piece.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { demo } from '../../job/edit/demo.ts';

export const demoIndex = indexJob(demo);

export const demoMarks: readonly string[] = demo.job.panels.map(({ mark }) => mark);

/** The plan of a piece of the demo job, or of what a test made of it, on the bed that it is usually cast on. */
export function planOf(mark: string, file: JobFile = demo, id = '0'.repeat(24)): PiecePlan {
  return planPiece(file === demo ? demoIndex : indexJob(file), { id, mark, bed: findUsualBed(file, mark) });
}

/** The demo job with one panel changed. */
export function withPanel(mark: string, change: (panel: JobFile['job']['panels'][number]) => object): JobFile {
  const panels = demo.job.panels.map((panel) => (panel.mark === mark ? { ...panel, ...change(panel) } : panel));
  return { ...demo, job: { ...demo.job, panels } };
}

/** The demo job with one cast-in item of a panel changed. */
export function withCastIn(mark: string, id: string, change: object): JobFile {
  const castIns = demo.job.castIns.map((one) => (one.panel === mark && one.id === id ? { ...one, ...change } : one));
  return { ...demo, job: { ...demo.job, castIns } };
}

/** Found just where it should be, off by what is given [mm]. */
export function findAt({ taped }: SetOutItem, dx = 0, dy = 0, level: number | null = null): FoundPlace {
  return { x: taped[0] + dx, y: taped[1] + dy, level };
}

/** What a walk that finds everything good touches: a key a stop, and the digits that are asked for, with a key behind those that are short. */
export function countTouches({ stops, setOut }: PiecePlan): number {
  const digits = stops
    .flatMap(({ asks }) => asks)
    .map(({ number, axis, mostDigits }) => {
      const [x, y] = setOut.items[number - 1]!.taped;
      const typed = String(Math.round(axis === 'x' ? x : y)).length;
      return typed < mostDigits ? typed + 1 : typed;
    });
  return stops.length + digits.reduce((sum, one) => sum + one, 0);
}

/** Length, width and two diagonals of a rectangular form, its depth at four places of which three are as the one before, and the key that ends it. */
export function countFormTouches({ setOut: { form } }: PiecePlan): number {
  const digitsOf = (length: number) => String(length).length;
  const lengths = [form.length, form.width, ...form.diagonals.map(({ length }) => length), form.depth];
  return lengths.reduce((sum, length) => sum + digitsOf(length), 0) + 3 + 1;
}
