/** The cautions that go with every answer. */
export const CAUTIONS = [
  'Fixing inserts are not lifting inserts unless their maker rates them so.',
  'Answers are aids for a competent person. Local codes and the licensed design engineer decide.',
  'Before the concrete has its strength, and while panels are lifted or braced, other rules govern.',
];
