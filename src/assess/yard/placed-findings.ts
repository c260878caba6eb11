import type { ClashRules } from '../../engine/form/clash/clash-scene.ts';
import { findClashes } from '../../engine/form/clash/find-clashes.ts';
import { isInside, type Region } from '../../engine/geometry/region.ts';
import { COVER_DEVIATION } from '../../engine/material/cover.ts';
import { standInEachOther } from '../../job/check/check-cast-ins.ts';
import { checkInPlace, findPlace } from '../../job/check/check-place.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Panel } from '../../job/documents/panel.ts';
import type { Bed } from '../../job/documents/yard.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { showLength } from '../../job/resolve/local-member-type.ts';
import { buildScene, type PanelScene } from '../clash/build-scene.ts';
import type { ReportedClash } from '../clash/clash-report.ts';
import { tellMeeting } from '../clash/describe-clash.ts';
import { formClashWords } from '../clash/form-clash-words.ts';
import { nameClash } from '../clash/report-clashes.ts';
import { askAssembly } from '../set-out/assembly-question.ts';
import type { CoverLine } from '../set-out/assembly-type.ts';
import { findCovers } from '../set-out/find-covers.ts';
import { findCrossBar } from '../set-out/find-cross-bar.ts';
import { findStack } from '../set-out/find-stack.ts';
import { findHoldingSite } from '../set-out/holding-site.ts';
import type { PanelSetOut, SetOutItem } from '../set-out/set-out.ts';

/** An insert where it was found, among the others where they are. */
export interface Placed {
  readonly index: JobIndex;
  /** The same job with everything where it was found. */
  readonly moved: JobIndex;
  readonly bed: Bed | null;
  readonly setOut: PanelSetOut;
  readonly region: Region;
  readonly item: SetOutItem;
  readonly castIn: CastIn;
  /** Level found, below the face [mm]; null: not taken. */
  readonly level: number | null;
}

/** Why an insert cannot be there at all: no concrete, or not enough for it; null where nothing speaks against it. */
export function findOutOfPlace(index: JobIndex, panel: Panel, region: Region, castIn: CastIn): string | null {
  const place = findPlace(castIn, panel, region, []);
  const item = castIn.item === null ? undefined : index.items.get(castIn.item);
  const [fault] = checkInPlace(place, item);
  if (fault === undefined) return null;
  if (castIn.face !== 'edge' && !isInside(region, castIn.x_mm, castIn.y_mm)) return 'there is no concrete there';
  return place.fault === null ? fault.text : 'it is beyond the side that it belongs in';
}

/** Others that it stands in, where they are. */
function findOverlaps({ index, moved, setOut, castIn }: Placed): string[] {
  const bodyOf = ({ item }: CastIn) => (item === null ? undefined : index.items.get(item)?.bodyDiameter_mm);
  const body = bodyOf(castIn);
  if (body === undefined) return [];
  return setOut.items.flatMap(({ castIn: { id }, number }) => {
    const other = moved.castIn(castIn.panel, id);
    const otherBody = other === undefined ? undefined : bodyOf(other);
    if (other === undefined || otherBody === undefined || id === castIn.id) return [];
    const isOnFace = other.face === castIn.face && other.edge === castIn.edge;
    return isOnFace && standInEachOther(castIn, body, other, otherBody) ? [`it stands in no. ${number}`] : [];
  });
}

/** A panel of a job on the bed that it is cast on; null: none is named. */
export interface PanelOnBed {
  readonly index: JobIndex;
  readonly panel: Panel;
  readonly bed: Bed | null;
  /** The panel's outline with its openings. */
  readonly region: Region;
}

/** Covers of an insert, each less what it may be down to: the nominal cover allows for a deviation of placing, and this is one. */
export function listCovers(
  { index, panel, bed, region }: PanelOnBed,
  castIn: CastIn,
  level: number | null,
): readonly CoverLine[] {
  const question = askAssembly(index, panel, castIn, bed);
  if (question === null) return [];
  const site = findHoldingSite(question, region);
  const top = level ?? findStack(question, site).top;
  return findCovers(question, site, top, findCrossBar(question).bar).covers.map((line) => ({
    ...line,
    wanted: Math.max(0, line.wanted - COVER_DEVIATION),
  }));
}

/** The part with the least to spare, of each kind of part. */
function worstOf(covers: readonly CoverLine[], part: CoverLine['part']): CoverLine | undefined {
  const lines = covers.filter((line) => line.part === part);
  return lines.length === 0
    ? undefined
    : lines.reduce((worst, line) => (line.cover - line.wanted < worst.cover - worst.wanted ? line : worst));
}

