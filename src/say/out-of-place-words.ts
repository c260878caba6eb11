import type { ComputedAnswer, StoppedAnswer } from '../assess/out-of-place/answer.ts';
import type { Assumption } from '../assess/out-of-place/fill-case.ts';
import type { Limit } from '../assess/out-of-place/limits.ts';
import type { MayDo, MustAsk, MustNot } from '../assess/out-of-place/next-steps.ts';
import type { QuantityWriter } from './quantities.ts';

/** A value that was assumed: a whole sentence, and the same in a few words for a message. */
export interface AssumptionWords {
  readonly sentence: string;
  readonly short: string;
}

/** Says what was taken for a value that nobody gave, and why it is on the safe side. */
export function sayAssumption(
  { what, values: [a = 0, b = 0], name }: Assumption,
  { length, strength }: QuantityWriter,
): AssumptionWords {
  switch (what) {
    case 'document':
      return {
        sentence: 'No product document in hand: the answer can never be a pass. Ask the maker.',
        short: 'no product document',
      };
    case 'foot':
      return {
        sentence: `Foot ${length(a)} wide: the least that goes with its body. Ask the maker.`,
        short: `foot ${length(a)}`,
      };
    case 'body':
      return { sentence: `Body ${length(a)} across: the least that goes with ${name}.`, short: `body ${length(a)}` };
    case 'embedment':
      return {
        sentence: `Bearing side of the foot ${length(a)} to ${length(b)} deep: by its length and the thickest foot. Whichever carries less counts.`,
        short: `foot ${length(a)} deep`,
      };
    case 'steel':
      return {
        sentence: `Steel of the insert yields at ${strength(a)}: the softest bar that inserts are turned from.`,
        short: `steel ${strength(a)}`,
      };
    case 'cross-hole':
      return {
        sentence: `A cross hole of ${length(a)} through body and bore, the largest that is usual.`,
        short: `cross hole ${length(a)}`,
      };
    case 'thread-class':
      return {
        sentence: `Thread tapped oversize (${name}), as for galvanised bolts: it holds least.`,
        short: `thread ${name}`,
      };
    case 'bolt':
      return { sentence: `Bolt of class ${name}, the softest. Look at its head.`, short: `bolt ${name}` };
    case 'engagement':
      return {
        sentence: `Bolt in the full thread over ${length(a)}: one bolt diameter. Count the turns by hand.`,
        short: `${length(a)} of thread`,
      };
    case 'thickness':
      return {
        sentence: `Concrete ${length(a)} thick: the insert and ${length(b)} behind it, no more.`,
        short: `${length(a)} thick`,
      };
    case 'strength':
      return {
        sentence: `Concrete of ${strength(a)}: the weakest that EN 1992-4 covers. Ask for today's test.`,
        short: `concrete ${strength(a)}`,
      };
    case 'cracked':
      return { sentence: 'Concrete cracked.', short: 'cracked' };
    case 'bars-close':
      return { sentence: 'Bars at the face close together, which counts against it.', short: 'bars close' };
    case 'bars-cracks':
      return { sentence: 'No bars that hold cracks fine: splitting is reckoned.', short: 'cracks not held' };
    case 'edge-bars':
      return { sentence: 'No bars along the edges.', short: 'no edge bars' };
    case 'other-edges':
      return {
        sentence: `Every other edge, opening or joint as near as the second, ${length(a)}, or far off: whichever is worse.`,
        short: `other edges ${length(a)}`,
      };
    case 'neighbours-place':
      return {
        sentence: `Neighbours in line with the edges, on the side where it is worst, none nearer to an edge than ${length(a)}.`,
        short: 'neighbours where worst',
      };
    case 'neighbours-load':
      return {
        sentence:
          'Every neighbour carries nothing, or as much as this one the same way at the same time: whichever is worse.',
        short: 'neighbours loaded alike or not',
      };
    case 'splitting':
      return {
        sentence: `Splitting reckoned with a critical edge distance of ${length(a)}, three times the greatest depth of the foot: the most that is usual.`,
        short: `c_cr,sp ${length(a)}`,
      };
    case 'poured':
      return { sentence: 'Taken as poured: it stays where it is.', short: 'poured' };
    case 'shear-direction':
      return { sentence: 'The shear goes whichever way it does most.', short: 'shear the worst way' };
  }
}

/** What must be so, or the answer does not hold. */
export const CONDITIONS: readonly string[] = [
  'It was cast in: not pushed in wet, drilled or glued in later. The concrete around it is sound and of normal weight.',
  'It has a full round foot. A bar through a hole is no foot.',
  'The plate lies flat on the concrete: no packers, no recess. The bolt is brought to snug only.',
  'Edges, spacing and thickness are not below the least of its maker’s document.',
  'Loads are design (factored) values, at rest: no earthquake, fire or fatigue.',
];

