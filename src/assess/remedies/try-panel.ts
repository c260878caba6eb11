import { STRENGTH_CLASSES } from '../../engine/material/strength-classes.ts';
import { findEdition } from '../../engine/standards/editions.ts';
import type { Concrete } from '../../job/documents/concrete.ts';
import type { Layer, Panel } from '../../job/documents/panel.ts';
import { NOTHING_REPLACED } from '../../job/edit/replace-values.ts';
import type { RemedyQuestion } from './question.ts';
import type { Attempt } from './remedy.ts';
import { findLeastSteps } from './step-search.ts';

/** A panel is made thicker to a multiple of this, by so many of them at most [mm]. */
const THICKNESS_STEP = 10;
const MOST_STEPS = 15;

/** Classes that a panel is made of (common practice): C20/25 to C80/95. */
const CLASSES = STRENGTH_CLASSES.filter(([cylinder]) => cylinder >= 20 && cylinder <= 80);

/** A panel of another thickness: what is more goes into its thickest structural layer. */
function thicken(panel: Panel, thickness: number): Pick<Panel, 'thickness_mm' | 'layers'> {
  const more = thickness - panel.thickness_mm;
  const structural = panel.layers.filter(({ kind }) => kind === 'structural');
  const thickest = structural.reduce<Layer | null>(
    (best, layer) => (best === null || layer.thickness_mm > best.thickness_mm ? layer : best),
    null,
  );
  const layers = panel.layers.map((layer) =>
    layer === thickest ? { ...layer, thickness_mm: layer.thickness_mm + more } : layer,
  );
  return { thickness_mm: thickness, layers };
}

/** A thicker panel, to the next multiple of 10 mm that does. */
export function tryThicker({ parts: { panel }, assess }: RemedyQuestion): Attempt {
  const first = Math.floor(panel.thickness_mm / THICKNESS_STEP + 1e-9) * THICKNESS_STEP;
  const thicknessAt = (steps: number) => first + steps * THICKNESS_STEP;
  const passes = (steps: number) =>
    assess({ panel: { ...panel, ...thicken(panel, thicknessAt(steps)) } }).state === 'passes';
  const steps = findLeastSteps(MOST_STEPS, passes);
  if (steps === null) return { proposals: [], inVain: [{ kind: 'thickness', most: thicknessAt(MOST_STEPS) }] };
  const set = thicken(panel, thicknessAt(steps));
  return {
    proposals: [
      {
        kind: 'thicker panel',
        deed: { kind: 'thickness', panel: panel.mark, from: panel.thickness_mm, to: set.thickness_mm },
        notes: ['weight, lifting and everything else of the panel change with it'],
        change: { ...NOTHING_REPLACED, panels: [{ key: panel.key, set }] },
      },
    ],
    inVain: [],
  };
}

/** Strength of a mix at the age of a connection; null where it is not known. */
function strengthAt({ strength28_MPa, ages }: Concrete, age: number | null): number | null {
  if (age === null || age === 28) return strength28_MPa;
  return ages.find(({ age_days }) => age_days === age)?.strength_MPa ?? null;
}

/** A class of the standard that the job has no mix of yet; its name says whether cylinder alone or both strengths. */
function makeClass([cylinder, cube]: readonly [number, number], isByAci: boolean): Concrete {
  const id = isByAci ? `${cylinder} MPa` : `C${cylinder}/${cube}`;
  return { id, name: null, strength28_MPa: cylinder, ages: [], lightweight: false };
}

/** A stronger mix of the job; where none does, a new class, as long as no age but 28 days is asked for. */
export function tryConcrete({ slice, parts, connection, assess }: RemedyQuestion): Attempt {
  const { mix, panel } = parts;
  const { concretes, connections } = slice.job;
  const ages = new Set(connections.filter((one) => one.panel === panel.mark).map(({ age_days }) => age_days));
  const isKnownAt = (one: Concrete) => [...ages].every((age) => strengthAt(one, age) !== null);
  const now = strengthAt(mix, connection.age_days) ?? mix.strength28_MPa;
  const isStronger = (one: Concrete) => (strengthAt(one, connection.age_days) ?? 0) > now;
  const byStrength = (a: Concrete, b: Concrete) =>
    (strengthAt(a, connection.age_days) ?? 0) - (strengthAt(b, connection.age_days) ?? 0);
  const isByAci = !findEdition(slice.library.rules.standard).takesPartialFactors;
  const ids = new Set(concretes.map(({ id }) => id));
  const own = concretes.filter((one) => one.lightweight === mix.lightweight && isStronger(one) && isKnownAt(one));
  const made = CLASSES.map((one) => makeClass(one, isByAci)).filter(
    (one) => !ids.has(one.id) && !mix.lightweight && isStronger(one) && isKnownAt(one),
  );
  const tried = [...own.sort(byStrength), ...made];
  const does = (one: Concrete) => assess({ mix: one }).state === 'passes';
  const chosen = tried.find(does);
  if (chosen === undefined) {
    const strongest = tried.toSorted(byStrength).at(-1);
    return { proposals: [], inVain: strongest === undefined ? [] : [{ kind: 'concrete', most: strongest.id }] };
  }
  const isNew = !ids.has(chosen.id);
  return {
    proposals: [
      {
        kind: 'stronger concrete',
        deed: {
          kind: 'concrete',
          panel: panel.mark,
          from: { id: mix.id, strength: now },
          to: { id: chosen.id, strength: strengthAt(chosen, connection.age_days)! },
        },
        notes: isNew ? [`${chosen.id} is a mix that the job does not have yet: ask the plant`] : [],
        change: {
          ...NOTHING_REPLACED,
          panels: [{ key: panel.key, set: { concrete: chosen.id } }],
          concretes: isNew ? [chosen] : [],
        },
      },
    ],
    inVain: [],
  };
}
