import * as z from 'zod';
import { hash, mark, millimetres, moment, recordId, words } from './values.ts';

const sight = z.boolean();

/** Permanent key of a cast-in item or a connection. */
const key = z.string().min(1).max(120);

/** Instruments work in frames of a site or a country: thousands of kilometres from their origin at most. */
const farMillimetres = z.number().min(-1e10).max(1e10);

/** In the plane of the panel's drawing, or with the height out of its drawn face as third number [mm]. In the instrument's frame: as it gave them, in mm. */
const coordinates = z.union([
  z.tuple([farMillimetres, farMillimetres]),
  z.tuple([farMillimetres, farMillimetres, farMillimetres]),
]);

/** A connection by its permanent key, and as it was marked then. */
const ofConnection = { connection: key, connectionMark: mark } as const;

const sigma = z.number().positive().max(1000);

/** A tool that measures or tightens, with what its sticker says; null: nobody read it. */
const tool = z
  .strictObject({ name: words.nullable(), serial: mark.nullable(), calibratedUntil: z.iso.date().nullable() })
  .nullable();

/** A point of the panel of which the place is known, as it was surveyed. */
const control = z.strictObject({
  name: mark,
  /** On an edge only the distance across it is known; `design_mm` is any point of it, `edgeEnd_mm` another. */
  kind: z.enum(['mark', 'corner', 'edge']),
  design_mm: coordinates,
  edgeEnd_mm: coordinates.nullable(),
  measured_mm: coordinates,
  sigma_mm: sigma,
  /** False: a person left it out, for a reason that `note` tells. */
  isUsed: z.boolean(),
  note: words.nullable(),
});

/** An insert as it was surveyed: at the face, and a second point on its axis where one was taken. */
const surveyedPoint = z.strictObject({
  item: key,
  /** As the file or the person called it; null: it has no name. */
  name: mark.nullable(),
  measured_mm: coordinates,
  /** Another point on its axis, on a bolt or rod screwed in: out of the face positive [mm], where it lies along the axis. */
  second: z.strictObject({ measured_mm: coordinates, along_mm: millimetres }).nullable(),
  sigma_mm: sigma,
});

/** A distance taped on the hard panel: from an edge, square to it, or from another insert; in the drawing's plane. */
const tapedDistance = z.strictObject({
  item: key,
  to: z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('edge'),
      from_mm: z.tuple([millimetres, millimetres]),
      end_mm: z.tuple([millimetres, millimetres]),
    }),
    z.strictObject({ kind: z.literal('insert'), item: key }),
  ]),
  distance_mm: z.number().nonnegative().max(100_000),
  sigma_mm: sigma,
});

/** How an insert stands in its own face; null: not taken. */
const stance = z.strictObject({
  item: key,
  /** Top of the insert below the concrete's face; above it (proud) negative. */
  depth_mm: millimetres.nullable(),
  /** How far the end of a rod of length `over_mm`, screwed in, stands aside along the drawing's x and y. */
  tilt: z.strictObject({ x_mm: millimetres, y_mm: millimetres, over_mm: z.number().positive().max(10_000) }).nullable(),
});

/** What may be done about inserts that are not where they were drawn. The first three need no change of the design. */
const remedyKind = z.enum([
  'as is',
  'plate moved',
  'packers or other bolts',
  'holes enlarged',
  'holes slotted',
  'plate drilled anew',
  'fewer inserts',
  'not usable',
]);

/** A hole of a plate as it is to be, in the plate's axes. */
const changedHole = z.strictObject({
  id: mark,
  x_mm: millimetres,
  y_mm: millimetres,
  diameter_mm: z.number().positive().max(1000),
  slot_mm: z.number().nonnegative().max(1000),
  angle_deg: z.number().min(-360).max(360),
  takesShear: z.boolean(),
});