const MAY: Readonly<Record<MayDo, string>> = {
  'move back': 'Put it back where it is drawn, hold it better, and measure again.',
  'measure again': 'Measure again from both edges; take a photograph with the tape in it.',
  'keep clean': 'Keep the thread clean and capped; mark the insert “not in use yet”.',
  'try the plate': 'Try plate and bolt by hand, without load.',
};

const ASK: Readonly<Record<MustAsk, string>> = {
  'accept the place': 'Accept the insert where it stands, in writing.',
  'say the load': 'Give the design loads, tension and shear: until then its strength is not checked.',
  'carry it another way':
    'Carry the load another way, or say more of the insert: all that is assumed counts against it.',
  'not covered': 'Decide: the rules do not cover it as it stands.',
  'find the document': 'Get the maker’s product document.',
  'near the edge': 'Judge the edge: it is nearer than makers usually allow.',
  'young concrete': 'Say when it may be loaded: this concrete is young, and its strength must be shown first.',
  'change the plate': 'Any change of the plate: larger hole, slot, packers, another place.',
  'another insert': 'Another type, length or finish in its place.',
};

const NEVER: Readonly<Record<MustNot, string>> = {
  'lift or brace': 'Lift with it or brace from it.',
  'hang anything on it': 'Hang anything on it as things stand.',
  'push into wet concrete': 'Push it into the concrete after the pour.',
  'cut bars': 'Cut or bend bars, mesh or strand to make room.',
  'glue another in': 'Glue or drill another in and call it the same.',
  'straighten or weld': 'Hammer it straight, or weld to it.',
  'tap the thread': 'Tap the thread again.',
};

/** The three lists in words: what may be done now, what the design engineer must decide, what never. */
export function saySteps({ steps }: ComputedAnswer): {
  readonly may: readonly string[];
  readonly ask: readonly string[];
  readonly never: readonly string[];
} {
  return {
    may: steps.may.map((one) => MAY[one]),
    ask: steps.ask.map((one) => ASK[one]),
    never: steps.never.map((one) => NEVER[one]),
  };
}

/** Why a lifting or brace insert gets no number, and who answers. */
export function sayStop({ role }: StoppedAnswer): readonly string[] {
  const what = role === 'lifting' ? 'A lifting insert' : 'A brace insert';
  const why =
    role === 'lifting'
      ? 'If it fails, the panel falls: lifting has rules, safety factors and strengths at lifting of its own.'
      : 'If it fails, the panel falls: bracing is temporary work with rules and safety factors of its own.';
  return [
    `STOP. ${what} in the wrong place is not answered here, with no number at all.`,
    why,
    `Ask the designer of the ${role === 'lifting' ? 'lifting' : 'bracing'} and the insert’s maker, in writing. Until they answer: do not ${
      role === 'lifting' ? 'lift' : 'brace from it, and do not take away what holds the panel now'
    }.`,
    'Never use another insert of the panel in its place unless its maker rates it so.',
  ];
}

/** The least of some largest loads; null where there is none. */
function findLeast(limits: readonly Limit[]): Limit | null {
  return limits.reduce<Limit | null>(
    (least, one) =>
      least === null || (one.force ?? Number.POSITIVE_INFINITY) < (least.force ?? Number.POSITIVE_INFINITY)
        ? one
        : least,
    null,
  );
}

/** The four largest loads that are told: straight out, toward each edge, away from both. */
export function listTold({ limits, filled }: ComputedAnswer, { length }: QuantityWriter) {
  const find = (direction: Limit['direction']) => limits.find((one) => one.direction === direction) ?? null;
  const all: readonly (readonly [string, Limit | null])[] = [
    ['Tension N, straight out', find('tension')],
    [`Shear V toward the edge at ${length(filled.nearest)}`, find('toward 1')],
    [`Shear V toward the edge at ${length(filled.second)}`, find('toward 2')],
    ['Shear V away from both', findLeast(limits.filter(({ direction }) => direction.startsWith('away')))],
  ];
  return all.flatMap(([words, limit]) => (limit === null ? [] : [{ words, limit }]));
}

/** The least of all, in a few words: tension, and shear in whichever direction carries least; null where it cannot be computed. */
export function sayLeast({ limits }: ComputedAnswer, { limit }: QuantityWriter): string | null {
  if (limits.length === 0) return null;
  const say = (found: Limit | null) => (found === null || found.force === null ? 'no limit' : limit(found.force));
  const isTension = ({ direction }: Limit) => direction === 'tension';
  return `N ${say(findLeast(limits.filter(isTension)))} · V ${say(findLeast(limits.filter((one) => !isTension(one))))}`;
}
