import type { BoltUpCard } from '../../../../assess/bolt-up/bolt-up-report.ts';
import { listTightenedGaps } from '../../../../assess/bolt-up/tightened-gaps.ts';
import { callPerson } from '../../../../assess/yard/rights.ts';
import type { Person } from '../../../../records/person.ts';
import { CARD_STATES, plainLength, sayBoltKind, sayRange, sayTorque } from '../../../../say/bolt-up-words.ts';
import { STATE_WORDS } from '../../../../say/words.ts';
import type { ShownState } from '../../../parts/state-mark.tsx';
import { writeMoment } from '../../state/write-moment.ts';

/** What the record of tightening leaves open; empty: nothing, or there is none. */
export function listGaps(card: BoltUpCard): readonly string[] {
  return card.tightened === null ? [] : listTightenedGaps(card, card.tightened);
}

/** Shape and colour beside the words. What is tightened and not as it must be, or leaves something open, is never green; what may only be tightened is not either. */
export function markOf(card: BoltUpCard): ShownState {
  if (card.state === 'tightened') {
    if (card.tightenedFaults.length > 0) return 'fails';
    return listGaps(card).length > 0 ? 'cannot be computed' : 'passes';
  }
  if (card.state === 'ready') return 'not covered';
  return card.state === 'survey first' ? 'strength not checked' : 'fails';
}

/** The state in words. */
export function sayState(card: BoltUpCard): string {
  if (card.state !== 'tightened') return CARD_STATES[card.state];
  if (card.tightenedFaults.length > 0) return 'tightened, NOT as it must be';
  return listGaps(card).length > 0 ? 'tightened, something is open' : CARD_STATES.tightened;
}

function sayWasher({ kind, outside, thickness }: BoltUpCard['bolts'][number]['washers'][number]): string {
  const size = `${plainLength(outside)} × ${plainLength(thickness)}`;
  return kind === 'plate' ? `plate washer ${plainLength(outside)} × ${size}` : `washer ${size} (${kind})`;
}

/** Bolts of a card: what they are, how long for each range of packers, the washers under their heads. A line each. */
export function sayBolts(card: BoltUpCard): readonly string[] {
  if (card.bolts.length === 0) return ['no bolt can be named'];
  const lengths = card.packers.map((one, k) => {
    const own = card.bolts.map(({ lengths: all }) => all[k]?.choice?.length ?? null);
    const kinds = [...new Set(own)].sort((a, b) => (a ?? 0) - (b ?? 0));
    const words = kinds.map((length) => {
      const count = own.filter((other) => other === length).length;
      return length === null ? `${count} without a length` : `${count} × ${plainLength(length)} mm`;
    });
    const stop = one.state === 'passes' || one.isStated ? '' : `, but ${STATE_WORDS[one.state]}: ask first`;
    return `${sayRange(one)}${one.isStated ? ' (as stated)' : ''}: ${words.join(', ')}${stop}`;
  });
  const washers = [...new Set(card.bolts.map((bolt) => bolt.washers.map(sayWasher).join(' on ')))];
  return [sayBoltKind(card), ...lengths, washers.join('; ')];
}

/** The most that may be put on. */
export function sayLimit({ tightening: { most } }: BoltUpCard): string {
  return most === null
    ? 'snug only: no limit is known'
    : `snug; never above ${sayTorque(most.torque).replaceAll(' ', '\u00a0')} (${most.kind})`;
}

/** Whether the plate went on, who says so and when; null: nobody has offered it up. */
export function sayOffered({ offered }: BoltUpCard, people: readonly Person[]): string | null {
  if (offered === null) return null;
  const { body, person, measuredAt } = offered;
  const went = body.wentOn === 'no' ? 'did NOT go on' : `went on, ${body.wentOn}`;
  return `${went}: ${callPerson(people, person)}, ${writeMoment(measuredAt)}${body.note === null ? '' : `; ${body.note}`}`;
}

/** By whom, when and how it was tightened; null: it is not. */
export function sayTightened({ tightened }: BoltUpCard, people: readonly Person[]): string | null {
  if (tightened === null) return null;
  const { body, person, measuredAt } = tightened;
  const torque = body.torque_Nm === null ? '' : ` to ${plainLength(body.torque_Nm)} Nm`;
  const wrench =
    body.tool === null
      ? ''
      : `, ${[body.tool.name ?? 'wrench', ...(body.tool.serial === null ? [] : [`no. ${body.tool.serial}`]), ...(body.tool.calibratedUntil === null ? [] : [`calibrated until ${body.tool.calibratedUntil}`])].join(', ')}`;
  const grease = body.lubricated ? ', lubricated' : ', dry';
  return `${callPerson(people, person)}, ${writeMoment(measuredAt)}: ${body.how}${torque}${wrench}${grease}${body.note === null ? '' : `; ${body.note}`}`;
}
