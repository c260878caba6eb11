import * as z from 'zod';
import { person } from '../records/person.ts';
import { LONGEST_TEXT } from '../records/record-text.ts';
import { deviceId, hash, pieceId } from '../records/values.ts';
import { jobBody } from './job-body.ts';
import { issued } from './revisions.ts';
import { jobId, moment, versionInAddress } from './values.ts';

/** Records of one call at most. */
export const MOST_RECORDS = 500;

/** Where the server's log ends: number and hash of its last line. */
export const logHead = z.strictObject({ number: z.int().nonnegative(), hash: hash.nullable() });

/** Asked with a call that tells where the log ends: the end that the caller heard last, as NUMBER:HASH. */
const logKnown = {
  known: z
    .string()
    .max(80)
    .transform((text) => {
      const [number, ...line] = text.split(':');
      return { number: Number(number), hash: line.join(':') };
    })
    .pipe(z.strictObject({ number: z.int().positive(), hash }))
    .optional(),
} as const;

/** What such a call is answered with. */
const logTold = {
  head: logHead,
  /** The log goes through the end that the caller knew, or none was named. False: the server was put back to an earlier state and has gone on from there. */
  isKnown: z.boolean(),
} as const;

/** Texts of records, as their devices wrote them. Texts of several devices may come in one call: somebody else's file. */
export const newRecords = z.strictObject({
  texts: z.array(z.string().max(LONGEST_TEXT)).min(1).max(MOST_RECORDS).readonly(),
});

/**
 * What became of each text, in the order of the call. `had`: it was there, byte for byte. `aside`: kept apart and reported, because the id stands for
 * other bytes already, or this server does not understand it.
 */
export const tookRecords = z.strictObject({
  took: z
    .array(
      z.strictObject({
        /** Null where the text has no id. */
        id: z.string().nullable(),
        state: z.enum(['stored', 'had', 'aside']),
        /** Its number in the log; null where it is aside. */
        number: z.int().positive().nullable(),
        /** Why it is aside. */
        why: z.string().nullable(),
      }),
    )
    .readonly(),
  /** Devices whose running number came with two texts: each goes on under a new id. */
  forks: z.array(deviceId).readonly(),
  ...logTold,
  /** The server's clock when it answered. */
  now: moment,
});

/** Records of a job after a number of the log, the earliest first. */
export const recordsAfter = z.strictObject({
  ...logKnown,
  after: versionInAddress.default(0),
  /** Only those of these pieces, ids set apart by commas; left out: all of the job. */
  pieces: z
    .string()
    .max(25 * 200)
    .transform((text) => text.split(','))
    .pipe(z.array(pieceId).min(1).max(200))
    .optional(),
});

export const recordList = z.strictObject({
  records: z.array(z.strictObject({ number: z.int().positive(), text: z.string() })).readonly(),
  /** More follow after the last one's number. */
  isAll: z.boolean(),
  ...logTold,
  now: moment,
});

/** A text kept apart. */
export const asideRecord = z.strictObject({
  id: z.string().nullable(),
  piece: z.string().nullable(),
  why: z.string(),
  text: z.string(),
  at: moment,
});

/** Everything but records that a yard needs of a job. */
export const yardJob = z.strictObject({
  id: jobId,
  name: z.string(),
  /** Issued revisions, the earliest first: an old sheet is told by them, offline too. */
  revisions: z.array(issued).readonly(),
  /** The revision to work by; null: none was issued for construction, or what was issued is void. `file` null: the caller has it. */
  inForce: z.strictObject({ letter: z.string(), fingerprint: hash, file: jobBody.nullable() }).nullable(),
  people: z.array(person).readonly(),
  asides: z.array(asideRecord).readonly(),
  /** Devices that were copied or put back: they wrote two texts under one number. */
  forks: z.array(z.strictObject({ device: deviceId, number: z.int().positive() })).readonly(),
  ...logTold,
  now: moment,
});

export const recordsAsked = z.strictObject(logKnown);

export const yardJobAsked = z.strictObject({
  ...logKnown,
  /** Fingerprint of the file that the caller has. */
  have: hash.optional(),
});

export const peopleList = z.strictObject({ people: z.array(person).readonly() });

/** Adds a person, or changes the one of that id. */
export const personBody = person;

/** Which photos the server has of those named. */
export const photosAsked = z.strictObject({ photos: z.array(hash).max(500).readonly() });
export const photosHeld = z.strictObject({ held: z.array(hash).readonly() });

export type LogHead = z.infer<typeof logHead>;
export type TookRecords = z.infer<typeof tookRecords>;
export type RecordList = z.infer<typeof recordList>;
export type AsideRecord = z.infer<typeof asideRecord>;
export type YardJob = z.infer<typeof yardJob>;
