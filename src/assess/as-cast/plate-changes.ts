import { findThread } from '../../engine/hardware/threads.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Fixture, FixtureHole } from '../../job/documents/fixture.ts';
import { showLength } from '../../job/resolve/local-member-type.ts';
import type { Remedy, RemedyKind } from './as-cast-report.ts';
import { findTightest, NO_CHANGE, type RemedyQuestion, type StandingBolt, standBolts } from './attempt.ts';
import type { ChangedPlate, PlateChange } from './changed-plate.ts';
import { type Attempt, completeRemedy, refuseRemedy } from './complete-remedy.ts';
import { type DepthNeeds, findDepthNeeds, packUp, tellDepthNeeds } from './depth-needs.ts';
import { pickBest } from './pick-best.ts';
import type { RecordedMove } from './plate-place.ts';
import { findPlateRemedies } from './plate-remedies.ts';
import type { RedrilledPlate } from './redrill-holes.ts';
import { moveToBest, NO_PLATE, tellMove } from './site-remedies.ts';

const HEADS: Readonly<Record<'holes slotted' | 'holes enlarged' | 'plate drilled anew', string>> = {
  'holes slotted': 'Slots in the plate.',
  'holes enlarged': 'Larger holes in the plate.',
  'plate drilled anew': 'Holes drilled anew where the bolts stand.',
};

/** What goes with every hole that is cut into a plate. */
const OF_STEEL = [
  'the designer of the steel agrees to the holes',
  'drilled or milled, never burnt',
  'on a galvanised plate the zinc is made good: paint with at least 85 % zinc in the dry film, 30 µm thicker than the zinc that is asked for',
] as const;

function nameHoles(ids: readonly string[]): string {
  return `${ids.length === 1 ? 'Hole' : 'Holes'} ${ids.join(', ')}`;
}

function tellHole({ diameter_mm, slot_mm, slotAngle_deg }: FixtureHole): string {
  if (slot_mm === 0) return `${showLength(diameter_mm)} wide`;
  const size = `a slot of ${Math.round(diameter_mm * 10) / 10} × ${showLength(diameter_mm + slot_mm)} over all`;
  if (slotAngle_deg % 180 === 0) return `${size}, along the plate's x`;
  if (Math.abs(slotAngle_deg % 180) === 90) return `${size}, along the plate's y`;
  // A slot is the same turned by half a turn.
  return `${size}, ${((Math.round(slotAngle_deg) % 180) + 180) % 180}° counter-clockwise from the plate's x`;
}

/** Every changed hole as it becomes, those alike together. */
function tellHoles({ holes, changed }: ChangedPlate): string {
  const alike = new Map<string, string[]>();
  for (const hole of holes.filter(({ id }) => changed.includes(id)))
    alike.set(tellHole(hole), [...(alike.get(tellHole(hole)) ?? []), hole.id]);
  return [...alike].map(([becomes, ids]) => `${nameHoles(ids)} becomes ${becomes}`).join('; ');
}

/** The plate washer that covers the widest of the changed holes; null: usual washers do. */
function findWasher({ washers }: ChangedPlate): Remedy['change']['washer_mm'] {
  const plates = washers.flatMap(({ washer }) => (washer.kind === 'plate' ? [washer] : []));
  if (plates.length === 0) return null;
  return {
    side: Math.max(...plates.map(({ outside }) => outside)),
    thickness: Math.max(...plates.map(({ thickness }) => thickness)),
  };
}

function tellWasher(washer: Remedy['change']['washer_mm']): string {
  return washer === null ? '' : `; washer ${washer.side} × ${washer.side} × ${washer.thickness} mm under the head`;
}

function tellShear({ acrossOnly, noShear }: ChangedPlate, bolts: readonly StandingBolt[]): readonly string[] {
  const numbers = (ids: readonly string[]) =>
    bolts
      .filter(({ hole }) => ids.includes(hole.id))
      .map(({ member }) => member.insert.item.number)
      .join(', ');
  return [
    ...(acrossOnly.length > 0 ? [`the bolt of no. ${numbers(acrossOnly)} carries shear across its slot only`] : []),
    ...(noShear.length > 0
      ? [
          `the bolt of no. ${numbers(noShear)} carries no shear: its hole is wider than bolts share a shear in (EN 1992-4, Table 6.1, recalled)`,
        ]
      : []),
  ];
}

/** A plate that is to be changed, on the packers that its inserts ask for. */
interface PlateAt {
  readonly question: RemedyQuestion;
  readonly fixture: Fixture;
  readonly needs: DepthNeeds;
  readonly packed: Connection;
  readonly bolts: readonly StandingBolt[];
}

function changeOf(
  { needs }: PlateAt,
  { holes, changed }: ChangedPlate,
  move: RecordedMove | null,
  washer: Remedy['change']['washer_mm'],
): Remedy['change'] {
  return {
    ...NO_CHANGE,
    move,
    holes: holes
      .filter(({ id }) => changed.includes(id))
      .map(({ id, at_mm, diameter_mm, slot_mm, slotAngle_deg, takesShear }) => ({
        id,
        x_mm: at_mm[0],
        y_mm: at_mm[1],
        diameter_mm,
        slot_mm,
        angle_deg: slotAngle_deg,
        takesShear,
      })),
    washer_mm: washer,
    packers_mm: needs.packers,
  };
}

