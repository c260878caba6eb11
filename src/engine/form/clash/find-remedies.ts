import type { Clash, ClashPart, ClashRules, ClashScene } from './clash-scene.ts';
import { moveItem } from './move-item.ts';
import type { ClashRemedies, Remedy } from './remedy.ts';
import { shiftBar, shiftLayer } from './shift-bars.ts';
import { turnCrossBar } from './turn-cross-bar.ts';

/**
 * The ways out of every clash, each computed against everything in the panel as it is: a remedy clears what it moves of all its clashes, and
 * makes no new one. Remedies of two clashes are not tried together; look again after the first.
 * @param clashes of this scene by these rules
 */
export function findRemedies(
  scene: ClashScene,
  rules: ClashRules,
  clashes: readonly Clash[],
): readonly ClashRemedies[] {
  const turns = keep((item: number) => turnCrossBar(scene, rules, item));
  const moves = keep((item: number) => moveItem(scene, rules, item));
  const shifts = keep((bar: number) => shiftBar(scene, rules, bar));
  const layers = keep((layer: string) => shiftLayer(scene, rules, layer));
  const struck = countStruckBars(scene, clashes);
  return clashes.map((clash) => {
    const parts = listParts(scene, clash);
    const found: (Remedy | null)[] = parts
      .filter(({ part }) => part.name === 'cross bar')
      .map(({ item }) => turns(item));
    const bar = clash.other.kind === 'bar' ? scene.bars[clash.other.bar]! : null;
    if (clash.other.kind === 'bar' && bar !== null) {
      found.push(shifts(clash.other.bar));
      // A layer is shifted for several bars of it; for one alone the bar is enough.
      if (struck.get(bar.layer)!.size > 1) found.push(layers(bar.layer));
    }
    const moved = parts.map(({ item }) => moves(item)).filter((one) => one !== null);
    found.push(...moved.sort((a, b) => measureMove(a) - measureMove(b)));
    return {
      clash,
      remedies: found.filter((one) => one !== null),
      fixedBar: bar === null || bar.kind === 'bars' ? null : bar.kind,
    };
  });
}

/** Remembers results: several clashes ask for the same. */
function keep<K, V>(find: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    if (!known.has(key)) known.set(key, find(key));
    return known.get(key)!;
  };
}

/** The parts of items that are in a clash, one or two. */
function listParts({ items }: ClashScene, { item, part, other }: Clash): readonly { item: number; part: ClashPart }[] {
  const first = { item, part: items[item]!.parts[part]! };
  return other.kind === 'item' ? [first, { item: other.item, part: items[other.item]!.parts[other.part]! }] : [first];
}

function countStruckBars({ bars }: ClashScene, clashes: readonly Clash[]): ReadonlyMap<string, ReadonlySet<number>> {
  const struck = new Map<string, Set<number>>();
  for (const { other } of clashes) {
    if (other.kind !== 'bar') continue;
    const { layer } = bars[other.bar]!;
    struck.set(layer, (struck.get(layer) ?? new Set()).add(other.bar));
  }
  return struck;
}

function measureMove(remedy: Remedy): number {
  return remedy.kind === 'move' ? remedy.distance : 0;
}
