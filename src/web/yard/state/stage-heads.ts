/** The two stages in words, for the head of a screen. */
export const STAGE_HEADS: Readonly<Record<1 | 2, string>> = {
  1: '1 · before the cage',
  2: '2 · before the pour',
};
