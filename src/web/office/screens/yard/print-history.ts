import { reportStripped } from '../../../../assess/yard/after-stripping.ts';
import type { PieceReport } from '../../../../assess/yard/piece-report.ts';
import { FOOT_CAUTION } from '../../../../drawing/sheets/cautions.ts';
import { PAPERS } from '../../../../drawing/sheets/paper.ts';
import { drawPieceHistory, type HistoryContent } from '../../../../drawing/sheets/piece-history-sheet.ts';
import { type HistoryLine, tellPrintedAct } from '../../../../say/history-lines.ts';
import { gatherPoints, tellPartsBack } from '../../../../say/piece-words.ts';
import type { RecordNames } from '../../../../say/record-tellers.ts';
import { download, fileNameOf } from '../../../parts/download.ts';
import { writePdfInWorker } from '../../../parts/pdf-client.ts';
import { reportPieceAsCast } from '../../../pieces/as-cast/use-as-cast.ts';
import { namePlace } from '../../../pieces/name-place.ts';
import { drawAsCast, drawNonConformance } from '../../../pieces/prints/draw-as-cast.ts';
import { type NamedSheets, readSheetGround } from '../../../pieces/prints/sheet-ground.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { writeStamp } from '../../state/write-moment.ts';
import { tellClearance, writeHead } from './clearance-facts.ts';
import { tellFlag } from './tell-flag.ts';

/** As many digits of a fingerprint as stand on sheets. */
const DIGITS = 12;

/** What of the form came back, and inserts that were found not as they must be. */
function tellStripped({ context, plan, state }: OpenPiece): readonly string[] {
  const { isStripped, parts, inserts } = reportStripped(context, plan, state);
  return [
    ...(isStripped ? tellPartsBack(parts).map((words) => `Back from the form: ${words}.`) : []),
    ...inserts.flatMap(({ item, faults }) => faults.map((words) => `Opened up, no. ${item.number}: ${words}.`)),
  ];
}

function tellStanding({ phase, counts, screed, openPoints }: PieceReport): readonly string[] {
  const count = (name: string, { done, left, out }: PieceReport['counts'][1]) =>
    `${name}: ${done} done, ${left} left, ${out} out.`;
  return [
    `Stands: ${phase}.`,
    count('Before the cage', counts[1]),
    count('Before the pour', counts[2]),
    count('After screeding', screed),
    ...gatherPoints(openPoints).map(({ words }) => `Open: ${words}.`),
  ];
}

function makeContent(yard: Yard, piece: OpenPiece, names: RecordNames, lines: readonly HistoryLine[]): HistoryContent {
  const { head, report } = piece;
  return {
    head: {
      mark: head.mark,
      title: 'History of a piece',
      lines: [`piece no. ${head.serial}`, namePlace(piece).join(', ')],
    },
    flags: report.flags.map(tellFlag),
    clearance: tellClearance(report, names),
    standing: [...tellStanding(report), ...tellStripped(piece)],
    entries: lines.map((line) => ({
      words: tellPrintedAct(line),
      who: line.typedBy === null ? line.who : `${line.who}, typed by ${line.typedBy}`,
      measured: writeStamp(line.measuredAt),
      typed: writeStamp(line.typedAt),
      chain: line.chain,
      withdrawn: line.withdrawn,
    })),
    logHead: writeHead(yard.device.sync.value.head),
    clockWords: `Times by the clock of the office (${Intl.DateTimeFormat().resolvedOptions().timeZone}).`,
  };
}

/** What follows the history where the piece was surveyed: how it came out, and a sheet for each connection that somebody decided about. */
function listLife(yard: Yard, piece: OpenPiece): readonly NamedSheets[] {
  const asCast = reportPieceAsCast(piece);
  if (asCast.surveys.length === 0) return [];
  const ground = readSheetGround(yard, piece, writeStamp);
  const decided = asCast.connections.filter(({ decision }) => decision !== null);
  return [drawAsCast(ground, asCast), ...decided.map((found) => drawNonConformance(ground, asCast, found))];
}

/**
 * Writes the whole life of a piece as one PDF and gives it to the person: its history, how it came out, what was decided. Rejects where a sheet cannot be drawn or
 * written.
 */
export async function saveHistory(
  yard: Yard,
  piece: OpenPiece,
  names: RecordNames,
  lines: readonly HistoryLine[],
): Promise<void> {
  const { context, head, report } = piece;
  const { letter, fingerprint } = context.revision;
  const { project } = context.index.file.job;
  const issued = yard.device.job.value?.revisions.find((one) => one.fingerprint === fingerprint);
  const drawings = drawPieceHistory(makeContent(yard, piece, names, lines), {
    paper: PAPERS.A4,
    project: project.number === null ? project.name : `${project.number} ${project.name}`,
    revision: issued === undefined ? null : { letter, status: issued.status, date: issued.date },
    fingerprint: fingerprint.slice(0, DIGITS),
    caution: FOOT_CAUTION,
  });
  const title = `${head.mark} no. ${head.serial} history`;
  const bytes = await writePdfInWorker({
    pages: [{ title, drawings }, ...listLife(yard, piece)].flatMap((part) =>
      part.drawings.map((drawing, k) => ({ drawing, bookmark: k === 0 ? part.title : null })),
    ),
    details: {
      title,
      author: project.name,
      subject: 'What was checked, decided and poured of a precast piece',
      date: new Date(report.last?.typedAt ?? Date.now()),
      language: 'en',
    },
  });
  const name = fileNameOf(`${project.number ?? project.name} ${title} ${writeStamp(new Date().toISOString())}`);
  download(`${name}.pdf`, new Uint8Array(bytes), 'application/pdf');
}
