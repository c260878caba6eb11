import type { SetOutItem } from '../../../../assess/set-out/set-out.ts';
import { describeFace, describeType } from '../../../../drawing/sheets/words.ts';
import type { Panel } from '../../../../job/documents/panel.ts';
import type { Meaning } from '../../../pieces/survey/survey-draft.ts';
import { listCorners } from '../../../pieces/survey/survey-targets.ts';

/** One thing that a surveyed point may be. */
export interface MeaningChoice {
  readonly value: string;
  readonly text: string;
  readonly meaning: Meaning;
}

/** A meaning as the value of a choice; where a mark is does not tell it from another mark. */
export function choiceOf(meaning: Meaning): string {
  switch (meaning.is) {
    case 'insert':
    case 'rod':
      return `${meaning.is} ${meaning.key}`;
    case 'corner':
      return meaning.name;
    case 'side':
      return `side ${meaning.edge}`;
    case 'mark':
    case 'nothing':
      return meaning.is;
  }
}

/** Everything that a point of this panel may be. */
export function listMeanings(
  panel: Panel,
  items: readonly SetOutItem[],
  hasHeights: boolean,
): readonly MeaningChoice[] {
  const choice = (text: string, meaning: Meaning): MeaningChoice => ({ value: choiceOf(meaning), text, meaning });
  const corners = panel.outline_mm.length;
  return [
    choice('nothing of this panel', { is: 'nothing' }),
    ...items.map((item) =>
      choice(
        `insert ${item.number}${item.connection === null ? '' : `, ${item.connection}`} (${describeType(item)}; ${describeFace(item)})`,
        { is: 'insert', key: item.castIn.key },
      ),
    ),
    ...items.map((item) => choice(`rod in insert ${item.number}`, { is: 'rod', key: item.castIn.key })),
    ...listCorners(panel, hasHeights).map(({ name }) => choice(name, { is: 'corner', name })),
    ...panel.outline_mm.map((_, edge) =>
      choice(`on the side, corner ${edge + 1} to ${((edge + 1) % corners) + 1}`, { is: 'side', edge }),
    ),
    choice('a mark whose place is known', { is: 'mark', x: 0, y: 0 }),
  ];
}

/** A meaning in a few words, for the picture and for lists. */
export function tellMeaning(items: readonly SetOutItem[], meaning: Meaning): string {
  const numberOf = (key: string) => items.find(({ castIn }) => castIn.key === key)?.number ?? '?';
  switch (meaning.is) {
    case 'insert':
      return `insert ${numberOf(meaning.key)}`;
    case 'rod':
      return `rod in insert ${numberOf(meaning.key)}`;
    case 'corner':
      return meaning.name;
    case 'side':
      return `side from corner ${meaning.edge + 1}`;
    case 'mark':
      return 'mark';
    case 'nothing':
      return 'nothing';
  }
}
