import * as z from 'zod';
import { anchorageOutput } from '../../calc/anchorage-output.ts';
import { printInteraction, printModes, printSteps } from './anchorage.ts';
import { showRatio } from './numbers.ts';
import { layPoint } from './table.ts';
import { nameMode } from './words.ts';

const printable = z.object(anchorageOutput.shape);

/** A result for reading: an anchorage with its table and steps, any other calculation as indented JSON. */
export function printCalculation(result: object, width: number): string {
  const read = printable.safeParse(result);
  if (!read.success) return JSON.stringify(result, null, 2);
  const { data } = read;
  const parts = [data.standard, printModes(data, width), printInteraction(data)];
  if (data.governing !== null)
    parts.push(
      `governing: ${nameMode(data.governing.mode)}, ${showRatio(data.governing.ratio ?? Number.POSITIVE_INFINITY)}`,
    );
  parts.push(
    `verdict: ${data.verdict ?? 'no action given, strength not checked'}`,
    ...data.notes.map((note) => layPoint(note, width, '')),
  );
  return `${parts.filter((part) => part !== '').join('\n')}\n\nStep by step\n\n${printSteps(data, width)}`;
}
