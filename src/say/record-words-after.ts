import { ROLE_WORDS } from '../assess/yard/rights.ts';
import type { BodyOf, RecordKind } from '../records/record.ts';
import { placesOf } from './number-runs.ts';
import { showRatio } from './numbers.ts';
import { countOf } from './part-words.ts';
import { add, type Teller, tellSights } from './record-tellers.ts';

/** Kinds that are recorded once a piece is out of its form. */
type AfterKind = Extract<
  RecordKind,
  'surveyed' | 'remedy-decided' | 'delivered' | 'offered' | 'tightened' | 'sealed' | 'proof-planned' | 'proof-loaded'
>;

const BASIS_WORDS: Readonly<Record<BodyOf<'surveyed'>['basis'], string>> = {
  instrument: 'with an instrument',
  tape: 'by tape',
  scaffold: 'by tape from where it stands',
};

const WENT_ON: Readonly<Record<BodyOf<'offered'>['wentOn'], string>> = {
  'as designed': 'went on as designed',
  'shifted or turned': 'went on, shifted or turned',
  no: 'did NOT go on',
};

type Tool = BodyOf<'tightened'>['tool'];

function tellTool(tool: Tool): string {
  if (tool === null) return '';
  const { name, serial, calibratedUntil } = tool;
  const parts = [
    ...(name === null ? [] : [name]),
    ...(serial === null ? [] : [`no. ${serial}`]),
    calibratedUntil === null ? 'no calibration date read' : `calibrated until ${calibratedUntil}`,
  ];
  return `; ${parts.join(', ')}`;
}

function plain(value: number): string {
  return String(Number(value.toFixed(1)));
}

/** Every kind after the form in one sentence without its subject. */
export const TELLERS_AFTER: { readonly [Kind in AfterKind]: Teller<Kind> } = {
  surveyed: ({ basis, file, tool, controls, points, tapes, stances, note }, { names }) => {
    const items = [...points, ...tapes, ...stances].map(({ item }) => item);
    const numbers = [...new Set(items)].map(names.number).filter((one) => one !== null);
    const where = numbers.length === 0 ? 'the piece' : placesOf(numbers);
    const used = controls.filter(({ isUsed }) => isUsed).length;
    const by = controls.length === 0 ? '' : `, by ${used} of ${countOf(controls.length, 'known point')}`;
    return `surveyed ${where} ${BASIS_WORDS[basis]}${by}${add(file?.name ?? null, ', file ')}${tellTool(tool)}${add(note)}`;
  },
  'remedy-decided': ({ connectionMark, remedy, words, role, registration, reason, computed }) => {
    const room = computed.clearance_mm === null ? '' : `, clearance left ${plain(computed.clearance_mm)} mm`;
    const ratio = computed.ratio === null ? '' : `, ${showRatio(computed.ratio)}`;
    return `decided for connection ${connectionMark}: ${remedy}. ${words} As ${ROLE_WORDS[role]}${add(registration, ', registration ')}: ${reason}; computed as cast then: ${computed.state}${ratio}${room}`;
  },
  delivered: ({ caps, threads, note }, { what }) =>
    `looked at ${what} on delivery: ${tellSights([
      [caps, 'caps in', 'CAP MISSING'],
      [threads, 'threads clean', 'THREAD NOT clean'],
    ])}${add(note)}`,
  offered: ({ connectionMark, wentOn, note }) =>
    `offered up the plate of connection ${connectionMark}: it ${WENT_ON[wentOn]}${add(note)}`,
  tightened: ({ connectionMark, how, torque_Nm, tool, bolts, lubricated, note }) => {
    const lengths = [...new Set(bolts.map(({ length_mm }) => length_mm))].sort((a, b) => a - b).join(', ');
    const torque = torque_Nm === null ? '' : `, ${plain(torque_Nm)} Nm`;
    return `tightened connection ${connectionMark}: ${countOf(bolts.length, 'bolt')} of ${lengths} mm, ${how}${torque}${lubricated ? ', lubricated' : ''}${tellTool(tool)}${add(note)}`;
  },
  sealed: ({ with: filling }, { what }) => `filled and sealed ${what} with ${filling}`,
  'proof-planned': ({ items, load_kN, hold_min, movement_mm, role, reason }, { names }) => {
    const numbers = items.map(names.number).filter((one) => one !== null);
    const most = movement_mm === null ? '' : `, moving at most ${plain(movement_mm)} mm`;
    return `planned pull tests of ${numbers.length === 0 ? countOf(items.length, 'insert') : placesOf(numbers)}: ${plain(load_kN)} kN held ${plain(hold_min)} min${most}, as ${ROLE_WORDS[role]}: ${reason}`;
  },
  'proof-loaded': ({ load_kN, held_min, movement_mm, failure, support_mm, gauge, note }, { what }) => {
    const moved = movement_mm === null ? '' : `, moved ${plain(movement_mm)} mm`;
    const feet = support_mm === null ? '' : `, feet ${plain(support_mm)} mm from its axis`;
    const end = failure === null ? 'it held' : `it FAILED: ${failure}`;
    return `pulled ${what} with ${plain(load_kN)} kN for ${plain(held_min)} min${moved}${feet}: ${end}${tellTool(gauge)}${add(note)}`;
  },
};
