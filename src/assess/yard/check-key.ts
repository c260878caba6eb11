import type { Point } from '../../engine/geometry/point.ts';
import { writeCanonical } from '../../job/canonical.ts';
import { hashText } from '../../job/fingerprint.ts';
import { totalThickness } from '../../job/section.ts';
import type { Assembly } from '../set-out/assembly-type.ts';
import { viewPanel } from '../set-out/panel-view.ts';
import type { PanelSetOut, SetOutItem } from '../set-out/set-out.ts';

/** Places of a mm that tell two lengths apart: beyond, they differ by rounding. */
const PLACES = 6;

/** A length without its rounding, never a negative zero. */
function exact(length: number): number {
  return Number(length.toFixed(PLACES)) + 0;
}

function exactPoint([x, y]: Point): readonly [number, number] {
  return [exact(x), exact(y)];
}

/** From where everything is taped, as the yard was told it: whoever was told another name measured from another side. */
function tellDatum({ datum, datumWords, panel }: PanelSetOut) {
  return { datum, words: datumWords, faceDown: panel.faceDown, turn: panel.inForm.turn_deg };
}

/** How an insert is built in: what is fetched and set, not the concrete that is left around it, nor what its parts are called. */
function tellAssembly({ way, recess, stack, chair, crossBar, tilt_deg, parts }: Assembly) {
  return {
    method: way.method,
    way: way.id,
    recess: exact(recess),
    stack: stack.filter(({ kind }) => kind !== 'concrete').map(({ kind, height }) => ({ kind, height: exact(height) })),
    chair: chair?.part.id ?? null,
    crossBar: crossBar && { ...crossBar, fromFoot: exact(crossBar.fromFoot) },
    tilt: exact(tilt_deg),
    parts: parts.map(({ part, count, per }) => ({ part: part.id, height: part.height_mm, count, per })),
  };
}

/**
 * The check key of a cast-in item: SHA-256 of what the yard must do for it. Its number, its connection, its strength and the mark of its panel are
 * not in it, so that a record holds as long as the work is the same; another way of laying the panel into the form changes every key.
 */
export function findCheckKey(setOut: PanelSetOut, item: SetOutItem): string {
  const { castIn, item: type, way } = item;
  const assembly = setOut.assemblies.find(({ letter }) => letter === item.assembly);
  return hashText(
    writeCanonical({
      role: castIn.role,
      description: castIn.description,
      size: castIn.size,
      type: type && { id: type.id, thread: type.thread, length: type.length_mm, finish: type.finish },
      from: tellDatum(setOut),
      place: item.place,
      side: item.side,
      inward: item.inward && exactPoint(item.inward),
      end: item.printed.kind === 'edge' ? item.printed.from : null,
      taped: exactPoint(item.taped),
      aboveBed: item.aboveBed === null ? null : exact(item.aboveBed),
      stage: item.stage,
      tolerance: item.tolerance,
      crossBar: item.crossBar,
      crossBarAsked: castIn.crossBar,
      holding: way?.id ?? null,
      assembly: assembly === undefined ? null : tellAssembly(assembly),
    }),
  );
}

/** The check key of the form itself: its shape and depth, from where it is measured, and how true it must be. */
export function findFormKey(setOut: PanelSetOut): string {
  const { panel, outline, openings, depth, form } = setOut;
  const { toPlan } = viewPanel(panel);
  return hashText(
    writeCanonical({
      from: tellDatum(setOut),
      outline: outline.map(exactPoint),
      openings: openings.map((ring) => ring.map(exactPoint)),
      depth,
      tolerance: form.tolerance,
      batter: panel.edges,
      zones: panel.zones.map(({ outline_mm, layers, behindOutside_mm }) => ({
        outline: outline_mm.map((corner) => exactPoint(toPlan(corner))),
        thickness: exact(totalThickness(layers)),
        behindOutside: behindOutside_mm,
      })),
    }),
  );
}
