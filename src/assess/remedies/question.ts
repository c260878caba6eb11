import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import { checkEdit } from '../../job/edit/check-edit.ts';
import { previewEdit } from '../../job/edit/edit-job.ts';
import { FollowError, withFollowing } from '../../job/edit/follow.ts';
import { replaceValues } from '../../job/edit/replace-values.ts';
import { slicePanels } from '../../job/edit/slice-panels.ts';
import { indexJob, type JobIndex } from '../../job/job-index.ts';
import { gatherItems, gatherParts, type SeatParts } from '../../job/resolve/connection-seat.ts';
import { resolveConnection } from '../../job/resolve/resolve-connection.ts';
import { assessConnection } from '../assess-connection.ts';
import type { ConnectionAnswer, ConnectionState } from '../connection-answer.ts';
import type { Proposal, Remedy } from './remedy.ts';

/** A connection that does not pass, with its panel alone: what all ways of changing it start from. */
export interface RemedyQuestion {
  /** The panel, its partners and source. */
  readonly slice: JobFile;
  readonly index: JobIndex;
  readonly connection: Connection;
  readonly parts: SeatParts;
  readonly items: readonly CatalogueItem[];
  readonly before: ConnectionAnswer;
  /** The full check with a panel, mix or connection of other values; what is not given stays. */
  readonly assess: (changed: Partial<Pick<SeatParts, 'panel' | 'mix' | 'connection'>>) => ConnectionAnswer;
}

export function openQuestion(file: JobFile, connection: Connection): RemedyQuestion {
  const slice = slicePanels(file, [connection.panel]);
  const index = indexJob(slice);
  const parts = gatherParts(index, connection);
  const assess: RemedyQuestion['assess'] = (changed) => {
    const panel = changed.panel ?? parts.panel;
    const { mix } = changed;
    const now: JobIndex = {
      ...index,
      panels: new Map([[panel.mark, mix === undefined ? panel : { ...panel, concrete: mix.id }]]),
      concretes: mix === undefined ? index.concretes : new Map([...index.concretes, [mix.id, mix]]),
    };
    return assessConnection(resolveConnection(now, changed.connection ?? connection));
  };
  return { slice, index, connection, parts, items: gatherItems(index, parts), before: assess({}), assess };
}

function assessAll(index: JobIndex): ReadonlyMap<string, ConnectionAnswer> {
  const { connections } = index.file.job;
  return new Map(connections.map((one) => [one.mark, assessConnection(resolveConnection(index, one))]));
}

/** A proposal that is verified, or why it does not do. */
export type Verification =
  | { readonly kind: 'remedy'; readonly remedy: Remedy }
  | { readonly kind: 'refused'; readonly why: string };

/** Opens the verifying of proposals: the answers of the panel as it stands are found once, when first needed. */
export function openVerifying({
  slice,
  index,
  connection,
  before,
}: RemedyQuestion): (proposal: Proposal) => Verification {
  let states: ReadonlyMap<string, ConnectionState> | null = null;
  const refuse = (why: string): Verification => ({ kind: 'refused', why });
  return (proposal) => {
    let after: JobFile;
    try {
      after = previewEdit(slice, withFollowing(replaceValues(proposal.change)));
    } catch (error) {
      if (error instanceof FollowError) return refuse(error.message);
      throw error;
    }
    const [fault] = checkEdit(slice, after);
    if (fault !== undefined) return refuse(fault.text);
    states ??= new Map([...assessAll(index)].map(([mark, { state }]) => [mark, state]));
    const answers = assessAll(indexJob(after));
    const { state, ratio } = answers.get(connection.mark)!;
    if (state !== 'passes' || ratio === null) return refuse(`${connection.mark} then: ${state}`);
    for (const [mark, answer] of answers)
      if (states.get(mark) === 'passes' && answer.state !== 'passes') return refuse(`${mark} then: ${answer.state}`);
    return { kind: 'remedy', remedy: { ...proposal, ratioBefore: before.ratio, ratioAfter: ratio } };
  };
}
