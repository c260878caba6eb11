import type { ChooseOptions, ConnectionChoice, RejectedInsert } from '../../assess/choose/choice.ts';
import type { Decisive } from '../../assess/connection-answer.ts';
import { showRatio } from '../../say/numbers.ts';
import { nameMode } from '../../say/words.ts';
import { layPoint, layText } from './table.ts';

/** What would help against each way to fail, in the trade's words. */
const REMEDIES: Readonly<Record<Decisive, string>> = {
  'steel-tension': 'stronger bolts, a thicker thread, more inserts',
  'steel-shear': 'stronger bolts, a thicker thread, less height of packers or mortar under the plate, more inserts',
  'interaction-steel': 'stronger bolts, a thicker thread, more inserts',
  'interaction-all': 'more inserts or wider spacing, more distance to edges, stronger bolts',
  'concrete-cone':
    'longer inserts (a thicker panel has room for them), wider spacing, more inserts, more distance to edges and openings, hanger bars',
  'pull-out': 'an insert with a larger foot, more inserts, stronger concrete',
  'blow-out': 'more distance to the edge, an insert with a larger foot, a shorter insert',
  splitting: 'a thicker panel, more distance to edges, reinforcement that limits the crack width',
  'pry-out': 'longer inserts, wider spacing, more inserts',
  'concrete-edge':
    'more distance to the edge, stirrups or hairpins along it, more inserts along the edge, a thicker panel',
  'interaction-concrete':
    'longer inserts, more inserts or wider spacing, more distance to edges, hanger bars or hairpins',
  'bar-steel': 'more or thicker bars',
  'bar-anchorage': 'longer anchorage of the bars on both sides, hooks',
  'plate-bending': 'a thicker plate, or a wider attachment on it',
};

/** Ratios that differ by less are alike. */
const ALIKE = 1e-6;

/**
 * The insert that comes nearest to passing: the least ratio of those that fail by strength alone, else of those not covered. Of those
 * alike, one that stands there already.
 */
function findNearest({ rejected, present }: ConnectionChoice): RejectedInsert | null {
  const isThere = ({ item }: RejectedInsert) => present.includes(item.id);
  const isNearer = (one: RejectedInsert, least: RejectedInsert) =>
    one.ratio! < least.ratio! - ALIKE || (one.ratio! <= least.ratio! + ALIKE && isThere(one) && !isThere(least));
  const nearest = (those: readonly RejectedInsert[]) =>
    those
      .filter(({ ratio, governing }) => ratio !== null && governing !== null)
      .reduce<RejectedInsert | null>((least, one) => (least === null || isNearer(one, least) ? one : least), null);
  return (
    nearest(rejected.filter(({ why, reasons }) => why === 'fails' && reasons.length === 0)) ??
    nearest(rejected.filter(({ why }) => why === 'not covered' || why === 'fails'))
  );
}

/** By how much the loads would have to fall: at 1/ratio of them each mode is within its resistance. */
function describeLoad(ratio: number): string {
  if (!Number.isFinite(ratio)) return 'no load of this kind is resisted';
  return `at ${Math.floor(1000 / ratio) / 10} % of all loads it passes`;
}

function listUntried({ move, drills, strongerBolts }: ChooseOptions): string[] {
  return [
    ...(move === 0 ? ['moving the connection (--move MM)'] : []),
    ...(drills ? [] : ['holes drilled larger for another thread (--drill)']),
    ...(strongerBolts ? [] : ['stronger bolts (--bolt-class)']),
  ];
}

/** What to do where no insert passes: which comes nearest, what limits it, what would help, what was not tried. */
export function adviseOnNone(choice: ConnectionChoice, options: ChooseOptions, width: number, indent: string): string {
  const nearest = findNearest(choice);
  const lines: string[] = [];
  if (nearest === null) lines.push('None could be computed: the reasons below say what stands in the way.');
  else if (nearest.reasons.length > 0) {
    lines.push(
      `Nearest: ${nearest.item.id}, ${showRatio(nearest.ratio)} used, but not covered: ${nearest.reasons.join('; ')}`,
    );
  } else {
    const { mode, combination } = nearest.governing!;
    lines.push(
      `Nearest: ${nearest.item.id}, ${showRatio(nearest.ratio)}, ${nameMode(mode)} (${combination}); ${describeLoad(nearest.ratio!)}`,
      `What would help: ${REMEDIES[mode]}`,
    );
  }
  const untried = listUntried(options);
  if (untried.length > 0) lines.push(`Not tried: ${untried.join(', ')}`);
  return [
    layText('No insert of the catalogue makes it pass.', width, indent),
    ...lines.map((line) => layPoint(line, width, indent)),
  ].join('\n');
}
