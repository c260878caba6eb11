import type { BoltUpCard, BoltUpReport } from '../../../../assess/bolt-up/bolt-up-report.ts';
import type { Person } from '../../../../records/person.ts';
import { sayBoltUp, sayTemporary } from '../../../../say/bolt-up-words.ts';
import { placesOf } from '../../../../say/number-runs.ts';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { StateMark } from '../../../parts/state-mark.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import { useBoltUp } from '../../../pieces/bolt-up/use-bolt-up.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import styles from './bolt-up.module.css';
import { listGaps, markOf, sayBolts, sayLimit, sayOffered, sayState, sayTightened } from './card-cells.ts';
import { PrintKeys } from './print-keys.tsx';

/** Pieces that hang or are about to: nobody bolts up what is in its form. */
const LATE: ReadonlySet<OpenPiece['report']['phase']> = new Set(['stripped', 'opened up', 'surveyed', 'bolted up']);

function Lines({
  of,
  isOpen = false,
  isWhole = false,
}: {
  readonly of: readonly string[];
  /** They leave something open. */
  readonly isOpen?: boolean;
  /** No line is broken. */
  readonly isWhole?: boolean;
}) {
  return (
    <span class={`${styles.lines} ${isWhole ? styles.whole : ''}`}>
      {of.map((words) => (
        <span key={words} class={isOpen ? styles.gap : undefined}>
          {words}
        </span>
      ))}
    </span>
  );
}

function Done({ card, people }: { readonly card: BoltUpCard; readonly people: readonly Person[] }) {
  const said = [sayOffered(card, people), sayTightened(card, people)].filter((words) => words !== null);
  return (
    <span class={styles.lines}>
      {said.length === 0 ? <span class={styles.soft}>neither offered up nor tightened</span> : <Lines of={said} />}
      <Lines of={listGaps(card)} isOpen />
    </span>
  );
}

function listColumns(people: readonly Person[]): readonly Column<BoltUpCard>[] {
  return [
    { head: 'connection', kind: 'short', isName: true, cell: ({ connection }) => connection.mark },
    {
      head: 'inserts',
      kind: 'short',
      cell: ({ bolts, seenFrom }) =>
        `${placesOf(bolts.map(({ insert }) => insert.item.number))}, ${seenFrom === 'edge' ? 'in the edge' : `from ${seenFrom}`}`,
    },
    {
      head: 'stands',
      kind: 'wide',
      cell: (card) => (
        <span class={styles.lines}>
          <StateMark state={markOf(card)} words={sayState(card)} />
          <Lines of={card.state === 'tightened' ? card.tightenedFaults : card.stops} />
          <span class={styles.soft}>
            <Lines of={card.notes} />
          </span>
        </span>
      ),
    },
    { head: 'bolts and washers', kind: 'wide', cell: (card) => <Lines of={sayBolts(card)} isWhole /> },
    { head: 'tightening', cell: sayLimit },
    { head: 'offered up, tightened', kind: 'wide', cell: (card) => <Done card={card} people={people} /> },
  ];
}

/** Caps and threads as they came to the site; null: nobody looked. */
function tellDelivery(cards: readonly BoltUpCard[]): readonly string[] | null {
  const seen = cards.flatMap(({ bolts }) => bolts).filter(({ delivery }) => delivery !== null);
  if (seen.length === 0) return null;
  return seen.flatMap(({ insert, delivery }) => {
    const wrong = [
      ...(delivery?.caps === false ? ['no cap'] : []),
      ...(delivery?.threads === false ? ['thread not clean'] : []),
    ];
    return wrong.length === 0 ? [] : [`no. ${insert.item.number}: ${wrong.join(', ')}`];
  });
}

function Beside({ report: { cards, temporary, place } }: { readonly report: BoltUpReport }) {
  const delivered = tellDelivery(cards);
  return (
    <dl class={styles.beside}>
      <dt>stands at</dt>
      <dd>{place ?? 'not recorded: the tablet asks for it on delivery'}</dd>
      <dt>on delivery</dt>
      <dd>
        {delivered === null
          ? 'nobody has looked at caps and threads on site'
          : delivered.length === 0
            ? 'caps in, threads clean'
            : delivered.join('; ')}
      </dd>
      <dt>for a time only</dt>
      <dd>
        {temporary.length === 0 ? (
          'no brace or lifting insert in this panel'
        ) : (
          <Lines of={temporary.map(sayTemporary)} />
        )}
      </dd>
    </dl>
  );
}

/** On the page of a piece: how far it is bolted up, with what, by whom, and what is left open; cards, labels and pick list to print. */
export function BoltUpPart({ yard, piece }: { readonly yard: Yard; readonly piece: OpenPiece }) {
  const report = useBoltUp(piece);
  const { phase } = piece.report;
  if (!LATE.has(phase))
    return (
      <Section title="Bolt up">
        <p>It is not out of its form: once it is stripped and surveyed, bolts, cards and kit bags stand here.</p>
      </Section>
    );
  if (report === null)
    return (
      <Section title="Bolt up">
        <p aria-busy="true">Computing where the bolts are and how long they must be …</p>
      </Section>
    );
  const { cards, isDone } = report;
  if (cards.length === 0)
    return (
      <Section title="Bolt up">
        <p>Nothing is bolted to this panel: the revision in force has no connection on it.</p>
        <Beside report={report} />
      </Section>
    );
  return (
    <Section
      title="Bolt up"
      lead="NOT FOR LIFTING: no fixing or brace insert of this panel. Bolts by the depth as it was surveyed."
      actions={
        <>
          <PrintKeys yard={yard} piece={piece} report={report} />
          {/* Another page, made for the tablet. */}
          <a class={styles.link} href={places.bolts(piece.id)}>
            On the tablet
          </a>
        </>
      }
    >
      <p>
        <strong>{sayBoltUp(report)}</strong>
      </p>
      <Notice kind="caution" title={isDone ? 'Braces' : 'Every brace stays'}>
        {isDone
          ? 'All permanent connections are tightened. Braces come off only as the temporary works design says.'
          : 'Until all permanent connections are tightened and recorded nobody stands below, and no brace is taken off.'}
      </Notice>
      <Table
        caption="Connections to be bolted up"
        columns={listColumns(piece.context.people)}
        rows={cards}
        keyOf={({ connection }) => connection.key}
      />
      <Beside report={report} />
    </Section>
  );
}
