import type { BoltUpCard, CardBolt } from '../../../../assess/bolt-up/bolt-up-report.ts';
import { plainLength } from '../../../../say/bolt-up-words.ts';
import type { AnswerKind } from '../../parts/answer.tsx';

/** How the state of a card is meant. */
export const CARD_KINDS: Readonly<Record<BoltUpCard['state'], AnswerKind>> = {
  ready: 'move',
  'decide first': 'wrong',
  'survey first': 'unsure',
  'no bolts': 'unsure',
  'not usable': 'wrong',
  tightened: 'good',
};

/** How deep the top lies, in words. */
export function tellRecess({ recess, recessFrom }: Pick<CardBolt, 'recess' | 'recessFrom'>): string {
  const where =
    recess === 0
      ? 'flush with the face'
      : recess > 0
        ? `${plainLength(recess)} mm below the face`
        : `${plainLength(-recess)} mm OUT of the face`;
  return recessFrom === 'surveyed' ? where : `${where} as designed, not surveyed`;
}
