import { useComputed, useSignal } from '@preact/signals';
import { Link, useLocation } from 'wouter-preact';
import type { LookedAt } from '../../../../assess/look-at-connection.ts';
import { sketchConnection } from '../../../../drawing/sketch/connection-sketch.ts';
import { tellPlate } from '../../../../say/mode-words.ts';
import { countOf } from '../../../../say/part-words.ts';
import { ChoiceField } from '../../../parts/field.tsx';
import { Empty, Notice } from '../../../parts/notice.tsx';
import { personWriter, unitOf } from '../../../parts/units.ts';
import { addresses } from '../../state/addresses.ts';
import { useCommands } from '../../state/commands.ts';
import { useOffice } from '../../state/office.ts';
import { AnswerPart, findBeside } from './answer-part.tsx';
import { BarsPart } from './bars-part.tsx';
import { GivenPart, PlateForcesPart } from './basis-part.tsx';
import { BoltsPart, ConcretePart } from './bolts-part.tsx';
import { CarriesPart } from './carries-part.tsx';
import styles from './connection-screen.module.css';
import { Disclosure } from './disclosure.tsx';
import { EditionsPart } from './editions-part.tsx';
import { InsertsPart } from './inserts-part.tsx';
import { LoadsPart } from './loads-part.tsx';
import { AreaLegend, PlateDrawing } from './plate-drawing.tsx';
import { PlatePart } from './plate-part.tsx';
import { RemediesPart } from './remedies-part.tsx';
import { ResultsPart } from './results-part.tsx';
import { type Commit, useConnection } from './use-connection.ts';
import { ZonePart } from './zone-part.tsx';

/** Of the shown combination: the chosen one while it is there, else the governing one, else the first. */
function findShown({ explanation: { answer, loads } }: LookedAt, chosen: string | null): string | null {
  const names = loads.map(({ name }) => name);
  for (const name of [chosen, answer.governing?.combination ?? null])
    if (name !== null && names.includes(name)) return name;
  return names[0] ?? null;
}

/** The drawing with the combination that its arrows are of. */
function Drawing({
  looked,
  shown,
  onShow,
}: {
  readonly looked: LookedAt;
  readonly shown: string | null;
  readonly onShow: (name: string) => void;
}) {
  const { worked, explanation, panel, fixture, index, connection } = looked;
  if (worked === null)
    return (
      <Notice kind="fault" title="Cannot be computed">
        {explanation.answer.reasons.join('; ')}
      </Notice>
    );
  const castIns = index
    .castInsOf(panel.mark)
    .map((castIn) => ({ castIn, item: castIn.item === null ? null : (index.items.get(castIn.item) ?? null) }));
  const sketch = sketchConnection({ worked, explanation, panel, fixture, castIns, combination: shown });
  return (
    <figure class={styles.drawing}>
      <PlateDrawing
        sketch={sketch}
        title={`Connection ${connection.mark} to scale, seen from the front of the ${explanation.answer.face} face`}
      />
      <AreaLegend areas={sketch.areas} />
      <figcaption class={styles.under}>
        <span class={styles.words}>
          Seen from the front of the face, to scale. N at each insert in {unitOf('force')}.
        </span>
        {shown !== null && (
          <ChoiceField
            label="Loads shown"
            value={shown}
            options={explanation.loads.map(({ name }) => ({ value: name, text: name }))}
            onChange={(name) => {
              onShow(name);
              return null;
            }}
          />
        )}
      </figcaption>
    </figure>
  );
}

