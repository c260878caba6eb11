import { addClashes } from '../../assess/clash/add-clashes.ts';
import { findUsualBed } from '../../assess/set-out/find-usual-bed.ts';
import { layBars } from '../../assess/set-out/lay-bars.ts';
import { setOutPanel } from '../../assess/set-out/set-out-panel.ts';
import type { Drawing } from '../../drawing/drawing.ts';
import { DrawingError } from '../../drawing/drawing-error.ts';
import { drawPanelAtSize } from '../../drawing/sheets/panel-plan.ts';
import { describeLie } from '../../drawing/sheets/words.ts';
import type { JobIndex } from '../../job/job-index.ts';

/** What stands against a panel as it is set out; `insert`: the item that it is about. */
export interface SetOutFinding {
  readonly isStop: boolean;
  readonly insert: string | null;
  readonly text: string;
}

/** The set-out of a panel as a screen shows it. */
export interface SetOutView {
  /** How the panel lies, a sentence each. */
  readonly lie: readonly string[];
  readonly datum: string;
  /** Numbers of the walk by the item's id. */
  readonly numbers: ReadonlyMap<string, number>;
  readonly findings: readonly SetOutFinding[];
  /** Null where it cannot be drawn; `why` says it. */
  readonly drawing: Drawing | null;
  readonly why: string | null;
}

/**
 * Sets a panel out on the bed of the first pour that casts it, clashes included.
 * @throws Error where the job has no such panel
 */
export function viewSetOut(index: JobIndex, mark: string): SetOutView {
  const setOut = addClashes(index, setOutPanel(index, mark, findUsualBed(index.file, mark)));
  const findings = setOut.problems
    .map(({ severity, insert, text }) => ({ isStop: severity === 'error', insert, text }))
    .sort((a, b) => Number(b.isStop) - Number(a.isStop));
  const base = {
    lie: describeLie(setOut),
    datum: setOut.datumWords,
    numbers: new Map(setOut.items.map(({ castIn, number }) => [castIn.id, number])),
    findings,
  };
  try {
    return { ...base, drawing: drawPanelAtSize(setOut, layBars(setOut.panel)).drawing, why: null };
  } catch (error) {
    if (!(error instanceof DrawingError)) throw error;
    return { ...base, drawing: null, why: error.message };
  }
}
