import { writeMessage } from '../../checks/messages.ts';
import type { BlowOutQuestion, ResistanceUnder } from '../edition.ts';
import * as blow from './blow-out.ts';
import type { AciUnits } from './units.ts';

/** A corner nearer than this multiple of c_a1 counts for one insert, 17.6.4.1.1. */
export const CORNER_REACH = 3;

/** An eccentricity below this share of c_a1 is rounding. */
const NO_ECCENTRICITY = 1e-9;

/**
 * Side-face blow-out of a row along one edge, 17.6.4: a corner counts for one insert, the outer spacing for several. The
 * document gives no factor for unequal tension.
 */
export function resistBlowOut(units: AciUnits, question: BlowOutQuestion): ResistanceUnder<number> {
  const { edge: c, corner, bearingArea, strength, count, outerSpacing, lightweightFactor: lambda } = question;
  const k = units.coefficients.blowOut;
  const basic = blow.blowOutBasic(k, c, bearingArea, lambda, strength);
  const isAtCorner = count === 1 && corner < CORNER_REACH * c;
  const ofCorner = isAtCorner ? blow.blowOutCornerFactor(corner, c) : 1;
  const ofGroup = count > 1 ? blow.blowOutGroupFactor(outerSpacing, c) : 1;
  const value = blow.blowOutResistance(basic, ofCorner, ofGroup);
  return (eccentricity, sink) => {
    if (sink !== null) {
      if (eccentricity > NO_ECCENTRICITY * c) sink.note(writeMessage('blow-out-unequal'));
      sink.quantity('k_sb', k, '-', units.printed.blowOut);
      sink.step(blow.BLOW_OUT_BASIC, [k, c, bearingArea, lambda, strength], basic);
      sink.basic(basic);
      if (isAtCorner) {
        sink.quantity('c_a2', corner, 'mm', 'distance to the nearest corner');
        sink.step(blow.BLOW_OUT_CORNER_FACTOR, [corner, c], ofCorner);
      } else
        sink.quantity(
          blow.BLOW_OUT_CORNER_FACTOR.symbol,
          1,
          '-',
          count > 1 ? 'a row: no corner factor' : 'no corner nearer than 3 c_a1',
        );
      if (count > 1) {
        sink.quantity('s', outerSpacing, 'mm', 'between the outer inserts, along the edge');
        sink.step(blow.BLOW_OUT_GROUP_FACTOR, [outerSpacing, c], ofGroup);
      } else sink.quantity(blow.BLOW_OUT_GROUP_FACTOR.symbol, 1, '-', 'one insert');
      sink.factor('corner', ofCorner);
      sink.factor('group', ofGroup);
      sink.step(blow.BLOW_OUT_RESISTANCE, [basic, ofCorner, ofGroup], value);
    }
    return value;
  };
}