/** What is recorded of a piece once it is out of its form. Rules as for the kinds before: see `bodies.ts`. */
export const bodiesAfter = {
  /** Where the inserts of the hard panel are, as it was read; where they lie on the panel is computed from it. Several surveys stand beside each other. */
  surveyed: z.strictObject({
    basis: z.enum(['instrument', 'tape', 'scaffold']),
    /** The file that was read: hash of its bytes, and how it was read, in words. */
    file: z.strictObject({ name: words, hash, reading: words }).nullable(),
    tool,
    controls: z.array(control).max(200).readonly(),
    points: z.array(surveyedPoint).max(500).readonly(),
    tapes: z.array(tapedDistance).max(500).readonly(),
    stances: z.array(stance).max(500).readonly(),
    note: words.nullable(),
  }),
  /** What becomes of a connection as cast, decided by a named person. `about`: the surveys and measurements that it rests on. */
  'remedy-decided': z.strictObject({
    ...ofConnection,
    about: z.array(recordId).min(1).max(50).readonly(),
    remedy: remedyKind,
    change: z.strictObject({
      /** Plate turned about the middle of its holes, then shifted, in its own axes. */
      move: z.strictObject({ dx_mm: millimetres, dy_mm: millimetres, turn_deg: z.number() }).nullable(),
      /** Those holes that become others; empty: none. */
      holes: z.array(changedHole).max(100).readonly(),
      washer_mm: z
        .strictObject({ side: z.number().positive().max(1000), thickness: z.number().positive().max(200) })
        .nullable(),
      /** Keys of the inserts that get no bolt. */
      unused: z.array(key).max(100).readonly(),
      packers_mm: z.number().nonnegative().max(1000).nullable(),
    }),
    /** In one sentence, as it was offered. */
    words,
    role: z.enum(['setter', 'checker', 'foreman', 'qa', 'design engineer', 'installer']),
    registration: words.nullable(),
    reason: words,
    /** What was computed then. */
    computed: z.strictObject({
      state: z.enum(['works', 'does not work', 'not known']),
      ratio: z.number().nonnegative().nullable(),
      /** Least radial clearance left at a hole; below 0: the plate does not go on. Null: no plate. */
      clearance_mm: z.number().nullable(),
      engine: mark,
    }),
  }),
  /** On site: state of caps and threads, of the whole piece (all as they must be) or of one insert (what is not). */
  delivered: z.strictObject({ caps: sight, threads: sight, note: words.nullable() }),
  /** The plate was offered up to its inserts. */
  offered: z.strictObject({
    ...ofConnection,
    wentOn: z.enum(['as designed', 'shifted or turned', 'no']),
    note: words.nullable(),
  }),
  /** A connection is bolted up: caps are out only now. One record a connection. */
  tightened: z.strictObject({
    ...ofConnection,
    how: z.enum(['snug', 'torque wrench', 'snug and part of a turn']),
    torque_Nm: z.number().positive().max(10_000).nullable(),
    tool,
    bolts: z
      .array(
        z.strictObject({
          item: key,
          length_mm: z.number().positive().max(2000),
          turns: z.number().nonnegative().max(200).nullable(),
          packers_mm: z.number().nonnegative().max(1000),
        }),
      )
      .min(1)
      .max(100)
      .readonly(),
    lubricated: sight,
    note: words.nullable(),
  }),
  /** An insert that is no longer needed is filled and sealed. */
  sealed: z.strictObject({ with: words }),
  /** A pull test shall be made on these inserts; as its engineer gave it. */
  'proof-planned': z.strictObject({
    items: z.array(key).min(1).max(500).readonly(),
    load_kN: z.number().positive().max(10_000),
    hold_min: z.number().positive().max(1440),
    /** Most that the insert may move while the load is held; null: not asked. */
    movement_mm: z.number().positive().max(100).nullable(),
    role: z.enum(['qa', 'design engineer']),
    reason: words,
  }),
  /** One pull test. */
  'proof-loaded': z.strictObject({
    load_kN: z.number().nonnegative().max(10_000),
    held_min: z.number().nonnegative().max(1440),
    movement_mm: z.number().max(1000).nullable(),
    /** Null: it held. */
    failure: z.enum(['concrete cone', 'steel', 'thread', 'pulled out', 'concrete edge', 'moved on']).nullable(),
    /** Least distance of the support's feet from the axis; null: not measured. */
    support_mm: z.number().positive().max(10_000).nullable(),
    gauge: tool,
    at: moment.nullable(),
    note: words.nullable(),
  }),
} as const;
