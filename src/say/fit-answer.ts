import type { AsCastConnection, Remedy } from '../assess/as-cast/as-cast-report.ts';
import type { Panel } from '../job/documents/panel.ts';
import { goesOn, NEVER_ALONE, tellPlateMove } from './fit-words.ts';
import { STATE_WORDS } from './words.ts';

/** How an answer is meant; `unsure` is never green. */
export type FitKind = 'good' | 'move' | 'wrong' | 'unsure' | 'ask';

/** The answer to somebody with the plate in his hands. */
export interface FitAnswer {
  readonly kind: FitKind;
  /** What to do, in one sentence. */
  readonly words: string;
  readonly more: readonly string[];
  /** What he may do himself, to be recorded; null: nothing, or it is decided already. */
  readonly remedy: Remedy | null;
}

/** A hole whose bolt does not go in where the plate lies best. */
export interface LackingHole {
  readonly id: string;
  /** [mm] */
  readonly lacks: number;
}

/** Rounding both ways to whole mm, or to tenths, moves a plate by at most this [mm]. */
const ROUNDED = { whole: Math.SQRT1_2, tenths: Math.SQRT1_2 / 10 } as const;

/** Of places that were turned and shifted [mm]. */
const ROUNDING = 1e-6;

const TENTHS = (mm: number) => `${Number(mm.toFixed(1))} mm`;
const WHOLE = (mm: number) => `${Math.round(mm)} mm`;

/** How far a turn moves the hole that is farthest from their middle, about which it turns [mm]. */
function findSweep(holes: Remedy['holes'], turn_deg: number): number {
  if (holes === null || holes.length === 0) return 0;
  const middle = (axis: 0 | 1) => holes.reduce((sum, { at_mm }) => sum + at_mm[axis], 0) / holes.length;
  const [x, y] = [middle(0), middle(1)];
  const radius = Math.max(...holes.map(({ at_mm }) => Math.hypot(at_mm[0] - x, at_mm[1] - y)));
  return (radius * Math.abs(turn_deg) * Math.PI) / 180;
}

/** The movement as a person with a rule makes it: what the holes leave takes up a small turn and rounding, so that neither is asked of him. */
function tellByHand(remedy: Remedy, connection: AsCastConnection['connection'], panel: Panel): string | null {
  const { move } = remedy.change;
  if (move === null) return null;
  const margin = remedy.clearance?.margin ?? 0;
  const sweep = findSweep(remedy.holes, move.turn_deg);
  const isTurnTaken = sweep + ROUNDED.tenths <= margin;
  const left = margin - (isTurnTaken ? sweep : 0);
  const plain = isTurnTaken ? { ...move, turn_deg: 0 } : move;
  return tellPlateMove(plain, connection, panel, left >= ROUNDED.whole ? WHOLE : TENTHS);
}

/** What leaves plate and holes as they are. */
const LEAVES_PLATE: ReadonlySet<Remedy['kind']> = new Set(['as is', 'plate moved', 'packers or other bolts']);

/** Of the ways that leave the plate as it is the best: one that works and may be decided on site, else one that works, else one of which the strength is not known. Null: none goes on. */
export function pickFit({ remedies }: Pick<AsCastConnection, 'remedies'>): Remedy | null {
  const fitting = remedies.filter(
    (one) => LEAVES_PLATE.has(one.kind) && one.verdict !== 'does not work' && goesOn(one),
  );
  return (
    fitting.find(({ verdict, act }) => verdict === 'works' && act === 'decide on site') ??
    fitting.find(({ verdict }) => verdict === 'works') ??
    fitting[0] ??
    null
  );
}

/** What is done with the plate, for the person who does it. */
function tellHow(remedy: Remedy, connection: AsCastConnection['connection'], panel: Panel): string {
  const moved = tellByHand(remedy, connection, panel);
  if (remedy.kind === 'as is' || (remedy.kind === 'plate moved' && moved === null))
    return remedy.clearance === null ? 'Nothing to change' : 'Goes on as drawn';
  if (remedy.kind !== 'plate moved' || moved === null) return remedy.words;
  return moved.startsWith('turned') ? `Turn the plate ${moved.slice('turned '.length)}` : `Shift the plate ${moved}`;
}

