import type { AsCastConnection, AsCastReport } from '../../../assess/as-cast/as-cast-report.ts';
import { explainWorked } from '../../../assess/explain/explanation.ts';
import { findNonConformance, type NonConformance } from '../../../assess/non-conformance/non-conformance.ts';
import { seeDeviations } from '../../../drawing/as-cast/deviation-marks.ts';
import { drawDeviationPicture } from '../../../drawing/as-cast/deviation-picture.ts';
import { drawNonConformanceSketch } from '../../../drawing/as-cast/non-conformance-sketch.ts';
import { drawAsCastSheets } from '../../../drawing/sheets/as-cast-sheet.ts';
import { drawNonConformanceSheets } from '../../../drawing/sheets/non-conformance-sheet.ts';
import { PAPERS } from '../../../drawing/sheets/paper.ts';
import { describeFace, describeType } from '../../../drawing/sheets/words.ts';
import { sketchConnection } from '../../../drawing/sketch/connection-sketch.ts';
import { frameOf } from '../../../job/face-frame.ts';
import { sayAsCastInsert, sayAsCastSheet, sayDecided, saySurveySheet } from '../../../say/as-cast-sheet-words.ts';
import { sayNonConformance } from '../../../say/non-conformance-page.ts';
import { writerOf } from '../../../say/quantities.ts';
import type { NamedSheets, SheetGround } from './sheet-ground.ts';

/** Records are in mm, and so are the sheets that show them. */
const { length: writeLength } = writerOf('metric');

function sketchOf({ piece }: SheetGround, { found, worked }: NonConformance) {
  if (worked === null) return null;
  const { plan, context } = piece;
  const { panel } = plan.setOut;
  const frame = frameOf(panel, found.connection);
  const sketch = sketchConnection({
    worked,
    explanation: explainWorked(worked),
    panel,
    fixture: context.index.fixtureOf(found.connection),
    castIns: [],
    combination: null,
  });
  const places = found.members.map(({ item: { number, castIn }, place }) => {
    const designed = frame.toFace([castIn.x_mm, castIn.y_mm]);
    return { number, designed, found: place === null ? designed : frame.toFace([place.x, place.y]) };
  });
  return (room: Parameters<typeof drawNonConformanceSketch>[3]) =>
    drawNonConformanceSketch(sketch, worked, places, room, writeLength);
}

/** The non-conformance sheet of one connection: one page, or more where much is to be said. */
export function drawNonConformance(ground: SheetGround, asCast: AsCastReport, found: AsCastConnection): NamedSheets {
  const { piece, facts, nameOf, writeMoment } = ground;
  const { plan, head, context } = piece;
  const about = findNonConformance(context, plan, asCast, found);
  const page = sayNonConformance(about, {
    panel: plan.setOut.panel,
    serial: head.serial,
    revision: context.revision.letter,
    project: facts.project,
    rules: context.index.file.library.rules,
    strength: asCast.strength,
    nameOf,
    writeMoment,
  });
  return {
    title: `Non-conformance ${found.connection.mark}`,
    drawings: drawNonConformanceSheets({ ...page, drawSketch: sketchOf(ground, about) }),
  };
}

/** The drawing of a piece as it came out: both sides, every insert in numbers, surveys, decisions. */
export function drawAsCast(ground: SheetGround, asCast: AsCastReport): NamedSheets {
  const { piece, facts } = ground;
  const { plan, head } = piece;
  const { panel } = plan.setOut;
  const sides = (['outside', 'inside'] as const).filter((side) =>
    asCast.inserts.some(({ item }) => item.castIn.face === side),
  );
  const drawings = drawAsCastSheets(
    {
      ...sayAsCastSheet(asCast),
      head: { mark: head.mark, title: 'As cast', lines: [`piece no. ${head.serial}`] },
      views: sides.map((side) => ({
        words: `Seen from ${side.toUpperCase()}, top up; inserts of this face and of the edges.`,
        draw: (room) =>
          drawDeviationPicture(
            seeDeviations(
              panel,
              asCast.inserts.filter(({ item }) => item.castIn.face === side || item.castIn.face === 'edge'),
              side,
            ),
            room,
            writeLength,
          ),
      })),
      rows: asCast.inserts.map((insert) => ({
        ...sayAsCastInsert(insert),
        type: describeType(insert.item),
        face: describeFace(insert.item),
      })),
      surveys: asCast.surveys.map((survey) => saySurveySheet(survey, ground)),
      decisions: asCast.connections.map((found) => sayDecided(found, ground)),
    },
    { ...facts, paper: PAPERS.A4 },
  );
  return { title: 'As cast', drawings };
}
