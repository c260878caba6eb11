import { threadNames } from '../../../../engine/hardware/threads.ts';
import { type CatalogueItem, catalogueItem } from '../../../../job/documents/catalogue.ts';
import { addItem } from '../../../../job/edit/commands/edit-library.ts';
import { FINISH_WORDS } from '../../../../say/item-words.ts';
import { EntryDialog, type EntryField, type EntryValues, numberIn, textIn } from '../../../parts/entry-dialog.tsx';
import type { JobSession } from '../../state/session.ts';

const length = { of: 'quantity', quantity: 'length' } as const;
const stress = { of: 'quantity', quantity: 'stress' } as const;

const FIELDS: readonly EntryField[] = [
  { key: 'id', label: 'Type', hint: 'As the shelf and the drawings name it.', kind: { of: 'text' }, value: null },
  { key: 'name', label: 'Name', kind: { of: 'text' }, value: null },
  {
    key: 'thread',
    label: 'Thread',
    kind: { of: 'choice', options: threadNames.map((name) => ({ value: name, text: name })) },
    value: 'M16',
  },
  {
    key: 'finish',
    label: 'Finish',
    kind: { of: 'choice', options: Object.entries(FINISH_WORDS).map(([value, text]) => ({ value, text })) },
    value: 'zinc',
  },
  { key: 'length', label: 'Length', kind: length, value: null },
  {
    key: 'embedment',
    label: 'Embedment',
    hint: 'From the top to the bearing side of the foot.',
    kind: length,
    value: null,
  },
  { key: 'body', label: 'Body diameter', kind: length, value: null },
  { key: 'foot', label: 'Foot diameter', kind: length, value: null },
  { key: 'threadDepth', label: 'Depth of thread', kind: length, value: null },
  { key: 'ultimate', label: 'Ultimate strength of its steel', kind: stress, value: null },
  { key: 'yield', label: 'Yield strength of its steel', kind: stress, value: null },
];

/** An insert with what was typed; what was not asked is not known, which is the safe side. */
function makeItem(values: EntryValues): CatalogueItem | null {
  const finish = textIn(values, 'finish');
  const read = catalogueItem.safeParse({
    id: textIn(values, 'id'),
    name: textIn(values, 'name'),
    thread: textIn(values, 'thread'),
    length_mm: numberIn(values, 'length'),
    embedment_mm: numberIn(values, 'embedment'),
    foot: { kind: 'diameter', diameter_mm: numberIn(values, 'foot'), thickness_mm: null, isFullHead: true },
    bodyDiameter_mm: numberIn(values, 'body'),
    crossHole: null,
    threadDepth_mm: numberIn(values, 'threadDepth'),
    threadStartsBelowTop_mm: 0,
    steel: {
      ultimate_MPa: numberIn(values, 'ultimate'),
      yield_MPa: numberIn(values, 'yield'),
      elongation_percent: null,
      areaReduction_percent: null,
    },
    finish,
    coating_um: 0,
    threadClass: '6H',
    boltFinishes: [finish],
    maxTorque_Nm: null,
    qualification: null,
  });
  return read.success ? read.data : null;
}

/** Asks for what an insert must have; the rest is filled in on its own screen. */
export function AddItemDialog({
  session,
  onClose,
  onAdded,
}: {
  readonly session: JobSession;
  readonly onClose: () => void;
  readonly onAdded: (id: string) => void;
}) {
  return (
    <EntryDialog
      title="Add an insert"
      lead="Sizes from the maker’s drawing, strengths from the maker’s document. Until it has a qualification document, nothing that uses it passes."
      fields={FIELDS}
      action="Add it"
      onClose={onClose}
      onTake={(values) => {
        const item = makeItem(values);
        if (item === null)
          return 'Lengths and strengths are numbers above 0; names are one line that does not start with = + - or @.';
        const why = session.commit(`Insert ${item.id} added to the catalogue`, addItem(item, null));
        if (why === null) onAdded(item.id);
        return why;
      }}
    />
  );
}
