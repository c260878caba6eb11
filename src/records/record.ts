import * as z from 'zod';
import { bodies } from './bodies.ts';
import { deviceId, hash, mark, moment, personId, pieceId, recordId } from './values.ts';

/** What every record says, whatever its kind. */
const envelope = {
  /** Of this shape; another number is of another program. */
  v: z.literal(1),
  id: recordId,
  job: z.string().regex(/^[a-z0-9]{12}$/),
  piece: pieceId,
  /** Permanent key of the cast-in item; null: of the piece. */
  item: mark.max(120).nullable(),
  /** The latest records of this piece and item that the writer knew; of the whole piece where it decides about it. Gives the order, never a clock. */
  seen: z.array(recordId).max(1000).readonly(),
  /** By which revision it was done; null: none was known. */
  revision: z.strictObject({ letter: mark, fingerprint: hash }).nullable(),
  /** Hash of what the yard had to do; null where nothing of the design is answered. */
  checkKey: hash.nullable(),
  measuredAt: moment,
  typedAt: moment,
  /** Server's clock less the device's as last heard [s]; null: never heard. */
  clock_s: z.number().nullable(),
  person: personId,
  /** Who measured, where another person typed it in; null: the same. */
  measuredBy: personId.nullable(),
  device: deviceId,
  /** Version of the program. */
  app: mark,
  /** Running number of the device from 1, and the hash of the text of its record before; null: the first. */
  chain: z.strictObject({ number: z.int().positive(), previous: hash.nullable() }),
} as const;

function member<Kind extends keyof typeof bodies>(kind: Kind) {
  return z.strictObject({ ...envelope, kind: z.literal(kind), body: bodies[kind] });
}

/** One immutable fact. */
export const factRecord = z.discriminatedUnion('kind', [
  member('piece-started'),
  member('re-marked'),
  member('scrapped'),
  member('located'),
  member('form-checked'),
  member('placed'),
  member('measured'),
  member('photo'),
  member('comment'),
  member('correction'),
  member('decision'),
  member('cleared'),
  member('held'),
  member('override'),
  member('poured'),
  member('screed-checked'),
  member('stripped'),
  member('uncovered'),
  member('cap'),
  member('strength-result'),
  member('lot-taken'),
  member('docket'),
  member('surveyed'),
  member('remedy-decided'),
  member('delivered'),
  member('offered'),
  member('tightened'),
  member('sealed'),
  member('proof-planned'),
  member('proof-loaded'),
]);

export type FactRecord = z.infer<typeof factRecord>;
export type RecordKind = FactRecord['kind'];
/** A record of one kind. */
export type RecordOf<Kind extends RecordKind> = Extract<FactRecord, { readonly kind: Kind }>;
export type BodyOf<Kind extends RecordKind> = RecordOf<Kind>['body'];

/** A kind with its body: what a screen has to say; the rest is filled in by the device that it is written on. */
export type KindAndBody = { [Kind in RecordKind]: { readonly kind: Kind; readonly body: BodyOf<Kind> } }[RecordKind];

/** What is handed to a device to be written down. */
export type RecordDraft = KindAndBody & {
  readonly job: string;
  readonly piece: string;
  readonly item: string | null;
  readonly revision: FactRecord['revision'];
  readonly checkKey: string | null;
  /** Null: now. */
  readonly measuredAt: string | null;
  readonly measuredBy: string | null;
};
