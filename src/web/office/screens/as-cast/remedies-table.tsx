import type { AsCastConnection, Remedy } from '../../../../assess/as-cast/as-cast-report.ts';
import type { ConnectionState } from '../../../../assess/connection-answer.ts';
import { asSentence } from '../../../../say/fit-answer.ts';
import { tellClearanceLeft } from '../../../../say/fit-words.ts';
import { showRatio } from '../../../../say/numbers.ts';
import { STATE_WORDS } from '../../../../say/words.ts';
import { Button } from '../../../parts/button.tsx';
import { StateMark } from '../../../parts/state-mark.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import styles from './as-cast.module.css';
import { VerdictMark } from './as-cast-marks.tsx';
import { PlateFigure } from './plate-figure.tsx';
import { TemplateKeys } from './template-keys.tsx';

const WHO: Readonly<Record<Remedy['act'], string>> = {
  'decide on site': 'on site: installer, foreman, QA, design engineer',
  'change the design': 'design engineer with a registration',
};

/** A ratio is full here; the line of a bar stands at 1. */
const FULL = 1.5;

/** The strength with this remedy beside that of the design: a length and a number, so that rows compare at a glance. */
function Strength({ state, ratio }: { readonly state: ConnectionState; readonly ratio: number | null }) {
  const share = ratio === null ? 0 : Math.min(1, ratio / FULL);
  return (
    <span class={styles.strength}>
      <span>
        strength <StateMark state={state} words={STATE_WORDS[state]} /> <strong>{showRatio(ratio)}</strong>
      </span>
      {ratio !== null && (
        <span class={`${styles.track} ${state === 'passes' ? styles.passes : styles.other}`} aria-hidden="true">
          <span class={styles.fill} style={{ width: `${100 * share}%` }} />
          <span class={styles.limit} />
        </span>
      )}
    </span>
  );
}

function Lines({ of }: { readonly of: readonly string[] }) {
  return (
    <span class={styles.lines}>
      {of.map((words) => (
        <span key={words}>{words}</span>
      ))}
    </span>
  );
}

/** A remedy that was computed; others cannot be, or are not needed, and give up is no remedy. */
function isComputed({ ratio, clearance, kind }: Remedy): boolean {
  return kind !== 'not usable' && (ratio !== null || clearance !== null);
}

export interface RemediesTableProps {
  readonly yard: Yard;
  readonly piece: OpenPiece;
  readonly found: AsCastConnection;
  readonly onDecide: (remedy: Remedy) => void;
}

/** What may be done about a connection, one remedy a row, the same things under each other so that they can be compared. */
export function RemediesTable({ yard, piece, found, onDecide }: RemediesTableProps) {
  const decided = found.state === 'decided' ? found.decision?.body.remedy : undefined;
  const columns: readonly Column<Remedy>[] = [
    {
      head: 'remedy',
      kind: 'wide',
      isName: true,
      cell: (remedy) => {
        const { kind, words, act } = remedy;
        return (
          <span class={styles.lines}>
            <span class={styles.kind}>
              {kind}
              {kind === decided && <span class={styles.chosen}>decided</span>}
            </span>
            <span class={styles.words}>{words}</span>
            <span class={styles.soft}>{WHO[act]}</span>
            <span class={`${styles.keys} not-printed`}>
              <Button
                kind={remedy.verdict === 'works' ? 'plain' : 'quiet'}
                name={`Decide for ${found.connection.mark}: ${kind}`}
                onPress={() => onDecide(remedy)}
              >
                Decide
              </Button>
              <TemplateKeys yard={yard} piece={piece} found={found} remedy={remedy} />
            </span>
          </span>
        );
      },
    },
    { head: 'plate on its bolts', cell: (remedy) => <PlateFigure piece={piece} found={found} remedy={remedy} /> },
    {
      head: 'answer',
      cell: (remedy) => (
        <span class={styles.answer}>
          <VerdictMark verdict={remedy.verdict} />
          <Strength state={remedy.state} ratio={remedy.ratio} />
          <span>{tellClearanceLeft(remedy, (mm) => writeQuantity('length', mm)) ?? 'no plate'}</span>
        </span>
      ),
    },
    {
      head: 'why, and what goes with it',
      kind: 'wide',
      cell: ({ why, conditions }) => <Lines of={[...why, ...conditions]} />,
    },
  ];
  const others = found.remedies.filter((remedy) => !isComputed(remedy) && remedy.kind !== 'not usable');
  const end = found.remedies.find(({ kind }) => kind === 'not usable');
  return (
    <>
      <Table
        caption={`Remedies of ${found.connection.mark}`}
        stacks
        columns={columns}
        rows={found.remedies.filter(isComputed)}
        keyOf={({ kind, words }) => `${kind} ${words}`}
        groupOf={({ act }) =>
          act === 'decide on site' ? 'without a change of the design' : 'with a change of the design'
        }
      />
      {others.length > 0 && (
        <ul class={styles.others} aria-label={`Not possible or not needed for ${found.connection.mark}`}>
          {others.map(({ kind, words, why }) => (
            <li key={kind + words}>
              <strong>{kind}</strong>: {why.join('; ')}
            </li>
          ))}
        </ul>
      )}
      {end !== undefined && <GiveUp found={found} remedy={end} onDecide={onDecide} />}
    </>
  );
}

/** That it is given up: what follows from it, and the decision. */
function GiveUp({ found, remedy, onDecide }: Omit<RemediesTableProps, 'piece' | 'yard'> & { readonly remedy: Remedy }) {
  return (
    <div class={styles.giveUp}>
      <p>
        <strong>{remedy.words}</strong> {asSentence([...remedy.why, ...remedy.conditions].join('; '))}
      </p>
      <span class="not-printed">
        <Button
          kind="quiet"
          name={`Decide for ${found.connection.mark}: ${remedy.kind}`}
          onPress={() => onDecide(remedy)}
        >
          Decide
        </Button>
      </span>
    </div>
  );
}
