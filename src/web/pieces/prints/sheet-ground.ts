import type { Drawing } from '../../../drawing/drawing.ts';
import { FOOT_CAUTION } from '../../../drawing/sheets/cautions.ts';
import type { FolderFacts } from '../../../drawing/sheets/sheet-frame.ts';
import { download, fileNameOf } from '../../parts/download.ts';
import { writePdfInWorker } from '../../parts/pdf-client.ts';
import type { OpenPiece } from '../read-piece.ts';
import type { Yard } from '../yard.ts';

/** As many digits of a fingerprint as stand on sheets. */
const DIGITS = 12;

/** What every sheet about a piece is made from. */
export interface SheetGround {
  readonly piece: OpenPiece;
  readonly facts: Omit<FolderFacts, 'paper'>;
  /** Null: the name is not known here. */
  readonly nameOf: (person: string) => string | null;
  readonly writeMoment: (moment: string) => string;
}

/** Head and foot of the sheets of a piece, and how people and moments stand on them. */
export function readSheetGround(
  yard: Pick<Yard, 'device'>,
  piece: OpenPiece,
  writeMoment: (moment: string) => string,
): SheetGround {
  const { index, revision, people } = piece.context;
  const { project } = index.file.job;
  const { letter, fingerprint } = revision;
  const issued = yard.device.job.value?.revisions.find((one) => one.fingerprint === fingerprint);
  return {
    piece,
    facts: {
      project: project.number === null ? project.name : `${project.number} ${project.name}`,
      revision: issued === undefined ? null : { letter, status: issued.status, date: issued.date },
      fingerprint: fingerprint.slice(0, DIGITS),
      caution: FOOT_CAUTION,
    },
    nameOf: (person) => people.find(({ id }) => id === person)?.name ?? null,
    writeMoment,
  };
}

/** Sheets with a name in the list of bookmarks. */
export interface NamedSheets {
  readonly title: string;
  readonly drawings: readonly Drawing[];
}

/** Writes sheets of a piece as one PDF and gives it to the person. Rejects where one cannot be drawn or written. */
export async function saveSheets(
  { piece: { head }, facts }: SheetGround,
  what: string,
  parts: readonly NamedSheets[],
): Promise<void> {
  const title = `${head.mark} no. ${head.serial} ${what}`;
  const bytes = await writePdfInWorker({
    pages: parts.flatMap(({ title: name, drawings }) =>
      drawings.map((drawing, k) => ({ drawing, bookmark: k === 0 ? name : null })),
    ),
    details: { title, author: facts.project, subject: what, date: new Date(), language: 'en' },
  });
  download(`${fileNameOf(`${facts.project} ${title}`)}.pdf`, new Uint8Array(bytes), 'application/pdf');
}
