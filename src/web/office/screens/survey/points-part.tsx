import type { Signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { MatchAnswer } from '../../../../assess/as-cast/match-points.ts';
import type { SurveyRow } from '../../../../files/survey/survey-file.ts';
import { placesOf } from '../../../../say/number-runs.ts';
import { Button } from '../../../parts/button.tsx';
import { CheckField, ChoiceField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { findNearest } from '../../../pieces/survey/find-nearest.ts';
import { listReadPairs } from '../../../pieces/survey/make-survey.ts';
import type { SurveyPair } from '../../../pieces/survey/survey-draft.ts';
import { listFlatPoints, listSolidPoints } from '../../../pieces/survey/survey-targets.ts';
import { choiceOf, listMeanings, tellMeaning } from './meaning-choice.ts';
import styles from './survey.module.css';
import type { SurveyDesk } from './survey-desk.ts';
import { SurveyPicture } from './survey-picture.tsx';

type ReadPair = SurveyPair & { readonly row: SurveyRow };

/** Farther from anything than that [mm], a point is of something else. */
const NEAR = 300;

/** In metres to the millimetre, as instruments write them. */
function writeMetres(value: number | undefined): string {
  return value === undefined ? '–' : (value / 1000).toFixed(3);
}

/** What geometry and names say of which is which. */
function Suggested({ match, desk }: { readonly match: MatchAnswer | null; readonly desk: SurveyDesk }) {
  if (match === null || match.state === 'none')
    return (
      <Notice kind="fault" title="No way was found to lay these points on the panel">
        {match?.isMirrored === true
          ? 'Their mirror image fits: they were measured from the other face without heights, or east and north are exchanged. If so, choose the other order of the cells above. Nothing is ever mirrored by itself.'
          : 'Is it this panel, and the right unit and order? Say in the table which point is which, or read another file.'}
      </Notice>
    );
  return (
    <>
      {match.isMirrored && (
        <Notice kind="fault" title="The mirror image of these points fits far better">
          They were measured from the other face without heights, or east and north are exchanged. If so, choose the
          other order of the cells above. Nothing is ever mirrored by itself.
        </Notice>
      )}
      {match.state === 'cannot tell' && (
        <Notice kind="caution" title="Cannot tell which way round">
          <p>
            {`Two ways fit equally well${match.by === 'names' ? '; the names in the file chose' : ''}. Look at the numbers at the panel before you confirm.`}
          </p>
          {match.runnerUp !== null && (
            <Button kind="quiet" onPress={() => desk.turnRound()}>
              Take the other way round
            </Button>
          )}
        </Notice>
      )}
    </>
  );
}

/** Follows which row the keyboard or the hand is at: the picture shows it. */
function useRowUnderHand(lit: Signal<number | null>) {
  const ref = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const table = ref.current;
    if (table === null) return;
    const follow = ({ target }: Event) => {
      const row = target instanceof Element ? target.closest('tr')?.querySelector('[data-line]') : null;
      const line = Number(row?.getAttribute('data-line'));
      if (row !== null && row !== undefined && line > 0) lit.value = line;
    };
    table.addEventListener('focusin', follow);
    table.addEventListener('pointerover', follow);
    return () => {
      table.removeEventListener('focusin', follow);
      table.removeEventListener('pointerover', follow);
    };
  });
  return ref;
}

