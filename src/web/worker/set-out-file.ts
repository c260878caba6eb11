import { addClashes } from '../../assess/clash/add-clashes.ts';
import { findUsualBed } from '../../assess/set-out/find-usual-bed.ts';
import { layBars } from '../../assess/set-out/lay-bars.ts';
import { setOutPanel } from '../../assess/set-out/set-out-panel.ts';
import { DrawingError } from '../../drawing/drawing-error.ts';
import { LAYER_NAMES } from '../../drawing/layers.ts';
import { drawPanelAtSize } from '../../drawing/sheets/panel-plan.ts';
import { writeDxf } from '../../files/dxf/write-dxf.ts';
import { writeSvg } from '../../files/svg/write-svg.ts';
import type { JobIndex } from '../../job/job-index.ts';

/** A drawing of a panel's set-out as a file's text, with what could not be shown in it; or why there is none. */
export type SetOutFile =
  | { readonly kind: 'made'; readonly text: string; readonly notes: readonly string[] }
  | { readonly kind: 'not drawn'; readonly why: string };

/**
 * Draws the set-out of a panel at full size, on the bed of the first pour that casts it.
 * @throws Error where the job has no such panel
 */
export function writeSetOutFile(index: JobIndex, mark: string, format: 'dxf' | 'svg'): SetOutFile {
  const setOut = addClashes(index, setOutPanel(index, mark, findUsualBed(index.file, mark)));
  try {
    const { drawing, scale, notes } = drawPanelAtSize(setOut, layBars(setOut.panel));
    const text =
      format === 'dxf'
        ? writeDxf(drawing, { scale, layers: LAYER_NAMES })
        : writeSvg(drawing, `Set-out of panel ${mark}`);
    return { kind: 'made', text, notes };
  } catch (error) {
    if (error instanceof DrawingError) return { kind: 'not drawn', why: error.message };
    throw error;
  }
}
