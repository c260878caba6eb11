import { addClashes } from '../assess/clash/add-clashes.ts';
import { findUsualBed } from '../assess/set-out/find-usual-bed.ts';
import { layBars } from '../assess/set-out/lay-bars.ts';
import type { PanelSetOut } from '../assess/set-out/set-out.ts';
import { setOutPanel } from '../assess/set-out/set-out-panel.ts';
import { LAYER_NAMES } from '../drawing/layers.ts';
import { drawPanelAtSize } from '../drawing/sheets/panel-plan.ts';
import { ENGINE_VERSION } from '../engine/version.ts';
import { writeDxf } from '../files/dxf/write-dxf.ts';
import { writeSvg } from '../files/svg/write-svg.ts';
import type { Bed } from '../job/documents/yard.ts';
import { indexJob, type JobIndex } from '../job/job-index.ts';
import { EXIT, UsageError } from './exit-codes.ts';
import { loadJob } from './load-job.ts';
import { findPageWidth } from './page-width.ts';
import { printSetOut, printSetOuts } from './print/set-out.ts';
import { layText } from './print/table.ts';
import { tellDrawingFaults } from './tell-drawing-faults.ts';
import { checkTarget, writeTarget } from './write-file.ts';

export interface SetOutOptions {
  readonly bed?: string;
  readonly dxf?: string;
  readonly svg?: string;
  readonly overwrite?: boolean;
  readonly json?: boolean;
}

/** The bed that was asked for, else that of the first pour that casts the panel, else none. */
function findBed({ file }: JobIndex, mark: string, asked: string | undefined): Bed | null {
  if (asked === undefined) return findUsualBed(file, mark);
  const { beds } = file.library.yard;
  const bed = beds.find(({ id }) => id === asked);
  if (bed !== undefined) return bed;
  const known = beds.length === 0 ? 'the yard has none' : `expected one of ${beds.map((one) => one.id).join(', ')}`;
  throw new UsageError(`--bed ${asked}: is no bed of the yard; ${known}`);
}

function checkMark({ panels }: JobIndex, mark: string): void {
  if (panels.has(mark)) return;
  throw new UsageError(`${mark}: is no panel of this job; expected one of ${[...panels.keys()].join(', ')}`);
}

function writeDrawings(setOut: PanelSetOut, { dxf, svg }: SetOutOptions): void {
  if (dxf === undefined && svg === undefined) return;
  const mark = setOut.panel.mark;
  const { drawing, scale, notes } = tellDrawingFaults(`panel ${mark}`, () =>
    drawPanelAtSize(setOut, layBars(setOut.panel)),
  );
  if (dxf !== undefined)
    writeTarget(
      '--dxf',
      dxf,
      tellDrawingFaults(`panel ${mark}`, () => writeDxf(drawing, { scale, layers: LAYER_NAMES })),
    );
  for (const note of notes) process.stderr.write(`onepour: ${note}\n`);
  if (svg !== undefined) writeTarget('--svg', svg, writeSvg(drawing, `Set-out of panel ${setOut.panel.mark}`));
}

/** What of a set-out is worth keeping as JSON: no documents of the job in full. */
function toJson({ panel, bed, items, ...rest }: PanelSetOut): object {
  return {
    panel: panel.mark,
    bed: bed?.id ?? null,
    ...rest,
    assemblies: rest.assemblies.map(({ item, way, chair, parts, ...assembly }) => ({
      ...assembly,
      item: item.id,
      way: way.id,
      chair: chair === null ? null : { ...chair, part: chair.part.id },
      parts: parts.map(({ part, ...counted }) => ({ ...counted, part: part.id })),
    })),
    items: items.map(({ castIn, item, way, ...placed }) => ({
      insert: castIn.id,
      role: castIn.role,
      item: item?.id ?? null,
      way: way?.id ?? null,
      ...placed,
    })),
  };
}

/**
 * Sets out one panel, or all of a job on a line each.
 * @returns the exit code: 0 nothing found, 1 something cannot be made as it stands
 * @throws UsageError where the job cannot be read, a name is not known, or a file cannot be written
 */
export function runSetOut(path: string, mark: string | undefined, options: SetOutOptions): number {
  if (mark === undefined && (options.dxf ?? options.svg) !== undefined)
    throw new UsageError('--dxf, --svg: need the mark of one panel');
  if (options.dxf !== undefined) checkTarget('--dxf', options.dxf, '.dxf', options.overwrite === true);
  if (options.svg !== undefined) checkTarget('--svg', options.svg, '.svg', options.overwrite === true);
  const { file } = loadJob(path);
  const index = indexJob(file);
  if (mark !== undefined) checkMark(index, mark);
  const marks = mark === undefined ? [...index.panels.keys()] : [mark];
  const setOuts = marks.map((one) => addClashes(index, setOutPanel(index, one, findBed(index, one, options.bed))));
  const width = findPageWidth();
  const [first] = setOuts;
  if (options.json) {
    const written = { engine: ENGINE_VERSION, job: file.job.project.name, panels: setOuts.map(toJson) };
    process.stdout.write(`${JSON.stringify(written, null, 2)}\n`);
  } else if (mark !== undefined && first !== undefined) process.stdout.write(printSetOut(first, width));
  else {
    process.stdout.write(printSetOuts(setOuts, width));
    process.stdout.write(`\n${layText('One panel in full, with every place: onepour setout JOB PANEL.', width)}\n`);
  }
  if (mark !== undefined && first !== undefined) writeDrawings(first, options);
  const hasErrors = setOuts.some(({ problems }) => problems.some(({ severity }) => severity === 'error'));
  return hasErrors ? EXIT.notPassed : EXIT.pass;
}
