import { addClashes } from '../../assess/clash/add-clashes.ts';
import { findUsualBed } from '../../assess/set-out/find-usual-bed.ts';
import { layBars } from '../../assess/set-out/lay-bars.ts';
import type { PanelSetOut } from '../../assess/set-out/set-out.ts';
import { setOutPanel } from '../../assess/set-out/set-out-panel.ts';
import type { Drawing } from '../../drawing/drawing.ts';
import { DrawingError } from '../../drawing/drawing-error.ts';
import { FOOT_CAUTION } from '../../drawing/sheets/cautions.ts';
import { PAPERS } from '../../drawing/sheets/paper.ts';
import { drawSetOutSheets } from '../../drawing/sheets/set-out-sheet.ts';
import { finishSheets } from '../../drawing/sheets/sheet-frame.ts';
import { describeLie } from '../../drawing/sheets/words.ts';
import { fingerprintJob } from '../../job/fingerprint.ts';
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
  /** The plan of the sheet that the yard would work from; null where it cannot be drawn, and `why` says it. */
  readonly sheet: Drawing | null;
  readonly why: string | null;
}

/** The set-out sheet of a panel before a pour asks for it: without the code of a piece, and marked as not issued, so that nobody pours by it. */
function drawSheet({ file }: JobIndex, setOut: PanelSetOut): Drawing | null {
  const { project } = file.job;
  const paper = PAPERS.A3;
  const head = { mark: setOut.panel.mark, lines: [], title: 'Set-out, a look ahead' };
  const sheets = drawSetOutSheets(setOut, head, paper, [], ['No pour yet', 'its piece has a code here'], {
    warnings: [],
    changed: new Set(),
    bars: layBars(setOut.panel),
  });
  const [plan] = finishSheets(sheets, {
    paper,
    project: project.number === null ? project.name : `${project.number} ${project.name}`,
    revision: null,
    fingerprint: fingerprintJob(file),
    caution: FOOT_CAUTION,
  });
  return plan ?? null;
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
    return { ...base, sheet: drawSheet(index, setOut), why: null };
  } catch (error) {
    if (!(error instanceof DrawingError)) throw error;
    return { ...base, sheet: null, why: error.message };
  }
}
