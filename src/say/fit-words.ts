import type { AsCastConnection, AsCastReport, Remedy } from '../assess/as-cast/as-cast-report.ts';
import { tellShift } from '../assess/as-cast/tell-shift.ts';
import type { Connection } from '../job/documents/connection.ts';
import type { Panel } from '../job/documents/panel.ts';
import { turnVector } from '../job/face-frame.ts';
import { countOf } from './part-words.ts';

type Length = (mm: number) => string;

/** How a connection stands as cast, in a few words. */
export const AS_CAST_WORDS: Readonly<Record<AsCastConnection['state'], string>> = {
  fine: 'within tolerance',
  'fine as it is': 'off, works as it is: to be decided',
  'needs a remedy': 'needs a remedy',
  'not usable': 'NOT USABLE',
  'not surveyed': 'not surveyed',
  decided: 'decided',
  conflict: 'surveyed twice, differently',
};

/** What is never done without the design engineer, to somebody with a torch in his hand. */
export const NEVER_ALONE =
  'Do not slot, drill or burn a hole, do not leave a bolt out, do not bend or cut one: the design engineer decides that.';

/** What may be done on site by those who may. */
export const ON_SITE =
  'On site it may be shifted and turned within its holes, and packed, as far as it stands here: nothing else.';

/** What somebody measures who stands before inserts that nobody surveyed. */
export const TO_MEASURE: readonly string[] = [
  'from each insert to the nearest edge at its side, and to the edge below or above it',
  'from insert to insert, and one diagonal',
  'how deep each one stands below the face, or out of it, with a straightedge',
];

/** On which face a connection lies: `outside face`, `edge 2`. */
export function nameFace({ face, edge }: Pick<Connection, 'face' | 'edge'>): string {
  return face === 'edge' ? `edge ${edge ?? ''}`.trim() : `${face} face`;
}

/** Turns smaller than this are none [degrees]. */
const NO_TURN = 0.05;

/** Beside where a bolt is put so finely is not seen; a promise that is better than this is not told finer [mm]. */
const FINEST_PROOF = 0.001;

/**
 * The movement of a plate as one sees it who stands in front of it, top up: `4 mm to the left and 2 mm up, turned 0.3° clockwise`; in an edge across it, toward
 * or away from the drawn face. Null: it is not moved.
 */
export function tellPlateMove(
  move: Remedy['change']['move'],
  connection: Pick<Connection, 'turn_deg' | 'face'>,
  panel: Pick<Panel, 'drawnFace'>,
  length: Length,
): string | null {
  if (move === null) return null;
  const shift = tellShift(turnVector([move.dx_mm, move.dy_mm], connection.turn_deg), connection.face, panel, length);
  const turn = Math.abs(move.turn_deg);
  const turned =
    turn < NO_TURN ? [] : [`turned ${turn.toFixed(1)}° ${move.turn_deg > 0 ? 'counter-clockwise' : 'clockwise'}`];
  const told = [...(shift === null ? [] : [shift]), ...turned];
  return told.length === 0 ? null : told.join(', ');
}

/** What is left at the tightest hole, and, where the plate was moved to its best, how sure it is that no other movement leaves more; null: no plate. */
export function tellClearanceLeft(
  { clearance, change }: Pick<Remedy, 'clearance' | 'change'>,
  length: Length,
): string | null {
  if (clearance === null) return null;
  const { margin, provenWithin } = clearance;
  const proof = Math.max(FINEST_PROOF, Math.ceil(provenWithin * 1000) / 1000);
  const sure =
    change.move === null ? 'the plate lies as drawn' : `no other movement is better by more than ${proof} mm`;
  return margin < 0
    ? `${length(-margin)} missing at the tightest hole; ${sure}`
    : `${length(margin)} left around the tightest bolt; ${sure}`;
}

/** Whether a plate goes on with this remedy: no plate stands in nobody's way. */
export function goesOn({ clearance }: Pick<Remedy, 'clearance'>): boolean {
  return clearance === null || clearance.margin >= 0;
}

/** Connections to be decided whose plate no movement lets on. */
function countBlocked(connections: readonly AsCastConnection[]): number {
  return connections.filter((found) => {
    // Asked of those alone: remedies are computed when they are read.
    if (found.state !== 'needs a remedy') return false;
    const moved = found.remedies.filter(({ kind, clearance }) => kind === 'plate moved' && clearance !== null);
    return moved.length > 0 && !moved.some(goesOn);
  }).length;
}

/** What stands of a whole piece in one line: `2 of 14 off, 1 plate does not go on, 1 connection to be decided`. */
export function tellAsCast({ surveys, inserts, connections }: AsCastReport): string {
  if (surveys.length === 0)
    return `Nothing is surveyed: where ${countOf(inserts.length, 'insert')} came out is not known.`;
  if (inserts.every(({ place }) => place === null))
    return `No survey says where the ${countOf(inserts.length, 'insert')} came out: see what the surveys lack.`;
  const count = (state: AsCastConnection['state']) => connections.filter((one) => one.state === state).length;
  const off = inserts.filter(({ state }) => state === 'off' || state === 'conflict').length;
  const unknown = inserts.filter(({ state }) => state === 'not surveyed').length;
  const open = count('fine as it is') + count('needs a remedy') + count('conflict');
  const blocked = countBlocked(connections);
  const parts = [
    off === 0 ? `none of ${inserts.length} off` : `${off} of ${inserts.length} off`,
    ...(unknown === 0 ? [] : [`${unknown} not surveyed`]),
    ...(blocked === 0 ? [] : [blocked === 1 ? '1 plate does not go on' : `${blocked} plates do not go on`]),
    ...(open === 0 ? [] : [`${countOf(open, 'connection')} to be decided`]),
    ...(count('decided') === 0 ? [] : [`${count('decided')} decided`]),
    ...(count('not usable') === 0 ? [] : [`${count('not usable')} NOT USABLE`]),
  ];
  const words = parts.join(', ');
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}
