import type { ComputedAnswer, OutOfPlaceAnswer } from '../assess/out-of-place/answer.ts';
import { showRatio } from './numbers.ts';
import { listTold, sayAssumption, saySteps, sayStop } from './out-of-place-words.ts';
import { type QuantityWriter, type SpokenUnits, writerOf } from './quantities.ts';
import { nameMode, STATE_WORDS } from './words.ts';

/** What was said of the insert, in two lines. */
function sayGiven({ filled, given }: ComputedAnswer, { length, strength }: QuantityWriter): readonly string[] {
  const { neighbours } = filled;
  const beside =
    neighbours === 0
      ? 'no neighbour'
      : `${neighbours} neighbour${neighbours === 1 ? '' : 's'} at ${length(filled.spacing)}`;
  const assumed = (value: unknown) => (value === null ? ' (assumed)' : '');
  return [
    `Fixing insert ${filled.thread.name} × ${length(filled.length)}; edges at ${length(filled.nearest)} and ${length(filled.second)}; ${beside}`,
    `Concrete ${length(filled.thickness)} thick${assumed(given.thickness_mm)}, ${strength(filled.strength)} today${assumed(given.strength_MPa)}; ${
      filled.isPoured ? 'poured' : 'not poured yet'
    }${assumed(given.isPoured)}`,
  ];
}

/** The stated loads against what it carries, without the state. */
export function sayLoad({ given, filled, load }: ComputedAnswer, { force }: QuantityWriter): string {
  if (filled.load === null) {
    const missing = [
      ...(given.tension_kN === null ? ['tension'] : []),
      ...(given.shear_kN === null ? ['shear'] : []),
    ].join(' and ');
    return missing === '' ? 'Both loads are zero.' : `Not said: ${missing}.`;
  }
  const loads = `N ${force(filled.load.tension)} with V ${force(filled.load.shear)}`;
  if (load === null) return `${loads}.`;
  return `${loads}: ${showRatio(load.ratio)} of what it carries${load.mode === null ? '' : ` (${nameMode(load.mode)})`}.`;
}

/** The state in capitals, and why. */
export function sayVerdict(answer: ComputedAnswer, writer: QuantityWriter): string {
  return `${STATE_WORDS[answer.state].toUpperCase()}. ${sayLoad(answer, writer)}`;
}

function indent(lines: readonly string[]): readonly string[] {
  return lines.map((line) => `- ${line}`);
}

function writeComputed(answer: ComputedAnswer, writer: QuantityWriter): readonly string[] {
  const { may, ask, never } = saySteps(answer);
  const assumed = answer.filled.assumptions.map((one) => sayAssumption(one, writer).short);
  return [
    'INSERT OUT OF PLACE',
    ...sayGiven(answer, writer),
    ...(answer.limits.length === 0
      ? []
      : [
          'CARRIES AT MOST (design values, one at a time)',
          ...indent(
            listTold(answer, writer).map(({ words, limit: { force, mode } }) =>
              force === null
                ? `${words}: nothing computed limits it`
                : `${words}: ${writer.limit(force)} – ${mode === null ? 'no resistance' : nameMode(mode)}`,
            ),
          ),
        ]),
    sayVerdict(answer, writer),
    ...(answer.reasons.length === 0 ? [] : [`No pass, because: ${answer.reasons.join('; ')}`]),
    `Assumed, on the safe side: ${assumed.join(', ')}`,
    'Holds only with a full round foot, plate flat on the concrete, bolt snug, static design loads.',
    `MAY BE DONE NOW: ${may.join(' ')}`,
    `DESIGN ENGINEER: ${ask.join(' ')}`,
    `NEVER: ${never.join(' ')}`,
    `Rules ${answer.document}, Onepour ${answer.version}. An aid for a competent person; the licensed design engineer decides.`,
  ];
}

/**
 * An answer as plain text to be sent as a message: under 25 lines, in a person's units.
 * A case that is not answered yet has no text: null.
 */
export function writeOutOfPlaceText(answer: OutOfPlaceAnswer, units: SpokenUnits): string | null {
  switch (answer.kind) {
    case 'stopped':
      return ['INSERT OUT OF PLACE', ...sayStop(answer)].join('\n');
    case 'unanswered':
      return null;
    case 'answer':
      return writeComputed(answer, writerOf(units)).join('\n');
  }
}
