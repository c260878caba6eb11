import * as z from 'zod';
import { findBoltHead, findThreadLength } from '../engine/hardware/bolt-dimensions.ts';
import type { PackerRow } from '../engine/hardware/bolt-length.ts';
import { describeBolt } from '../engine/hardware/bolt-notes.ts';
import { type BoltAnswer, type BoltQuestion, chooseBolt, type PackerWish } from '../engine/hardware/choose-bolt.ts';
import {
  findAisc360Kind,
  findBasePlateHole,
  findEn1090Kind,
  findIso273Fit,
  findWidestHole,
} from '../engine/hardware/clearance-holes.ts';
import { findThread, type Thread } from '../engine/hardware/threads.ts';
import { chooseWasher } from '../engine/hardware/washer-choice.ts';
import { type BoltInput, boltInput, isOneRange, listPackerRanges } from './bolt-input.ts';

const N_PER_KN = 1000;
const N_MM_PER_N_M = 1000;
const MM_PER_UM = 0.001;

const pair = z.tuple([z.number(), z.number()]);
const holeKind = z.enum(['normal', 'oversize', 'short slot', 'long slot', 'beyond the table']).nullable();

const plateHole = z.strictObject({
  iso273: z.enum(['fine', 'medium', 'coarse', 'wider than coarse']).nullable(),
  en1090: holeKind,
  aisc360: holeKind,
  sharesShear: z.boolean(),
  withinBasePlate: z.boolean().nullable(),
  washer: z.strictObject({
    kind: z.enum(['ISO 7089', 'ISO 7093-1', 'plate']),
    outside_mm: z.number(),
    thickness_mm: z.number(),
  }),
});

const packerRow = z.strictObject({
  packers_mm: pair,
  length_mm: z.number().nullable(),
  engagement_mm: pair.nullable(),
  turnsByHand: pair.nullable(),
  clearToBottom_mm: z.number().nullable(),
  label: z.string(),
});

const output = z.strictObject({
  length_mm: z.number().nullable(),
  engagement_mm: z.number().nullable(),
  turnsByHand: z.number().nullable(),
  clearToBottom_mm: z.number().nullable(),
  stressArea_mm2: z.number(),
  proofLoad_kN: z.number(),
  minUltimate_kN: z.number(),
  engagementForFullStrength_mm: z.number().nullable(),
  tighteningTorque_Nm: z.number().nullable(),
  ok: z.boolean(),
  minEngagement_mm: z.number(),
  preload_kN: pair.nullable(),
  nutFactorRange: pair,
  torqueLimits: z.array(z.strictObject({ limit: z.string(), torque_Nm: z.number() })),
  packerRanges: z.array(packerRow),
  plateHole: plateHole.nullable(),
  spanner_mm: z.number(),
  headHeight_mm: z.number(),
  threadLength_mm: z.number().nullable(),
  notes: z.array(z.string()),
});

type Output = z.infer<typeof output>;

/** The bolt for an insert: length, engagement, loads, pairing and tightening, as the contract gives them. */
function run(given: BoltInput): Output {
  const question = readQuestion(given);
  const { thread } = question;
  const answer = chooseBolt(question);
  const { choice, loads, tightening, preload, fullStrengthEngagement } = answer;
  const head = findBoltHead(thread);
  return {
    length_mm: choice?.length ?? null,
    engagement_mm: choice?.engagement.least ?? null,
    turnsByHand: choice === null || !answer.goesIn ? null : choice.engagement.least / thread.pitch,
    clearToBottom_mm: choice?.clearToBottom ?? null,
    stressArea_mm2: thread.stressArea,
    proofLoad_kN: loads.proof / N_PER_KN,
    minUltimate_kN: loads.breaking / N_PER_KN,
    engagementForFullStrength_mm: fullStrengthEngagement,
    tighteningTorque_Nm: tightening === null ? null : tightening.torque / N_MM_PER_N_M,
    ok: answer.isOk,
    minEngagement_mm: answer.path.minEngagement,
    preload_kN: preload === null ? null : [preload[0] / N_PER_KN, preload[1] / N_PER_KN],
    nutFactorRange: [answer.nutFactorRange.least, answer.nutFactorRange.greatest],
    torqueLimits: answer.torqueLimits.map(({ kind, torque }) => ({ limit: kind, torque_Nm: torque / N_MM_PER_N_M })),
    packerRanges: answer.packerRows.map((row) => writeRow(answer, row)),
    plateHole: given.plateHole === undefined ? null : adviseHole(thread, given.plateHole),
    spanner_mm: head.acrossFlats,
    headHeight_mm: head.height,
    threadLength_mm: choice === null ? null : findThreadLength(thread, choice.length),
    notes: [...describeBolt(question, answer), ...describeHole(thread, given.plateHole)],
  };
}

