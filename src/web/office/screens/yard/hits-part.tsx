import { type ExactHits, judgeExactHits, listReadings } from '../../../../assess/yard/exact-hits.ts';
import type { Person } from '../../../../records/person.ts';
import { Section } from '../../../parts/page.tsx';
import { type ShownState, StateMark } from '../../../parts/state-mark.tsx';
import { Table } from '../../../parts/table.tsx';
import type { OpenPiece } from '../../../pieces/read-piece.ts';

const MARKS: Readonly<Record<ExactHits['verdict'], ShownState>> = {
  'as by taping': 'passes',
  'too few to say': 'strength not checked',
  'far more than by taping': 'cannot be computed',
};

const WORDS: Readonly<Record<ExactHits['verdict'], string>> = {
  'as by taping': 'as taping gives',
  'too few to say': 'too few to say',
  'far more than by taping': 'far more than taping gives: look',
};

function writeShare({ exact, readings }: ExactHits): string {
  return `${exact} of ${readings}, ${Math.round((100 * exact) / readings)} %`;
}

/** A small probability in words that nobody takes for a proof. */
function writeTail({ tail }: ExactHits): string {
  if (tail >= 0.01) return `1 in ${Math.max(1, Math.round(1 / tail))}`;
  return tail < 1e-6 ? 'less than 1 in a million' : `1 in ${Math.round(1 / tail).toLocaleString('en')}`;
}

/** How often each person's readings are just what is printed: where nobody taped, all of them are. */
export function HitsPart({
  pieces,
  people,
}: {
  readonly pieces: readonly OpenPiece[];
  readonly people: readonly Person[];
}) {
  const readings = pieces.flatMap(({ plan, state }) =>
    listReadings(
      state.history.filter(({ id }) => !state.withdrawn.has(id)),
      plan,
    ),
  );
  const hits = judgeExactHits(readings);
  const nameOf = (id: string) => people.find((one) => one.id === id)?.name ?? 'somebody whose name is not here';
  return (
    <Section
      title="Readings that are just what is printed"
      lead="A tape is read to a few millimetres: about one honest reading in five is the printed length to the millimetre. Many more say that the sheet was copied. It proves nothing about anybody; it says where to measure again."
    >
      {hits.length === 0 ? (
        <p>Nobody has taped anything by the revision in force yet.</p>
      ) : (
        <Table<ExactHits>
          caption="Readings that are just what is printed, by person"
          columns={[
            { head: 'who taped', isName: true, cell: ({ person }) => nameOf(person) },
            { head: 'exact', kind: 'number', cell: writeShare },
            { head: 'by honest taping', kind: 'number', cell: ({ expected }) => `about ${expected.toFixed(1)}` },
            { head: 'so many or more by chance', kind: 'number', cell: writeTail },
            {
              head: 'what it says',
              kind: 'short',
              cell: ({ verdict }) => <StateMark state={MARKS[verdict]} words={WORDS[verdict]} />,
            },
          ]}
          rows={hits}
          keyOf={({ person }) => person}
        />
      )}
    </Section>
  );
}
