import { findHoldingMethod, findHoldingStage } from '../../engine/form/holding-methods.ts';
import { findUsualScatter } from '../../engine/form/holding-scatter.ts';
import { findAsideAlongAxis, findAsideAtDistance } from '../../engine/form/tilt.ts';
import { showLength } from '../../job/resolve/local-member-type.ts';
import { type AssemblyQuestion, type Finding, findPart } from './assembly-question.ts';
import type { Assembly } from './assembly-type.ts';
import { checkMethod } from './check-method.ts';
import { findCovers } from './find-covers.ts';
import { findCrossBar } from './find-cross-bar.ts';
import { findStack, type Stacked } from './find-stack.ts';
import { findHoldingSite, type HoldingSite } from './holding-site.ts';

/** An assembly before it has a letter, and before it is known which inserts share it. */
export type AssemblyDraft = Omit<Assembly, 'letter' | 'numbers'>;

/** Packers that the move of a plate on a tilted axis is told for [mm]. */
const PACKERS_TOLD = 10;

/** What a battered side form does: a tilted axis, the foot aside, and a plate that bears elsewhere. */
function describeTilt({ castIn, item }: AssemblyQuestion, { tilt }: HoldingSite): Finding[] {
  if (tilt === 0) return [];
  const degrees = Math.abs((tilt * 180) / Math.PI);
  const foot = Math.abs(findAsideAlongAxis(tilt, castIn.recess_mm + item.length_mm));
  const perPackers = Math.abs(findAsideAtDistance(tilt, PACKERS_TOLD));
  const text = `the side form leans by ${Number(degrees.toFixed(2))}° and the axis with it: the foot lies ${showLength(foot)} higher or lower than the axis at the face, and each ${PACKERS_TOLD} mm between the face and a plate move its contact by ${showLength(perPackers)}; no rule here computes its strength`;
  return [{ severity: 'warning', kind: 'stack', text }];
}

function listParts(question: AssemblyQuestion, { chair }: Stacked): Assembly['parts'] {
  const own = question.way.parts.map(({ part, count, per }) => ({ part: findPart(question, part), count, per }));
  return chair === null ? own : [...own, { part: chair.part, count: 1, per: 'insert' }];
}

/** From the top of the side form, which is the level of the panel's own trowelled face [mm]: below it, or above. */
function tellFromSideForm(depth: number): string {
  return `${showLength(Math.abs(depth))} ${depth < 0 ? 'above' : 'below'} the top of the side form`;
}

/**
 * How deep the top is set, to be measured from the side form, and from the face of a rebate as well; it must not stand above its face.
 * Nothing where the stack cannot be built: its finding says what to change.
 */
function tellTop({ place }: AssemblyQuestion, { surface }: HoldingSite, stacked: Stacked): string[] {
  const { top, chair, findings } = stacked;
  const cannotBe = findings.some(({ severity, kind }) => severity === 'error' && kind === 'stack');
  if (place !== 'trowelled face' || cannotBe) return [];
  const below =
    surface.trowelled === 0
      ? `Top lies ${tellFromSideForm(top)}, never above it`
      : `Top lies ${showLength(top)} below the trowelled face there, never above it: ${tellFromSideForm(top + surface.trowelled)}`;
  return [chair === null ? `${below}.` : `${below}, on ${chair.part.name}.`];
}

function listCheckLines(question: AssemblyQuestion, site: HoldingSite, stacked: Stacked, bar: string): string[] {
  const { before, after } = findHoldingMethod(question.way.method);
  const degrees = Math.abs((site.tilt * 180) / Math.PI);
  const tilt =
    site.tilt === 0 ? [] : [`Axis stands square to the side form, which leans by ${Number(degrees.toFixed(2))}°.`];
  return [...before, ...after, ...tellTop(question, site, stacked), ...tilt, bar];
}

/**
 * How one insert is built into the form: what makes up the thickness, the concrete around its parts, the parts themselves, what is ticked, and
 * what is wrong with it.
 *
 * @throws Error when the way names a part that the yard does not list, no chair, or a chair without a height: the job's reader refuses all
 */
export function findAssembly(question: AssemblyQuestion): AssemblyDraft {
  const { panel, castIn, item, way, place } = question;
  const site = findHoldingSite(question);
  const stacked = findStack(question, site);
  const cross = findCrossBar(question);
  const covered = findCovers(question, site, stacked.top, cross.bar);
  const usual = findUsualScatter(way.method, place);
  const findings = [
    ...checkMethod(question),
    ...stacked.findings,
    ...cross.findings,
    ...covered.findings,
    ...describeTilt(question, site),
  ];
  return {
    item,
    way,
    place,
    layers: site.layers,
    thickness: site.thickness,
    surface: site.surface,
    recess: castIn.recess_mm,
    stack: stacked.steps,
    chair: stacked.chair,
    tilt_deg: castIn.face === 'edge' ? (site.tilt * 180) / Math.PI : 0,
    crossBar: cross.bar,
    covers: covered.covers,
    parts: listParts(question, stacked),
    checkLines: listCheckLines(question, site, stacked, cross.words),
    stage: findHoldingStage(way.method, place) ?? (place === 'trowelled face' ? 2 : 1),
    scatter: way.scatter === null ? usual : { position: way.scatter.position_mm, level: way.scatter.level_mm },
    problems: findings.map((finding) => ({ ...finding, panel: panel.mark, insert: castIn.id })),
  };
}
