import { findEdition } from '../standards/editions.ts';
import { type StandardName, standardNames } from '../standards/standard-name.ts';
import type { AnchorageGroup } from './anchorage-group.ts';
import type { UncoveredUse } from './uncovered-use.ts';

/** What each edition does about one failure mode or condition, in words. */
export interface CoverageRow {
  readonly kind: 'mode' | 'condition';
  readonly subject: string;
  readonly answers: Readonly<Record<StandardName, string>>;
}

/** A group that every edition covers; the probes below change one thing each. */
const COVERED: AnchorageGroup = {
  standard: 'EN 1992-4',
  concrete: { strength: 32, cracked: true, lightweightFactor: 1 },
  member: { thickness: 200, outline: null, openings: [] },
  reinforcement: {
    denseSurface: false,
    edge: 'none',
    supplementary: false,
    limitsCrackWidth: true,
    stirrupSpacing: null,
  },
  insert: {
    embedment: 100,
    shaftDiameter: 24,
    foot: { kind: 'area', area: 1000 },
    steelParts: [{ name: 'steel', area: 157, ultimate: 800, yield: 640, resists: 'both' }],
    elongation: 14,
    areaReduction: 35,
    qualification: { document: 'a document', standard: standardNames.join(', ') },
    isFullHead: true,
    tested: [],
  },
  positions: [{ id: '1', x: 0, y: 0 }],
  leverArm: null,
  isTorqued: false,
  hasMortarPad: false,
  splitting: null,
  partialFactors: { concrete: null, steelTension: null, steelShear: null },
  pryOutFactor: null,
  hangers: [],
  hairpins: [],
  uncoveredUses: [],
};

/** One answer an edition, from the edition itself. */
function ask(kind: CoverageRow['kind'], subject: string, answer: (name: StandardName) => string): CoverageRow {
  const [en, as, aci, aciM] = standardNames;
  return { kind, subject, answers: { [en]: answer(en), [as]: answer(as), [aci]: answer(aci), [aciM]: answer(aciM) } };
}

function probe(subject: string, change: Partial<AnchorageGroup>): CoverageRow {
  return ask('condition', subject, (name) => {
    const reasons = findEdition(name).findUncovered({ ...COVERED, standard: name, ...change });
    return reasons.length === 0 ? 'computed' : 'not covered';
  });
}

const USES: Readonly<Record<UncoveredUse, string>> = {
  seismic: 'seismic action',
  fire: 'fire',
  fatigue: 'fatigue',
  lifting: 'lifting',
  brace: 'bracing',
  'mixed types': 'two insert types in one group',
  'post-installed': 'post-installed repair',
  'wet-set': 'insert set into wet concrete',
};

function listModes(): CoverageRow[] {
  const everywhere = (subject: string) => ask('mode', subject, () => 'computed');
  return [
    everywhere('steel in tension'),
    everywhere('concrete cone'),
    everywhere('pull-out of the foot'),
    ask('mode', 'side-face blow-out', (name) => `within ${findEdition(name).blowOut.reach} h_ef`),
    ask('mode', 'splitting', (name) => (findEdition(name).splitting === null ? 'least distances' : 'product values')),
    everywhere('steel in shear'),
    ask('mode', 'steel in shear at a stand-off', (name) =>
      findEdition(name).leverArmShear === null ? 'not covered' : 'computed',
    ),
    everywhere('pry-out'),
    ask('mode', 'concrete edge in shear', (name) => {
      const question = {
        diameter: 24,
        embedment: 100,
        strength: 32,
        cracked: true,
        edge: 100,
        area: 45_000,
        corner: Number.POSITIVE_INFINITY,
        thickness: 200,
        reinforcementFactor: 1,
        lightweightFactor: 1,
      };
      return findEdition(name).concreteEdge(question).kind === 'parts' ? 'in two parts' : 'by the resultant';
    }),
    ask('mode', 'hanger and hairpin bars', (name) => (findEdition(name).bars === null ? 'not counted' : 'computed')),
    ask('mode', 'tension with shear', (name) =>
      findEdition(name).together.kind === 'all' ? 'all modes in one' : 'steel, concrete',
    ),
  ];
}

function listConditions(): CoverageRow[] {
  const { concrete, insert } = COVERED;
  const [part] = insert.steelParts;
  const fromTo = (low: number | null, high: number | null, unit: string) => {
    if (low === null && high === null) return 'no limit';
    if (low === null) return `up to ${high} ${unit}`;
    return high === null ? `from ${low} ${unit}` : `${low} to ${high} ${unit}`;
  };
  return [
    ask('condition', 'concrete strength', (name) => {
      const { lowestConcrete, highestConcrete } = findEdition(name).limits;
      return fromTo(lowestConcrete, highestConcrete, 'MPa');
    }),
    ask('condition', 'embedment', (name) => fromTo(findEdition(name).limits.smallestEmbedment, null, 'mm')),
    ask('condition', 'ultimate strength of the steel', (name) =>
      fromTo(null, findEdition(name).limits.highestSteel, 'MPa'),
    ),
    probe('lightweight concrete', { concrete: { ...concrete, lightweightFactor: 0.85 } }),
    probe('no qualification document', { insert: { ...insert, qualification: null } }),
    probe('foot not a full head, no test', { insert: { ...insert, isFullHead: false } }),
    probe('steel above 1000 MPa', { insert: { ...insert, steelParts: part ? [{ ...part, ultimate: 1100 }] : [] } }),
    ask('condition', 'insert pressed into the concrete', () => 'not covered'),
    ask('condition', 'corner sharper than 90 degrees', () => 'not covered'),
    ...(Object.keys(USES) as UncoveredUse[]).map((use) => probe(USES[use], { uncoveredUses: [use] })),
  ];
}

/** Mode by edition and condition by edition: what is computed and what is never a pass, asked of the editions themselves. */
export function describeCoverage(): readonly CoverageRow[] {
  return [...listModes(), ...listConditions()];
}
