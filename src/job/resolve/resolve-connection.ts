import type { AnchorageGroup, UncoveredUse } from '../../engine/checks/anchorage-group.ts';
import { findBoltSteel } from '../../engine/hardware/property-classes.ts';
import { findThread } from '../../engine/hardware/threads.ts';
import type { CastIn } from '../documents/cast-in.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import type { Connection } from '../documents/connection.ts';
import type { Fixture } from '../documents/fixture.ts';
import type { Panel } from '../documents/panel.ts';
import { describeFrame, frameOf } from '../face-frame.ts';
import type { JobIndex } from '../job-index.ts';
import { layersAt, totalThickness } from '../section.ts';
import { localMember } from './local-member.ts';
import { localReinforcement, toHairpin, toSupplementaryBar } from './local-reinforcement.ts';
import { findWideHoles, resolveAction, resolveLeverArm, resolvePlate } from './resolve-plate.ts';
import type { Resolution, ResolvedActions } from './resolved-connection.ts';
import { steelPathOf, testedResistances } from './steel-parts.ts';
import { toNewton } from './units.ts';

interface Members {
  readonly panel: Panel;
  readonly fixture: Fixture | null;
  readonly inserts: readonly { readonly castIn: CastIn; readonly item: CatalogueItem; readonly hole: string | null }[];
}

/** Something that the reading of the job has made sure of is not there: a fault of this program, not of the job. */
function mustFind<T>(found: T | undefined, what: string): T {
  if (found === undefined) throw new Error(`${what} is not in the job, though it was checked`);
  return found;
}

function gatherMembers(index: JobIndex, connection: Connection): Members {
  const panel = mustFind(index.panels.get(connection.panel), `panel ${connection.panel}`);
  const inserts = connection.inserts.map(({ insert, hole }) => {
    const castIn = mustFind(index.castIn(panel.mark, insert), `insert ${insert}`);
    const item = mustFind(
      castIn.item === null ? undefined : index.items.get(castIn.item),
      `catalogue item ${castIn.item}`,
    );
    return { castIn, item, hole };
  });
  const detail =
    connection.detail === null ? null : mustFind(index.details.get(connection.detail), `detail ${connection.detail}`);
  return { panel, fixture: connection.fixture ?? detail?.fixture ?? null, inserts };
}

function strengthOf(
  index: JobIndex,
  connection: Connection,
  panel: Panel,
): { strength: number; lightweight: boolean; assumptions: string[] } {
  const mix = mustFind(index.concretes.get(panel.concrete), `concrete ${panel.concrete}`);
  const { age_days } = connection;
  if (age_days === null || age_days === 28) {
    const assumptions = age_days === null ? [`concrete at 28 days: f_ck = ${mix.strength28_MPa} MPa`] : [];
    return { strength: mix.strength28_MPa, lightweight: mix.lightweight, assumptions };
  }
  const aged = mustFind(
    mix.ages.find((a) => a.age_days === age_days),
    `strength of ${mix.id} at ${age_days} days`,
  );
  return { strength: aged.strength_MPa, lightweight: mix.lightweight, assumptions: [] };
}

function insertProperties(
  item: CatalogueItem,
  steelParts: AnchorageGroup['insert']['steelParts'],
  boltElongation: number | null,
): AnchorageGroup['insert'] {
  const own = item.steel.elongation_percent;
  return {
    embedment: item.embedment_mm,
    shaftDiameter: item.bodyDiameter_mm,
    foot:
      item.foot.kind === 'diameter'
        ? { kind: 'diameter', diameter: item.foot.diameter_mm, thickness: item.foot.thickness_mm }
        : { kind: 'area', area: item.foot.area_mm2 },
    steelParts,
    elongation: own === null || boltElongation === null ? null : Math.min(own, boltElongation),
    areaReduction: item.steel.areaReduction_percent,
    qualification: item.qualification,
    isFullHead: item.foot.isFullHead,
    tested: testedResistances(item),
  };
}

function resolveActions(connection: Connection, panel: Panel): ResolvedActions {
  const { actions } = connection;
  switch (actions.kind) {
    case 'none':
      return { kind: 'none' };
    case 'required':
      return { kind: 'required', N: toNewton(actions.N_kN), V: toNewton(actions.V_kN) };
    case 'loads': {
      const frame = frameOf(panel, connection);
      return {
        kind: 'loads',
        combinations: actions.combinations.map((load) => ({
          name: load.name,
          action: resolveAction(connection, frame, load),
        })),
      };
    }
  }
}

/** Concrete left behind each foot, where the rules ask for more. */
function coverWarnings(members: Members, connection: Connection, wanted: number): string[] {
  if (connection.face === 'edge') return [];
  return members.inserts.flatMap(({ castIn, item }) => {
    const left =
      totalThickness(layersAt(members.panel, [castIn.x_mm, castIn.y_mm])) - castIn.recess_mm - item.length_mm;
    return left >= wanted
      ? []
      : [`insert ${castIn.id}: ${left} mm of cover behind the foot; the rules ask for ${wanted} mm`];
  });
}

/** The insert type that all are computed as: the one with the least embedment where types are mixed. */
function governingItem(items: readonly CatalogueItem[]): CatalogueItem {
  return items.reduce((least, item) => (item.embedment_mm < least.embedment_mm ? item : least));
}

