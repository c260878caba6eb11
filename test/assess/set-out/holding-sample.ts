/** One insert and its way of holding, for tests that change one thing: the sample job's insert and panel, read by the documents' own schemas. */

import type { AssemblyQuestion } from '../../../src/assess/set-out/assembly-question.ts';
import { type AssemblyDraft, findAssembly } from '../../../src/assess/set-out/find-assembly.ts';
import type { FormPlace } from '../../../src/assess/set-out/set-out.ts';
import { castIn } from '../../../src/job/documents/cast-in.ts';
import { catalogueItem } from '../../../src/job/documents/catalogue.ts';
import { holdingParts } from '../../../src/job/documents/holding-parts.ts';
import { panel } from '../../../src/job/documents/panel.ts';
import { rules } from '../../../src/job/documents/rules.ts';
import { bed } from '../../../src/job/documents/yard.ts';
import { type Json, sampleCastIn, sampleItem, samplePanel } from '../../job/sample-job.ts';

export interface HoldingParts {
  readonly panel?: Json;
  readonly castIn?: Json;
  readonly item?: Json;
  readonly way?: Json;
  /** Heights of the chairs in stock [mm]. */
  readonly chairs?: readonly number[];
  readonly bed?: Json | null;
  readonly rules?: Json;
  readonly catalogue?: readonly Json[];
}

const part = (id: string, kind: string, changes: Json = {}) => ({
  id,
  name: `Part ${id}`,
  kind,
  reusable: false,
  ...changes,
});

/** The face that the insert is in by where it sits, with the outside face on the form. */
const FACES = { 'mould face': 'outside', 'trowelled face': 'inside', edge: 'edge' } as const;

/** What is asked of the sample: insert 1 of panel P1 (4000 × 3000 × 180, XC4), F16 of 103 mm, at (900, 500) or in edge 0, 90 mm above the bed. */
export function ask(place: FormPlace, method: string, changes: HoldingParts = {}): AssemblyQuestion {
  const face = FACES[place];
  const chairs = changes.chairs ?? [70, 75, 80];
  const holding = holdingParts.parse({
    format: 'onepour-holding-parts',
    version: 1,
    id: 'hold',
    edition: '1',
    name: 'hold',
    parts: [
      part('PLATE', 'fixing plate', { height_mm: 10 }),
      part('NAIL', 'nail'),
      part('BOARD', 'template board'),
      part('CAP', 'cap', { height_mm: 0 }),
      part('CAP8', 'cap', { height_mm: 8 }),
      part('PLUG', 'cap'),
      ...chairs.map((height_mm) => part(`CH${height_mm}`, 'chair', { height_mm })),
    ],
    ways: [
      {
        id: 'WAY',
        name: 'Way',
        method,
        chairs: method === 'chair' ? chairs.map((height) => `CH${height}`) : [],
        parts: [{ part: 'CAP', count: 1 }],
        ...changes.way,
      },
    ],
  });
  const at = face === 'edge' ? sampleCastIn('1', 900, 90, { face, edge: 0 }) : sampleCastIn('1', 900, 500, { face });
  const item = sampleItem(changes.item);
  return {
    panel: panel.parse(samplePanel(changes.panel)),
    castIn: castIn.parse({ ...at, ...changes.castIn }),
    item: catalogueItem.parse(item),
    way: holding.ways[0]!,
    parts: new Map(holding.parts.map((one) => [one.id, one])),
    bed:
      changes.bed === null
        ? null
        : bed.parse({
            id: 'B1',
            name: 'Bed 1',
            form: 'timber',
            sideForm: 'timber',
            length_mm: 12_000,
            width_mm: 4000,
            names: { start: 'fixed stop end', finish: 'loose stop end', railA: 'wall rail', railB: 'gangway rail' },
            ...changes.bed,
          }),
    rules: rules.parse({
      format: 'onepour-rules',
      version: 1,
      id: 'rul',
      edition: '1',
      name: 'rul',
      standard: 'EN 1992-4',
      partialFactors: { concrete: 1.5, steelTension: null, steelShear: null },
      cover: { behindFoot_mm: 20 },
      tolerances: { position_mm: 5, level_mm: 3, thickness_mm: 0 },
      exposure: 'XC4',
      environment: 'C3',
      defaults: { cracked: true, engagement_d: 1, boltClass: '8.8' },
      ...changes.rules,
    }),
    place,
    catalogue: (changes.catalogue ?? [item]).map((one) => catalogueItem.parse(one)),
  };
}

export function build(place: FormPlace, method: string, changes: HoldingParts = {}): AssemblyDraft {
  return findAssembly(ask(place, method, changes));
}

/** Steps as "kind height", from the bed upward. */
export function stackOf({ stack }: AssemblyDraft): string[] {
  return stack.map(({ kind, height }) => `${kind} ${Number(height.toFixed(6))}`);
}

/** Findings as "severity kind: text". */
export function problemsOf({ problems }: AssemblyDraft): string[] {
  return problems.map(({ severity, kind, text }) => `${severity} ${kind}: ${text}`);
}

/** Covers as "part toward: cover of wanted". */
export function coversOf({ covers }: AssemblyDraft): string[] {
  return covers.map(
    ({ part: which, toward, cover, wanted }) => `${which} ${toward}: ${Number(cover.toFixed(2))} of ${wanted}`,
  );
}

/** A sandwich with its outer skin on the form. */
export const SANDWICH = {
  thickness_mm: 300,
  layers: [
    { kind: 'outer skin', thickness_mm: 70 },
    { kind: 'insulation', thickness_mm: 80 },
    { kind: 'structural', thickness_mm: 150 },
  ],
};
