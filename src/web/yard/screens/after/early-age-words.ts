import type { EarlyAge } from '../../../../assess/yard/early-age.ts';
import type { AnswerKind } from '../../parts/answer.tsx';

function sayAge(hours: number): string {
  if (hours < 1) return `${Math.floor(hours * 60)} min old`;
  return hours < 72 ? `${Math.floor(hours)} h old` : `${Math.floor(hours / 24)} days old`;
}

/** The strength of a piece, words first; never green: that it may be lifted is for the lifting design to say. */
export function tellEarlyAge({ kind, age, asked, tested, model, notes }: EarlyAge): {
  readonly kind: AnswerKind;
  readonly words: string;
  readonly more: readonly string[];
} {
  const old = age === null ? '' : `${sayAge(age)}. `;
  const cylinders =
    tested === null
      ? []
      : [`The least of ${tested.count} cylinders at ${tested.age} h: ${Number(tested.least.toFixed(1))} MPa.`];
  const guess = model === null ? [] : [`By the model now: ${Number(model.toFixed(0))} MPa mean, no proof.`];
  const said = notes.map((note) => `${note.charAt(0).toUpperCase()}${note.slice(1)}.`);
  switch (kind) {
    case 'not poured':
      return { kind: 'plain', words: 'Not recorded as poured', more: said };
    case 'no strength asked':
      return {
        kind: 'unsure',
        words: 'NO LIFTING YET: nobody said which strength it needs',
        more: [old.trim(), ...cylinders, ...guess, ...said].filter((line) => line !== ''),
      };
    case 'by model only':
      return {
        kind: 'unsure',
        words: `NO LIFTING, NO LOADING YET: ${asked} MPa needed, no cylinder tested`,
        more: [`${old}${guess.join('')}`.trim(), ...said].filter((line) => line !== ''),
      };
    case 'not reached':
      return {
        kind: 'wrong',
        words: `NO LIFTING, NO LOADING: ${asked} MPa needed, cylinders show less`,
        more: [`${old}${cylinders.join('')}`, ...said],
      };
    case 'reached':
      return {
        kind: 'ask',
        words: `Cylinders reached the ${asked} MPa asked for`,
        more: [`${old}${cylinders.join('')}`, ...said],
      };
  }
}
