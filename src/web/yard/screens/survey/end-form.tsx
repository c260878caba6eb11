import { type Signal, useSignal } from '@preact/signals';
import { countOf } from '../../../../say/part-words.ts';
import { NO_TOOL, readTool } from '../../../pieces/survey/read-tool.ts';
import { makeTapedSurvey } from '../../../pieces/survey/taped-survey.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import { FrameKeys } from '../../parts/frame-keys.tsx';
import type { SurveyPartProps } from './survey-part.ts';
import styles from './survey-screen.module.css';
import { numberOf, tellTaped } from './tell-ask.ts';

/** What was taped in short, and with which tape; then it is written down. */
export function EndForm({ tape, piece }: SurveyPartProps) {
  const name = useSignal(NO_TOOL.name);
  const serial = useSignal(NO_TOOL.serial);
  const until = useSignal(NO_TOOL.until);
  const note = useSignal('');
  const trim = (text: Signal<string>) => text.value.trim();
  const tool = readTool({ name: trim(name), serial: trim(serial), until: trim(until) });
  const fault = typeof tool === 'string' ? tool : null;
  const { open } = tape;
  const body = makeTapedSurvey(piece.plan.setOut.panel, tape.draft.value, null, null);
  const known = tape.items.flatMap(({ castIn }) => tape.answerOf(castIn.key) ?? []);
  const off = known.filter(({ isOff }) => isOff);
  const left = [...new Set(open.map(({ item }) => numberOf(piece, item)))];
  return (
    <>
      <Answer
        kind={body === null ? 'unsure' : off.length > 0 ? 'wrong' : 'plain'}
        words={
          body === null
            ? 'Nothing is taped yet'
            : [
                countOf(body.tapes.length, 'distance'),
                ...(known.length === 0
                  ? []
                  : [
                      off.length === 0
                        ? `none of ${countOf(known.length, 'insert')} off`
                        : `${countOf(off.length, 'insert')} off`,
                    ]),
              ].join(', ')
        }
        isSmall
      >
        {off.map((answer) => (
          <p key={answer.item.number}>{tellTaped(answer, tape.stand)}</p>
        ))}
        {left.length > 0 && <p>{`Not taped to the end: ${left.join(', ')}.`}</p>}
        <NetworkNote tape={tape} piece={piece} />
        <p>A tool that nobody names stays a gap that can be seen.</p>
      </Answer>
      <div class={styles.fields}>
        {(
          [
            ['Tape or rod', name, 200],
            ['Its number', serial, 60],
            ['Calibrated until', until, 10],
            ['In words (not needed)', note, 500],
          ] as const
        ).map(([label, text, longest]) => (
          <label key={label} class={styles.field}>
            {label}
            <input
              type="text"
              maxLength={longest}
              autocomplete="off"
              placeholder={text === until ? '2027-03-31' : undefined}
              value={text.value}
              onInput={({ currentTarget }) => (text.value = currentTarget.value)}
            />
          </label>
        ))}
      </div>
      {fault !== null && <Answer kind="unsure" isSmall words={fault} />}
      <FrameKeys>
        <BigKey kind="quiet" onPress={() => tape.backToStart()}>
          Back
        </BigKey>
        {open.length > 0 && <BigKey onPress={() => tape.goOn()}>Go on taping</BigKey>}
        <BigKey
          kind="main"
          isTall
          isDisabled={body === null || fault !== null}
          onPress={() => {
            if (typeof tool !== 'string') void tape.write(tool, trim(note) === '' ? null : trim(note));
          }}
        >
          Write the survey down
        </BigKey>
        <BigKey
          kind="quiet"
          isDisabled={tape.draft.value.entries.length === 0}
          more="the last number"
          onPress={() => tape.undo()}
        >
          Undo
        </BigKey>
      </FrameKeys>
    </>
  );
}

/** What the numbers of a set, together, say about themselves. */
function NetworkNote({ tape, piece }: SurveyPartProps) {
  if (tape.draft.value.basis === 'tape') return null;
  const found = tape.places(tape.items);
  if (found.kind === 'open') return <p>{found.why}</p>;
  const { blunder, freeMoves, isMirrorOpen, redundancy } = found.network;
  const asks = tape.numbersTaped();
  const name = (index: number) => {
    const entry = asks[index];
    if (entry === undefined) return '';
    if (entry.kind === 'between') return `${numberOf(piece, entry.item)} to ${numberOf(piece, entry.other)}`;
    return `${numberOf(piece, entry.item)} from a side`;
  };
  return (
    <>
      {blunder.kind === 'at' && <p>{`Tape again: ${name(blunder.index)} does not agree with the others.`}</p>}
      {blunder.kind === 'one of' && (
        <p>{`One of these is wrong: ${blunder.indices.map(name).join('; ')}. Tape them again.`}</p>
      )}
      {redundancy === 0 && <p>No number checks another: a slip would not show.</p>}
      {freeMoves > 0 && <p>Only how the inserts lie to each other is known; where they are on the panel is not.</p>}
      {isMirrorOpen && <p>Their mirror image fits as well; it is taken as drawn.</p>}
    </>
  );
}
