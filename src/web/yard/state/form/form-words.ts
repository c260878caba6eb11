/** How the check of the form stands, in a word or two. */
export const FORM_WORDS = {
  open: 'not checked',
  'open again': 'open again',
  good: 'good',
  out: 'OUT',
  accepted: 'accepted as it is',
  conflict: 'two answers',
} as const;
