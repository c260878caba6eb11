import type { ConnectionAnswer } from '../../assess/connection-answer.ts';
import { writeNumber } from '../../engine/checks/write-step.ts';
import { findEdition } from '../../engine/standards/editions.ts';
import type { Resolution, ResolvedConnection } from '../../job/resolve/resolved-connection.ts';
import { showRatio } from '../../say/numbers.ts';
import { nameMode, STATE_WORDS } from '../../say/words.ts';
import { layText } from './table.ts';

/** What the numbers of a connection rest on most: concrete, its age, what lies under the plate. */
function describeBasis({ group: { concrete, standard }, source: { connection } }: ResolvedConnection): string {
  const { age_days, packers_mm, isFilled } = connection;
  const symbol = findEdition(standard).takesPartialFactors ? 'f_ck' : "f'c";
  const packers = `${writeNumber(packers_mm)} mm of packers${isFilled ? ', filled with mortar' : ''}`;
  return [
    `${symbol} ${writeNumber(concrete.strength)} MPa`,
    concrete.cracked ? 'cracked' : 'uncracked',
    age_days === null ? 'at 28 days' : `at ${writeNumber(age_days)} days`,
    packers_mm === 0 ? 'no packers' : packers,
  ].join(', ');
}

/** Whether a connection passes with its own loads, and what its numbers rest on. */
export function printBasis(
  resolution: Resolution,
  { state, ratio, governing }: Pick<ConnectionAnswer, 'state' | 'ratio' | 'governing'>,
  width: number,
): string {
  const used = ratio === null ? '' : ` ${showRatio(ratio)}`;
  const governs = governing === null ? '' : `, ${nameMode(governing.mode)} (${governing.combination})`;
  return [
    layText(`With its own loads: ${STATE_WORDS[state]}${used}${governs}`, width),
    ...(resolution.kind === 'resolved' ? [layText(`Basis: ${describeBasis(resolution)}`, width)] : []),
  ].join('\n');
}
