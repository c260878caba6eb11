import { layBars, type PlanBar } from '../../assess/set-out/lay-bars.ts';
import { findPlace, viewPanel } from '../../assess/set-out/panel-view.ts';
import type { FormPlace } from '../../assess/set-out/set-out.ts';
import { orderWalk, type Stop } from '../../assess/set-out/walking-order.ts';
import type { Point } from '../../engine/geometry/point.ts';
import { placeOfHole } from '../../job/details/hole-place.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Fixture } from '../../job/documents/fixture.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { panelSide } from '../../job/face-frame.ts';
import type { JobIndex } from '../../job/job-index.ts';
import type { Mark } from '../drawing.ts';
import { shapeOf } from '../symbol-shapes.ts';
import { lookAt, type PanelSight, placeDrawn } from './panel-sight.ts';

/** A cast-in item as a screen draws it, in coordinates of the view [mm, rad]. */
export interface SceneItem {
  readonly castIn: CastIn;
  /** The mark of its connection; null: it stands alone. */
  readonly connection: string | null;
  readonly place: FormPlace;
  readonly at: Point;
  /** Of its symbol: on an edge the solid half looks into the concrete. */
  readonly turn: number;
  /** Around the origin, for a radius of 1. */
  readonly shape: readonly Mark[];
  /** Radius of its foot, drawn true to scale; null: not known. */
  readonly foot: number | null;
}

/** A connection's plate as a screen draws it. */
export interface ScenePlate {
  readonly connection: Connection;
  /** Outline on the panel; of an edge connection, seen from the side. */
  readonly outline: readonly Point[];
  readonly holes: readonly { readonly at: Point; readonly radius: number }[];
  /** On the face that is looked at, or behind it. */
  readonly isInFront: boolean;
}

/** Everything that lies still while something is moved. */
export interface SceneGround {
  readonly outline: readonly Point[];
  readonly openings: readonly (readonly Point[])[];
  readonly zones: readonly { readonly name: string; readonly outline: readonly Point[] }[];
  readonly bars: readonly PlanBar[];
}

/** Foot radius of a catalogue item [mm]; of a net area, that of the circle around it. */
function footRadius(index: JobIndex, castIn: CastIn): number | null {
  if (castIn.item === null) return castIn.size?.kind === 'round' ? castIn.size.diameter_mm / 2 : null;
  const item = index.items.get(castIn.item);
  if (item === undefined) return null;
  return item.foot.kind === 'diameter'
    ? item.foot.diameter_mm / 2
    : Math.sqrt(item.foot.area_mm2 / Math.PI + (item.bodyDiameter_mm / 2) ** 2);
}

function turnOf(panel: Panel, sight: PanelSight, castIn: CastIn): number {
  if (castIn.face !== 'edge' || castIn.edge === null) return 0;
  const { inward } = panelSide(panel, castIn.edge);
  const at = placeDrawn(panel, castIn);
  const [x0, y0] = sight.toView(at);
  const [x1, y1] = sight.toView([at[0] + inward[0], at[1] + inward[1]]);
  return Math.atan2(y1 - y0, x1 - x0);
}

/** The items of a panel where the job has them. */
export function laySceneItems(index: JobIndex, panel: Panel, sight: PanelSight): readonly SceneItem[] {
  const marks = new Map(
    index
      .connectionsOf(panel.mark)
      .flatMap(({ mark, inserts }) => inserts.map(({ insert }) => [insert, mark] as const)),
  );
  return index.castInsOf(panel.mark).map((castIn) => {
    const place = findPlace(panel, castIn);
    return {
      castIn,
      connection: marks.get(castIn.id) ?? null,
      place,
      at: sight.toView(placeDrawn(panel, castIn)),
      turn: turnOf(panel, sight, castIn),
      shape: shapeOf(castIn.role, place),
      foot: castIn.face === 'edge' ? null : footRadius(index, castIn),
    };
  });
}

/** A plate on an edge, seen from the side: as long as it is along the edge, as thick as it is, packers between. */
function layEdgePlate(panel: Panel, sight: PanelSight, connection: Connection, fixture: Fixture): readonly Point[] {
  const { from, along, inward } = panelSide(panel, connection.edge ?? 0);
  const drawn = fixture.outline_mm.map((corner) => placeOfHole(panel, connection, corner)[0]);
  const [low, high] = [Math.min(...drawn), Math.max(...drawn)];
  const [near, far] = [connection.packers_mm, connection.packers_mm + fixture.thickness_mm];
  const at = (x: number, out: number): Point =>
    sight.toView([from[0] + along[0] * x - inward[0] * out, from[1] + along[1] * x - inward[1] * out]);
  return [at(low, near), at(high, near), at(high, far), at(low, far)];
}

/** A connection's plate with its holes; null where the drawing shows none. */
export function layScenePlate(
  index: JobIndex,
  panel: Panel,
  sight: PanelSight,
  connection: Connection,
): ScenePlate | null {
  const fixture = index.fixtureOf(connection);
  if (fixture === null) return null;
  const faced = sight.kind === 'drawn' ? panel.drawnFace : panel.faceDown === 'outside' ? 'inside' : 'outside';
  const isInFront = connection.face === faced;
  if (connection.face === 'edge')
    return { connection, outline: layEdgePlate(panel, sight, connection, fixture), holes: [], isInFront: true };
  const toView = (local: Point) => sight.toView(placeOfHole(panel, connection, local));
  return {
    connection,
    outline: fixture.outline_mm.map(toView),
    holes: fixture.holes.map(({ at_mm, diameter_mm }) => ({ at: toView(at_mm), radius: diameter_mm / 2 })),
    isInFront,
  };
}

/** Outline, openings, zones and bars of a panel in a view. */
export function laySceneGround(panel: Panel, sight: PanelSight): SceneGround {
  // Bars are laid in the plan.
  const { toDrawn } = lookAt(panel, 'form');
  const turn = (at: Point) => sight.toView(toDrawn(at));
  return {
    outline: panel.outline_mm.map(sight.toView),
    openings: panel.openings_mm.map((ring) => ring.map(sight.toView)),
    zones: panel.zones.map(({ name, outline_mm }) => ({ name, outline: outline_mm.map(sight.toView) })),
    bars: layBars(panel).map((bar) => ({ ...bar, from: turn(bar.from), to: turn(bar.to) })),
  };
}

/** What a person comes to one after another: a connection with its inserts, or an item that stands alone. */
export interface SceneStop {
  readonly ids: readonly string[];
  readonly connection: string | null;
}

/** Connections and single items in the order of a walk along the form. */
export function orderStops(panel: Panel, items: readonly SceneItem[]): readonly SceneStop[] {
  const view = viewPanel(panel);
  const groups = new Map<string, SceneItem[]>();
  for (const item of items) {
    const name = item.connection === null ? `item ${item.castIn.id}` : `connection ${item.connection}`;
    groups.set(name, [...(groups.get(name) ?? []), item]);
  }
  const walk = orderWalk(
    [...groups.values()].map(
      (members): Stop<SceneItem> =>
        members.map((what) => ({
          what,
          at: view.toForm(placeDrawn(panel, what.castIn)),
          stage: what.place === 'trowelled face' ? 2 : 1,
        })),
    ),
    view.width,
  );
  const first = new Map<string, SceneStop>();
  for (const { castIn, connection } of walk) {
    const name = connection === null ? `item ${castIn.id}` : `connection ${connection}`;
    if (first.has(name)) continue;
    first.set(name, { ids: groups.get(name)!.map((one) => one.castIn.id), connection });
  }
  return [...first.values()];
}
