import type { ConnectionState } from '../connection-answer.ts';
import type { FilledCase } from './fill-case.ts';

/** What may be done without asking anyone. */
export type MayDo = 'move back' | 'measure again' | 'keep clean' | 'try the plate';

/** What the design engineer must decide first. */
export type MustAsk =
  | 'accept the place'
  | 'say the load'
  | 'carry it another way'
  | 'not covered'
  | 'find the document'
  | 'near the edge'
  | 'young concrete'
  | 'change the plate'
  | 'another insert';

/** What must not be done at all. */
export type MustNot =
  | 'lift or brace'
  | 'hang anything on it'
  | 'push into wet concrete'
  | 'cut bars'
  | 'glue another in'
  | 'straighten or weld'
  | 'tap the thread';

/** What follows for those who stand beside the panel. */
export interface NextSteps {
  readonly may: readonly MayDo[];
  readonly ask: readonly MustAsk[];
  readonly never: readonly MustNot[];
}

/** Below it concrete is young: loads wait until its strength has been shown [MPa] (common practice for stripping and erecting). */
const YOUNG = 20;

/** Product documents rarely allow an edge nearer than this [mm], or than so many threads (common practice). */
const NEAR_EDGE = 50;
const NEAR_EDGE_THREADS = 3;

/** Whether an edge is nearer than product documents usually allow. */
function isNearEdge({ nearest, thread }: Pick<FilledCase, 'nearest' | 'thread'>): boolean {
  return nearest < Math.max(NEAR_EDGE, NEAR_EDGE_THREADS * thread.diameter);
}

/** Whether the concrete is too young to be loaded without proof. */
function isYoung({ strength }: Pick<FilledCase, 'strength'>): boolean {
  return strength < YOUNG;
}

/**
 * What may be done now, what needs the design engineer, what never: by what the case is and how it was answered.
 * @param reasons why it can never be a pass
 */
export function listSteps(filled: FilledCase, state: ConnectionState, reasons: readonly string[]): NextSteps {
  const { isPoured, known } = filled;
  const pick = <T>(...items: readonly (readonly [boolean, T])[]): readonly T[] =>
    items.filter(([holds]) => holds).map(([, item]) => item);
  return {
    may: pick<MayDo>(
      [!isPoured, 'move back'],
      [true, 'measure again'],
      [isPoured, 'keep clean'],
      [isPoured && state === 'passes', 'try the plate'],
    ),
    ask: pick<MustAsk>(
      [true, 'accept the place'],
      [filled.load === null, 'say the load'],
      [state === 'fails', 'carry it another way'],
      [reasons.length > 0, 'not covered'],
      [known.document === null, 'find the document'],
      [isNearEdge(filled), 'near the edge'],
      [isYoung(filled), 'young concrete'],
      [isPoured, 'change the plate'],
      [!isPoured, 'another insert'],
    ),
    never: pick<MustNot>(
      [true, 'lift or brace'],
      [state !== 'passes', 'hang anything on it'],
      [!isPoured, 'push into wet concrete'],
      [true, 'cut bars'],
      [isPoured, 'glue another in'],
      [isPoured, 'straighten or weld'],
      [isPoured, 'tap the thread'],
    ),
  };
}