/** Lengths that lie this close together [mm] are the same. */
const ROUNDING = 1e-6;

/** Parts with less concrete around them than the least cover, and less than as designed. */
export function findShortCovers(designed: readonly CoverLine[], covers: readonly CoverLine[]): string[] {
  return (['foot', 'body', 'cross bar'] as const).flatMap((part) => {
    const [before, now] = [worstOf(designed, part), worstOf(covers, part)];
    if (now === undefined || now.cover >= now.wanted - ROUNDING) return [];
    if (before !== undefined && now.cover >= before.cover - ROUNDING) return [];
    if (now.cover <= 0) return [`its ${part} comes out of the concrete toward ${now.toward}`];
    return [
      `its ${part} has ${showLength(now.cover)} of concrete toward ${now.toward}, at least ${showLength(now.wanted)} is needed`,
    ];
  });
}

/** What an insert meets, or is too near to. */
export type Meeting = Pick<ReportedClash, 'a' | 'b' | 'clearance_mm' | 'needed_mm'>;

/** Which ways a panel's battered sides may lean: the job does not say, so both are looked at. */
export function listLeans({ edges }: Panel): readonly (1 | -1)[] {
  return edges.some(({ batter_deg }) => batter_deg !== 0) ? [1, -1] : [1];
}

/** What everything in a scene meets; at a side only what comes out of it. */
export function listMeetings(panel: Panel, built: PanelScene, rules: ClashRules): readonly Meeting[] {
  return findClashes(built.scene, rules)
    .map(
      (clash): Meeting => ({
        ...nameClash(panel, built, clash),
        clearance_mm: clash.clearance,
        needed_mm: clash.needed,
      }),
    )
    .filter(({ b, clearance_mm }) => (b.kind !== 'edge' && b.kind !== 'opening') || clearance_mm <= 0);
}

/** Of what is met what an insert meets. */
export function pickOwn(meetings: readonly Meeting[], id: string): readonly Meeting[] {
  return meetings.filter(({ a, b }) => a.id === id || (b.kind === 'item' && b.id === id));
}

/** What an insert meets with the panel's sides leaning either way. */
function listAllMeetings(
  { setOut: { panel }, bed }: Placed,
  index: JobIndex,
  id: string,
  top: number | null,
): readonly Meeting[] {
  const rules = { clearance: index.file.library.rules.clearance_mm };
  return listLeans(panel).flatMap((lean) =>
    pickOwn(
      listMeetings(
        panel,
        buildScene(index, panel, bed, lean, (castIn) => (castIn.id === id ? top : null)),
        rules,
      ),
      id,
    ),
  );
}

function nameMeeting({ a, b }: Meeting): string {
  return JSON.stringify([a, b]);
}

/** Of what is met those that were not met as designed; what was too near and now overlaps counts too. */
export function pickNew(now: readonly Meeting[], designed: readonly Meeting[]): readonly Meeting[] {
  const before = new Map(designed.map((one) => [nameMeeting(one), one]));
  return now.filter((one) => {
    const was = before.get(nameMeeting(one));
    return was === undefined || (one.clearance_mm <= 0 && was.clearance_mm > 0);
  });
}

/** What it meets there and did not as designed. */
function findNewMeetings(placed: Placed): string[] {
  const { index, moved, castIn, setOut } = placed;
  const now = listAllMeetings(placed, moved, castIn.id, placed.level === null ? null : Math.max(0, placed.level));
  // What it met as designed is looked for only where it meets something: most do not.
  if (now.length === 0) return [];
  const words = formClashWords(setOut);
  const found = pickNew(now, listAllMeetings(placed, index, castIn.id, null));
  return [...new Set(found.map((one) => tellMeeting(one, words)))];
}

/** Everything that is wrong with an insert where it was found and was not as designed, in words without a full stop. */
export function findPlacedFindings(placed: Placed): readonly string[] {
  const { index, setOut, bed, region, castIn, item, level } = placed;
  const isProud = level !== null && level < 0;
  const proud = isProud
    ? [
        item.place === 'trowelled face'
          ? `its top stands ${showLength(-level)} above the face, where the screed hits it`
          : `its top stands ${showLength(-level)} out of the face`,
      ]
    : [];
  const out = findOutOfPlace(index, setOut.panel, region, castIn);
  if (out !== null) return [...proud, out];
  const onBed = { index, panel: setOut.panel, bed, region };
  const short = findShortCovers(listCovers(onBed, item.castIn, null), listCovers(onBed, castIn, level));
  return [...proud, ...findOverlaps(placed), ...short, ...findNewMeetings(placed)];
}
