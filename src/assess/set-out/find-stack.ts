import { chooseChair, type StackAnswer } from '../../engine/form/chair-stack.ts';
import type { HoldingPart } from '../../job/documents/holding-parts.ts';
import { showLength } from '../../job/resolve/local-member-type.ts';
import { layerAtDepth, type PlacedLayer } from '../../job/section.ts';
import { type AssemblyQuestion, type Finding, findPart } from './assembly-question.ts';
import type { Assembly, StackStep } from './assembly-type.ts';
import { type HoldingSite, nameLayer } from './holding-site.ts';

/** How an insert makes up the thickness with what is above and below it. */
export interface Stacked {
  readonly steps: readonly StackStep[];
  /** Top of the insert below its own face [mm]. */
  readonly top: number;
  readonly chair: Assembly['chair'];
  readonly findings: readonly Finding[];
}

/** Steps lower than this [mm] are rounding and are not shown. */
const ROUNDING = 1e-9;

/** What is left of the layers between two heights above the lower surface, from the lower to the upper. */
function fill(layers: readonly PlacedLayer[], from: number, to: number): StackStep[] {
  return layers.flatMap((layer) => {
    const height = Math.min(layer.to, to) - Math.max(layer.from, from);
    if (height <= ROUNDING) return [];
    return [{ kind: 'concrete' as const, words: nameLayer(layer.kind), height }];
  });
}

function recessStep(height: number, words: string): StackStep[] {
  return height > ROUNDING ? [{ kind: 'recess', words, height }] : [];
}

/** Thickness of the cap that stands on the insert's top; 0: none, or one that lies within it. */
function findCapHeight(question: AssemblyQuestion): number {
  const heights = question.way.parts.map(({ part }) => {
    const { kind, height_mm } = findPart(question, part);
    return kind === 'cap' ? (height_mm ?? 0) : 0;
  });
  return Math.max(0, ...heights);
}

/** Aim for the top below the trowelled face: by the rules, deeper where the way's recess or the cap asks for it; neither may be proud. */
function findAim(question: AssemblyQuestion): { readonly aim: number; readonly cap: number } {
  const cap = findCapHeight(question);
  return { aim: Math.max(question.rules.belowFace.aim_mm, question.castIn.recess_mm, cap), cap };
}

/** Something other than the recess that bolt and lever arm are computed with. */
function compareRecess({ castIn, rules }: AssemblyQuestion, top: number): Finding[] {
  if (top - castIn.recess_mm <= rules.tolerances.level_mm + ROUNDING) return [];
  return [
    {
      severity: 'warning',
      kind: 'stack',
      text: `the top comes to lie ${showLength(top)} below the face, bolt and lever arm are computed with a recess of ${showLength(castIn.recess_mm)}: give the way of holding and the insert a recess of ${showLength(top)}`,
    },
  ];
}

function stackOnMouldFace({ castIn, item }: AssemblyQuestion, { layers, thickness }: HoldingSite): Stacked {
  const recess = castIn.recess_mm;
  const end = recess + item.length_mm;
  return {
    steps: [
      ...recessStep(recess, 'recess that the plate, magnet or former leaves'),
      { kind: 'insert', words: item.name, height: item.length_mm },
      ...fill(layers, end, thickness),
    ],
    top: recess,
    chair: null,
    findings: [],
  };
}

function stackUnderTrowelledFace(question: AssemblyQuestion, { layers, thickness }: HoldingSite): Stacked {
  const { item } = question;
  const { aim } = findAim(question);
  return {
    steps: [
      ...fill(layers, 0, thickness - aim - item.length_mm),
      { kind: 'insert', words: item.name, height: item.length_mm },
      ...recessStep(aim, 'below the trowelled face'),
    ],
    top: aim,
    chair: null,
    findings: compareRecess(question, aim),
  };
}

/** Over the bed's length of a side: concrete below the body, the body, concrete above. */
function stackInEdge({ castIn, item }: AssemblyQuestion, { layers, thickness }: HoldingSite, height: number): Stacked {
  const radius = item.bodyDiameter_mm / 2;
  return {
    steps: [
      ...fill(layers, 0, height - radius),
      ...recessStep(height - radius - thickness, 'above the concrete'),
      { kind: 'insert', words: `${item.name}, across its body`, height: item.bodyDiameter_mm },
      ...recessStep(-height - radius, 'below the concrete'),
      ...fill(layers, height + radius, thickness),
    ],
    top: castIn.recess_mm,
    chair: null,
    findings: [],
  };
}

function listChairs(question: AssemblyQuestion): { readonly part: HoldingPart; readonly height: number }[] {
  return question.way.chairs.map((id) => {
    const part = findPart(question, id);
    if (part.kind !== 'chair' || part.height_mm === null)
      throw new Error(`way of holding ${question.way.id}: ${id} is no chair with a height`);
    return { part, height: part.height_mm };
  });
}

