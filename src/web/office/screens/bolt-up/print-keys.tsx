import { useSignal } from '@preact/signals';
import type { BoltUpReport } from '../../../../assess/bolt-up/bolt-up-report.ts';
import { Button } from '../../../parts/button.tsx';
import { drawCards, drawKit } from '../../../pieces/prints/draw-bolt-up.ts';
import {
  type NamedSheets,
  readSheetGround,
  type SheetGround,
  saveSheets,
} from '../../../pieces/prints/sheet-ground.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { tell } from '../../state/messages.ts';
import { tellError } from '../../state/use-asked.ts';
import { writeStamp } from '../../state/write-moment.ts';

type Draw = (ground: SheetGround, report: BoltUpReport) => readonly NamedSheets[];

/** Of what is to be fetched the list comes first, then a label for each bag that may be packed. */
const isPickList = ({ title }: NamedSheets) => title === 'Pick list';

const PRINTS: readonly { readonly what: string; readonly words: string; readonly draw: Draw }[] = [
  {
    what: 'bolt-up cards',
    words: 'Bolt-up cards as PDF',
    draw: (ground, report) => [drawCards(ground, report, report.cards)],
  },
  {
    what: 'kit-bag labels',
    words: 'Kit-bag labels as PDF',
    draw: (ground, report) => drawKit(ground, report).filter((sheets) => !isPickList(sheets)),
  },
  {
    what: 'pick list',
    words: 'Pick list as PDF',
    draw: (ground, report) => drawKit(ground, report).filter(isPickList),
  },
];

/** Sheets of a piece that is bolted up, each as a PDF. No label is printed of a bag that waits. */
export function PrintKeys({
  yard,
  piece,
  report,
}: {
  readonly yard: Yard;
  readonly piece: OpenPiece;
  readonly report: BoltUpReport;
}) {
  const writing = useSignal<string | null>(null);
  const hasBags = report.cards.some(({ state }) => state === 'ready');
  const save = async (what: string, draw: Draw) => {
    writing.value = what;
    try {
      const ground = readSheetGround(yard, piece, writeStamp);
      await saveSheets(ground, what, draw(ground, report));
    } catch (error) {
      tell('fault', `The PDF was not written: ${tellError(error)}`);
    }
    writing.value = null;
  };
  return (
    <>
      {PRINTS.map(({ what, words, draw }) => (
        <Button
          key={what}
          isDisabled={writing.value !== null || (what === 'kit-bag labels' && !hasBags)}
          onPress={() => void save(what, draw)}
        >
          {writing.value === what ? 'Writing the PDF …' : words}
        </Button>
      ))}
    </>
  );
}