/** Which surveyed point is which: suggested by geometry, confirmed or changed by a person. */
export function PointsPart({
  desk,
  piece,
  lit,
}: {
  readonly desk: SurveyDesk;
  readonly piece: OpenPiece;
  readonly lit: Signal<number | null>;
}) {
  const table = useRowUnderHand(lit);
  const matched = desk.matched.value;
  if (matched === null) return null;
  const { file, match } = matched;
  const { panel, items } = piece.plan.setOut;
  const hasHeights = file.rows[0]?.at_mm.length === 3;
  const meanings = listMeanings(panel, items, hasHeights);
  const pairs: readonly ReadPair[] = listReadPairs(desk.draft.value, file);
  const { matching } = desk;
  const design = matched.face === null ? listSolidPoints(panel, items) : listFlatPoints(panel, items, matched.face);
  const offs = new Map(matching?.pairs.map(({ surveyed, off }) => [file.rows[surveyed]?.line, off]) ?? []);
  const have = new Set(pairs.flatMap(({ meaning }) => (meaning.is === 'insert' ? [meaning.key] : [])));
  const without = items.filter(({ castIn }) => !have.has(castIn.key)).map(({ number }) => number);
  const open = pairs.filter(({ isConfirmed, meaning }) => !isConfirmed && meaning.is !== 'nothing').length;
  const columns: readonly Column<ReadPair>[] = [
    { head: 'point', isName: true, kind: 'short', cell: ({ row }) => row.name ?? '–' },
    {
      head: 'is',
      cell: ({ row, meaning }) => (
        <div class={styles.choice} data-line={row.line}>
          <ChoiceField
            label={`What ${row.name ?? `line ${row.line}`} is`}
            isInTable
            value={choiceOf(meaning)}
            options={meanings}
            onChange={(value) => {
              const chosen = meanings.find((one) => one.value === value);
              if (chosen !== undefined) desk.mean(row.line, chosen.meaning);
              return null;
            }}
          />
        </div>
      ),
    },
    {
      head: 'off',
      kind: 'short',
      cell: ({ row, meaning }) => {
        const off = offs.get(row.line);
        if (meaning.is !== 'nothing') return off === undefined ? '–' : writeQuantity('length', Math.round(off));
        const near = matching === null ? null : findNearest(design, matching.pose, row.at_mm, NEAR);
        if (near === null) return 'nothing is near';
        const name = near.point.kind === 'insert' ? `insert ${near.point.number}` : near.point.number;
        return `${writeQuantity('length', Math.round(near.off))} from ${name}`;
      },
    },
    {
      head: 'seen',
      kind: 'short',
      cell: ({ row, meaning, isConfirmed }) => (
        <CheckField
          label={isConfirmed ? 'confirmed' : meaning.is === 'nothing' ? 'not used' : 'suggested'}
          isOn={isConfirmed}
          onChange={(isOn) => desk.confirm(row.line, isOn)}
        />
      ),
    },
    { head: 'east m', kind: 'number', cell: ({ row }) => writeMetres(row.at_mm[0]) },
    { head: 'north m', kind: 'number', cell: ({ row }) => writeMetres(row.at_mm[1]) },
    { head: 'height m', kind: 'number', cell: ({ row }) => writeMetres(row.at_mm[2]) },
    { head: 'line', kind: 'number', cell: ({ row }) => row.line },
  ];
  return (
    <Section
      title="2 · Which point is which"
      lead="Suggested by the distances between the points. Each is confirmed by you, or changed."
      actions={
        <Button kind={open > 0 ? 'main' : 'plain'} isDisabled={open === 0} onPress={() => desk.confirmAll()}>
          {open === 0 ? 'All confirmed' : `Confirm all ${open} suggested`}
        </Button>
      }
    >
      <Suggested match={match} desk={desk} />
      <SurveyPicture
        panel={panel}
        items={items}
        pairs={pairs}
        pose={matching?.pose ?? null}
        face={matched.face}
        lit={lit.value}
        tell={({ meaning }) => tellMeaning(items, meaning)}
      />
      {matched.face !== null && (
        <p>{`Without heights: laid on the ${matched.face} face as one stands in front of it. How deep inserts sit is not known so.`}</p>
      )}
      {without.length > 0 && <p>{`Without a point: ${placesOf(without)}.`}</p>}
      <div ref={table} class={styles.rows}>
        <Table caption="Surveyed points" columns={columns} rows={pairs} keyOf={({ row }) => String(row.line)} />
      </div>
    </Section>
  );
}