function findUncoveredUses(connection: Connection, members: Members): UncoveredUse[] {
  const roles = new Set(members.inserts.map(({ castIn }) => castIn.role));
  const kinds = new Set(members.inserts.map(({ item }) => item.id));
  const uses = new Set<UncoveredUse>(connection.uses);
  if (roles.has('lifting')) uses.add('lifting');
  if (roles.has('brace')) uses.add('brace');
  if (kinds.size > 1) uses.add('mixed types');
  return [...uses];
}

/**
 * One connection of a job as the engine takes it: units converted once, positions on its own face seen from the front, every default
 * named. The job must have been read by `readJobDocument`.
 *
 * @throws Error when the job holds a reference that nothing has (reading refuses such a job)
 */
export function resolveConnection(index: JobIndex, connection: Connection): Resolution {
  const { rules } = index.file.library;
  const members = gatherMembers(index, connection);
  const { panel, fixture, inserts } = members;
  const face = connection.face === 'edge' ? `edge ${connection.edge}` : connection.face;
  const head = { mark: connection.mark, panel: panel.mark, face };
  const castIns = inserts.map(({ castIn }) => castIn);
  const item = governingItem(inserts.map((insert) => insert.item));
  const local = localMember(connection, panel, castIns, item.embedment_mm);
  if (!local.ok) return { kind: 'unresolved', ...head, reasons: local.reasons };

  const frame = frameOf(panel, connection);
  const thread = findThread(item.thread);
  const bolt = findBoltSteel(connection.boltClass ?? rules.defaults.boltClass);
  const engagement =
    connection.engagement_mm ?? Math.min(rules.defaults.engagement_d * thread.diameter, item.threadDepth_mm);
  const steel = steelPathOf(item, bolt, engagement);
  const concrete = strengthOf(index, connection, panel);
  const reinforcement = localReinforcement(connection, panel);
  const recess = Math.max(...castIns.map((castIn) => castIn.recess_mm));
  const arm = resolveLeverArm(connection, fixture, thread, recess);
  const isMixed = new Set(inserts.map((insert) => insert.item.id)).size > 1;

  const group: AnchorageGroup = {
    standard: rules.standard,
    concrete: {
      strength: concrete.strength,
      cracked: connection.cracked ?? rules.defaults.cracked,
      lightweightFactor: 1,
    },
    member: local.member,
    reinforcement: reinforcement.reinforcement,
    insert: insertProperties(item, steel.parts, bolt.elongation),
    positions: castIns.map((castIn) => {
      const [x, y] = frame.toFace([castIn.x_mm, castIn.y_mm]);
      return { id: castIn.id, x, y };
    }),
    leverArm: arm.leverArm,
    splitting:
      item.splitting === null
        ? null
        : { criticalEdge: item.splitting.criticalEdge_mm, minimumThickness: item.splitting.minimumThickness_mm },
    partialFactors: { ...rules.partialFactors },
    pryOutFactor: item.pryOutFactor,
    hangers: connection.hangers.map(toSupplementaryBar),
    hairpins: connection.hairpins.map((loop) => toHairpin(loop, connection.turn_deg)),
    uncoveredUses: findUncoveredUses(connection, members),
  };
  const holes = inserts.flatMap(({ hole }) => fixture?.holes.filter((candidate) => candidate.id === hole) ?? []);
  const plate =
    fixture === null
      ? null
      : resolvePlate(
          connection,
          fixture,
          frame,
          inserts.map((insert, i) => ({ castIn: insert.castIn, hole: holes[i]!, thread })),
          concrete.strength,
        );
  return {
    kind: 'resolved',
    ...head,
    group,
    plate,
    actions: resolveActions(connection, panel),
    source: { coordinates: describeFrame(panel, connection), item, bolt, engagement, castIns },
    assumptions: [
      ...(connection.cracked === null
        ? [`${rules.defaults.cracked ? 'cracked' : 'uncracked'} concrete assumed (rules ${rules.id})`]
        : []),
      ...concrete.assumptions,
      ...(connection.boltClass === null ? [`bolts of class ${bolt.propertyClass} assumed (rules ${rules.id})`] : []),
      ...(connection.boltFinish === null
        ? [`bolt finish not given: one that ${item.id} takes (${item.boltFinishes.join(', ')})`]
        : []),
      ...(bolt.elongation === null || item.steel.elongation_percent === null
        ? ['elongation A5 not known: steel taken as brittle']
        : []),
      ...(connection.engagement_mm === null
        ? [`bolts engage ${engagement} mm of full thread: to be made sure of on site`]
        : []),
      ...(isMixed ? [`inserts of different types: all computed as ${item.id}, the one with the least embedment`] : []),
      ...local.assumptions,
      ...reinforcement.assumptions,
      ...arm.assumptions,
      ...steel.assumptions,
    ],
    notCovered: [
      ...local.notCovered,
      ...steel.notCovered,
      ...(concrete.lightweight ? ['lightweight concrete'] : []),
      ...findWideHoles(holes, thread),
    ],
    warnings: coverWarnings(members, connection, rules.cover.behindFoot_mm),
  };
}
