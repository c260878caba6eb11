import type { Assembly } from '../../assess/set-out/assembly-type.ts';
import { writeNumbers } from '../../assess/set-out/write-numbers.ts';
import { describeFinish } from '../sheets/words.ts';

/** Heights on a section have tenths of a mm at most. */
const TENTHS = 10;

function roundTenths(value: number): number {
  // No negative zero.
  return Math.round(value * TENTHS) / TENTHS + 0;
}

/** A length in mm, with a tenth where it has one, and a true minus. */
export function writeMm(value: number): string {
  const rounded = roundTenths(value);
  return rounded < 0 ? `−${-rounded}` : String(rounded);
}

/** Sums of decimal lengths are off by less [mm]. */
const ROUNDING = 1e-6;

/**
 * Where the stack begins above the mould face [mm]: 0, unless the insert does not fit. Then what is set from the trowelled face reaches below the
 * bed, and so does a body in an edge that has concrete above it only.
 */
function findStart({ stack, place, chair, thickness }: Assembly): number {
  const isFromBed = place === 'mould face' || chair !== null || (place === 'edge' && stack.at(-1)?.kind === 'insert');
  if (isFromBed) return 0;
  const start = stack.reduce((rest, { height }) => rest - height, thickness);
  return Math.abs(start) < ROUNDING ? 0 : start;
}

/** Heights where the steps of a stack begin and end, above the mould face [mm]. */
export function findBounds(assembly: Assembly): readonly number[] {
  const bounds = [findStart(assembly)];
  for (const { height } of assembly.stack) bounds.push(bounds.at(-1)! + height);
  return bounds;
}

/** What is written at each step: rounded so that the figures add up to what is written as the total. */
export function printSteps(assembly: Assembly): readonly number[] {
  const bounds = findBounds(assembly).map(roundTenths);
  return assembly.stack.map((_, k) => roundTenths(bounds[k + 1]! - bounds[k]!));
}

/** The two faces of a panel as it lies, by the form and by the building. */
export function nameFaces(faceDown: 'outside' | 'inside'): { readonly mould: string; readonly trowelled: string } {
  const up = faceDown === 'outside' ? 'INSIDE' : 'OUTSIDE';
  return { mould: `mould face – ${faceDown.toUpperCase()}`, trowelled: `trowelled face – ${up}` };
}

const LAYER_WORDS = {
  structural: 'concrete',
  'outer skin': 'outer skin',
  insulation: 'insulation',
  liner: 'liner',
  cavity: 'cavity',
} as const;

export function nameLayer(kind: Assembly['layers'][number]['kind']): string {
  return LAYER_WORDS[kind];
}

/** Which way a side form leans is on the panel's drawing; an edge is drawn one of the two ways. */
function describeTilt({ tilt_deg }: Assembly): string[] {
  if (tilt_deg === 0) return [];
  return [
    `side form leans by ${Number(Math.abs(tilt_deg).toFixed(2))}°, axis square to it; whether in or out at the top: see the panel drawing`,
  ];
}

function describeChair({ chair }: Assembly): string[] {
  if (chair === null) return [];
  const [least, greatest] = chair.range;
  const top =
    chair.topBelowFace < 0
      ? `top ${writeMm(-chair.topBelowFace)} ABOVE the trowelled face`
      : `top ${writeMm(chair.topBelowFace)} below the trowelled face`;
  return [`${chair.part.name}: ${top}, ${writeMm(least)} to ${writeMm(greatest)} after the pour`];
}

/** Concrete enough that nobody asks for it [mm]. */
const AMPLE = 200;

/** Of each part the cover that is the scarcest, and whether it is too little; parts with ample cover all round are left out. */
function describeCovers({ covers }: Assembly): string[] {
  const near = covers.filter(({ cover, wanted }) => cover < Math.max(AMPLE, wanted));
  const parts = [...new Set(near.map(({ part }) => part))];
  const lines = parts.map((part) => {
    const own = near.filter((line) => line.part === part);
    const { toward, cover, wanted } = own.reduce((a, b) => (b.cover - b.wanted < a.cover - a.wanted ? b : a));
    const short = cover < wanted ? ': TOO LITTLE' : '';
    return `${part} ${writeMm(cover)} to ${toward} (wanted ${writeMm(wanted)}${short})`;
  });
  return lines.length === 0 ? [] : [`Least cover: ${lines.join('; ')}`];
}

/** How long the thread is, and where it starts. */
function describeThread({ item }: Assembly): string {
  const start = item.threadStartsBelowTop_mm > 0 ? `from ${writeMm(item.threadStartsBelowTop_mm)} below the top, ` : '';
  return `thread ${item.thread}, ${start}${writeMm(item.threadDepth_mm)} long`;
}

/** Lines under a section, beside its title. */
export function describeAssembly(assembly: Assembly): readonly string[] {
  const { item, way, stage, numbers } = assembly;
  return [
    `${item.id}: ${item.name}, ${item.thread} × ${writeMm(item.length_mm)}, ${describeFinish(item.finish)}; ${describeThread(assembly)}`,
    `${way.name}; stage ${stage}, ${stage === 1 ? 'before the cage' : 'with the cage'}; for ${numbers.length === 1 ? 'insert' : 'inserts'} ${writeNumbers(numbers)}`,
    ...describeChair(assembly),
    ...describeTilt(assembly),
    ...describeCovers(assembly),
  ];
}
