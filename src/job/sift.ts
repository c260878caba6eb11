import type * as z from 'zod';
import { type CastIn, castIn } from './documents/cast-in.ts';
import { type CatalogueItem, catalogueItem } from './documents/catalogue.ts';
import { type Concrete, concrete } from './documents/concrete.ts';
import { type Connection, connection } from './documents/connection.ts';
import { type Detail, detail } from './documents/details.ts';
import { type HoldingPart, type HoldingWay, holdingPart, holdingWay } from './documents/holding-parts.ts';
import type { JobFile } from './documents/job-file.ts';
import { type Panel, panel } from './documents/panel.ts';
import { type Pour, pour } from './documents/pour.ts';
import { type Bed, bed } from './documents/yard.ts';
import { lookUp } from './explain-issue.ts';
import { isRecord } from './json-record.ts';

/** Why this exists: a fault in one panel must not hide the faults of the others, so each entry is taken or left by itself. */

export type Path = readonly (string | number)[];

/** An entry that has the right shape, with its place in the document. */
export interface Entry<T> {
  readonly path: Path;
  readonly value: T;
}

/** The entries of a job file that have the right shape, and all names that are used, wrong entries included. */
export interface SiftedJob {
  readonly concretes: readonly Entry<Concrete>[];
  readonly panels: readonly Entry<Panel>[];
  readonly castIns: readonly Entry<CastIn>[];
  readonly connections: readonly Entry<Connection>[];
  readonly items: readonly Entry<CatalogueItem>[];
  readonly details: readonly Entry<Detail>[];
  readonly parts: readonly Entry<HoldingPart>[];
  readonly ways: readonly Entry<HoldingWay>[];
  readonly beds: readonly Entry<Bed>[];
  readonly pours: readonly Entry<Pour>[];
  readonly names: {
    readonly concretes: ReadonlySet<string>;
    readonly panels: ReadonlySet<string>;
    /** Joined by `castInName`. */
    readonly castIns: ReadonlySet<string>;
    readonly items: ReadonlySet<string>;
    readonly details: ReadonlySet<string>;
    readonly parts: ReadonlySet<string>;
    readonly ways: ReadonlySet<string>;
    readonly beds: ReadonlySet<string>;
  };
}

/** One word for a cast-in item of a panel. */
export function castInName(panelMark: string, id: string): string {
  return JSON.stringify([panelMark, id]);
}

function listAt(document: unknown, path: Path): readonly unknown[] {
  const list = lookUp(document, path);
  return Array.isArray(list) ? list : [];
}

function siftList<T>(document: unknown, path: Path, schema: z.ZodType<T>): readonly Entry<T>[] {
  return listAt(document, path).flatMap((entry, index) => {
    const read = schema.safeParse(entry);
    return read.success ? [{ path: [...path, index], value: read.data }] : [];
  });
}

function namesIn(document: unknown, path: Path, key: string): ReadonlySet<string> {
  return new Set(
    listAt(document, path).flatMap((entry) => {
      const name = isRecord(entry) ? entry[key] : undefined;
      return typeof name === 'string' ? [name] : [];
    }),
  );
}

const places = {
  concretes: ['job', 'concretes'],
  panels: ['job', 'panels'],
  castIns: ['job', 'castIns'],
  connections: ['job', 'connections'],
  items: ['library', 'catalogue', 'items'],
  details: ['library', 'details', 'details'],
  parts: ['library', 'holding', 'parts'],
  ways: ['library', 'holding', 'ways'],
  beds: ['library', 'yard', 'beds'],
  pours: ['job', 'pours'],
} as const;

/** The entries of a list whose shape is known to be right, each with its place. */
function placeAll<T>(values: readonly T[], path: Path): readonly Entry<T>[] {
  return values.map((value, index) => ({ path: [...path, index], value }));
}

function collectNames(document: unknown): SiftedJob['names'] {
  const castInNames = listAt(document, places.castIns).flatMap((entry) =>
    isRecord(entry) && typeof entry.panel === 'string' && typeof entry.id === 'string'
      ? [castInName(entry.panel, entry.id)]
      : [],
  );
  return {
    concretes: namesIn(document, places.concretes, 'id'),
    panels: namesIn(document, places.panels, 'mark'),
    castIns: new Set(castInNames),
    items: namesIn(document, places.items, 'id'),
    details: namesIn(document, places.details, 'id'),
    parts: namesIn(document, places.parts, 'id'),
    ways: namesIn(document, places.ways, 'id'),
    beds: namesIn(document, places.beds, 'id'),
  };
}

/** Takes what can be taken out of a job file that may be wrong elsewhere. */
export function siftJob(document: unknown): SiftedJob {
  return {
    concretes: siftList(document, places.concretes, concrete),
    panels: siftList(document, places.panels, panel),
    castIns: siftList(document, places.castIns, castIn),
    connections: siftList(document, places.connections, connection),
    items: siftList(document, places.items, catalogueItem),
    details: siftList(document, places.details, detail),
    parts: siftList(document, places.parts, holdingPart),
    ways: siftList(document, places.ways, holdingWay),
    beds: siftList(document, places.beds, bed),
    pours: siftList(document, places.pours, pour),
    names: collectNames(document),
  };
}

/** The same of a job file of the right shape: nothing is checked or copied a second time. */
export function placeJob(file: JobFile): SiftedJob {
  const { job, library } = file;
  return {
    concretes: placeAll(job.concretes, places.concretes),
    panels: placeAll(job.panels, places.panels),
    castIns: placeAll(job.castIns, places.castIns),
    connections: placeAll(job.connections, places.connections),
    items: placeAll(library.catalogue.items, places.items),
    details: placeAll(library.details.details, places.details),
    parts: placeAll(library.holding.parts, places.parts),
    ways: placeAll(library.holding.ways, places.ways),
    beds: placeAll(library.yard.beds, places.beds),
    pours: placeAll(job.pours, places.pours),
    names: collectNames(file),
  };
}