/** What a person should look at, what is taken as given, what the plate rests on. */
function Notes({ looked: { explanation } }: { readonly looked: LookedAt }) {
  const { warnings, plate } = explanation.answer;
  const words = tellPlate(plate, personWriter);
  return (
    <>
      {warnings.length > 0 && (
        <Notice kind="note" title="Look at">
          <ul class={styles.notes}>
            {warnings.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </Notice>
      )}
      {words !== null && <p>{words}</p>}
    </>
  );
}

function Editors({ looked, commit }: { readonly looked: LookedAt; readonly commit: Commit }) {
  const { session } = useOffice();
  const { panel, connection, inserts, fixture, detail } = looked;
  const isPartner = panel.handedOf !== null;
  const loads =
    connection.actions.kind === 'loads'
      ? countOf(connection.actions.combinations.length, 'combination')
      : connection.actions.kind === 'required'
        ? 'each insert'
        : 'no action given';
  return (
    <>
      {isPartner && panel.handedOf !== null && (
        <Notice kind="note" title="A handed partner">
          Panel {panel.mark} is the mirror image of{' '}
          <Link href={addresses.panel(session.id, panel.handedOf)}>{panel.handedOf}</Link>: what is changed there is
          changed here.
        </Notice>
      )}
      <fieldset class={styles.plain} disabled={isPartner}>
        <Disclosure title="Loads" hint={loads} isOpen>
          {() => <LoadsPart connection={connection} commit={commit} />}
        </Disclosure>
        <Disclosure
          title="Plate and holes"
          hint={detail === null ? (fixture === null ? 'none' : 'its own') : `detail ${detail.id}`}
        >
          {() => <PlatePart looked={looked} commit={commit} />}
        </Disclosure>
        <Disclosure title="Inserts, and their section in the form" hint={`${inserts.length} cast in`} isOpen>
          {() => <InsertsPart looked={looked} commit={commit} />}
        </Disclosure>
        <Disclosure title="Bolts and packers">{() => <BoltsPart looked={looked} commit={commit} />}</Disclosure>
        <Disclosure
          title="Concrete, age and use"
          hint={connection.uses.length === 0 ? undefined : connection.uses.join(', ')}
        >
          {() => <ConcretePart looked={looked} commit={commit} />}
        </Disclosure>
        <Disclosure
          title="Hangers and hairpins"
          hint={connection.hangers.length + connection.hairpins.length === 0 ? 'none' : undefined}
        >
          {() => <BarsPart connection={connection} commit={commit} />}
        </Disclosure>
      </fieldset>
    </>
  );
}

/** One connection: the answer, its picture, why, what would make it pass, and everything that it is made of. */
export function ConnectionScreen({ mark }: { readonly mark: string }) {
  const { session } = useOffice();
  const found = useConnection(mark);
  const chosen = useSignal<string | null>(null);
  const shown = useComputed(() => (found.value === null ? null : findShown(found.value, chosen.value)));
  const looked = found.value;
  const commit: Commit = (label, recipe) => session.commit(label.slice(0, 400), recipe);
  const [, go] = useLocation();
  const [before, next] = looked === null ? [null, null] : findBeside(looked);
  const open = (to: string | null) => {
    if (to !== null) go(addresses.connection(session.id, to));
  };
  useCommands('Connection', [
    { name: 'Choose an insert', key: 'I', run: () => go(addresses.choosing(session.id, mark)) },
    {
      name: 'Its panel',
      key: 'P',
      isAllowed: () => looked !== null,
      run: () => looked !== null && go(addresses.panel(session.id, looked.panel.mark)),
    },
    {
      name: 'The connection before it on the panel',
      key: 'B',
      isAllowed: () => before !== null,
      run: () => open(before),
    },
    { name: 'The next connection on the panel', key: 'N', isAllowed: () => next !== null, run: () => open(next) },
  ]);
  if (looked === null)
    return (
      <Empty title={`There is no connection ${mark}`}>
        <p>It was removed or has another mark now.</p>
        <Link href={addresses.panels(session.id)}>All panels</Link>
      </Empty>
    );
  const { worked, explanation } = looked;
  const { assumptions } = explanation.answer;
  return (
    <div class={styles.screen}>
      <div class={styles.look}>
        <AnswerPart looked={looked} />
        <Drawing
          looked={looked}
          shown={shown.value}
          onShow={(name) => {
            chosen.value = name;
          }}
        />
      </div>
      <div class={styles.rest}>
        {worked !== null && <ResultsPart worked={worked} explanation={explanation} />}
        <RemediesPart looked={looked} />
        <Notes looked={looked} />
        <div class={styles.parts}>
          <Editors looked={looked} commit={commit} />
          <Disclosure title="Carries at most">{() => <CarriesPart mark={mark} />}</Disclosure>
          <Disclosure title="Permitted positions" hint="how far inserts may be off">
            {() => <ZonePart looked={looked} commit={commit} />}
          </Disclosure>
          <p class={styles.way}>
            <Link href={addresses.plates(session.id, mark)}>Chance that its plate goes on first time</Link>
          </p>
          <Disclosure title="By other editions">{() => <EditionsPart mark={mark} />}</Disclosure>
          {worked !== null && (
            <>
              <Disclosure title="How the plate hands the load to the inserts" hint={shown.value ?? undefined}>
                {() => <PlateForcesPart worked={worked} combination={shown.value} />}
              </Disclosure>
              <Disclosure title="All that the steps start from" hint="N, mm, MPa">
                {() => <GivenPart worked={worked} />}
              </Disclosure>
            </>
          )}
          <Disclosure title="Taken as given" hint={`${assumptions.length}`}>
            {() => (
              <ul class={styles.notes}>
                {assumptions.map((text) => (
                  <li key={text}>{text}</li>
                ))}
              </ul>
            )}
          </Disclosure>
        </div>
      </div>
    </div>
  );
}
