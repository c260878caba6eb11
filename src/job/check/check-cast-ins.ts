import type { CastIn } from '../documents/cast-in.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import type { HoldingWay } from '../documents/holding-parts.ts';
import type { DocumentFault } from '../fault.ts';
import { listLengths, mayReplace } from '../may-replace.ts';
import type { Entry, SiftedJob } from '../sift.ts';
import { prepareArea } from './check-panels.ts';
import { checkInPlace, findPlace, type Place } from './check-place.ts';
import { faultAt } from './fault-at.ts';

/** What an insert may be in its role: a brace or a lifter only by the maker's own rating. */
function checkRole({ path, value: castIn }: Entry<CastIn>, item: CatalogueItem | undefined): DocumentFault[] {
  const { role } = castIn;
  if (role === 'fixing' && castIn.item === null) {
    return [faultAt([...path, 'item'], null, 'a catalogue item', 'a fixing needs a type of the catalogue')];
  }
  if (castIn.item === null && castIn.description === null) {
    const text = `${role} ${castIn.id} has neither a type of the catalogue nor a description; expected one of them`;
    return [faultAt([...path, 'description'], null, 'a description', text)];
  }
  if ((role !== 'brace' && role !== 'lifting') || item === undefined) return [];
  if (item.ratedLoads.some((rated) => rated.role === role)) return [];
  const text = `${item.id} is a fixing insert and has no rated load for ${role} with the maker's document; expected an insert rated for ${role}`;
  return [faultAt([...path, 'role'], role, `an insert with a rated load for ${role} and its document`, text)];
}

/** What is wrong with an insert in its place; where another length would fit, it is named. */
function checkInsert(
  place: Place,
  item: CatalogueItem | undefined,
  items: ReadonlyMap<string, CatalogueItem>,
): DocumentFault[] {
  return checkInPlace(place, item).map((fault) => {
    if (item === undefined || fault.path.at(-1) !== 'item') return fault;
    const fitting = [...items.values()].filter(
      (other) => mayReplace(place.castIn, item, other) && checkInPlace(place, other).length === 0,
    );
    if (fitting.length === 0) return fault;
    return { ...fault, text: `${fault.text}; ${item.thread} of the catalogue that fit: ${listLengths(fitting)}` };
  });
}

/** The recess that a way of holding leaves must be the insert's. */
function checkHolding({ path, value: castIn }: Entry<CastIn>, way: HoldingWay | undefined): DocumentFault[] {
  if (way === undefined || way.recess_mm === castIn.recess_mm) return [];
  const text = `${way.id} keeps the top ${way.recess_mm} mm below the face, the recess says ${castIn.recess_mm} mm; expected ${way.recess_mm} mm`;
  return [faultAt([...path, 'recess_mm'], castIn.recess_mm, `${way.recess_mm} mm`, text)];
}

/** Whether the bodies of two inserts of one face, with their diameters [mm], stand in each other. */
export function standInEachOther(a: CastIn, bodyOfA: number, b: CastIn, bodyOfB: number): boolean {
  return Math.hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm) < (bodyOfA + bodyOfB) / 2;
}

/** Inserts of one face that stand in each other. */
function checkApart(job: SiftedJob, items: ReadonlyMap<string, CatalogueItem>): DocumentFault[] {
  const faces = new Map<string, { readonly castIn: CastIn; readonly body: number }[]>();
  return job.castIns.flatMap(({ path, value: castIn }) => {
    const body = castIn.item === null ? undefined : items.get(castIn.item)?.bodyDiameter_mm;
    if (body === undefined) return [];
    const face = JSON.stringify([castIn.panel, castIn.face, castIn.edge]);
    const others = faces.get(face) ?? [];
    faces.set(face, others);
    const near = others.find((other) => standInEachOther(other.castIn, other.body, castIn, body));
    others.push({ castIn, body });
    if (near === undefined) return [];
    const text = `insert ${castIn.id} stands in insert ${near.castIn.id} of panel ${castIn.panel}; expected them apart`;
    return [faultAt([...path, 'x_mm'], `${castIn.x_mm}, ${castIn.y_mm}`, 'a place of its own', text)];
  });
}

/** Cast-in items: role, place in the concrete, foot within the panel and in a structural layer. */
export function checkCastIns(job: SiftedJob): DocumentFault[] {
  const items = new Map(job.items.map(({ value }) => [value.id, value]));
  const panels = new Map(
    // Of two with one mark, which is a fault by itself, the first counts.
    [...job.panels].reverse().flatMap(({ path, value }) => {
      const area = prepareArea(path, 'outline_mm', value.outline_mm, value.openings_mm);
      return 'region' in area ? [[value.mark, { panel: value, region: area.region }] as const] : [];
    }),
  );
  const single = job.castIns.flatMap((entry) => {
    const { path, value: castIn } = entry;
    const item = castIn.item === null ? undefined : items.get(castIn.item);
    const faults = checkRole(entry, item);
    const place = panels.get(castIn.panel);
    if (place === undefined) return faults;
    const way = job.ways.find(({ value }) => value.id === castIn.holding)?.value;
    const found = checkInsert(findPlace(castIn, place.panel, place.region, path), item, items);
    return [...faults, ...found, ...checkHolding(entry, way)];
  });
  return [...single, ...checkApart(job, items)];
}
