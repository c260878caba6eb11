import * as z from 'zod';
import { type AnchorageOutput, anchorageOutput } from '../../calc/anchorage-output.ts';
import { carriesAtMostCalc } from '../../calc/carries-at-most.ts';
import { showLimit, showRatio } from '../../say/numbers.ts';
import { nameMode } from '../../say/words.ts';
import { printInteraction, printModes, printSteps } from './anchorage.ts';
import { printResult } from './result-table.ts';
import { layPoint } from './table.ts';

const anchorageResult = z.object(anchorageOutput.shape);
const carriesResult = z.object(carriesAtMostCalc.output.shape);

function printAnchorage(data: AnchorageOutput, width: number): string {
  const parts = [data.standard, printModes(data, width), printInteraction(data, width)];
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

/** The largest load in words, then the full check at that load. */
function printLargest(data: z.infer<typeof carriesResult>, width: number): string {
  const { largest_kN, N_kN, Vx_kN, Vy_kN, multiplier, governing, atLargest } = data;
  const parts = [
    ['N', N_kN],
    ['Vx', Vx_kN],
    ['Vy', Vy_kN],
  ] as const;
  const direction = parts
    .flatMap(([name, part]) => (typeof part === 'number' && part !== 0 ? [`${name} ${showLimit(part * 1000)}`] : []))
    .join(', ');
  const times = typeof multiplier === 'number' ? `, ${showLimit(multiplier * 1000)} times the actions` : '';
  return [
    largest_kN === null
      ? 'carries at most: no limit computed here'
      : `carries at most ${showLimit(largest_kN * 1000)} kN on the group (${direction} kN), design load${times}`,
    ...(governing === null ? [] : [`limited by ${nameMode(governing.mode)} [${governing.clause}]`]),
    ...data.notes.map((note) => layPoint(note, width, '')),
    ...(atLargest === undefined
      ? []
      : ['', `At ${largest_kN === null ? 'the load tried' : 'that load'}:`, printAnchorage(atLargest, width)]),
  ].join('\n');
}

/** A result for reading: an anchorage with its table and steps, the largest load with its check, all else as a table of keys. */
export function printCalculation(result: object, width: number): string {
  const anchorage = anchorageResult.safeParse(result);
  if (anchorage.success) return printAnchorage(anchorage.data, width);
  const carries = carriesResult.safeParse(result);
  return carries.success ? printLargest(carries.data, width) : printResult(result, width);
}
