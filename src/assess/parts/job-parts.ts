import type { JobIndex } from '../../job/job-index.ts';
import { type PourPlan, planPour } from '../set-out/plan-pour.ts';
import type { PanelSetOut } from '../set-out/set-out.ts';
import { setOutPanel } from '../set-out/set-out-panel.ts';
import { addLines } from './add-lines.ts';
import type { PartLine } from './part-kind.ts';
import { findSiteKit, type SiteKit } from './site-kit.ts';
import { type PanelParts, takeOffPanel } from './take-off.ts';

/** A panel of a pour: parts of one casting, and the serials of those that are cast. */
export interface PourPanel {
  readonly setOut: PanelSetOut;
  readonly parts: PanelParts;
  readonly serials: readonly string[];
}

/** Parts of one pour, all its castings together. */
export interface PourParts {
  readonly plan: PourPlan;
  readonly panels: readonly PourPanel[];
  readonly lines: readonly PartLine[];
}

/** A panel that no pour casts: counted once. */
export interface UnplannedPanel {
  readonly setOut: PanelSetOut;
  readonly parts: PanelParts;
}

/** Parts of a whole job. */
export interface JobParts {
  /** In the order of their days; pours of one day in the order of the job. */
  readonly pours: readonly PourParts[];
  readonly unplanned: readonly UnplannedPanel[];
  readonly lines: readonly PartLine[];
}

/** Parts of one casting with the bolts and washers of its connections. */
function takeOffWithKit(setOut: PanelSetOut, kits: readonly SiteKit[]): PanelParts {
  const { mark, lines, open } = takeOffPanel(setOut);
  const all = [lines, ...kits.map((kit) => kit.lines)].map((part) => ({ lines: part, times: 1 }));
  return { mark, lines: addLines(all), open: [...open, ...kits.flatMap((kit) => kit.open)] };
}

/** The parts of a job from its set-outs: a panel's parts times its castings, pour by pour, and each panel that no pour casts once. */
export function addUpJob(
  index: JobIndex,
  plans: readonly PourPlan[],
  unplannedSetOuts: readonly PanelSetOut[],
): JobParts {
  const kits = new Map<string, readonly SiteKit[]>();
  const kitsOf = (mark: string) => {
    const known = kits.get(mark) ?? index.connectionsOf(mark).map((connection) => findSiteKit(index, connection));
    kits.set(mark, known);
    return known;
  };
  const ofPanel = (setOut: PanelSetOut) => takeOffWithKit(setOut, kitsOf(setOut.panel.mark));
  const pours = plans
    .toSorted((a, b) => (a.pour.date < b.pour.date ? -1 : a.pour.date > b.pour.date ? 1 : 0))
    .map((plan): PourParts => {
      const panels = plan.setOuts.map((setOut): PourPanel => {
        const pieces = plan.pieces.filter(({ panel }) => panel === setOut.panel.mark);
        return { setOut, parts: ofPanel(setOut), serials: pieces.map(({ serial }) => serial) };
      });
      const lines = addLines(panels.map(({ parts, serials }) => ({ lines: parts.lines, times: serials.length })));
      return { plan, panels, lines };
    });
  const unplanned = unplannedSetOuts.map((setOut) => ({ setOut, parts: ofPanel(setOut) }));
  const lists = [...pours, ...unplanned.map(({ parts }) => parts)].map(({ lines }) => ({ lines, times: 1 }));
  return { pours, unplanned, lines: addLines(lists) };
}

/** The parts of a job: sets every panel out on the bed of its pour, panels that no pour casts on no bed. */
export function findJobParts(index: JobIndex): JobParts {
  const { pours, panels } = index.file.job;
  const plans = pours.map(({ id }) => planPour(index, id));
  const planned = new Set(pours.flatMap(({ pieces }) => pieces.map(({ panel }) => panel)));
  const left = panels.filter(({ mark }) => !planned.has(mark));
  return addUpJob(
    index,
    plans,
    left.map(({ mark }) => setOutPanel(index, mark, null)),
  );
}