/** Standard deviations within which a place is taken as known. */
const SURE_WITHIN_SIGMAS = 2;

/** Where what is left is less than a survey is sure of. */
function tellUnsure({ clearance }: Remedy, { bolts }: PlateAt): readonly string[] {
  const sigma = Math.max(0, ...bolts.flatMap(({ member }) => member.insert.place?.sigma ?? []));
  const sure = SURE_WITHIN_SIGMAS * sigma;
  if (clearance === null || clearance.margin < 0 || clearance.margin >= sure) return [];
  return [
    `before anything is cut the bolts are marked through the plate: ${showLength(clearance.margin)} would be left, and the survey is sure to ${showLength(sure)} only`,
  ];
}

function complete(
  at: PlateAt,
  attempt: Omit<Attempt, 'holes' | 'faults' | 'conditions'>,
  plate: ChangedPlate,
  also: readonly string[],
): Remedy {
  const remedy = completeRemedy(at.question, {
    ...attempt,
    holes: plate.holes,
    faults: [],
    conditions: [...tellDepthNeeds(at.needs), ...tellShear(plate, at.bolts), ...also],
  });
  return { ...remedy, conditions: [...remedy.conditions, ...tellUnsure(remedy, at)] };
}

/** A plate with larger holes or slots, moved to where it goes on best. */
function tryHoles(at: PlateAt, kind: 'holes slotted' | 'holes enlarged', change: PlateChange): Remedy {
  const { question, fixture, packed } = at;
  if (change.kind === 'not this way') return refuseRemedy(question, kind, HEADS[kind], [change.why]);
  const { plate } = change;
  const changed = { ...packed, fixture: { ...fixture, holes: plate.holes } };
  const { placed, move, provenWithin } = moveToBest(question, changed, fixture, plate.holes);
  const washer = findWasher(plate);
  const moved = tellMove(question, move);
  const also = ['the edges of the cut are smoothed', ...OF_STEEL];
  return complete(
    at,
    {
      kind,
      words: `${tellHoles(plate)}${tellWasher(washer)}. ${moved}.`,
      placed,
      change: changeOf(at, plate, move, washer),
      provenWithin,
    },
    plate,
    also,
  );
}

function tryDrilling(at: PlateAt, drilled: RedrilledPlate): Remedy {
  const { question, fixture, packed } = at;
  const kind: RemedyKind = 'plate drilled anew';
  if (drilled.kind === 'not this way') return refuseRemedy(question, kind, HEADS[kind], [drilled.why]);
  const { plate, notSame } = drilled;
  const placed = { ...packed, fixture: { ...fixture, holes: plate.holes } };
  const room = findTightest(standBolts(question, placed, plate.holes))?.room ?? 0;
  const where =
    drilled.kind === 'same plate'
      ? `${nameHoles(plate.changed)} drilled anew where ${plate.changed.length === 1 ? 'its bolt stands' : 'their bolts stand'}; the old ones stay open and empty`
      : 'A new plate, its holes drilled where the bolts stand';
  return complete(
    at,
    {
      kind,
      words: `${where}.`,
      placed,
      change: changeOf(at, plate, null, findWasher(plate)),
      provenWithin: Math.max(0, plate.margin + plate.provenWithin - room),
    },
    plate,
    [
      ...(notSame === null ? [] : [`not in the same plate: ${notSame}`]),
      'by the template, not by measuring again',
      ...OF_STEEL,
    ],
  );
}

/** Slots, larger holes, holes drilled anew: each with the least that must be changed. */
export function tryPlateChanges(question: RemedyQuestion): readonly Remedy[] {
  const { connection, fixture } = question;
  const refuse = (why: string) =>
    (['holes slotted', 'holes enlarged', 'plate drilled anew'] as const).map((kind) =>
      refuseRemedy(question, kind, HEADS[kind], [why]),
    );
  if (fixture === null) return refuse(NO_PLATE);
  const needs = findDepthNeeds(question, connection);
  const packed = packUp(connection, needs);
  const bolts = standBolts(question, packed, fixture.holes);
  const thread = connection.boltThread ?? question.members[0]?.insert.item.item?.thread;
  if (bolts.length === 0 || thread === undefined) return refuse('no bolt of it is known');
  const at: PlateAt = { question, fixture, needs, packed, bolts };
  const found = findPlateRemedies({
    fixture,
    bolts: bolts.map(({ bolt, hole, diameter }) => ({ bolt, hole, boltDiameter: diameter })),
    thread: findThread(thread),
  });
  const slotted = found.slotted.map(({ change }) => tryHoles(at, 'holes slotted', change));
  return [
    pickBest(slotted)!, // one a direction
    tryHoles(at, 'holes enlarged', found.enlarged),
    tryDrilling(at, found.redrilled),
  ];
}
