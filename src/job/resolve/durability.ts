import { findThread } from '../../engine/hardware/threads.ts';
import { COVER_DEVIATION, findDurabilityCover, nominalCover } from '../../engine/material/cover.ts';
import { adviseFinish } from '../../engine/material/finish-advice.ts';
import { judgeContact } from '../../engine/material/metal-contact.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import type { ConnectionSeat } from './connection-seat.ts';
import { findCoverBehind } from './cover-behind.ts';

/** Life that is wanted [years]: common structures, EN 1990, Table 2.1, category 4. Structural class S4 is meant for it too. */
const WANTED_YEARS = 50;
const STRUCTURAL_CLASS = 'S4';

type Seat = Pick<ConnectionSeat, 'connection' | 'rules' | 'panel' | 'castIns'>;

/** What the finish of inserts and bolts leaves to look at; each sentence once, with the parts that it is for. */
function adviseFinishes({ connection, rules }: Seat, items: readonly CatalogueItem[]): string[] {
  const { boltFinish } = connection;
  const parts = items.map(({ finish, coating_um, thread }) => ({
    name: 'inserts',
    finish,
    coating: coating_um,
    thread,
  }));
  // How thick the zinc of a bolt is, no document says.
  if (boltFinish === 'plain' || boltFinish === 'stainless')
    parts.push({ name: 'bolts', finish: boltFinish, coating: 0, thread: items[0]!.thread });
  const found = new Map<string, Set<string>>();
  for (const { name, finish, coating, thread } of parts) {
    const { verdict, sentences } = adviseFinish({
      finish,
      coating,
      thread: findThread(thread).diameter,
      category: rules.environment,
      exposure: rules.exposure,
      wanted: WANTED_YEARS,
      grade: null,
      site: null,
    });
    for (const sentence of verdict === 'lasts' ? sentences.slice(1) : sentences)
      found.set(sentence, (found.get(sentence) ?? new Set()).add(name));
  }
  return [...found].map(([sentence, names]) => `${[...names].join(' and ')}: ${sentence}`);
}

function findContacts({ connection, rules }: Seat, items: readonly CatalogueItem[]): string[] {
  const { boltFinish } = connection;
  if (boltFinish === null) return [];
  const where = { category: rules.environment, exposure: rules.exposure };
  const texts = items.flatMap(({ finish }) => {
    const contact = judgeContact({ name: 'inserts', finish }, { name: 'bolts', finish: boltFinish }, where, null);
    return contact === null ? [] : [contact.text];
  });
  return [...new Set(texts)];
}

/** Cover behind feet that can rust, where the rules ask for less than the exposure does and there is less indeed. */
function compareCover({ rules, panel, castIns }: Seat, items: readonly CatalogueItem[]): string[] {
  const durability = findDurabilityCover(rules.exposure, STRUCTURAL_CLASS);
  const nominal = nominalCover(0, durability, COVER_DEVIATION);
  const asked = rules.cover.behindFoot_mm;
  const covers = castIns.flatMap((castIn, i) => {
    const cover = items[i]!.finish === 'stainless' ? null : findCoverBehind(panel, castIn, items[i]!);
    return cover === null ? [] : [cover];
  });
  const least = Math.min(...covers);
  if (asked >= nominal || least >= nominal) return [];
  return [
    `${least} mm of cover behind the foot: steel that can rust wants ${durability} + ${COVER_DEVIATION} = ${nominal} mm in ${rules.exposure} (EN 1992-1-1, Table 4.4N, ${STRUCTURAL_CLASS}); the rules ask for ${asked} mm`,
  ];
}

/** What may not last at a connection, in words: it changes no resistance. The same fault reads the same wherever it stands. */
export function durabilityWarnings(seat: Seat, items: readonly CatalogueItem[]): readonly string[] {
  return [...adviseFinishes(seat, items), ...findContacts(seat, items), ...compareCover(seat, items)];
}

/** The life that zinc is held against, which no document of a job gives; nothing where there is no zinc. */
export function lifeAssumptions(items: readonly CatalogueItem[]): readonly string[] {
  return items.some(({ finish }) => finish === 'zinc' || finish === 'galvanised')
    ? [`a life of ${WANTED_YEARS} years is wanted (EN 1990, Table 2.1, category 4)`]
    : [];
}
