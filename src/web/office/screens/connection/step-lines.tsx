import type { SteppedRow } from '../../../../assess/explain/explain-steps.ts';
import { type WrittenStep, writeNumber } from '../../../../engine/checks/write-step.ts';
import { showRatio } from '../../../../say/numbers.ts';
import { sayChoices, showFormula, showSentence, showSymbol } from '../../../../say/step-words.ts';
import { nameMode, tellAction } from '../../../../say/words.ts';
import styles from './step-lines.module.css';
import { Typeset } from './typeset.tsx';

function Step({ step: { symbol, unit, formula, numbers, result, clause } }: { readonly step: WrittenStep }) {
  const value = (
    <b>
      {writeNumber(result)}
      {unit === '-' || unit === '' ? '' : <Typeset text={` ${unit}`} />}
    </b>
  );
  return (
    <li class={styles.step}>
      <span class={styles.clause}>{clause}</span>
      {clause === '' ? (
        <span class={styles.line}>
          <Typeset text={showSymbol(symbol)} /> = {value}{' '}
          <span class={styles.how}>
            <Typeset text={showSentence(formula)} />
          </span>
        </span>
      ) : (
        <span class={styles.line}>
          <Typeset text={`${showSymbol(symbol)} = ${showFormula(formula)}`} />
          {numbers === formula ? '' : <Typeset text={` = ${sayChoices(numbers)}`} />} = {value}
        </span>
      )}
    </li>
  );
}

/** What a row comes to: action over resistance, and what that says. */
function Ratio({ row: { mode, part, action, resistance, ratio, applies, isWithin } }: { readonly row: SteppedRow }) {
  if (action === null || resistance === null || ratio === null) return null;
  const end = !applies ? 'not decisive, the bars carry it' : isWithin ? 'passes' : 'fails';
  return (
    <>
      <li class={styles.step}>
        <span class={styles.clause}>action</span>
        <span class={styles.line}>
          <b>{writeNumber(action)} N</b> <span class={styles.how}>{tellAction(mode, part ?? undefined)}</span>
        </span>
      </li>
      <li class={styles.step}>
        <span class={styles.clause}>ratio</span>
        <span class={styles.line}>
          {writeNumber(action)} / {writeNumber(resistance)} ={' '}
          <b>{Number.isFinite(ratio) ? writeNumber(ratio) : 'no resistance'}</b>: {showRatio(ratio)}, {end}
        </span>
      </li>
    </>
  );
}

/** One row of the check, line by line: the clause at the margin, then symbol = formula = numbers = result. */
export function RowSteps({ row }: { readonly row: SteppedRow }) {
  const { mode, part, inserts, clause, steps, after, notes, ratio, action } = row;
  const whose = inserts.length === 0 ? '' : `${inserts.length === 1 ? 'insert' : 'inserts'} ${inserts.join(', ')}`;
  return (
    <section class={styles.steps}>
      <p class={styles.title}>
        <span>
          {nameMode(mode)}
          {part === null ? '' : `, ${part}`}
        </span>
        <span class={styles.how}>{whose}</span>
        <span class={styles.clause}>{clause}</span>
      </p>
      <ol>
        {steps.map((step, i) => (
          <Step key={i} step={step} />
        ))}
        <Ratio row={row} />
        {after.map((step, i) => (
          <Step key={`after ${i}`} step={step} />
        ))}
        {action === null && ratio !== null && (
          <li class={styles.step}>
            <span class={styles.clause}>ratio</span>
            <span class={styles.line}>
              <b>{showRatio(ratio)}</b>, {row.isWithin ? 'passes' : 'fails'}
            </span>
          </li>
        )}
      </ol>
      {notes.map((note) => (
        <p key={note} class={styles.note}>
          {note}
        </p>
      ))}
    </section>
  );
}

/** Sentences of a calculation that are no clauses: a list of lines. */
export function PlainSteps({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  return (
    <section class={styles.steps}>
      <p class={styles.title}>{title}</p>
      <ol>
        {lines.map((line) => (
          <li key={line} class={styles.step}>
            <span class={styles.clause} />
            <span class={styles.line}>
              <Typeset text={showSentence(line)} />
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}
