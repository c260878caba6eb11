import { type WrittenStep, writeNumber } from '../../engine/checks/write-step.ts';
import { diametralAllowance, stripReduction } from '../../engine/hardware/thread-shear.ts';
import { findThread } from '../../engine/hardware/threads.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import { findThreadTest, steelPathOf } from './steel-parts.ts';
import { toNewton } from './units.ts';

/** How the area of one steel part comes about, step by step; each step's numbers give its result. */
export interface ExplainedPart {
  readonly name: string;
  readonly steps: readonly WrittenStep[];
}

/** A measured or tabled number and where it is from. */
function quantity(symbol: string, result: number, unit: string, how: string): WrittenStep {
  return { symbol, unit, formula: how, numbers: '', result, clause: '' };
}

/** The area of a part by a formula of plain arithmetic. */
function area(formula: string, values: Readonly<Record<string, number>>, result: number, source: string): WrittenStep {
  const numbers = formula.replace(/[A-Za-z_][A-Za-z0-9_]*/g, (word) =>
    Object.hasOwn(values, word) ? writeNumber(values[word]!) : word,
  );
  return { symbol: 'A_s', unit: 'mm2', formula, numbers, result, clause: source };
}

const STRIP_SOURCE = 'FED-STD-H28/2B; 1/√3: von Mises';

/** Share of a strip area that counts, as a step. */
function reductionStep(item: CatalogueItem, diameter: number): WrittenStep {
  const ratio = item.bodyDiameter_mm / diameter;
  const r = writeNumber(ratio);
  const how =
    ratio < 1.9
      ? `0.897 * (3.8 r - r^2 - 2.61), r = body over thread = ${r}; E. M. Alexander, SAE 770420`
      : `bending of the threads only: r = body over thread = ${r}, at least 1.9; E. M. Alexander, SAE 770420`;
  return quantity('k_s', stripReduction(ratio)!, '', how);
}

/** Steps of one part, by its name. */
function explainPart(item: CatalogueItem, name: string, partArea: number, engagement: number): readonly WrittenStep[] {
  const thread = findThread(item.thread);
  const allowance = diametralAllowance(thread, item.threadClass);
  const wider = allowance === 0 ? 'class 6H' : `class ${item.threadClass}, ${writeNumber(allowance)} mm above 6H`;
  const { bodyDiameter_mm: D, crossHole } = item;
  if (name === 'body around the thread') {
    const bore = thread.diameter + allowance;
    return [
      quantity('d_b', bore, 'mm', `bore over the thread's flanks, ${thread.name} ${wider}`),
      area('pi / 4 * (D^2 - d_b^2)', { D, d_b: bore }, partArea, 'ring of the body'),
    ];
  }
  if (name === 'body at the cross hole' && crossHole !== null) {
    const values = { R: D / 2, a: crossHole.diameter_mm / 2, r: crossHole.boreThere_mm / 2 };
    const solid = 'pi * R^2 - 2 * (a * sqrt(R^2 - a^2) + R^2 * asin(a / R))';
    const how = `hole of ${crossHole.diameter_mm} mm across a body of ${D} mm`;
    if (values.r === 0) return [area(solid, values, partArea, `${how}, exact`)];
    const b = Math.min(values.a, values.r);
    const hollow = `${solid} - pi * r^2 + 2 * (b * sqrt(r^2 - b^2) + r^2 * asin(b / r))`;
    return [area(hollow, { ...values, b }, partArea, `${how}, bored to ${crossHole.boreThere_mm} mm, exact`)];
  }
  const common = { L: engagement, P: thread.pitch };
  if (name === "stripping of the bolt's thread") {
    const D_1 = thread.internal6H.minorMax + allowance;
    const d_2 = thread.bolt6g.pitchMin;
    const k_s = reductionStep(item, thread.diameter);
    return [
      k_s,
      quantity('D_1', D_1, 'mm', `greatest minor diameter inside, ${wider}`),
      quantity('d_2', d_2, 'mm', 'least pitch diameter of the bolt, class 6g'),
      area(
        'k_s / sqrt(3) * pi * L / P * D_1 * max(0, P / 2 + (d_2 - D_1) / sqrt(3))',
        { ...common, k_s: k_s.result, D_1, d_2 },
        partArea,
        STRIP_SOURCE,
      ),
    ];
  }
  if (name === "stripping of the insert's thread") {
    const d = thread.bolt6g.outsideMin;
    const D_2 = thread.internal6H.pitchMax + allowance;
    const k_s = reductionStep(item, thread.diameter);
    return [
      quantity('d', d, 'mm', 'least outside diameter of the bolt, class 6g'),
      quantity('D_2', D_2, 'mm', `greatest pitch diameter inside, ${wider}`),
      area(
        'k_s / sqrt(3) * pi * L / P * d * max(0, P / 2 + (d - D_2) / sqrt(3))',
        { ...common, k_s: k_s.result, d, D_2 },
        partArea,
        STRIP_SOURCE,
      ),
    ];
  }
  const test = findThreadTest(item);
  if (test !== null && name.startsWith('thread as tested'))
    return [
      area(
        'N_Rk / f_uk',
        { N_Rk: toNewton(test.characteristic_kN), f_uk: item.steel.ultimate_MPa },
        partArea,
        `the area that gives the tested value, report ${test.report}`,
      ),
    ];
  const { pitchDiameter: d_2, externalMinor: d_3 } = thread;
  return [area('pi / 4 * ((d_2 + d_3) / 2)^2', { d_2, d_3 }, partArea, `stress area of ${thread.name}, ISO 898-1`)];
}

/**
 * How the areas of an insert's steel parts come about, in the order of `steelPathOf`.
 * @param engagement length of full thread in contact [mm]
 */
export function explainSteelParts(
  item: CatalogueItem,
  bolt: Parameters<typeof steelPathOf>[1],
  engagement: number,
): readonly ExplainedPart[] {
  return steelPathOf(item, bolt, engagement).parts.map(({ name, area: partArea }) => ({
    name,
    steps: explainPart(item, name, partArea, engagement),
  }));
}
