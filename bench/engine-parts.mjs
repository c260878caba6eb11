/** What the benchmarks use of Onepour: bundled from the sources before a run. */

export { assessConnection } from '../src/assess/assess-connection.ts';
export { assessJob } from '../src/assess/assess-job.ts';
export { chooseConnection } from '../src/assess/choose/choose-connection.ts';
export { chooseJob } from '../src/assess/choose/choose-job.ts';
export { JobDraft } from '../src/assess/choose/job-draft.ts';
export { spreadActions } from '../src/assess/combinations.ts';
export { shiftsOf, tracePositionZone, ZONE_WINDOW } from '../src/assess/zone/trace-position-zone.ts';
export { findLimit } from '../src/assess/zone/zone-oracle.ts';
export { openZone } from '../src/assess/zone/zone-site.ts';
export { writeAnchorage } from '../src/calc/anchorage-output.ts';
export { calculate } from '../src/calc/calculation.ts';
export { checkAnchorage, explainAnchorage, prepare } from '../src/engine/checks/anchorage.ts';
export { solveFixture } from '../src/engine/fixture/fixture-forces.ts';
export { solvePlate } from '../src/engine/fixture/plate-equilibrium.ts';
export { compareItems, compareWithBar, compareWithSides } from '../src/engine/form/clash/compare-parts.ts';
export { compareClashes, findClashes } from '../src/engine/form/clash/find-clashes.ts';
export { layOutBars } from '../src/engine/form/clash/lay-out-bars.ts';
export { makeSides } from '../src/engine/form/clash/make-sides.ts';
export { prepareRegion } from '../src/engine/geometry/region.ts';
export { groupArea, visibleSquaresArea } from '../src/engine/geometry/sight.ts';
export { makeCylinder } from '../src/engine/geometry/solid.ts';
export { squaresArea } from '../src/engine/geometry/union-area.ts';
export { findHoleFit, prepareHoles } from '../src/engine/tolerance/hole-fit.ts';
export { findChance } from '../src/engine/tolerance/hole-for-chance.ts';
export { indexJob } from '../src/job/job-index.ts';
export { readJobDocument } from '../src/job/read-job-document.ts';
export { resolveConnection } from '../src/job/resolve/resolve-connection.ts';
