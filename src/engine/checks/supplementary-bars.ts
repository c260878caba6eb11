import type { BarLimits, BarRules } from '../standards/edition.ts';
import type { Hairpin, SupplementaryBar } from './anchorage-group.ts';
import { roundForText, writeMessage } from './messages.ts';
import type { EdgeRow } from './prepared.ts';
import type { Report } from './report.ts';
import { nameMembers, type Run } from './run.ts';
import { findDesign, loadRatio } from './verdict.ts';

/** Normals within this angle are the edge that a hairpin serves: 10 degrees [rad]. */
const SAME_EDGE = Math.PI / 18;

/** Bars that stand in for the concrete in one row: their rows are written when the concrete's own row is closed. */
export interface BarCheck {
  report(report: Report): void;
}

/** Why a bar may not count; null where it may. */
function findFault(bar: SupplementaryBar, limits: BarLimits, reach: number): string | null {
  if (bar.diameter > limits.diameter) return `diameter ${bar.diameter} mm is above ${limits.diameter} mm`;
  if (bar.distance > reach)
    return `${roundForText(bar.distance)} mm from the insert is farther than ${roundForText(reach)} mm`;
  const shortest = (bar.hooked ? limits.hookedLength : limits.straightLength) * bar.diameter;
  const bonded = Math.min(bar.anchorageInside, bar.anchorageOutside);
  if (bonded < shortest) return `bonded length ${roundForText(bonded)} mm is below ${roundForText(shortest)} mm`;
  return null;
}

interface BarSums {
  readonly steel: number;
  readonly anchorage: number;
}

function sumBars(
  run: Run,
  rules: BarRules,
  bars: readonly SupplementaryBar[],
  reach: number,
  efficiency: number,
  report: Report | null,
): BarSums {
  const { group } = run.p;
  const { strength } = group.concrete;
  const bondFactor = rules.bondFactor(group);
  let steel = 0;
  let anchorage = 0;
  for (const [index, bar] of bars.entries()) {
    const reason = findFault(bar, rules.limits, reach);
    if (reason !== null) {
      report?.note(writeMessage('bar-ignored', { index: index + 1, reason }));
      continue;
    }
    const quality = bar.goodBond ? 1 : 0.7;
    const bond = rules.bond.fn(quality, strength, bondFactor);
    const bonded = Math.min(bar.anchorageInside, bar.anchorageOutside);
    const shape = bar.hooked ? rules.limits.hookShape : 1;
    const own = rules.steel.fn(efficiency, bar.legs, bar.diameter, bar.yield);
    const held = rules.anchorage.fn(bar.legs, bonded, bar.diameter, bond, shape);
    report?.step(rules.steel, [efficiency, bar.legs, bar.diameter, bar.yield], own);
    report?.step(rules.bond, [quality, strength, bondFactor], bond);
    report?.step(rules.anchorage, [bar.legs, bonded, bar.diameter, bond, shape], held);
    steel += own;
    // A bar cannot be held by more than its own design strength.
    anchorage += Math.min(held, findDesign(run.p, own, rules.safety));
  }
  return { steel, anchorage };
}

/** Rules for bars where there are any; where the document has none that is computed, says so. */
function findRules(run: Run, bars: readonly SupplementaryBar[]): BarRules | null {
  if (bars.length === 0) return null;
  const { bars: rules } = run.p.edition;
  if (rules === null) run.report?.note(writeMessage('bars-uncovered'));
  return rules;
}

/** Bars can be counted once only: not for several bodies that break out apart. Says so where that is the case. */
function isShared(run: Run, bodies: number): boolean {
  if (bodies > 1) run.report?.note(writeMessage('bars-shared', { count: bodies }));
  return bodies > 1;
}

/**
 * Hangers behind a cone: all of the cluster's tension on the bars, the concrete alone not counted (no sum of the two). With
 * several clusters none counts.
 * @returns the bars' rows where they carry more than the concrete does; null where the concrete governs
 */
export function checkHangers(run: Run, clusterCount: number, force: number, concreteRatio: number): BarCheck | null {
  const { hangers, insert } = run.p.group;
  const rules = findRules(run, hangers);
  if (rules === null || isShared(run, clusterCount)) return null;
  const reach = rules.limits.reach * insert.embedment;
  const sum = (report: Report | null) => sumBars(run, rules, hangers, reach, 1, report);
  const check = compare(run, rules, force, concreteRatio, sum, [], null);
  if (check !== null) run.tally.barsCarryTension = true;
  return check;
}

/**
 * Hairpins toward an edge: all of the row's shear on the loops that serve this edge. With several rows along the edge it
 * is not known which loop belongs to which, so none counts.
 */
export function checkHairpins(
  run: Run,
  row: EdgeRow,
  rowCount: number,
  force: number,
  concreteRatio: number,
): BarCheck | null {
  const { hairpins } = run.p.group;
  const rules = findRules(run, hairpins);
  if (rules === null) return null;
  const { nx, ny } = row.view.side;
  const serving = hairpins.filter((bar) => {
    const dot = Math.cos(bar.toward) * nx + Math.sin(bar.toward) * ny;
    return dot > Math.cos(SAME_EDGE);
  });
  if (serving.length === 0 || isShared(run, rowCount)) return null;
  return checkServing(run, rules, serving, row, force, concreteRatio);
}

function checkServing(
  run: Run,
  rules: BarRules,
  serving: readonly Hairpin[],
  row: EdgeRow,
  force: number,
  concreteRatio: number,
): BarCheck | null {
  const { insert, member } = run.p.group;
  const depth = Math.max(...serving.map((bar) => bar.depth));
  // What is left of a thin member below the loop is its effective depth.
  const z = 0.85 * Math.min(member.thickness - depth, 2 * insert.embedment, 2 * row.edge);
  const tension = rules.tensionFromShear.fn(depth, z, force);
  const check = compare(
    run,
    rules,
    tension,
    concreteRatio,
    (report) => {
      report?.step(rules.tensionFromShear, [depth, z, force], tension);
      return sumBars(run, rules, serving, rules.limits.reach * row.edge, rules.loopEfficiency, report);
    },
    row.front,
    row,
  );
  if (check !== null) run.tally.barsCarryShear = true;
  return check;
}

function compare(
  run: Run,
  rules: BarRules,
  force: number,
  concreteRatio: number,
  sum: (report: Report | null) => BarSums,
  members: readonly number[],
  row: EdgeRow | null,
): BarCheck | null {
  const { steel, anchorage } = sum(null);
  const steelRatio = loadRatio(force, findDesign(run.p, steel, rules.safety));
  const anchorageRatio = loadRatio(force, anchorage);
  const larger = Math.max(steelRatio, anchorageRatio);
  if (larger >= concreteRatio) {
    run.report?.note(writeMessage('bars-weaker'));
    sum(run.report);
    return null;
  }
  const mode = steelRatio >= anchorageRatio ? 'bar-steel' : 'bar-anchorage';
  if (row === null) run.tally.addConcreteTension(larger, mode);
  else run.tally.addConcreteShear(larger, mode);
  return {
    report(report) {
      const inserts = row === null ? run.p.group.positions.map(({ id }) => id) : nameMembers(run, members);
      const edge = row === null ? {} : { edge: row.view.side };
      report.open({ mode: 'bar-steel', inserts, clause: rules.steel, ...edge });
      sum(report);
      report.close(steel, rules.safety, force);
      report.open({ mode: 'bar-anchorage', inserts, clause: rules.anchorage, ...edge });
      // Anchorage is a design value already: bond strength carries γ_c.
      report.close(anchorage, 1, force);
    },
  };
}
