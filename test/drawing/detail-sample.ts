/** Set-outs with one group each, for tests of connection details: the sample job's inserts, panel and bed, read by the documents' own schemas. */

import type { PanelSetOut, SetOutGroup } from '../../src/assess/set-out/set-out.ts';
import { setOutPanel } from '../../src/assess/set-out/set-out-panel.ts';
import type { Connection } from '../../src/job/documents/connection.ts';
import { type Fixture, fixture } from '../../src/job/documents/fixture.ts';
import { bed } from '../../src/job/documents/yard.ts';
import { indexJob } from '../../src/job/job-index.ts';
import { mustRead } from '../job/read.ts';
import {
  type Json,
  sampleBed,
  sampleCastIn,
  sampleConnection,
  sampleFixture,
  sampleItem,
  sampleJob,
  samplePanel,
} from '../job/sample-job.ts';

export interface DetailSample {
  readonly setOut: PanelSetOut;
  readonly group: SetOutGroup;
  readonly connection: Connection;
  readonly fixture: Fixture;
}

/** A gable with a skew side: no two of its corners are alike, so that no mirror can hide. */
export const GABLE: readonly (readonly [number, number])[] = [
  [0, 0],
  [5200, 0],
  [5200, 2200],
  [0, 3600],
];

/** An L: the sides from corner 3 to corner 5 are in no rail and no end of the form. */
export const ELL: readonly (readonly [number, number])[] = [
  [0, 0],
  [5200, 0],
  [5200, 1500],
  [2100, 1500],
  [2100, 3600],
  [0, 3600],
];

/** A group at places of one face: x and y in the drawing, or along and from the outside on edge `edge`. */
export function sampleGroup(
  places: readonly (readonly [number, number])[],
  face: { readonly face: 'outside' | 'inside' | 'edge'; readonly edge?: number },
  changes: { readonly panel?: Json; readonly castIn?: Json; readonly item?: Json; readonly connection?: Json } = {},
): DetailSample {
  const castIns = places.map(([x, y], i) => sampleCastIn(String(i + 1), x, y, { ...face, ...changes.castIn }));
  const inserts = places.map((_, i) => ({ insert: String(i + 1), hole: null }));
  const file = mustRead(
    sampleJob({
      items: [sampleItem(changes.item)],
      panels: [samplePanel({ outline_mm: GABLE, ...changes.panel })],
      castIns,
      connections: [
        sampleConnection({ ...face, inserts, fixture: null, actions: { kind: 'none' }, ...changes.connection }),
      ],
      beds: [sampleBed()],
      ways: [{ id: 'WAY', name: 'Way', method: 'recess former' }],
    }),
  );
  const setOut = setOutPanel(indexJob(file), 'P1', bed.parse(sampleBed()));
  const [connection] = file.job.connections;
  const [group] = setOut.groups;
  if (connection === undefined || group === undefined) throw new Error('the sample has one connection');
  return { setOut, group, connection, fixture: fixture.parse(sampleFixture()) };
}