function readQuestion(given: BoltInput): BoltQuestion {
  const { insertThread: steel, insertBody: body, nutFactorRange: range, boltCoating_um, concreteTension_kN } = given;
  const hole = body?.crossHole ?? null;
  return {
    thread: findThread(given.thread),
    propertyClass: given.propertyClass,
    boltFinish: given.boltFinish,
    boltCoating: typeof boltCoating_um === 'number' ? boltCoating_um * MM_PER_UM : null,
    insert: {
      threadClass: given.insertThreadClass,
      finish: given.insertFinish,
      threadStart: given.threadStartsBelowFace_mm,
      threadDepth: given.threadDepth_mm,
      steel: steel === null ? null : { yield: steel.yield_MPa, ultimate: steel.ultimate_MPa },
      body:
        body === undefined || body === null
          ? null
          : {
              diameter: body.diameter_mm,
              crossHole: hole === null ? null : { diameter: hole.diameter_mm, bore: hole.bore_mm },
            },
      maxTorque: given.maxTorque_Nm === null ? null : given.maxTorque_Nm * N_MM_PER_N_M,
    },
    grip: given.grip_mm,
    washer: given.washer_mm,
    thickestWasher: null,
    minEngagement: given.minEngagement_mm,
    stock: given.stockLengths_mm,
    packers: readPackers(given),
    nutFactor: given.nutFactor,
    nutFactorRange: range === undefined ? null : { least: range[0], greatest: range[1] },
    preloadFraction: given.preloadFraction,
    concreteTension: typeof concreteTension_kN === 'number' ? concreteTension_kN * N_PER_KN : null,
  };
}

function readPackers({ packers_mm }: BoltInput): PackerWish {
  if (packers_mm === undefined) return { kind: 'none' };
  return isOneRange(packers_mm)
    ? { kind: 'split', range: packers_mm }
    : { kind: 'each', ranges: listPackerRanges(packers_mm) };
}

function writeRow(
  { path: { thread }, goesIn }: BoltAnswer,
  { packers: [from, to], choice }: PackerRow,
): Output['packerRanges'][number] {
  const range = `packers ${Number(from.toFixed(1))}–${Number(to.toFixed(1))} mm`;
  if (choice === null)
    return {
      packers_mm: [from, to],
      length_mm: null,
      engagement_mm: null,
      turnsByHand: null,
      clearToBottom_mm: null,
      label: `${range}: no length fits`,
    };
  const { least, greatest } = choice.engagement;
  return {
    packers_mm: [from, to],
    length_mm: choice.length,
    engagement_mm: [least, greatest],
    turnsByHand: goesIn ? [least / thread.pitch, greatest / thread.pitch] : null,
    clearToBottom_mm: choice.clearToBottom,
    label: `${range}: ${thread.name} × ${choice.length}${goesIn ? '' : ' does not go in'}`,
  };
}

/** How a hole in the plate stands beside the tables, and the washer that covers it. */
function adviseHole(thread: Thread, given: NonNullable<BoltInput['plateHole']>): NonNullable<Output['plateHole']> {
  const hole = { diameter: given.diameter_mm, slot: given.slot_mm };
  const base = findBasePlateHole(thread);
  const washer = chooseWasher(thread, hole);
  return {
    iso273: findIso273Fit(thread, hole),
    en1090: findEn1090Kind(thread, hole),
    aisc360: findAisc360Kind(thread, hole),
    sharesShear: hole.slot === 0 && hole.diameter <= findWidestHole(thread),
    withinBasePlate: base === null ? null : hole.diameter + hole.slot <= base.widest,
    washer: { kind: washer.kind, outside_mm: washer.outside, thickness_mm: washer.thickness },
  };
}

function describeHole(thread: Thread, given: BoltInput['plateHole']): readonly string[] {
  if (given === undefined || given.slot_mm === 0) return [];
  const widest = findWidestHole(thread);
  return [
    given.diameter_mm <= widest
      ? `the slot shares shear across it only, along it none (width ${given.diameter_mm} mm, at most ${widest} mm by EN 1992-4, Table 6.1)`
      : `the slot shares no shear: it is ${given.diameter_mm} mm wide, above ${widest} mm (EN 1992-4, Table 6.1)`,
  ];
}

/** The calculation `bolt` of the contract. */
export const boltCalc = {
  name: 'bolt',
  gives: 'bolt for an insert: length, engagement, pairing, tightening',
  input: boltInput,
  output,
  run,
} as const;
