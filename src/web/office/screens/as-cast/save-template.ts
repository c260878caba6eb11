import type { AsCastConnection, Remedy } from '../../../../assess/as-cast/as-cast-report.ts';
import { LAYER_NAMES } from '../../../../drawing/layers.ts';
import { drawTemplate, type Template } from '../../../../drawing/sheets/drill-template.ts';
import { drawTemplateSheets } from '../../../../drawing/sheets/drill-template-sheets.ts';
import { writeDxf } from '../../../../files/dxf/write-dxf.ts';
import type { Fixture } from '../../../../job/documents/fixture.ts';
import { download, fileNameOf } from '../../../parts/download.ts';
import { readSheetGround, saveSheets } from '../../../pieces/prints/sheet-ground.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { writeStamp } from '../../state/write-moment.ts';

export type TemplateFormat = 'dxf' | 'pdf';

function makeTemplate(fixture: Fixture, { change, holes }: Remedy): Template {
  return {
    plate: { ...fixture, holes: holes ?? fixture.holes },
    changed: new Set(change.holes.map(({ id }) => id)),
  };
}

/**
 * Writes the plate of a connection as it is to be drilled, at 1:1, and gives it to the person.
 * Rejects where it cannot be drawn or written, or no plate is known.
 */
export async function saveTemplate(
  yard: Yard,
  piece: OpenPiece,
  found: AsCastConnection,
  remedy: Remedy,
  format: TemplateFormat,
): Promise<void> {
  const { context, head } = piece;
  const { connection, decision, state } = found;
  const fixture = context.index.fixtureOf(connection);
  if (fixture === null) throw new Error(`connection ${connection.mark} has no plate; expected one with holes`);
  const template = makeTemplate(fixture, remedy);
  const { project } = context.index.file.job;
  const title = `${head.mark} no. ${head.serial} ${connection.mark} template`;
  const name = fileNameOf(`${project.number ?? project.name} ${title}`);
  if (format === 'dxf') {
    download(`${name}.dxf`, writeDxf(drawTemplate(template), { scale: 1, layers: LAYER_NAMES }), 'application/dxf');
    return;
  }
  const ground = readSheetGround(yard, piece, writeStamp);
  const isDecided = state === 'decided' && decision?.body.remedy === remedy.kind;
  const drawings = drawTemplateSheets(
    template,
    {
      head: {
        mark: head.mark,
        title: `Template of ${connection.mark}, 1:1`,
        lines: [`piece no. ${head.serial}`, remedy.kind],
      },
      notes: [
        isDecided
          ? 'Decided: see the decision of this connection.'
          : 'NOT DECIDED: nothing is drilled by this sheet yet.',
        remedy.words,
        ...remedy.conditions,
      ],
    },
    ground.facts,
  );
  await saveSheets(ground, `${connection.mark} template`, [{ title, drawings }]);
}
