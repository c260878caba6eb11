import type { Changes } from '../assess/choose/choice.ts';
import type { Deed, Vain } from '../assess/remedies/remedy.ts';
import { nameSideBehind, type Sight, tellMove } from './move-words.ts';
import type { QuantityWriter } from './quantities.ts';

type Writer = Pick<QuantityWriter, 'length' | 'strength'>;

function tellChanges({ holes, boltThread, boltClass, move }: Changes, sight: Sight, writer: Writer): readonly string[] {
  return [
    ...(move === null ? [] : [`moved ${tellMove(move, sight, writer)}`]),
    ...(boltClass === null ? [] : [`bolts of class ${boltClass.to}`]),
    ...(holes === null ? [] : [`holes ${holes.ids.join(', ')} drilled to ${writer.length(holes.to)}`]),
    ...(boltThread === null ? [] : [`bolts ${boltThread.to}`]),
  ];
}

/** What to do, as a person says it: `move it 40 mm up, away from the edge below it (90 mm, then 130 mm)`. */
export function tellDeed(deed: Deed, sight: Sight, writer: Writer): string {
  const { length, strength } = writer;
  switch (deed.kind) {
    case 'insert': {
      const { from, to, changes, plate } = deed;
      const first =
        from === to.id ? `keep ${to.id}` : `take ${to.id} (${to.thread} × ${length(to.length_mm)}) in place of ${from}`;
      const thick = plate === null ? [] : [`plate ${length(plate)} thick`];
      return [first, ...tellChanges(changes, sight, writer), ...thick].join(', ');
    }
    case 'move': {
      const { move, behind } = deed;
      const told = `move it ${tellMove(move, sight, writer)}`;
      if (behind === null) return told;
      const then = behind + Math.hypot(move.dx, move.dy);
      return `${told}, away from the edge ${nameSideBehind(move, sight)} (${length(behind)}, then ${length(then)})`;
    }
    case 'bolts':
      return `take bolts of class ${deed.to} in place of ${deed.from}`;
    case 'plate':
      return `make the plate ${length(deed.to)} thick in place of ${length(deed.from)}`;
    case 'concrete': {
      const { panel, from, to } = deed;
      return `cast panel ${panel} in ${to.id} (${strength(to.strength)}) in place of ${from.id} (${strength(from.strength)})`;
    }
    case 'thickness':
      return `make panel ${deed.panel} ${length(deed.to)} thick in place of ${length(deed.from)}`;
  }
}

/** What was tried and does not do, in words. */
export function tellVain(vain: Vain, sight: Sight, writer: Writer): string {
  const { length } = writer;
  switch (vain.kind) {
    case 'inserts':
      return vain.count === 1
        ? 'the other insert of the catalogue'
        : `the ${vain.count} other inserts of the catalogue`;
    case 'move':
      return `moving it up to ${length(vain.most)} along the axes of the drawing`;
    case 'bolts':
      return `bolts up to class ${vain.most}`;
    case 'plate':
      return `a plate up to ${length(vain.most)} thick`;
    case 'concrete':
      return `concrete up to ${vain.most}`;
    case 'thickness':
      return `a panel up to ${length(vain.most)} thick`;
    case 'together':
      return `plate, insert, bolts and a move up to ${length(vain.move)} changed together`;
    case 'refused':
      return `${tellDeed(vain.deed, sight, writer)}: ${vain.why}`;
  }
}
