/** The engine's public face: `import { anchorage } from 'onepour/engine'`, in a browser or in Node. */
export {
  type AnchorageNumbers,
  anchorage,
  checkAnchorage,
  explainAnchorage,
  findResistances,
  prepare,
} from './checks/anchorage.ts';
export { AnchorageError } from './checks/anchorage-error.ts';
export type * from './checks/anchorage-group.ts';
export { findLargest, type LargestLoad, scaleActions, shareEqually } from './checks/carries-at-most.ts';
export type * from './checks/result.ts';
export { writeStep } from './checks/write-step.ts';
export { FixtureError } from './fixture/fixture-error.ts';
export { solveFixture } from './fixture/fixture-forces.ts';
export { GeometryError } from './geometry/geometry-error.ts';
export type { Point, Polygon } from './geometry/point.ts';
export { MATERIAL_CLAUSES } from './material/clauses.ts';
export { adviseFinish, type FinishAdvice, type FinishQuestion } from './material/finish-advice.ts';
export { judgeContact, type MetalContact } from './material/metal-contact.ts';
export { judgeTestedStrength, strengthByAci, strengthByEurocode } from './material/strength-at-age.ts';
export type { Clause } from './standards/clause.ts';
export { CLAUSES } from './standards/clauses.ts';
export { type StandardName, standardNames } from './standards/standard-name.ts';
export { ENGINE_VERSION } from './version.ts';
