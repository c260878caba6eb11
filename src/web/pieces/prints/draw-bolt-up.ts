import type { BoltUpCard, BoltUpReport } from '../../../assess/bolt-up/bolt-up-report.ts';
import { listPicks } from '../../../assess/bolt-up/pick-list.ts';
import { drawBoltUpCard, pairCards } from '../../../drawing/sheets/bolt-up-card-sheet.ts';
import { CODE_SIZE } from '../../../drawing/sheets/check-sheet.ts';
import { drawPickSheets, makeKitLabel } from '../../../drawing/sheets/kit-sheet.ts';
import { PAPERS } from '../../../drawing/sheets/paper.ts';
import { drawPictureSheets } from '../../../drawing/sheets/picture-sheet.ts';
import { finishSheets, type Sheet } from '../../../drawing/sheets/sheet-frame.ts';
import { drawQr } from '../../../files/qr/qr-marks.ts';
import { writePieceCode } from '../../../job/piece-code.ts';
import { sayBoltUpCard } from '../../../say/bolt-up-card.ts';
import { sayKitNotes, sayPickNotes } from '../../../say/kit-words.ts';
import type { NamedSheets, SheetGround } from './sheet-ground.ts';

function makeCard({ piece, facts }: SheetGround, report: BoltUpReport, card: BoltUpCard) {
  const { plan, head, context } = piece;
  const { panel } = plan.setOut;
  const fixture = context.index.fixtureOf(card.asCast.connection);
  const words = sayBoltUpCard(card, report, {
    panel,
    serial: head.serial,
    revision: context.revision.letter,
    project: facts.project,
  });
  const plate =
    fixture === null || card.plate === null
      ? null
      : {
          panel,
          designed: card.asCast.connection,
          fixed: card.connection,
          fixture,
          holes: card.plate.holes,
          members: card.asCast.members,
          hasLengths: true,
          unused: new Set(card.unused.map(({ item }) => item.castIn.key)),
        };
  return { ...words, plate };
}

/** The cards of some connections of a piece, two sides to a sheet A4. */
export function drawCards(ground: SheetGround, report: BoltUpReport, cards: readonly BoltUpCard[]): NamedSheets {
  const sides = cards.flatMap((card) => drawBoltUpCard(makeCard(ground, report, card)));
  return { title: 'Cards for bolting up', drawings: pairCards(sides) };
}

/** The pick list of a piece, and a label for each of its kit bags. */
export function drawKit({ piece, facts }: SheetGround, report: BoltUpReport): readonly NamedSheets[] {
  const { head, context } = piece;
  const paper = PAPERS.A4;
  const place = report.place ?? 'place in the building not recorded';
  const lines = [`piece no. ${head.serial}`, place];
  const code = writePieceCode({
    project: facts.project,
    mark: head.mark,
    serial: head.serial,
    letter: context.revision.letter,
    fingerprint: facts.fingerprint,
  });
  return listPicks([report]).flatMap((list): readonly NamedSheets[] => {
    const bags = list.bags.filter(({ open }) => open.length === 0);
    const labels = bags.map((bag) =>
      makeKitLabel({
        panel: list.panel,
        connection: bag.card.connection.mark,
        lines: [...lines, `revision ${context.revision.letter}`],
        parts: bag.lines,
        notes: sayKitNotes(bag),
        code: { mark: drawQr([0, 0], CODE_SIZE, code), side: CODE_SIZE },
      }),
    );
    const picks = drawPickSheets(
      {
        head: { mark: list.panel, title: 'Pick list', lines },
        parts: list.lines,
        bags: list.bags.map(({ card, lines: parts, open }) => ({
          connection: card.connection.mark,
          piece: `no. ${head.serial}`,
          parts,
          open,
        })),
        notes: sayPickNotes(list),
      },
      paper,
    );
    const labelHead = { mark: list.panel, title: 'Labels of kit bags', lines };
    // Each is printed by itself too: its pages count by themselves.
    const finish = (sheets: readonly Sheet[]) => finishSheets(sheets, { ...facts, paper });
    return [
      { title: 'Pick list', drawings: finish(picks) },
      { title: 'Labels of kit bags', drawings: finish(drawPictureSheets(labels, labelHead, paper)) },
    ];
  });
}
