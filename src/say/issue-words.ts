import type { ConnectionAnswer, ConnectionState } from '../assess/connection-answer.ts';
import { STATES_BY_NEED } from '../assess/panel-status.ts';
import { countState } from './words.ts';

/** Connections of one state that a person must know of before a revision is issued. */
export interface IssueWarning {
  readonly state: ConnectionState;
  /** `2 fail: C07, C12` */
  readonly text: string;
}

/** What is not a pass, state by state, each connection by its mark. */
export function listIssueWarnings(answers: readonly ConnectionAnswer[]): readonly IssueWarning[] {
  return STATES_BY_NEED.flatMap((state) => {
    if (state === 'passes') return [];
    const marks = answers.filter((answer) => answer.state === state).map(({ mark }) => mark);
    return marks.length === 0 ? [] : [{ state, text: `${countState(state, marks.length)}: ${marks.join(', ')}` }];
  });
}
