import { listBagLabels, listBench } from '../../assess/parts/bench.ts';
import type { PourParts } from '../../assess/parts/job-parts.ts';
import { findLookAlikes } from '../../assess/parts/look-alikes.ts';
import type { SparesRule } from '../../assess/parts/spares.ts';
import type { PanelSetOut, SetOutGroup } from '../../assess/set-out/set-out.ts';
import type { Point } from '../../engine/geometry/point.ts';
import { writePieceCode } from '../../job/piece-code.ts';
import { drawAssemblySection } from '../assembly-section.ts';
import type { Bar } from '../connection-detail.ts';
import { drawConnectionDetail } from '../connection-detail.ts';
import type { Drawing, Mark } from '../drawing.ts';
import { DrawingError } from '../drawing-error.ts';
import { CODE_SIZE, drawCheckSheets } from './check-sheet.ts';
import { type CoverFacts, drawCoverSheets } from './cover-sheet.ts';
import type { Paper } from './paper.ts';
import { drawBenchSheets, makeLabelPicture } from './parts-sheet.ts';
import { drawPictureSheets, type Picture } from './picture-sheet.ts';
import { drawSetOutSheets } from './set-out-sheet.ts';
import { type FolderFacts, finishSheets, type Sheet, type SheetHead } from './sheet-frame.ts';

/** Everything that a pour folder is made of. */
export interface FolderContent {
  readonly parts: PourParts;
  readonly spares: SparesRule;
  readonly cover: CoverFacts;
  readonly facts: FolderFacts;
  /** Bars of a panel as they lie, in its plan. */
  readonly barsOf: (setOut: PanelSetOut) => readonly Bar[];
  /** Outline of a connection's plate in the view of its detail; null: the drawing shows none. */
  readonly plateOf: (setOut: PanelSetOut, group: SetOutGroup) => readonly Point[] | null;
  /** Lengths of a casting that must be taped in digits, as `wantedLength` names them. */
  readonly wantedOf: (setOut: PanelSetOut, serial: string) => ReadonlySet<string>;
  /** A code as one mark, as wide as asked from its lower corner of least x [mm]. */
  readonly drawCode: (text: string, size: number) => Mark;
}

/** One page of a folder, and what it is called in its list. */
export interface FolderPage {
  readonly drawing: Drawing;
  readonly bookmark: string;
}

interface Place {
  readonly content: FolderContent;
  readonly paper: Paper;
  /** First line of every head: bed and day. */
  readonly where: string;
}

function headOf({ where }: Place, mark: string, title: string, lines: readonly string[] = []): SheetHead {
  return { mark, title, lines: [...lines, where] };
}

function drawPanel(place: Place, panel: PourParts['panels'][number]): readonly Sheet[] {
  const { content, paper } = place;
  const { setOut, serials } = panel;
  const { facts, parts } = content;
  const letter = facts.revision?.letter ?? '-';
  const mark = setOut.panel.mark;
  const lookAlikes = findLookAlikes([setOut]).map(({ text }) => text);
  const codeFor = (serial: string | null) =>
    content.drawCode(
      writePieceCode({ project: facts.project, mark, serial, letter, fingerprint: facts.fingerprint }),
      CODE_SIZE,
    );
  const handed = setOut.panel.handedOf === null ? [] : [`handed partner of ${setOut.panel.handedOf}: its mirror image`];
  const pieces = namePieces(serials);
  const bars = content.barsOf(setOut);
  const setOutSheets = drawSetOutSheets(
    setOut,
    headOf(place, mark, 'Set-out', [pieces, ...handed]),
    paper,
    [codeFor(null)],
    [`${mark} rev ${letter}`, pieces, parts.plan.pour.id],
    { warnings: lookAlikes, changed: content.cover.changes?.castIns ?? new Set(), bars },
  );
  const pictures: Picture[] = [
    ...setOut.assemblies.map(
      (assembly): Picture => ({
        draw: (width, height) =>
          drawAssemblySection(assembly, { width, height, faceDown: setOut.faceDown, bed: setOut.bed }),
      }),
    ),
    ...setOut.groups.map(
      (group): Picture => ({
        draw: (width, height) =>
          drawConnectionDetail(setOut, group, bars, { width, height }, content.plateOf(setOut, group)),
      }),
    ),
  ];
  const checks = parts.plan.pieces
    .filter((piece) => piece.panel === mark)
    .flatMap(({ serial, revision }) =>
      drawCheckSheets(
        setOut,
        headOf(place, mark, 'Check sheet', [
          revision === letter ? `piece no. ${serial}` : `piece no. ${serial}, planned by revision ${revision}`,
        ]),
        paper,
        [codeFor(serial)],
        [mark, `piece ${serial}`, `revision ${letter}`],
        { wanted: content.wantedOf(setOut, serial), voidWords: tellVoid(facts) },
      ),
    );
  return [
    ...setOutSheets,
    ...drawPictureSheets(pictures, headOf(place, mark, 'Sections and connections', [pieces]), paper),
    ...checks,
  ];
}

/** When a sheet that is filled in by pencil may no longer be used. */
function tellVoid({ revision, fingerprint }: FolderFacts): string {
  if (revision === null) return 'Not issued: nothing may be checked or poured by this sheet.';
  return `Void if revision ${revision.letter} (fingerprint ${fingerprint}) is not the one in force: ask before you start.`;
}

/** Castings of a panel in words: each by its serial, or how many where they are too many for a head. */
function namePieces(serials: readonly string[]): string {
  if (serials.length === 1) return `piece no. ${serials[0]}`;
  return serials.length <= 6
    ? `pieces no. ${serials.join(', ')}`
    : `${serials.length} pieces, no. ${serials[0]} to ${serials.at(-1)}`;
}

/** Says of which panel something cannot be drawn. */
function nameFault<T>(mark: string, draw: () => T): T {
  try {
    return draw();
  } catch (error) {
    if (error instanceof DrawingError) throw new DrawingError(`panel ${mark}: ${error.message}`);
    throw error;
  }
}

/** The pages of a pour folder: cover, parts, then for each panel its set-out, sections and a check sheet a piece. Same content, same pages. */
export function drawFolder(content: FolderContent): readonly FolderPage[] {
  const { parts, facts } = content;
  const { pour, bed } = parts.plan;
  const place: Place = { content, paper: facts.paper, where: `pour ${pour.id}, ${bed.name}, ${pour.date}` };
  const lookAlikes = findLookAlikes(parts.plan.setOuts).map(({ text }) => text);
  const sheets: readonly Sheet[] = [
    ...drawCoverSheets(parts.plan, content.cover, headOf(place, pour.id, 'Pour folder'), facts.paper),
    ...drawBenchSheets(
      listBench(parts, content.spares),
      lookAlikes,
      headOf(place, pour.id, 'For the bench'),
      facts.paper,
    ),
    ...drawPictureSheets(
      listBagLabels(parts).map(makeLabelPicture),
      headOf(place, pour.id, 'Labels, one bag a piece'),
      facts.paper,
    ),
    ...parts.panels.flatMap((panel) => nameFault(panel.setOut.panel.mark, () => drawPanel(place, panel))),
  ];
  const drawings = finishSheets(sheets, facts);
  return sheets.map(({ head }, i) => ({ drawing: drawings[i]!, bookmark: `${head.mark} – ${head.title}` }));
}
