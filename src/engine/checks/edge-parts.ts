import type { EdgeResistance } from '../standards/edition.ts';
import type { RowLoad } from './edge-load.ts';
import { describeHead, reportRow } from './edge-report.ts';
import { writeMessage } from './messages.ts';
import type { ShearRow } from './prepared.ts';
import type { Run } from './run.ts';
import { findDesign, loadRatio } from './verdict.ts';

type Parts = Extract<EdgeResistance, { readonly kind: 'parts' }>;

/** One part of an inclined shear and what it asks. */
interface Part {
  readonly name: 'toward' | 'along';
  readonly force: number;
  readonly eccentricity: number;
  readonly characteristic: number;
  readonly ratio: number;
}

function findPart(run: Run, name: Part['name'], load: RowLoad, resistance: Parts): Part {
  const { p } = run;
  const isToward = name === 'toward';
  const force = isToward ? load.toward : load.along;
  const eccentricity = isToward ? load.eccentricityToward : load.eccentricityAlong;
  const characteristic = resistance[name](eccentricity, null);
  const design = findDesign(p, characteristic, p.safety['concrete-edge']);
  return { name, force, eccentricity, characteristic, ratio: loadRatio(force, design) };
}

/**
 * Edge failure of a row by parts: all of the load toward the edge on the front row, and the part along the edge against twice
 * the resistance. Where both act the ratio is √(r⊥² + r∥²); the code is silent. ACI 318, 17.7.2.1. Without an action both
 * resistances are written.
 */
export function checkParts(run: Run, body: ShearRow, resistance: Parts, load: RowLoad): void {
  const { report, hasAction } = run;
  const toward = findPart(run, 'toward', load, resistance);
  const along = findPart(run, 'along', load, resistance);
  const ratio = resistance.together.fn(toward.ratio, along.ratio);
  if (hasAction) run.tally.addConcreteShear(ratio, 'concrete-edge');
  if (report === null) return;
  if (toward.force > 0 || !hasAction) reportPart(run, body, resistance, load, toward, along, ratio);
  if (along.force > 0 || !hasAction) reportPart(run, body, resistance, load, along, toward, ratio);
}

function reportPart(
  run: Run,
  body: ShearRow,
  resistance: Parts,
  load: RowLoad,
  own: Part,
  other: Part,
  ratio: number,
): void {
  const { p, report } = run;
  if (report === null) return;
  report.open(describeHead(run, body.row, body.edgeUsed, own.name));
  report.note(writeMessage(own.name === 'toward' ? 'part-toward' : 'part-along'));
  reportRow(run, report, body, load, own.eccentricity, false);
  resistance[own.name](own.eccentricity, report);
  if (own.ratio > 0 && other.ratio > 0) {
    report.note(writeMessage('edge-parts', { other: other.name }));
    const ratios = own.name === 'toward' ? [own.ratio, other.ratio] : [other.ratio, own.ratio];
    report.together(resistance.together, ratios, ratio);
  }
  if (p.group.hairpins.length > 0) report.note(writeMessage('bars-uncovered'));
  p.edition.concreteSafety('concrete-edge', p.group, report);
  report.close(own.characteristic, p.safety['concrete-edge'], run.hasAction ? own.force : null);
}
