/** In the foot of every sheet. */
export const FOOT_CAUTION = 'Fixing inserts are NOT FOR LIFTING and not for braces, unless their maker rates them so.';

/** On the cover: what people are hurt by. */
export const CAUTIONS: readonly string[] = [
  'NOT FOR LIFTING. A fixing insert is no lifting insert and no brace insert, unless its maker rates it so in writing. Lifting and bracing have plans of their own.',
  'An insert that is forgotten must not be pushed into wet or hard concrete: it would be no cast-in insert. Stop and ask the design engineer.',
  'Another type, length or finish in its place only with the written agreement of the design engineer.',
  'Never cut or bend a prestressing strand, a mesh or a bar to make room. Ask.',
  'Young concrete: nothing is bolted on, lifted or braced before the strength that its design asks for has been shown.',
  'A cross bar holds the insert in place. It adds nothing to its strength, and leaving it out is not for the yard to decide.',
  'Local codes and the licensed design engineer decide; this folder shows what they have decided, it decides nothing.',
];