/** Sentences of the desk begin small, as parts of others. */
export function asSentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.!?]$/.test(words) ? '' : '.'}`;
}

/** A way that leaves the plate as it is: who may say so, and what is not known of it. */
function answerFitting(remedy: Remedy, found: AsCastConnection, panel: Panel): FitAnswer {
  const words = tellHow(remedy, found.connection, panel);
  const more = [...remedy.conditions, ...remedy.why].map(asSentence);
  if (remedy.verdict === 'not known')
    return {
      kind: 'unsure',
      words,
      more: ['So it goes on. That is no pass: the design engineer is asked before it is loaded.', ...more],
      remedy,
    };
  if (remedy.act === 'change the design')
    return {
      kind: 'ask',
      words: `Ask first. ${words}`,
      more: [
        'Computed so it works, but it is farther off than the limits that the design engineer gave: that is for him to say.',
        ...more,
      ],
      remedy,
    };
  return { kind: remedy.kind === 'as is' ? 'good' : 'move', words, more, remedy };
}

/** Nothing that leaves the plate as it is helps: what is missing, and what not to do. */
function answerBlocked({ remedies }: AsCastConnection, lacking: LackingHole | null): FitAnswer {
  const left = remedies.filter(({ kind }) => LEAVES_PLATE.has(kind));
  const lacks = lacking === null ? '' : `: hole ${lacking.id} lacks ${Math.ceil(10 * lacking.lacks) / 10} mm`;
  const others = remedies.filter(({ kind, verdict }) => !LEAVES_PLATE.has(kind) && verdict === 'works');
  const why = lacking === null ? (left.find(goesOn)?.why ?? []) : [];
  return {
    kind: 'wrong',
    words: lacking === null ? 'Does not work where it stands: do not load it' : `Does not go on${lacks}`,
    more: [
      ...why.map(asSentence),
      NEVER_ALONE,
      others.length === 0
        ? 'Ask the design engineer.'
        : `Ask the design engineer: ${others.length === 1 ? 'one way is' : `${others.length} ways are`} computed that would work.`,
    ],
    remedy: null,
  };
}

/** What goes on is green only where the design passes: its place is not what is to blame, and not what makes it good. */
function tellDesign(kind: FitKind, { before }: AsCastConnection): Pick<FitAnswer, 'kind' | 'more'> {
  const fine = 'Every insert is within its tolerance: nothing to decide about its place.';
  if (before.state === 'passes') return { kind, more: [fine] };
  const doubt = `As designed its strength ${before.state === 'strength not checked' ? 'is not checked' : STATE_WORDS[before.state]}: that is no pass. The design engineer is asked before it is loaded.`;
  return { kind: 'unsure', more: [doubt, fine] };
}

/** Within tolerance: it goes on as drawn, or in the play of its holes. */
function answerFine(found: AsCastConnection, panel: Panel, roomAsDrawn: number | null): FitAnswer {
  const good = { ...tellDesign('good', found), remedy: null };
  if (roomAsDrawn === null) return { ...good, words: 'Stands as drawn' };
  if (roomAsDrawn >= -ROUNDING) return { ...good, words: 'Goes on as drawn' };
  const moved = found.remedies.find(({ kind }) => kind === 'plate moved');
  if (moved === undefined) return { ...good, words: 'Goes on in the play of its holes' };
  return { ...tellDesign('move', found), remedy: null, words: tellHow(moved, found.connection, panel) };
}

/** What was decided, as it was computed then: a strength that nobody knew is no pass because somebody signed for it. */
function answerDecided({ decision }: AsCastConnection): FitAnswer {
  if (decision === null) return { kind: 'ask', words: 'Decided', more: [], remedy: null };
  const { remedy, words, computed, reason } = decision.body;
  if (remedy === 'not usable')
    return { kind: 'wrong', words: 'NOT USABLE: do not load it', more: [words, reason], remedy: null };
  const known: Readonly<Record<typeof computed.state, FitKind>> = {
    works: 'good',
    'not known': 'unsure',
    'does not work': 'wrong',
  };
  const doubt = computed.state === 'not known' ? ['Decided with its strength not known: that is no pass.'] : [];
  return { kind: known[computed.state], words, more: [...doubt, reason], remedy: null };
}

/** What the plate comes to where it lies. */
export interface PlateFit {
  /** Least room of a bolt with the plate as drawn [mm]; null: no plate. */
  readonly roomAsDrawn: number | null;
  /** The hole that lacks most where the plate lies best; null: all go in, or there is no plate. */
  readonly findLacking: () => LackingHole | null;
}

/** Whether a bracket goes on as its inserts came out, for the person who stands before them. */
export function answerFit(found: AsCastConnection, panel: Panel, { roomAsDrawn, findLacking }: PlateFit): FitAnswer {
  const none = { more: [], remedy: null };
  switch (found.state) {
    case 'not surveyed':
      return { ...none, kind: 'unsure', words: 'Not surveyed: nobody knows whether it goes on' };
    case 'conflict':
      return {
        ...none,
        kind: 'unsure',
        words: 'Two say different things of it, and neither knew of the other',
        more: [
          'Measure it once more, or have it decided anew, by somebody who has seen both. Until then the worse counts.',
        ],
      };
    case 'fine':
      return answerFine(found, panel, roomAsDrawn);
    case 'not usable':
    case 'decided':
      return answerDecided(found);
    case 'fine as it is':
    case 'needs a remedy': {
      const remedy = pickFit(found);
      return remedy === null ? answerBlocked(found, findLacking()) : answerFitting(remedy, found, panel);
    }
  }
}