/** Lengths that would fit on the chairs in stock, in words. */
function tellLengths(answer: StackAnswer): string {
  const fitting = answer.fittingLengths.flatMap(({ chair, lengths }) =>
    lengths === null
      ? []
      : [`${showLength(lengths.least)} to ${showLength(lengths.greatest)} on a chair of ${showLength(chair)}`],
  );
  return fitting.length === 0 ? 'no insert length would fit on them' : `inserts that would fit: ${fitting.join(', ')}`;
}

function judgeChair(answer: StackAnswer, allowed: { least: number; greatest: number }): Finding[] {
  const { chosen, fittingChairs, chairNeeded } = answer;
  const { least, greatest } = chosen.topBelowFace;
  const where = `on a chair of ${showLength(chosen.chair)} the top ends between ${showLength(least)} and ${showLength(greatest)} below the trowelled face`;
  const wanted = `${showLength(allowed.least)} to ${showLength(allowed.greatest)} is wanted`;
  if (chosen.verdict === 'fits') return [];
  if (chosen.verdict === 'proud')
    return [
      {
        severity: 'error',
        kind: 'stack',
        text: `${where}: it can stand proud (a number below 0 is above the face) and the screed would hit it; bring a chair of ${showLength(chairNeeded)}; ${tellLengths(answer)}`,
      },
    ];
  if (fittingChairs !== null)
    return [
      {
        severity: 'error',
        kind: 'stack',
        text: `${where}, ${wanted}: bring a chair of ${showLength(fittingChairs.least)} to ${showLength(fittingChairs.greatest)}; ${tellLengths(answer)}`,
      },
    ];
  return [
    {
      severity: 'warning',
      kind: 'stack',
      text: `${where}, ${wanted}: sink, sag, screed and thickness together move it by ${showLength(greatest - least)}, more than any chair can take up; measure the depth of the form there before the pour and the top after the screed, or hang the insert from a bridging bar`,
    },
  ];
}

/** A chair on what is soft while the concrete is placed. */
function judgeGround(ground: PlacedLayer | undefined): Finding[] {
  if (ground === undefined) return [];
  const text =
    ground.kind === 'insulation'
      ? 'the chair stands on the insulation and presses into it: hang the insert from a bridging bar, or tie it to the cage'
      : `the chair stands on the ${nameLayer(ground.kind)}: set it when that is hard, or hang the insert from a bridging bar`;
  return [{ severity: 'warning', kind: 'stack', text }];
}

function stackOnChair(question: AssemblyQuestion, site: HoldingSite): Stacked {
  const { item, way, bed, rules } = question;
  const { aim, cap } = findAim(question);
  const bearing = layerAtDepth(site.below, aim + item.embedment_mm);
  // The chair stands on what was there before: the form, or the layers below the one that the foot is in.
  const depth = bearing?.kind === 'structural' ? bearing.to : site.thickness;
  const ground = site.below.find(({ from }) => from >= depth - ROUNDING);
  const chairs = listChairs(question);
  const upTo = (greatest: number) => ({ least: 0, greatest });
  const tolerance = rules.tolerances.thickness_mm;
  const allowed = { least: cap, greatest: aim + rules.belowFace.most_mm - rules.belowFace.aim_mm };
  const answer = chooseChair({
    thickness: depth,
    insertLength: item.length_mm,
    aim,
    allowed,
    chairs: chairs.map(({ height }) => height),
    movements: {
      chairSink: upTo(way.chairSink_mm),
      formSag: upTo(bed?.sag_mm ?? 0),
      screedDeflection: upTo(bed?.screedDeflection_mm ?? 0),
      thicknessDeviation: { least: -tolerance, greatest: tolerance },
    },
  });
  const { part, height } = chairs.find((chair) => chair.height === answer.chosen.chair)!;
  const top = depth - (height - way.chairSink_mm) - item.length_mm;
  const { least, greatest } = answer.chosen.topBelowFace;
  return {
    steps: [
      ...fill(site.layers, 0, site.thickness - depth),
      ...(way.chairSink_mm > 0
        ? [{ kind: 'sink' as const, words: 'the chair presses in', height: -way.chairSink_mm }]
        : []),
      { kind: 'chair', words: part.name, height },
      { kind: 'insert', words: item.name, height: item.length_mm },
      ...recessStep(top, 'below the trowelled face'),
    ],
    top,
    chair: { part, needed: answer.chairNeeded, topBelowFace: top, range: [least, greatest] },
    findings: [...judgeChair(answer, allowed), ...judgeGround(ground), ...compareRecess(question, top)],
  };
}

/**
 * Makes up the thickness from the lower surface upward: at the mould face recess, insert and what is left; at the trowelled face what is left or
 * the chair, insert and how far it lies below the face. Steps add up to the thickness; a sink is below 0, since the chair's legs go that
 * much lower. Common practice, by adding up the section.
 */
export function findStack(question: AssemblyQuestion, site: HoldingSite): Stacked {
  if (site.edge !== null) return stackInEdge(question, site, site.edge.height);
  if (question.place === 'mould face') return stackOnMouldFace(question, site);
  return question.way.method === 'chair' ? stackOnChair(question, site) : stackUnderTrowelledFace(question, site);
}
