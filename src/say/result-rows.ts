import type { ConnectionAnswer } from '../assess/connection-answer.ts';
import { nameMode } from './words.ts';

/** The columns of a table of results, in their order. */
export const resultColumns = [
  'connection',
  'panel',
  'face',
  'inserts',
  'state',
  'ratio',
  'governing',
  'combination',
  'reasons',
  'assumptions',
  'warnings',
] as const;

export type ResultRow = Readonly<Record<(typeof resultColumns)[number], string | number | null>>;

/** Ratios with four decimals: more are not meant. */
const DECIMALS = 1e4;

function writeRatio(ratio: number | null): string | number | null {
  if (ratio === null) return null;
  return Number.isFinite(ratio) ? Math.round(ratio * DECIMALS) / DECIMALS : 'no resistance';
}

/** Answers of connections as rows of a table; states as they are named, never merged. */
export function listResults(answers: readonly ConnectionAnswer[]): readonly ResultRow[] {
  return answers.map((answer) => ({
    connection: answer.mark,
    panel: answer.panel,
    face: answer.face,
    inserts: answer.inserts.join(' '),
    state: answer.state,
    ratio: writeRatio(answer.ratio),
    governing: answer.governing === null ? null : nameMode(answer.governing.mode),
    combination: answer.governing?.combination ?? null,
    reasons: answer.reasons.join('; '),
    assumptions: answer.assumptions.join('; '),
    warnings: answer.warnings.join('; '),
  }));
}
