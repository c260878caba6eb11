import { findThread } from '../../engine/hardware/threads.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import type { DocumentFault } from '../fault.ts';
import type { Entry, SiftedJob } from '../sift.ts';
import { faultAt } from './fault-at.ts';

function checkItem({ path, value: item }: Entry<CatalogueItem>): DocumentFault[] {
  const faults: DocumentFault[] = [];
  const refuse = (key: string, found: unknown, expected: string, text: string) =>
    faults.push(faultAt([...path, key], found, expected, text));
  const d = findThread(item.thread).diameter;
  const thickness = item.foot.thickness_mm ?? 0;
  if (item.embedment_mm + thickness > item.length_mm) {
    const most = item.length_mm - thickness;
    refuse(
      'embedment_mm',
      item.embedment_mm,
      `at most ${most} mm`,
      `embedment ${item.embedment_mm} mm does not fit in an insert of ${item.length_mm} mm with a foot of ${thickness} mm; expected at most ${most} mm`,
    );
  }
  if (item.bodyDiameter_mm <= d) {
    refuse(
      'bodyDiameter_mm',
      item.bodyDiameter_mm,
      `more than ${d} mm`,
      `a body of ${item.bodyDiameter_mm} mm leaves no wall around a thread ${item.thread}; expected more than ${d} mm`,
    );
  }
  if (item.foot.kind === 'diameter' && item.foot.diameter_mm <= item.bodyDiameter_mm) {
    refuse(
      'foot',
      item.foot.diameter_mm,
      `more than ${item.bodyDiameter_mm} mm`,
      `a foot of ${item.foot.diameter_mm} mm does not stand out from the body of ${item.bodyDiameter_mm} mm; expected more`,
    );
  }
  const threadEnd = item.threadStartsBelowTop_mm + item.threadDepth_mm;
  if (threadEnd > item.length_mm) {
    refuse(
      'threadDepth_mm',
      item.threadDepth_mm,
      `at most ${item.length_mm - item.threadStartsBelowTop_mm} mm`,
      `the thread would end ${threadEnd} mm below the top of an insert ${item.length_mm} mm long`,
    );
  }
  if (item.steel.yield_MPa > item.steel.ultimate_MPa) {
    refuse(
      'steel',
      item.steel.yield_MPa,
      `at most ${item.steel.ultimate_MPa} MPa`,
      `yield strength ${item.steel.yield_MPa} MPa is above the ultimate ${item.steel.ultimate_MPa} MPa`,
    );
  }
  const hole = item.crossHole;
  if (hole !== null && Math.max(hole.diameter_mm, hole.boreThere_mm) >= item.bodyDiameter_mm) {
    refuse(
      'crossHole',
      hole,
      `less than ${item.bodyDiameter_mm} mm`,
      `a cross hole of ${hole.diameter_mm} mm in a bore of ${hole.boreThere_mm} mm leaves nothing of a body of ${item.bodyDiameter_mm} mm`,
    );
  }
  if (hole !== null && hole.fromFoot_mm >= item.length_mm) {
    refuse(
      'crossHole',
      hole.fromFoot_mm,
      `less than ${item.length_mm} mm`,
      `a cross hole ${hole.fromFoot_mm} mm above the foot lies outside an insert of ${item.length_mm} mm`,
    );
  }
  item.tested.forEach((test, i) => {
    const { mode, fromStrength_MPa: from, report } = test;
    const refuseStrength = (expected: string, text: string) =>
      faults.push(faultAt([...path, 'tested', i, 'fromStrength_MPa'], from, expected, text));
    if (mode === 'pull-out' && from === null)
      refuseStrength(
        'a concrete strength in MPa',
        `the tested pull-out of report ${report} does not say from which concrete strength it holds; expected fromStrength_MPa`,
      );
    if (mode !== 'pull-out' && from !== null)
      refuseStrength(
        'null',
        `the test of steel (${mode}) of report ${report} holds whatever the concrete; expected no fromStrength_MPa, found ${from} MPa`,
      );
  });
  return faults;
}

/** Sizes of catalogue items that contradict each other. */
export function checkCatalogue(job: SiftedJob): DocumentFault[] {
  return job.items.flatMap(checkItem);
}
